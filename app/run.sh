#!/usr/bin/env bash
# Installs what is missing, builds Jointwright and opens it.
# Usage: run.sh [FILE]   FILE is a .jointwright project; without it the first sample opens.
# Without a display the design review of FILE is written to a folder instead.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/setup.sh"

# Prints the absolute path of the project to open.
chosen_file() {
  if (($# > 0)); then
    realpath -- "$1"
    return
  fi
  local samples=("$jw_root"/samples/*.jointwright)
  [[ -f ${samples[0]} ]] || { jw_say "no sample in $jw_root/samples: name a FILE"; exit 1; }
  printf '%s\n' "${samples[0]}"
}

has_display() { [[ -n ${DISPLAY:-}${WAYLAND_DISPLAY:-} ]]; }

# review PROGRAM FILE: writes the review of FILE below the current folder, or else a temporary one.
review() {
  local name folder
  name=$(basename -- "$2" .jointwright)
  folder=${PWD%/}/jointwright-review-$name
  if ! mkdir -p -- "$folder" 2>/dev/null || [[ ! -w $folder ]]; then
    folder=$(mktemp -d -t jointwright-review-XXXXXX)
  fi
  jw_say "no display (DISPLAY and WAYLAND_DISPLAY are unset): writing the review of $2 instead"
  QT_QPA_PLATFORM=offscreen "$1" review "$2" -o "$folder"
  jw_say "the review is in $folder"
}

case ${1:-} in
  -h | --help) sed -n '2,4s/^# //p' "${BASH_SOURCE[0]}"; exit 0 ;;
esac
if (($# > 1)); then
  jw_say "one FILE at a time, not $#: $*"
  exit 2
fi
if (($# == 1)) && [[ ! -f $1 ]]; then
  jw_say "no such file: $1 (seen from $PWD)"
  exit 1
fi

file=$(chosen_file "$@")
jw_install "${jw_program_packages[@]}"
build=$(jw_build_folder build)
jw_build "$build" jointwright -DCMAKE_BUILD_TYPE=Release -DBUILD_TESTING=OFF
if has_display; then
  exec "$build/bin/jointwright" "$file"
fi
review "$build/bin/jointwright" "$file"
