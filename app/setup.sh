# Sourced by app/run.sh and tests/run.sh: which Debian packages the project needs, how they get
# installed, and how it is built outside the source tree.

# What building and running the program takes.
jw_program_packages=(
  build-essential cmake ninja-build
  qt6-base-dev qt6-svg-dev qt6-wayland qt6-qpa-plugins libqcustomplot-dev fonts-inter
  libboost-dev libcli11-dev libeigen3-dev libexpected-dev libfast-float-dev libfmt-dev
  liborocos-kdl-dev libtinyxml-dev libudunits2-dev liburdfdom-dev nlohmann-json3-dev
)
# What the tests and benches take besides.
jw_test_packages=(
  ccache clang-format libbenchmark-dev libgmock-dev libgtest-dev libmuparser-dev
  locales poppler-utils x11-utils xauth xvfb
)

jw_root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

# Qt reads file names by the locale; a bare system has none that knows UTF-8 switched on.
[[ $(locale charmap 2>/dev/null) == UTF-8 ]] || export LC_ALL=C.UTF-8

jw_say() { printf 'jointwright: %s\n' "$*" >&2; }

# jw_run_quietly COMMAND...: shows what COMMAND printed only when it fails.
jw_run_quietly() {
  local log status=0
  log=$(mktemp)
  "$@" >"$log" 2>&1 </dev/null || status=$?
  ((status == 0)) || cat "$log" >&2
  rm -f "$log"
  return "$status"
}

# jw_missing PACKAGE...: prints those that are not installed.
jw_missing() {
  local installed package
  # dpkg-query fails when it does not know one of the names; what it does know it lists all the same.
  installed=" $({ dpkg-query -W -f='${db:Status-Status}:${Package}\n' "$@" 2>/dev/null || true; } |
    sed -n 's/^installed://p' | tr '\n' ' ')"
  for package; do
    [[ $installed == *" $package "* ]] || printf '%s\n' "$package"
  done
}

# jw_apt_install AS_ROOT PACKAGE...: AS_ROOT is "" or "sudo". Fetches package lists only when needed.
jw_apt_install() {
  local as_root=$1
  shift
  local apt=($as_root env DEBIAN_FRONTEND=noninteractive apt-get -y -o Dpkg::Use-Pty=0)
  if apt-cache show "$@" >/dev/null 2>&1 &&
    jw_run_quietly "${apt[@]}" install --no-install-recommends "$@"; then
    return 0
  fi
  jw_say 'fetching the package lists'
  jw_run_quietly "${apt[@]}" update &&
    jw_run_quietly "${apt[@]}" install --no-install-recommends "$@"
}

# jw_install PACKAGE...: installs what is missing, or says how to and ends the script with status 2.
jw_install() {
  if ! command -v dpkg-query >/dev/null; then
    jw_say "this is no Debian system; packages cannot be checked. Needed, by Debian's names: $*"
    return 0
  fi
  local missing as_root=
  mapfile -t missing < <(jw_missing "$@")
  ((${#missing[@]})) || return 0
  jw_say "installing ${#missing[@]} Debian packages: ${missing[*]}"
  if ((EUID != 0)); then
    as_root=sudo
    if ! command -v sudo >/dev/null || ! sudo -v; then
      jw_say "that takes root. As root, run: apt-get update && apt-get install ${missing[*]}"
      exit 2
    fi
  fi
  if ! jw_apt_install "$as_root" "${missing[@]}"; then
    jw_say "could not install them. Try: apt-get update && apt-get install ${missing[*]}"
    exit 2
  fi
}

# jw_build_folder KIND: prints a folder in the user's cache that is this checkout's own.
jw_build_folder() {
  local cache=${XDG_CACHE_HOME:-${HOME:-/nonexistent}/.cache} hash
  mkdir -p "$cache/jointwright" 2>/dev/null || cache=${TMPDIR:-/tmp}/cache-$EUID
  hash=$(printf '%s' "$jw_root" | sha256sum | cut -c1-12)
  printf '%s\n' "$cache/jointwright/$1-$hash"
}

# As many compilers at once as there are cores and gigabytes of free memory for.
jw_jobs() {
  local cores gigabytes
  cores=$(nproc)
  gigabytes=$(awk '/^MemAvailable/ { print int($2 / 1048576) }' /proc/meminfo 2>/dev/null)
  gigabytes=${gigabytes:-$cores}
  ((gigabytes >= 1)) || gigabytes=1
  printf '%s\n' "$((cores < gigabytes ? cores : gigabytes))"
}

# jw_build FOLDER TARGET CMAKE_OPTION...: configures once, then builds what changed.
jw_build() {
  local folder=$1 target=$2
  shift 2
  mkdir -p "$folder"
  exec {jw_lock}>"$folder/lock"
  flock "$jw_lock"  # one build at a time in this folder
  if [[ ! -f $folder/build.ninja ]]; then
    jw_say "building in $folder; the first time takes some minutes"
    jw_run_quietly cmake -S "$jw_root" -B "$folder" -G Ninja "$@"
  fi
  if [[ -t 2 ]]; then
    cmake --build "$folder" --target "$target" -- -j "$(jw_jobs)" >&2
  else
    jw_run_quietly cmake --build "$folder" --target "$target" -- --quiet -j "$(jw_jobs)"
  fi
  exec {jw_lock}>&-
}
