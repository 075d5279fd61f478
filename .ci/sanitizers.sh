#!/bin/sh
# Every test again under the sanitizers, halting at the first finding.
set -eu
cmake --preset asan >/dev/null
cmake --build --preset asan -- --quiet
ctest --preset asan -j 2
