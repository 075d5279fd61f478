#!/bin/sh
# readme.sh check|rewrite: the cut list shown in README.md is what the program prints.
# It is the first block fenced with ```text, printed by the command named above it.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
program=${ARRISLINE_PROGRAM:-$top/build/release/arrisline}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$top"
"$program" plan examples/bookcase-top.profile --kit examples/pair-of-sixes.kit >"$work/list" </dev/null
awk -v list="$work/list" '
  !done && /^```text$/ { print; while ((getline line < list) > 0) print line; done = skip = 1; next }
  skip && /^```$/      { skip = 0 }
  !skip                { print }' README.md >"$work/README.md"
case $1 in
  check) diff -u README.md "$work/README.md" ;;
  rewrite) cat "$work/README.md" >README.md ;;
esac
