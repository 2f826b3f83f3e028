#!/usr/bin/env bash
# Fails when the compiled core refers to Qt, or when the core's own tests load a Qt library.
# Usage: core_without_qt.sh SOURCE_FOLDER LIBRARY TEST_PROGRAM
set -euo pipefail
library=$2 program=$3

# Qt's exported names: classes QName (also inside signatures), the namespace Qt, qt_ and q-functions
# such as qInstallMessageHandler. Own names sit in namespace jw, so they never match.
symbols=$(nm -C --undefined-only "$library" 2>/dev/null | sed -n 's/^ *[Uvw] //p')
[[ -n $symbols ]] || { echo "found no symbols in $library: the check itself is broken"; exit 1; }
if hits=$(grep -E '(^|[^A-Za-z0-9_:])(Q[A-Z][A-Za-z]*(::|\(|&|\*|[ ,)>])|Qt::|QtPrivate::|qt_|q[A-Z][A-Za-z]+\()' \
          <<<"$symbols"); then
  printf 'the core refers to Qt:\n%s\n' "$hits"
  exit 1
fi
loaded=$(ldd "$program")
if hits=$(grep -iE 'libQt|qcustomplot' <<<"$loaded"); then
  printf '%s loads Qt:\n%s\n' "$program" "$hits"
  exit 1
fi
grep -q 'libstdc++' <<<"$loaded" || { echo "ldd listed nothing: the check itself is broken"; exit 1; }
echo "$(wc -l <<<"$symbols") outside symbols, none of Qt"
