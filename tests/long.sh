#!/usr/bin/env bash
# The same tests with PATTERNSHOP_EFFORT=full. Writes long-report.md; exit code and last line are those of run.sh.
# Classes that are timed by the clock run after all others, with nothing beside them (PATTERNSHOP_ALONE). PATTERNSHOP_ONLY=Project:*Class* runs one class alone; the
# report says so.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
output=$(mktemp)
trap 'rm -f "$output"' EXIT

[ -n "${PATTERNSHOP_ONLY:-}" ] || export PATTERNSHOP_ALONE=${PATTERNSHOP_ALONE-PatternShop.EndToEnd:*KilledServerTests* PatternShop.Web.Tests:*SignInSpeedTests*}
code=0
PATTERNSHOP_EFFORT=full PATTERNSHOP_TIMEOUT=${PATTERNSHOP_TIMEOUT:-6h} bash "$here/run.sh" | tee "$output" || code=$?

commit=$(git -C "$here" rev-parse --short HEAD)
[ -z "$(git -C "$here" status --porcelain -- ':!tests/long-report.md')" ] || commit+=" with changes that are not committed"
{
  echo "# The long run"
  echo
  echo "Written by \`tests/long.sh\`, not by hand. ${PATTERNSHOP_ONLY:-Every test}, with its full number of cases."
  echo
  echo "- Date: $(date -u +%F)"
  echo "- Commit: $commit"
  echo "- Processors: $(nproc)"
  echo "- Result: $(tail -n 1 "$output")"
  echo
  echo '```'
  grep -E '^(restore|build|PatternShop[^ ]*|all projects) .* s( |$)' "$output" || true
  echo '```'
} > "$here/long-report.md"
exit $code
