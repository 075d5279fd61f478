#!/bin/sh
# locale.sh FOLDER: in a German locale, made in FOLDER, the program prints to the byte what it prints in the C
# locale, and the library does within a program that has set that locale. Exit 77: no locale can be made here.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
export LOCPATH=$1
mkdir -p "$LOCPATH"
if ! localedef -i de_DE -f UTF-8 "$LOCPATH/de_DE.UTF-8"; then
  echo "no German locale can be made; Debian has it in the package locales"
  exit 77
fi
# Were the locale not there after all, nothing would be shown by this test.
[ "$(LC_ALL=de_DE.UTF-8 env printf '%.1f' 1,5)" = "1,5" ]

cd "$top/examples"
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
both() {
  LC_ALL=C "$ARRISLINE_PROGRAM" "$@" >"$out/c" 2>&1
  LC_ALL=de_DE.UTF-8 "$ARRISLINE_PROGRAM" "$@" >"$out/de" 2>&1
  cmp "$out/c" "$out/de"
  [ -s "$out/c" ]
}
for kit in half-set metric-bench; do
  both plan bookcase-shelf.profile --kit $kit.kit --tolerance 0.25mm --limit 9.5
  both plan bookcase-shelf.profile --kit $kit.kit --unit mm --gauge-error .1mm
  both check bookcase-shelf.profile picture-rail.profile --kit $kit.kit
  both plan bookcase-shelf.profile --kit $kit.kit --json
  cp "$out/de" "$out/plan.json"
  both replay "$out/plan.json" --scrape 0.45
done
LC_ALL=de_DE.UTF-8 "$ARRISLINE_TESTS" "[locale]"
