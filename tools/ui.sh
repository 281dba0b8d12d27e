#!/usr/bin/env bash
# The pages: tools/ui.sh [build | check | dev]
#
# build, or no word at all, makes them in build/ui and, for the program, build/pages.cpp; it does nothing when they are up
# to date. Without npm the program is built without its pages and says so.
#
# Debian 12 brings Node 18, which is too old for the tools. So a newer Node is one of the pinned packages of
# ui/package.json and everything here runs with that one; only npm itself runs with the machine's own.
set -euo pipefail
cd "$(dirname "$0")/.."
job=${1:-build}

if ! command -v npm >/dev/null; then
  echo "The pages are left out: there is no npm here. make setup installs it."
  [[ $job == build ]] && exit 0
  exit 3
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
quietly() {
  if ! "$@" >"$log" 2>&1; then
    cat "$log" >&2
    exit 1
  fi
}

packages() {
  local lock
  lock=$(sha256sum ui/package-lock.json)
  if [[ ! -x ui/node_modules/.bin/node || ! -f build/packages.sum || $(<build/packages.sum) != "$lock" ]]; then
    echo "Fetching what builds the pages."
    quietly npm --prefix ui ci --no-audit --no-fund
    echo "$lock" >build/packages.sum
  fi
  # Tools that ask for `node` find the newer one first.
  PATH=$PWD/ui/node_modules/.bin:$PATH
  # What the pages know of the program is made from the contract, so that it cannot fall behind it.
  if [[ ! ui/src/api/contract.ts -nt api/openapi.yaml ]]; then
    (cd ui && quietly openapi-typescript ../api/openapi.yaml --output src/api/contract.ts)
  fi
}

mkdir -p build
case $job in
  build)
    now=$(find ui api schemas -path ui/node_modules -prune -o -path ui/src/api/contract.ts -prune -o -type f -print0 | sort -z | xargs -0 sha256sum | sha256sum)
    [[ -f build/pages.cpp && -f build/pages.sum && $(<build/pages.sum) == "$now" ]] && exit 0
    packages
    (cd ui && quietly vite build --logLevel warn)
    quietly node ui/tools/embed.mjs build/ui build/pages.cpp
    echo "$now" >build/pages.sum
    ;;
  check)
    packages
    cd ui
    svelte-check --tsconfig ./tsconfig.json --fail-on-warnings --output human
    eslint .
    prettier --check --log-level warn .
    vitest run
    ;;
  dev)
    packages
    cd ui
    exec vite
    ;;
  *)
    echo "ui: no such job as '$job'; there are build, check and dev." >&2
    exit 2
    ;;
esac
