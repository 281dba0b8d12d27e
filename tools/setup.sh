#!/usr/bin/env bash
# Installs the Debian 12 packages that a job needs: tools/setup.sh demo | pages | test | check ...
# What is installed already is left alone; when nothing is missing it neither asks for rights nor uses the network.
set -euo pipefail

demo="make curl g++ cmake ninja-build ccache mold nlohmann-json3-dev libfmt-dev libcli11-dev libhowardhinnant-date-dev tzdata libicu-dev coinor-libcbc-dev libxlsxwriter-dev libsqlite3-dev libzip-dev libsodium-dev pkgconf libboost-dev libssl-dev zlib1g-dev libcairo2-dev libpango1.0-dev fonts-noto-core fonts-dejavu-core"
test="libgtest-dev libgmock-dev librapidcheck-dev libgecode-dev libglpk-dev clang-14 libfuzzer-14-dev libclang-rt-14-dev poppler-utils libfontconfig-dev"
pages="nodejs npm"
check="clang-format clang-tidy clang-14 python3"
coverage="libgtest-dev libgmock-dev librapidcheck-dev libgecode-dev libglpk-dev gcovr poppler-utils libfontconfig-dev"

wanted=()
for job in "$@"; do
  case $job in
    demo | test | check | coverage | pages) read -ra more <<<"${!job}" && wanted+=("${more[@]}") ;;
    *) echo "setup: no such job as '$job'; there are demo, pages, test, check and coverage." >&2 && exit 2 ;;
  esac
done

# A Node that came from elsewhere (18 or newer, with its npm) does as well as Debian's: it only fetches packages.
has_node() {
  command -v npm >/dev/null && command -v node >/dev/null &&
    [[ $(node -p 'parseInt(process.versions.node)' 2>/dev/null) -ge 18 ]]
}
if has_node; then
  kept=()
  for package in "${wanted[@]}"; do
    [[ $package == nodejs || $package == npm ]] || kept+=("$package")
  done
  wanted=(${kept[@]+"${kept[@]}"})
fi

if ! command -v dpkg-query >/dev/null; then
  echo "setup: this is not Debian, so nothing is installed. Needed are Debian's: ${wanted[*]}" >&2
  exit 0
fi

missing=()
for package in ${wanted[@]+"${wanted[@]}"}; do
  state=$(dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null || true)
  # A package that exists for several architectures prints one state after another.
  [[ $state == installed* ]] || missing+=("$package")
done
[[ ${#missing[@]} -eq 0 ]] && exit 0
mapfile -t missing < <(printf '%s\n' "${missing[@]}" | sort -u)

as_root=()
if [[ $(id -u) -ne 0 ]]; then
  if ! command -v sudo >/dev/null; then
    echo "setup: run this once as root: apt-get install --no-install-recommends ${missing[*]}" >&2
    exit 1
  fi
  if ! sudo -n true 2>/dev/null; then
    echo "setup: sudo wants a password here. Run 'sudo -v' first, then the same command again." >&2
    exit 1
  fi
  as_root=(sudo -n)
fi

apt() {
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive NEEDRESTART_SUSPEND=1 \
    apt-get -q -o DPkg::Lock::Timeout=400 -o Dpkg::Use-Pty=0 -o Dpkg::Options::=--force-confold "$@" </dev/null
}

echo "Installing: ${missing[*]}"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! { apt update && apt install -y --no-install-recommends "${missing[@]}"; } >"$log" 2>&1; then
  cat "$log" >&2
  echo "setup: the packages could not be installed; the last lines above say why." >&2
  exit 1
fi
