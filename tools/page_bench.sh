#!/usr/bin/env bash
# Measures the pages: from the arrival of a plan to its picture (bench/pages). tools/page_bench.sh
#
# BENCHBELL, CHROMIUM and PAGES as for tools/browser.sh; REPEATS is how often each is opened (20).
set -euo pipefail
cd "$(dirname "$0")/.."
node=ui/node_modules/.bin/node
program=${BENCHBELL:-build/release/bin/benchbell}

if [[ ! -x $node || ! -d ui/node_modules/playwright-core ]]; then
  echo "page_bench: the pages' packages are not here; make ui fetches them." >&2
  exit 3
fi
if [[ ! -x $program ]]; then
  echo "page_bench: there is no program at $program; make builds it." >&2
  exit 3
fi
export BENCHBELL=$program
exec "$node" bench/pages/lesson_page.mjs
