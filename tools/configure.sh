#!/usr/bin/env bash
# Readies build/PRESET: tools/configure.sh PRESET [-DNAME=VALUE ...]
# A folder configured before is left as it is unless one of the values differs, so a second run costs nothing. A new
# release folder starts with the program alone: planning a lesson needs none of the test libraries.
set -euo pipefail
preset=$1
shift
cache=build/$preset/CMakeCache.txt

needed=()
if [[ ! -f build/$preset/build.ninja ]]; then
  [[ $preset == release ]] && needed+=(-DBENCHBELL_TESTS=OFF -DBENCHBELL_BENCH=OFF)
  needed+=("$@")
else
  for setting in "$@"; do
    name=${setting#-D}
    name=${name%%=*}
    grep -q "^$name:[A-Z]*=${setting#*=}\$" "$cache" || needed+=("$setting")
  done
  [[ ${#needed[@]} -eq 0 ]] && exit 0
fi
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! cmake --preset "$preset" "${needed[@]}" >"$log" 2>&1; then
  cat "$log" >&2
  exit 1
fi
