#!/bin/sh
# run_golden.sh GOLDEN: runs the golden's command and prints the golden as it ought to be.
#
# A golden is one file:
#   === file NAME     any number: a file the command finds in its folder
#   === command       shell; `arrisline` is the program, examples/ is at hand
#   === exit          the exit code
#   === stdout        what it printed, and on which stream
#   === stderr
# The program is build/release/arrisline, or $ARRISLINE_PROGRAM.
set -eu
golden=$1
top=$(CDPATH='' cd -- "$(dirname -- "$0")/../.." && pwd)
program=${ARRISLINE_PROGRAM:-$top/build/release/arrisline}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/bin" "$work/in"
ln -s "$program" "$work/bin/arrisline"
ln -s "$top/examples" "$work/in/examples"

awk -v folder="$work/in/" -v command="$work/command" '
  /^=== file /   { to = folder substr($0, 10); printf "" > to; next }
  /^=== command/ { to = command; next }
  /^=== /        { exit }
  to != ""       { print > to }' "$golden"

unset NO_COLOR
code=0
(cd "$work/in" && TMPDIR=$work PATH="$work/bin:$PATH" exec sh ../command) \
  >"$work/stdout" 2>"$work/stderr" </dev/null || code=$?

# A last line without its end is marked, so that it is not mistaken for one that has it.
show() {
  cat "$1"
  if [ -s "$1" ] && [ "$(tail -c 1 "$1" | od -An -c | tr -d ' ')" != '\n' ]; then
    printf '\n=== (no end of line)\n'
  fi
}
sed '/^=== exit/,$d' "$golden"
echo "=== exit"
echo "$code"
echo "=== stdout"
show "$work/stdout"
echo "=== stderr"
show "$work/stderr"
