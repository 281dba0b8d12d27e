#!/usr/bin/env bash
# Runs every program of bench/ and prints its figures: tools/bench.sh BUILD_FOLDER
set -euo pipefail
shopt -s nullglob
programs=("$1"/bench_programs/*)
if [[ ${#programs[@]} -eq 0 ]]; then
  echo "bench: there is no program in $1/bench_programs." >&2
  exit 1
fi
for program in "${programs[@]}"; do
  echo "=== $(basename "$program")"
  "$program"
done
