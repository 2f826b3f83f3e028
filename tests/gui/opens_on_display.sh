#!/usr/bin/env bash
# Fails unless the program opens a project in a window on a real X display. The other tests run off
# screen and so never load the platform plugin that users see.
# Usage: opens_on_display.sh PROGRAM FILE
set -euo pipefail
{ command -v Xvfb && command -v xwininfo; } >/dev/null || { echo 'needs Xvfb and xwininfo'; exit 77; }
work=$(mktemp -d)
started=()
trap 'kill "${started[@]}" 2>/dev/null; wait; rm -rf "$work"' EXIT

# A home of its own: no recent file or window layout of the user takes part.
export HOME=$work XDG_CONFIG_HOME=$work XDG_CACHE_HOME=$work XDG_DATA_HOME=$work XDG_RUNTIME_DIR=$work
unset QT_QPA_PLATFORM WAYLAND_DISPLAY
Xvfb -displayfd 1 -screen 0 1280x800x24 -nolisten tcp >"$work/display" 2>"$work/xvfb.log" &
started+=($!)
for ((i = 0; i < 100; ++i)); do [[ -s $work/display ]] && break; sleep 0.1; done
DISPLAY=:$(<"$work/display")
export DISPLAY

cp "$2" "$work/seen-on-display.jointwright"  # the window is named after the file
"$1" "$work/seen-on-display.jointwright" >"$work/program.log" 2>&1 &
started+=($!)
for ((i = 0; i < 300; ++i)); do
  if xwininfo -root -tree | grep -F seen-on-display; then exit 0; fi
  kill -0 "${started[1]}" 2>/dev/null || break
  sleep 0.1
done
echo 'no window named after the file appeared; the program said:'
cat "$work/program.log"
xwininfo -root -tree
exit 1
