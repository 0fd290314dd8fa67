# What the tests need besides what the programs need, and the closing line. Sourced after common.sh, packages.sh and dotnet.sh.

chromium_to_fetch=

# Sets CHROMIUM to a browser for the page's tests. Debian has it as a package; Ubuntu's package of that name only fetches a confined build
# that cannot read files in /tmp, so there the browser that Playwright itself offers is used (see fetch_chromium).
need_chromium() {
  local name
  for name in "${CHROMIUM:-}" chromium google-chrome-stable google-chrome chrome; do
    if [[ -n $name ]] && name=$(command -v "$name") && [[ $(readlink -f "$name") != */snap* ]]; then
      export CHROMIUM=$name
      return
    fi
  done
  name=$(fetched_chromium)
  if [[ -n $name ]]; then
    export CHROMIUM=$name
  elif has_chromium_package; then
    missing+=(chromium)
    export CHROMIUM=/usr/bin/chromium
  else
    chromium_to_fetch=yes
  fi
}

has_chromium_package() {
  local id=''
  [[ -r /etc/os-release ]] && id=$(. /etc/os-release; echo "${ID:-} ${ID_LIKE:-}")
  [[ $id == *debian* && $id != *ubuntu* ]]
}

fetched_chromium() {
  find "${PLAYWRIGHT_BROWSERS_PATH:-${HOME:-}/.cache/ms-playwright}" -path '*/chromium-*' -name chrome -type f -perm -u+x 2>/dev/null | sort -V | tail -n 1 || true
}

# fetch_chromium FOLDER: by the driver that the built browser tests in FOLDER brought along; its system libraries too, where we may.
fetch_chromium() {
  local driver=("$1/.playwright/node/linux-x64/node" "$1/.playwright/package/cli.js") with=()
  if ((EUID == 0)) || sudo -n true 2>/dev/null; then with=(--with-deps); fi
  say "$caller: fetching Chromium for the page's tests"
  "${driver[@]}" install "${with[@]}" chromium >&2 </dev/null || true
  CHROMIUM=$(fetched_chromium)
  [[ -n $CHROMIUM ]] ||
    refuse 2 CHROMIUM_MISSING "the page's tests need Chromium, and it could not be fetched" "install Chromium or Chrome and set CHROMIUM to its path"
  export CHROMIUM
}

# failed_tests LOG: the failed tests by name, with the first words of each failure, so that they stand at the end of a long log.
failed_tests() {
  awk '/^Test run summary:/ { left = 0; next } /^failed / { left = 8; if (!any++) print "Failed tests:" }
    left > 0 && !/^  from / { print (/^failed / ? "" : "  ") substr($0, 1, 240); left-- }' "$1"
}

# closing_line LOG: adds up what the test run printed; fails when no test ran.
closing_line() {
  awk '/^Test run summary:/ { summary = 1 }
    summary && /^  total:/ { t += $2 } summary && /^  failed:/ { f += $2 } summary && /^  succeeded:/ { p += $2 } summary && /^  skipped:/ { s += $2 }
    END { printf "%d passed, %d failed, %d skipped\n", p, f, s; exit t == 0 }' "$1"
}
