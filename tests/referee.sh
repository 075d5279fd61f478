#!/bin/sh
# Builds the exact referee and runs its tests: the planner's and the replay's geometry, and whole plans, against
# CGAL. Longer runs: see docs/trust.md.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/.ci/packages.sh"
# shellcheck disable=SC2086 # one word a package
need_packages $build_packages libcgal-dev

cd "$top"
cmake --preset release -DARRISLINE_REFEREE=ON >/dev/null
cmake --build --preset release --target arrisline_referee -- --quiet
ctest --preset release -j 2 -R '^referee:' --verbose
