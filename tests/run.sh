#!/usr/bin/env bash
# The test command: brings its tools, restores, builds once in Release, runs every test project.
# The last line is "N passed, N failed". A skipped test, a project that has run no test or did not finish, and a build
# or tools that failed count as failed, one each; the lines above say which.
# Settings: PATTERNSHOP_ONLY (some classes, "Project:*Class*"), PATTERNSHOP_ALONE (the same, of classes that believe the clock: left out of their projects, then
# run one after another with nothing beside them), PATTERNSHOP_JOBS (projects at a time, 2), PATTERNSHOP_TIMEOUT (of one project, 30m), PATTERNSHOP_EFFORT (quick
# or full, read by the tests), and the program for each tool (see tools.sh).
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
exec < /dev/null

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false
# no build node may outlive the command and keep its output open for whoever reads it (the compiler server does not)
export MSBUILDDISABLENODEREUSE=1 DOTNET_CLI_USE_MSBUILD_SERVER=0
# programs that run for seconds only pay for being watched; without it they take a fifth less of the processors
export DOTNET_TieredPGO=0
export PATTERNSHOP_EFFORT=${PATTERNSHOP_EFFORT:-quick}
if [ ! -w "${HOME:-}" ]; then mkdir -p .tools/home; export HOME="$PWD/.tools/home"; fi

passed=0
failed=0
scratch=$(mktemp -d)
finish() {
  local code=$?
  rm -rf "$scratch"
  if [ $code -ne 0 ] && [ $failed -eq 0 ]; then failed=1; fi
  echo "$passed passed, $failed failed"
  if [ $failed -ne 0 ]; then exit 1; fi
}
trap finish EXIT
trap 'kill $(jobs -rp) 2> /dev/null || true; exit 130' INT TERM

seconds_since() {
  local milliseconds=$(($(date +%s%3N) - $1))
  echo "$((milliseconds / 1000)).$((milliseconds % 1000 / 100)) s"
}

# $1 what is done, as it is printed; the rest does it. Its output is shown when it fails.
step() {
  local what=$1 begin
  begin=$(date +%s%3N)
  shift
  if ! "$@" > "$scratch/step.log" 2>&1; then
    cat "$scratch/step.log"
    echo "$what: FAILED"
    exit 1
  fi
  printf '%-42s %40s\n' "$what" "$(seconds_since "$begin")"
}

# Runs in the background. $1 a project, or some of its classes: "Project:*Class*"; $2 classes that are left out; $3 classes that are told that they run alone.
# Leaves files named like $1: log, xml, code and time.
run_tests() {
  local what=$1 without=$2 alone=$3 name=${1%%:*} begin code=0
  local options=() class
  set -f # the stars are for xUnit
  [ "$name" = "$what" ] || options+=(-class "${what#*:}")
  for class in $without; do [ "${class%%:*}" != "$name" ] || options+=(-class- "${class#*:}"); done
  begin=$(date +%s%3N)
  PATTERNSHOP_ALONE=$alone timeout --kill-after=30s "${PATTERNSHOP_TIMEOUT:-30m}" dotnet exec "tests/$name/bin/Release/net10.0/$name.dll" \
    -noLogo -noColor -noAutoReporters "${options[@]}" -result-xml "$scratch/$what.xml" > "$scratch/$what.log" 2>&1 || code=$?
  seconds_since "$begin" > "$scratch/$what.time"
  echo $code > "$scratch/$what.code"
}

# The number that xUnit's report gives for the whole run, 0 without a report.
count() {
  local head
  head=$(grep -o '<assembly [^>]*>' "$scratch/$1.xml" 2> /dev/null) || true
  if [[ $head =~ \ $2=\"([0-9]+)\" ]]; then echo "${BASH_REMATCH[1]}"; else echo 0; fi
}

report() {
  local name=$1 good bad skipped code said=""
  code=$(cat "$scratch/$name.code")
  good=$(count "$name" passed)
  bad=$(($(count "$name" failed) + $(count "$name" errors)))
  skipped=$(($(count "$name" skipped) + $(count "$name" not-run)))
  [ "$skipped" -eq 0 ] || said+=" $skipped not run."
  [ $((good + bad + skipped)) -gt 0 ] || said+=" No test has run."
  if [ "$code" -eq 124 ]; then said+=" Stopped: it took longer than ${PATTERNSHOP_TIMEOUT:-30m}."; fi
  bad=$((bad + skipped))
  if [ "$bad" -eq 0 ] && { [ "$code" -ne 0 ] || [ "$good" -eq 0 ]; }; then
    bad=1
    said+=" Exit code $code."
  fi
  if [ "$bad" -ne 0 ]; then cat "$scratch/$name.log"; fi
  printf '%-42s %7d passed %7d failed %15s%s\n' "$name" "$good" "$bad" "$(cat "$scratch/$name.time")" "${said:+  $said}"
  passed=$((passed + good))
  failed=$((failed + bad))
}

. tests/tools.sh
find_tools
if ! type -P dotnet > /dev/null; then
  echo "The .NET SDK is needed (global.json says which); 'dotnet' is not on the path."
  exit 1
fi
step "restore" dotnet restore PatternShop.sln --locked-mode
step "build" dotnet build PatternShop.sln -c Release --no-restore -warnaserror --tl:off

read -ra together <<< "${PATTERNSHOP_ONLY:-}"
read -ra alone <<< "${PATTERNSHOP_ALONE:-}"
if [ ${#together[@]} -eq 0 ]; then
  for file in $(grep -l 'Include="xunit.v3"' tests/*/*.csproj); do together+=("$(basename "$file" .csproj)"); done
elif [ ${#together[@]} -eq 1 ] && [ ${#alone[@]} -eq 0 ]; then
  alone=("${together[@]}")
  together=()
fi
declare -A running
begin=$(date +%s%3N)
for name in "${together[@]}"; do
  while [ "$(jobs -rp | wc -l)" -ge "${PATTERNSHOP_JOBS:-2}" ]; do wait -n || true; done
  run_tests "$name" "${alone[*]}" "" &
  running[$name]=$!
done
for name in "${together[@]}"; do
  wait "${running[$name]}" || true
  report "$name"
done
for name in "${alone[@]}"; do
  run_tests "$name" "" "$name" &
  wait $! || true
  report "$name"
done
printf '%-42s %7d passed %7d failed %15s\n' "all projects" "$passed" "$failed" "$(seconds_since "$begin")"
