# Finding the .NET SDK and building with it. Sourced after common.sh.

sdk_needed=10.0

# The SDK stays silent, offers nothing, leaves no process behind, and needs no ICU.
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=true
quiet_build=(env DOTNET_CLI_USE_MSBUILD_SERVER=0 MSBUILDDISABLENODEREUSE=1 UseSharedCompilation=false DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1
  DOTNET_CLI_UI_LANGUAGE=en)

# Sets $dotnet to a host, on the path or in one of the usual places.
find_dotnet() {
  local place
  dotnet=$(command -v dotnet) && return
  for place in "${DOTNET_ROOT:-}" "${HOME:-}/.dotnet" /usr/share/dotnet /usr/lib/dotnet /usr/local/share/dotnet; do
    if [[ -n $place && -x $place/dotnet ]]; then
      dotnet=$place/dotnet
      export DOTNET_ROOT=$place
      return
    fi
  done
  refuse 2 DOTNET_MISSING ".NET $sdk_needed is not installed" "$(how_to_get_sdk)"
}

# The SDK must satisfy global.json.
require_sdk() {
  (cd "$repository" && "${quiet_build[@]}" "$dotnet" --version >/dev/null 2>&1) && return
  local found
  found=$("${quiet_build[@]}" "$dotnet" --list-sdks 2>/dev/null | cut -d' ' -f1 | tr '\n' ' ')
  refuse 2 DOTNET_SDK_MISSING "the .NET SDK $sdk_needed is needed, found: ${found:-none}" "$(how_to_get_sdk)"
}

how_to_get_sdk() {
  local id=''
  [[ -r /etc/os-release ]] && id=$(. /etc/os-release; echo "${ID:-}")
  case $id in
    ubuntu) echo "on Ubuntu 24.04 or later run: sudo apt-get update && sudo apt-get install -y dotnet-sdk-$sdk_needed" ;;
    debian) echo "add the vendor's package source as https://learn.microsoft.com/dotnet/core/install/linux-debian says, then run: sudo apt-get install -y dotnet-sdk-$sdk_needed" ;;
    *) echo "install it as https://learn.microsoft.com/dotnet/core/install/linux says" ;;
  esac
}

# show_build_errors LOG: the compiler's own lines, each once; the last lines where there are none.
show_build_errors() {
  local lines
  lines=$(grep -E '(^|[ :])(error|warning) [A-Z]+[0-9]+' "$1" | grep -E '[ :]error ' | sed -E 's/^ +//; s/ \[[^]]*\]$//' | sort -u | head -n 40)
  if [[ -n $lines ]]; then say "$lines"; else tail -n 30 "$1" >&2; fi
  if grep -q -E 'NU1301|NU1101|NU1102|Unable to load the service index' "$1"; then
    refuse 2 PACKAGES_UNREACHABLE "NuGet packages could not be fetched" "connect to the network (or set up NuGet's proxy and sources), then run this again"
  fi
}
