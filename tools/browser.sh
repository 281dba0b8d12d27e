#!/usr/bin/env bash
# The tests in a browser: tools/browser.sh [file ...]; without a name, all of tests/browser.
#
# BENCHBELL is the program to test (build/release/bin/benchbell), CHROMIUM the browser (/usr/bin/chromium), PAGES a folder
# of built pages to show instead of those the program carries. Pictures of every page are left in build/browser/shots.
set -euo pipefail
cd "$(dirname "$0")/.."
node=ui/node_modules/.bin/node
program=${BENCHBELL:-build/release/bin/benchbell}

if [[ ! -x $node || ! -d ui/node_modules/playwright-core ]]; then
  echo "browser: the pages' packages are not here; make ui fetches them." >&2
  exit 3
fi
if [[ ! -x $program ]]; then
  echo "browser: there is no program at $program; make builds it." >&2
  exit 3
fi
if [[ $# -eq 0 ]]; then
  set -- tests/browser/*.test.mjs
fi
export BENCHBELL=$program
# Two at a time: more would make each wait for the others on a small machine.
if "$node" --test --test-concurrency=2 "$@"; then
  exit 0
fi
# A browser on a busy machine may keep a test waiting too long. What is broken fails again.
echo "browser: something failed. Once more, one file after the other; look at what failed above all the same." >&2
exec "$node" --test --test-concurrency=1 "$@"
