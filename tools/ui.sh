#!/usr/bin/env bash
# Builds the pages into build/ui and, for the program, build/pages.cpp. Does nothing when they are up to date; without npm
# the program is built without its pages and says so.
set -euo pipefail
cd "$(dirname "$0")/.."
if ! command -v npm >/dev/null; then
  echo "The pages are left out: there is no npm here. make setup installs it."
  exit 0
fi
mkdir -p build
now=$(find ui api schemas -path ui/node_modules -prune -o -type f -print0 | sort -z | xargs -0 sha256sum | sha256sum)
[[ -f build/pages.cpp && -f build/pages.sum && $(<build/pages.sum) == "$now" ]] && exit 0
log=$(mktemp)
trap 'rm -f "$log"' EXIT
quietly() {
  if ! "$@" >"$log" 2>&1; then
    cat "$log" >&2
    exit 1
  fi
}
lock=$(sha256sum ui/package-lock.json)
if [[ ! -x ui/node_modules/.bin/node || ! -f build/packages.sum || $(<build/packages.sum) != "$lock" ]]; then
  echo "Fetching what builds the pages."
  quietly npm --prefix ui ci --no-audit --no-fund
  echo "$lock" >build/packages.sum
fi
# The packages bring a newer Node than Debian's own; everything runs on that one.
quietly npm --prefix ui run build
quietly ui/node_modules/.bin/node ui/tools/embed.mjs build/ui build/pages.cpp
echo "$now" >build/pages.sum
