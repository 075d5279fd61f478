#!/bin/sh
# The second compiler, without a warning. What it warns of does not depend on how it optimises.
set -eu
cmake --preset release -B build/clang -DCMAKE_CXX_COMPILER=clang++ -DCMAKE_CXX_FLAGS_RELEASE="-O0 -DNDEBUG" >/dev/null
cmake --build build/clang -- --quiet
