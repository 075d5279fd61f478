#!/bin/sh
# Builds the program, plans the top of the hall bookcase with a pair of sixes, with sheets of pictures to open, and
# then the whole bookcase. Works from any folder; installs Debian packages that are missing.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/.ci/build.sh" arrisline
cd "$top"
show() {
  printf '\n$ arrisline %s\n\n' "$*"
  "$top/build/release/arrisline" "$@"
}
show plan examples/bookcase-top.profile --kit examples/pair-of-sixes.kit --steps \
  --sheet build/bookcase-top.pdf --sheet build/bookcase-top.html
show job examples/hall-bookcase.job --sheet build/hall-bookcase.pdf
printf '\nSheets with pictures: build/bookcase-top.pdf, build/bookcase-top.html, build/hall-bookcase.pdf\n'
