# Publishing the two programs into artifacts/, once for every state of the sources. Sourced after common.sh, packages.sh and dotnet.sh.
# Kept free of needless processes: with nothing to do, use_programs starts two.

artifacts=$repository/artifacts
builds=$artifacts/builds
sources=()
for source in src calibration fixtures/photos Directory.Build.props Directory.Packages.props global.json tools/lib/publish.sh; do
  [[ ! -e $repository/$source ]] || sources+=("$repository/$source")
done
unset source

# use_programs: sets $programs to a folder with command-line/ and service/, published from the sources as they are now.
# The folder stays locked (shared) through file descriptor 8, which the program started by exec keeps, so that no later build removes it.
use_programs() {
  local try name
  for try in 1 2 3; do
    if current_build && hold "$programs"; then return; fi
    look
    name=$(sources_digest)
    programs=$builds/$name
    if hold "$programs"; then
      remember "$name"
      return
    fi
    publish_programs
  done
  refuse 1 BUILD_UNSETTLED "the sources changed during each of three builds" "run this again when they rest"
}

hold() { { exec 8<"$1"; } 2>/dev/null && flock -s 8 && [[ -d $1 ]]; }

# artifacts/current names the build of the sources and is as old as the look at them: nothing may be newer, folders included (they tell of files removed).
current_build() {
  local name
  { read -r name <"$artifacts/current"; } 2>/dev/null || return
  programs=$builds/$name
  [[ -d $programs && -z $(find "${sources[@]}" \( -name bin -o -name obj \) -prune -o -newer "$artifacts/current" -print -quit 2>&1) ]]
}

# look, remember NAME: keep a name together with the time of the look. Whoever may not write here looks closely (by digest) each time.
look() { { : >"$artifacts/looked.$$"; } 2>/dev/null || true; }
remember() {
  if [[ -e $artifacts/looked.$$ ]] && echo "$1" >"$artifacts/next.$$"; then
    touch -r "$artifacts/looked.$$" "$artifacts/next.$$"
    mv "$artifacts/next.$$" "$artifacts/current"
  fi
  rm -f "$artifacts/looked.$$"
}

# A digest of all that a published program is made of. Content, not time, so that switching branches back and forth builds once each.
sources_digest() {
  (cd "$repository" && LC_ALL=C find "${sources[@]#"$repository/"}" \( -name bin -o -name obj \) -prune -o -type f -print0 |
    LC_ALL=C sort -z | xargs -0 sha1sum | sha1sum | cut -c1-16)
}

# Publishes under the lock, unless another run has done it meanwhile.
publish_programs() {
  local name built
  rm -f "$artifacts/looked.$$"
  mkdir -p "$builds" 2>/dev/null && [[ -w $builds && -w $artifacts ]] ||
    refuse 2 ARTIFACTS_NOT_WRITABLE "the programs must be built, but $artifacts cannot be written" "run this once as the user who owns the folder"
  require_sdk
  exec 9>"$artifacts/lock"
  flock -n 9 || { say "$caller: waiting for another build"; flock 9; }
  if [[ ! -d $builds/$(sources_digest) ]]; then
    built=$(build_programs)
    name=$(sources_digest)
    # A source that changed meanwhile may be in the build or not: such a build has no name.
    if [[ $name == "$built" ]]; then
      mv "$builds/unfinished" "$builds/$name"
      remove_old_builds "$builds/$name"
    fi
  fi
  exec 9>&-
}

# Builds into $builds/unfinished; prints the digest of the sources once restoring has left its lock files.
build_programs() {
  local fresh=$builds/unfinished log=$artifacts/build.log
  # Compiled ahead of time: a command starts a third faster. No commit in the version: the same sources stand in many.
  local options=(-c Release -p:PublishReadyToRun=true -p:IncludeSourceRevisionInInformationalVersion=false)
  say "$caller: building (the first run, or the sources have changed); this takes a minute or more"
  rm -rf "$fresh"
  : >"$log"
  build_step "$log" restore "$repository/src/MarkReader.CommandLine" -p:PublishReadyToRun=true
  build_step "$log" restore "$repository/src/MarkReader.Service" -p:PublishReadyToRun=true
  sources_digest
  build_step "$log" publish "$repository/src/MarkReader.CommandLine" --no-restore "${options[@]}" -o "$fresh/command-line"
  build_step "$log" publish "$repository/src/MarkReader.Service" --no-restore "${options[@]}" -o "$fresh/service"
  link_libraries "$fresh/command-line" "$fresh/service"
}

# build_step LOG COMMAND...: the lock's descriptors stay here, should a build leave a process behind.
build_step() {
  local log=$1
  shift
  "${quiet_build[@]}" "$dotnet" "$1" -nologo -v minimal "${@:2}" >>"$log" 2>&1 </dev/null 8>&- 9>&- && return
  show_build_errors "$log"
  rm -rf "$builds/unfinished"
  refuse 1 BUILD_FAILED "the programs could not be built (see above; all of it in ${log#"$repository/"})" "correct the sources; earlier builds are untouched"
}

# link_libraries FOLDER OTHER: native libraries that both have are kept once (OpenCV's has 114 MB).
link_libraries() {
  local file
  for file in "$1"/*.so; do
    if cmp -s "$file" "$2/${file##*/}"; then ln -f "$file" "$2/${file##*/}"; fi
  done
}

# Keeps the given build, the one before it, and every build that a running program uses.
remove_old_builds() {
  local old
  find "$builds" -mindepth 1 -maxdepth 1 -type d ! -path "$1" -printf '%T@ %p\n' | sort -rn | tail -n +2 | cut -d' ' -f2- |
    while IFS= read -r old; do
      (exec 7<"$old" && flock -n -x 7 && rm -rf "$old") || true
    done
}
