#!/usr/bin/env bash
# The CMake setting that says whether tools/ui.sh has built the pages.
set -euo pipefail
cd "$(dirname "$0")/.."
[[ -f build/pages.cpp ]] && echo "-DBENCHBELL_PAGES=ON" || echo "-DBENCHBELL_PAGES=OFF"
