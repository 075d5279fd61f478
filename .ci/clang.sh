#!/bin/sh
# The second compiler, without a warning.
set -eu
cmake --preset release -B build/clang -DCMAKE_CXX_COMPILER=clang++ >/dev/null
cmake --build build/clang | tail -n 1
