#!/usr/bin/env bash
# Proves that layers.sh lets a sound tree pass and catches each kind of wrong include.
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
tree=$(mktemp -d)
trap 'rm -rf "$tree"' EXIT
mkdir -p "$tree"/core/{quantity,model,motion,physics,checks,studies,files,robot} "$tree"/{widgets,app}

# expect pass|fail FILE INCLUDE: how the check judges a tree in which FILE includes INCLUDE.
expect() {
  local verdict=pass
  printf '#include %s\n' "$3" >"$tree/$2"
  bash "$here/layers.sh" "$tree" >/dev/null || verdict=fail
  rm "$tree/$2"
  [[ $verdict == "$1" ]] || { echo "$2 with $3: expected $1, got $verdict"; exit 1; }
}

expect pass core/model/a.h '"core/quantity/quantity.h"'
expect pass core/physics/a.h '"core/motion/cycle.h"'
expect pass widgets/a.cpp '<QWidget>'
expect pass app/a.cpp '"widgets/a.h"'
expect fail core/model/a.h '"core/physics/a.h"'
expect fail core/files/a.cpp '"core/checks/a.h"'
expect pass core/robot/a.cpp '"core/physics/a.h"'
expect fail core/robot/a.cpp '"core/files/a.h"'
expect fail core/checks/a.cpp '"core/studies/a.h"'
expect fail core/model/a.cpp '<QString>'
expect fail core/model/a.cpp '<QtCore/QString>'
expect fail core/model/a.cpp '"widgets/a.h"'
expect fail core/model/a.cpp '"../quantity/quantity.h"'
expect fail widgets/a.cpp '"app/window.h"'
