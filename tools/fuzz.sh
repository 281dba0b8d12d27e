#!/usr/bin/env bash
# Runs every fuzz target for some seconds, from the demo files on: tools/fuzz.sh BUILD_FOLDER SECONDS
# Finds are kept between runs in BUILD_FOLDER/corpus; an input that breaks the program is left in BUILD_FOLDER/found.
set -euo pipefail
build=$1
seconds=$2

shopt -s nullglob globstar
targets=("$build"/fuzz_programs/*)
if [[ ${#targets[@]} -eq 0 ]]; then
  echo "fuzz: there is no fuzz target in $build/fuzz_programs." >&2
  exit 1
fi
mkdir -p "$build/seeds" "$build/found"
for file in demo/**/*.json tests/fuzz/seeds/*; do
  cp "$file" "$build/seeds/$(tr / _ <<<"$file")"
done
for target in "${targets[@]}"; do
  name=$(basename "$target")
  mkdir -p "$build/corpus/$name"
  echo "Fuzzing with $name for $seconds s"
  "$target" "$build/corpus/$name" "$build/seeds" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 \
    -max_len=65536 -artifact_prefix="$build/found/$name-" -verbosity=0 -print_final_stats=1 2>&1 |
    sed '/Recommended dictionary/,/End of recommended/d'
done
