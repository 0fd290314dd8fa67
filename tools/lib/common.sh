# Words and places that tools/run and tools/test share. Sourced by bash with $caller set; prints on standard error only.

repository=$(cd "${BASH_SOURCE[0]%/*}/../.." && pwd -P)

say() { printf '%s\n' "$*" >&2; }

# refuse STATUS CODE WHAT WHAT_TO_DO
refuse() {
  say "error: $2: $3; $4"
  exit "$1"
}

[[ $HOSTTYPE == x86_64 && $OSTYPE == linux* ]] ||
  refuse 2 MACHINE_UNSUPPORTED "MarkReader runs on 64-bit Intel and AMD machines under Linux, this is $HOSTTYPE under $OSTYPE" "use such a machine"
