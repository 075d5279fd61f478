#!/bin/sh
# Everything built by the second compiler, without a warning and with the sanitizers; then every test but the
# campaigns, halting at the first finding.
set -eu
cmake --preset fuzz >/dev/null
cmake --build --preset fuzz -- --quiet
ctest --preset fuzz -j 2 -LE campaign
