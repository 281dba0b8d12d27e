#!/usr/bin/env bash
# Plans every lesson of demo/lessons and keeps the pictures: tools/demo.sh PROGRAM FOLDER
# One of the lessons does not fit on purpose, so the program's answer "does not fit" (1) is an answer, not a failure.
set -euo pipefail
program=$1
pictures=$2
mkdir -p "$pictures"

summary=()
failed=0
for lesson in demo/lessons/*.json; do
  name=$(basename "$lesson" .json)
  echo
  echo "=== benchbell plan $lesson"
  echo
  code=0
  "$program" plan "$lesson" --html "$pictures/$name.html" --svg "$pictures/$name.svg" || code=$?
  case $code in
    0) verdict="fits" ;;
    1) verdict="does not fit" ;;
    *) verdict="FAILED ($code)" && failed=$code ;;
  esac
  picture=$([[ -f $pictures/$name.html ]] && echo "$pictures/$name.html" || echo "-")
  summary+=("$(printf '%-14s %-44s %s' "$verdict" "$lesson" "$picture")")
done

echo
echo "=== The demo lessons: verdict, file, picture (open it in a browser)"
echo
printf '%s\n' "${summary[@]}"
exit "$failed"
