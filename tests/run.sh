#!/bin/sh
# Builds everything and runs every test; installs Debian packages that are missing.
# Works from any folder. Arguments go to ctest.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/.ci/packages.sh"
# shellcheck disable=SC2086 # one word a package
need_packages $test_packages
sh "$top/.ci/build.sh"
cd "$top"
exec ctest --preset release -j 2 "$@"
