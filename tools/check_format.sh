#!/usr/bin/env bash
# Fails when a source is not formatted as .clang-format says; `tools/check_format.sh --fix` mends it.
set -euo pipefail
mode=(--dry-run -Werror)
[[ ${1:-} == --fix ]] && mode=(-i)
mapfile -d '' files < <(git ls-files -z --cached --others --exclude-standard -- '*.cpp' '*.h')
[[ ${#files[@]} -gt 0 ]] && clang-format "${mode[@]}" "${files[@]}"
echo "Format: ${#files[@]} files, no fault."
