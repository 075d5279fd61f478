#!/bin/sh
# Every test again under the sanitizers, halting at the first finding.
set -eu
cmake --preset asan >/dev/null
cmake --build --preset asan | tail -n 1
ctest --preset asan -j 2
