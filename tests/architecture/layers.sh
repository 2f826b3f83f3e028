#!/usr/bin/env bash
# Fails when a file includes something from a layer above its own.
# Usage: layers.sh SOURCE_FOLDER
set -euo pipefail
cd "$1"
broken=0

# forbid FOLDER PATTERN RULE: no source below FOLDER may include a path that matches PATTERN.
forbid() {
  local folder=$1 pattern=$2 rule=$3 hits
  [[ -d $folder ]] || return 0
  if hits=$(grep -rnE --include='*.h' --include='*.cpp' \
            "^[[:space:]]*#[[:space:]]*include[[:space:]]*[<\"]($pattern)" "$folder"); then
    printf '%s\n%s\n' "$rule:" "$hits"
    broken=1
  fi
}

forbid core '(\.\./)*(widgets|app|tests)/' 'core must not include widgets, app or tests'
forbid widgets '(\.\./)*(app|tests)/' 'widgets must not include app or tests'
forbid app '(\.\./)*tests/' 'app must not include tests'
forbid core '\.\./' 'include paths start at the root of the source tree'
forbid widgets '\.\./' 'include paths start at the root of the source tree'
forbid app '\.\./' 'include paths start at the root of the source tree'
forbid core 'Q[A-Za-z]+>|Q[A-Za-z]+\"|Qt[A-Za-z]*/|qcustomplot' 'core must not include Qt'

forbid core/quantity 'core/(model|motion|physics|checks|studies|files|robot)/' 'quantity is the lowest part of core'
forbid core/model 'core/(motion|physics|checks|studies|files|robot)/' 'model may include quantity only'
forbid core/files 'core/(motion|physics|checks|studies|robot)/' 'files may include model and quantity only'
forbid core/motion 'core/(physics|checks|studies|files|robot)/' 'motion may include model and quantity only'
forbid core/physics 'core/(checks|studies|files|robot)/' 'physics may include motion, model and quantity only'
forbid core/checks 'core/(studies|files|robot)/' 'checks must not include studies or files'
forbid core/studies 'core/(files|robot)/' 'studies must not include files or robot'
forbid core/robot 'core/(checks|studies|files)/' 'robot may include physics, motion, model and quantity only'
exit $broken
