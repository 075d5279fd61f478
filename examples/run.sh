#!/bin/sh
# Builds the program and plans an example: the top of the hall bookcase with a pair
# of sixes. Works from any folder; installs Debian packages that are missing.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/.ci/build.sh" arrisline
cd "$top"
echo
echo '$ arrisline plan examples/bookcase-top.profile --kit examples/pair-of-sixes.kit'
echo
exec "$top/build/release/arrisline" plan examples/bookcase-top.profile --kit examples/pair-of-sixes.kit
