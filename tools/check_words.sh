#!/usr/bin/env bash
# Fails when a file of the project speaks of what must not stand in it: folders of one developer's machine, hosts of
# package registries, or how the work on it is organised. The letters in brackets keep this file from finding itself.
set -euo pipefail
pattern='(^|[^a-z.])/(w[o]rk|f[a]rm|h[o]me/[a-z]+|Us[e]rs)/[a-z.]+'
pattern+='|https?://(registry|deb|security|ftp)\.[a-z]+'
pattern+='|\b(seed d[o]cument|transcr[i]pt|this sess[i]on|sub-?ag[e]nt|helper ag[e]nt|language m[o]del)\b'
if git grep --line-number --ignore-case --extended-regexp -I --untracked "$pattern" -- .; then
  echo "Words: mend the lines above."
  exit 1
fi
echo "Words: no fault."
