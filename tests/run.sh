#!/usr/bin/env bash
# Installs what is missing, builds everything with warnings as errors and runs every test.
# Usage: run.sh [CTEST_OPTION...]   e.g. run.sh -R Envelope
# The tests of the window run off screen: no display is needed.
set -euo pipefail
source "$(dirname "${BASH_SOURCE[0]}")/../app/setup.sh"

case ${1:-} in
  -h | --help) sed -n '2,4s/^# //p' "${BASH_SOURCE[0]}"; exit 0 ;;
esac

jw_install "${jw_program_packages[@]}" "${jw_test_packages[@]}"
build=$(jw_build_folder tests)
jw_build "$build" all -DCMAKE_BUILD_TYPE=RelWithDebInfo -DJW_WARNINGS_AS_ERRORS=ON -DBUILD_TESTING=ON

# A decimal comma for the tests of numbers: a locale made for this build, the system's stay as they are.
commas=$build/locale
mkdir -p "$commas"
[[ -d $commas/de_DE.UTF-8 ]] || jw_run_quietly localedef -i de_DE -f UTF-8 "$commas/de_DE.UTF-8"
export LOCPATH=$commas

built() { [[ -x $build/bin/$1 ]] && printf 'built' || printf 'NOT BUILT, it has no sources'; }
echo "jw_core_tests (physics, files, published numbers; no Qt): $(built jw_core_tests)"
echo "jw_gui_tests (window and command line, off screen): $(built jw_gui_tests)"
echo "Running every test with ctest${*:+, options: $*}"
export QT_QPA_PLATFORM=offscreen
ctest --test-dir "$build" --output-on-failure --no-tests=error -j2 "$@"
