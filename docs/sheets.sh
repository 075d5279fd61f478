#!/bin/sh
# sheets.sh [check]: makes the sheets of docs/sheets from the examples, or says whether they are what is made today.
# The program is build/release/arrisline, or $ARRISLINE_PROGRAM.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
program=${ARRISLINE_PROGRAM:-$top/build/release/arrisline}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# The same everywhere: neither the shop's locale nor the day shows.
cd "$top"
unset SOURCE_DATE_EPOCH
LC_ALL=C.UTF-8
export LC_ALL
"$program" plan examples/bookcase-base.profile --kit examples/half-set.kit --steps --paper a4 \
  --sheet "$work/bookcase-base.svg" --sheet "$work/bookcase-base.pdf" --sheet "$work/bookcase-base.html" \
  >"$work/bookcase-base.txt"

if [ "${1:-}" = check ]; then
  diff -rq "$work" docs/sheets || {
    echo "The sheets in docs are not what is drawn now; look at what docs/sheets.sh makes, then commit it." >&2
    exit 1
  }
else
  cp "$work"/* docs/sheets
fi
