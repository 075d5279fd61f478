#!/bin/sh
# check_golden.sh GOLDEN: runs the golden's command and shows the difference, if any.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
sh "$here/run_golden.sh" "$1" | diff -u "$1" -
