#!/bin/sh
# Installs the Debian packages that are missing, then configures and builds the preset
# `release`. Arguments: the targets to build, or none for all.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/.ci/packages.sh"

# shellcheck disable=SC2086 # one word a package
need_packages $build_packages

cd "$top"
log=build/release/build.log
mkdir -p build/release
# The steps are only of interest when one fails.
quietly() {
  if ! "$@" >"$log" 2>&1; then
    cat "$log" >&2
    echo "build.sh: this failed: $*" >&2
    exit 1
  fi
}
echo "building arrisline ..." >&2
quietly cmake --preset release
if [ $# -eq 0 ]; then
  quietly cmake --build --preset release
else
  quietly cmake --build --preset release --target "$@"
fi
