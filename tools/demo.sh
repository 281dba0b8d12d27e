#!/usr/bin/env bash
# Plans every lesson of demo/lessons, keeps the pictures, then opens the desk on the demo school: tools/demo.sh PROGRAM FOLDER
# One of the lessons does not fit on purpose, so the program's answer "does not fit" (1) is an answer, not a failure.
# With a terminal the desk stays until Ctrl-C. Without one it is asked for its first page and stopped again.
set -euo pipefail
program=$1
pictures=$2
mkdir -p "$pictures"

summary=()
failed=0
for lesson in demo/lessons/*.json; do
  name=$(basename "$lesson" .json)
  echo
  echo "=== benchbell plan $lesson --labels demo/stores/labels.csv"
  echo
  code=0
  "$program" plan "$lesson" --labels demo/stores/labels.csv --html "$pictures/$name.html" --svg "$pictures/$name.svg" || code=$?
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
[[ $failed -eq 0 ]] || exit "$failed"

echo
echo "=== The desk, on the demo school"
echo
if [[ -t 0 && -t 1 ]]; then
  exec "$program" serve --demo
fi
said=$(mktemp)
trap 'rm -f "$said"' EXIT
"$program" serve --demo --port 0 >"$said" &
desk=$!
trap 'kill "$desk" 2>/dev/null || true; rm -f "$said"' EXIT
for _ in $(seq 100); do
  address=$(sed -n 's/^Benchbell is at //p' "$said")
  [[ -n $address ]] && break
  kill -0 "$desk"  # it ended by itself: the message above says why
  sleep 0.1
done
page=$(curl --silent --show-error --fail "$address/")
school=$(curl --silent --show-error --fail "$address/api/me")
grep -q "<title>Benchbell</title>" <<<"$page"
grep -q "Quillbridge School" <<<"$school"
kill -TERM "$desk"
wait "$desk"
echo "The first page answered at $address. See it with: benchbell serve --demo"
