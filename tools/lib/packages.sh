# What the machine must have besides the .NET SDK, and how to install it. Sourced after common.sh.

missing=()

# have_library NAME: a shared library of the system, looked for where Debian and Ubuntu keep it, else in the linker's cache.
have_library() {
  [[ -e /usr/lib/x86_64-linux-gnu/$1 || -e /lib/x86_64-linux-gnu/$1 ]] && return
  PATH=$PATH:/sbin:/usr/sbin ldconfig -p 2>/dev/null | grep -q -F "$1 "
}

# package_name NAME: libraries of Debian 13, Ubuntu 24.04 and later carry "t64" behind the name that Debian 12 and Ubuntu 22.04 use.
package_name() {
  local id='' version='' like=''
  if [[ -r /etc/os-release ]]; then
    id=$(. /etc/os-release; echo "${ID:-}") version=$(. /etc/os-release; echo "${VERSION_ID:-}") like=$(. /etc/os-release; echo "${UBUNTU_CODENAME:-}")
  fi
  if [[ $(apt-cache pkgnames "$1t64" 2>/dev/null) == *"$1t64"* ]]; then
    echo "$1t64"
  elif [[ $id == debian && ${version%%.*} -ge 13 || $id == ubuntu && ${version%%.*} -ge 24 || $like == noble ]]; then
    echo "$1t64"
  else
    echo "$1"
  fi
}

# What OpenCV's native library links to that a system without a desktop lacks.
need_for_photos() {
  have_library libgtk-3.so.0 || missing+=("$(package_name libgtk-3-0)")
  have_library libdrm.so.2 || missing+=(libdrm2)
  have_library libatomic.so.1 || missing+=(libatomic1)
}

# What restoring packages needs: TLS and the authorities to trust.
need_for_building() {
  have_library libssl.so.3 || missing+=("$(package_name libssl3)")
  [[ -e /etc/ssl/certs/ca-certificates.crt || -n ${SSL_CERT_FILE:-} || -e /etc/pki/tls/certs/ca-bundle.crt ]] || missing+=(ca-certificates)
}

# need_command COMMAND PACKAGE
need_command() {
  command -v "$1" >/dev/null || missing+=("$2")
}

# install_missing: installs what the need_ functions found, or says how.
install_missing() {
  ((${#missing[@]})) || return 0
  local command="apt-get install -y --no-install-recommends ${missing[*]}" as=() log
  command -v apt-get >/dev/null ||
    refuse 2 MISSING_PACKAGES "this machine lacks what Debian calls ${missing[*]}" "install them with this system's package manager"
  if ((EUID != 0)); then
    sudo -n true 2>/dev/null ||
      refuse 2 MISSING_PACKAGES "this machine lacks ${missing[*]}" "run: sudo apt-get update && sudo $command"
    as=(sudo -n)
  fi
  say "$caller: installing ${missing[*]}"
  log=$(mktemp)
  # One try to refresh the lists; an unreachable mirror of something else must not stop an installation that works.
  "${as[@]}" apt-get update -qq >"$log" 2>&1 </dev/null || say "$caller: apt-get update did not succeed; trying with the lists there are"
  if ! "${as[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends -qq -o DPkg::Lock::Timeout=300 \
    "${missing[@]}" >>"$log" 2>&1 </dev/null; then
    tail -n 15 "$log" >&2
    rm -f "$log"
    refuse 2 MISSING_PACKAGES "installing ${missing[*]} did not succeed (see above)" "repair it, or run: sudo apt-get update && sudo $command"
  fi
  rm -f "$log"
  missing=()
}
