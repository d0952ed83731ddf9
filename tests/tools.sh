# Sourced by run.sh, in the project's top folder. Finds the programs that the tests call, or brings them into .tools/.
# Sets and exports PATTERNSHOP_CHROMIUM, PATTERNSHOP_QPDF …; one that is set already is taken as it is.

# variable, Debian package, names under which the program may stand on the path
tool_table=(
  "PATTERNSHOP_CHROMIUM   chromium       chromium chromium-browser google-chrome-stable google-chrome"
  "PATTERNSHOP_QPDF       qpdf           qpdf"
  "PATTERNSHOP_PDFTOPPM   poppler-utils  pdftoppm"
  "PATTERNSHOP_PDFTOTEXT  poppler-utils  pdftotext"
  "PATTERNSHOP_PDFFONTS   poppler-utils  pdffonts"
  "PATTERNSHOP_PDFINFO    poppler-utils  pdfinfo"
)
tools_home="$PWD/.tools"

# Exports what is there and leaves the packages of what is not in missing_packages.
look_for_tools() {
  local line variable package names name found
  missing_packages=()
  for line in "${tool_table[@]}"; do
    read -r variable package names <<< "$line"
    found=${!variable:-}
    for name in $names; do
      [ -n "$found" ] || found=$(type -P "$name") || true
    done
    for name in $names; do
      if [ -z "$found" ] && [ -x "$tools_home/bin/$name" ]; then found="$tools_home/bin/$name"; fi
    done
    if [ -n "$found" ]; then
      export "$variable=$found"
    elif [[ " ${missing_packages[*]} " != *" $package "* ]]; then
      missing_packages+=("$package")
    fi
  done
}

find_tools() {
  look_for_tools
  [ ${#missing_packages[@]} -gt 0 ] || return 0
  if type -P apt-get > /dev/null && type -P dpkg-deb > /dev/null; then
    mkdir -p "$tools_home"
    exec 8> "$tools_home/lock"
    if type -P flock > /dev/null; then flock 8; fi
    look_for_tools
    if [ ${#missing_packages[@]} -gt 0 ]; then bring_packages "${missing_packages[@]}" || true; fi
    exec 8>&-
    look_for_tools
  fi
  [ ${#missing_packages[@]} -eq 0 ] || say_what_to_install
}

say_what_to_install() {
  local line variable package names
  echo "These programs are needed by the tests and were not found:" >&2
  for line in "${tool_table[@]}"; do
    read -r variable package names <<< "$line"
    [ -n "${!variable:-}" ] || echo "  ${names// / or }   (package $package on Debian; or set $variable to the program)" >&2
  done
  echo "Install them with your system's package manager (Chromium or Chrome, qpdf, poppler's tools), then run this again." >&2
  return 1
}

# Debian packages with everything that they need, unpacked and never installed: no root, nothing outside .tools/.
# An empty status file makes apt bring all dependencies, so that it does not matter what the machine has.
bring_packages() {
  local apt="$tools_home/apt" new="$tools_home/new"
  echo "Bringing $* from the system's package sources into .tools/ (some 240 MB to load, once) …"
  rm -rf "$apt" "$new"
  mkdir -p "$apt/lists/partial" "$apt/cache/archives/partial" "$new"
  : > "$apt/status"
  write_apt_settings "$apt" > "$apt/settings"
  # a source that is out of reach need not be one that matters here
  apt-get -c "$apt/settings" -qq update || echo "Not every package source could be read; going on with the others." >&2
  if ! apt-get -c "$apt/settings" -qq -y --no-install-recommends --download-only install "$@" fonts-dejavu-core > "$apt/log" 2>&1; then
    cat "$apt/log" >&2
    return 1
  fi
  unpack_archives "$apt/cache/archives" "$new"
  rm -rf "$tools_home/debian" "$apt"
  mv "$new" "$tools_home/debian"
  write_font_settings > "$tools_home/fonts.conf"
  write_starters
}

# Only the package index is read: no translations, no other indexes, no hooks of the machine.
write_apt_settings() {
  cat << SETTINGS
#clear APT::Update::Pre-Invoke;
#clear APT::Update::Post-Invoke;
#clear APT::Update::Post-Invoke-Success;
#clear Acquire::IndexTargets::deb::DEP-11;
#clear Acquire::IndexTargets::deb::DEP-11-icons;
#clear Acquire::IndexTargets::deb::DEP-11-icons-small;
#clear Acquire::IndexTargets::deb::DEP-11-icons-large;
#clear Acquire::IndexTargets::deb::DEP-11-icons-hidpi;
#clear Acquire::IndexTargets::deb::DEP-11-icons-large-hidpi;
#clear Acquire::IndexTargets::deb::Contents-deb;
Dir::State "$1";
Dir::State::Lists "$1/lists";
Dir::State::Status "$1/status";
Dir::Cache "$1/cache";
Debug::NoLocking "true";
Acquire::Languages "none";
APT::Sandbox::User "";
SETTINGS
}

# The C library must be the one that the running loader belongs to: the machine's.
unpack_archives() {
  local archive
  for archive in "$1"/*.deb; do
    case ${archive##*/} in
      libc6_* | libc-bin_* | dpkg_* | perl-base_* | systemd* | tzdata_*) ;;
      *) dpkg-deb -x "$archive" "$2" ;;
    esac
    rm -f "$archive"
  done
  rm -rf "$2"/usr/share/{doc,man,locale,icons}
}

write_font_settings() {
  cat << SETTINGS
<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>$tools_home/debian/usr/share/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>$tools_home/font-cache</cachedir>
  <alias><family>sans-serif</family><prefer><family>DejaVu Sans</family></prefer></alias>
  <alias><family>serif</family><prefer><family>DejaVu Serif</family></prefer></alias>
  <alias><family>monospace</family><prefer><family>DejaVu Sans Mono</family></prefer></alias>
</fontconfig>
SETTINGS
}

# One small script a program, which sets where its libraries and fonts are and becomes the program.
write_starters() {
  local line variable package names name program
  rm -rf "$tools_home/bin"
  mkdir -p "$tools_home/bin" "$tools_home/font-cache"
  for line in "${tool_table[@]}"; do
    read -r variable package names <<< "$line"
    name=${names%% *}
    program="$tools_home/debian/usr/bin/$name"
    # Debian's own starter of Chromium reads settings in /etc; the program itself needs none of them
    [ "$name" != chromium ] || program="$tools_home/debian/usr/lib/chromium/chromium"
    [ -x "$program" ] || continue
    cat > "$tools_home/bin/$name" << STARTER
#!/usr/bin/env bash
for folder in "$tools_home"/debian/{usr/,}lib/*-linux-gnu{,/nss,/pulseaudio}; do
  if [ -d "\$folder" ]; then libraries="\${libraries:+\$libraries:}\$folder"; fi
done
export LD_LIBRARY_PATH="\$libraries\${LD_LIBRARY_PATH:+:\$LD_LIBRARY_PATH}"
export FONTCONFIG_FILE="$tools_home/fonts.conf"
exec "$program" "\$@"
STARTER
    chmod +x "$tools_home/bin/$name"
  done
}
