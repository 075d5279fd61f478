#!/bin/sh
# Rewrites the goldens in tests/cli from what the program prints now. Read the
# difference (git diff tests/cli) before keeping it. Arguments: the goldens to rewrite,
# or none for all.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
sh "$top/.ci/build.sh" arrisline
[ $# -gt 0 ] || set -- "$top"/tests/cli/*.golden
for golden in "$@"; do
  sh "$top/tests/cli/run_golden.sh" "$golden" >"$golden.new"
  mv "$golden.new" "$golden"
done
