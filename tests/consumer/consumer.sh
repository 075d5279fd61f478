#!/bin/sh
# Installs into a folder of its own, builds the consumer against that, and runs it; then compiles each installed
# header alone.
# usage: consumer.sh SOURCE BUILD WORK COMPILER GENERATOR
set -eu
source=$1 build=$2 work=$3 compiler=$4 generator=$5
rm -rf "$work"
mkdir -p "$work"
cmake --install "$build" --prefix "$work/there" >"$work/install.log"
cmake -S "$source/tests/consumer" -B "$work/build" -G "$generator" -DCMAKE_CXX_COMPILER="$compiler" \
  -DCMAKE_PREFIX_PATH="$work/there" -DCMAKE_BUILD_TYPE=Release >"$work/configure.log"
cmake --build "$work/build" >"$work/build.log" || { cat "$work/build.log"; exit 1; }

docs=$work/there/share/doc/arrisline
"$work/build/consumer" "$docs/examples/bookcase-top.profile" "$docs/examples/pair-of-sixes.kit" >"$work/out"
# What the installed program says of the same.
cuts=$("$work/there/bin/arrisline" plan "$docs/examples/bookcase-top.profile" --kit "$docs/examples/pair-of-sixes.kit" \
  --json | python3 -c 'import json, sys; print(len(json.load(sys.stdin)["cuts"]))')
first=$(head -n 1 "$work/out")
[ "$first" = "$cuts cuts, 0 findings" ] || { echo "expected $cuts cuts, 0 findings; got $first"; exit 1; }
tail -n +2 "$work/out" | xmllint --noout -

# The program that docs/library.md shows prints what the installed one does.
mkdir "$work/shop"
python3 "$source/tests/docs.py" --write "$work/shop" "$source/docs/library.md"
cmake -S "$work/shop" -B "$work/shop/build" -G "$generator" -DCMAKE_CXX_COMPILER="$compiler" \
  -DCMAKE_PREFIX_PATH="$work/there" -DCMAKE_BUILD_TYPE=Release >"$work/configure.log"
cmake --build "$work/shop/build" >"$work/build.log" || { cat "$work/build.log"; exit 1; }
"$work/shop/build/shop" "$docs/examples/bookcase-top.profile" "$docs/examples/pair-of-sixes.kit" >"$work/shop.txt"
"$work/there/bin/arrisline" plan "$docs/examples/bookcase-top.profile" --kit "$docs/examples/pair-of-sixes.kit" \
  >"$work/plan.txt"
diff "$work/shop.txt" "$work/plan.txt"

headers=0
for header in "$work"/there/include/arrisline/*.h; do
  echo "#include <arrisline/$(basename "$header")>" | "$compiler" -std=c++20 -fsyntax-only -Wall -Wextra -Wpedantic \
    -Wconversion -Wshadow -Werror -I "$work/there/include" -x c++ - || { echo "$header does not stand alone"; exit 1; }
  headers=$((headers + 1))
done
[ "$headers" -eq "$(find "$source/include/arrisline" -name '*.h' | wc -l)" ]

# A version that is not compatible is refused.
mkdir "$work/later"
sed 's/arrisline 0.1/arrisline 0.2/' "$source/tests/consumer/CMakeLists.txt" >"$work/later/CMakeLists.txt"
if cmake -S "$work/later" -B "$work/later/build" -G "$generator" -DCMAKE_CXX_COMPILER="$compiler" \
  -DCMAKE_PREFIX_PATH="$work/there" >"$work/later.log" 2>&1; then
  echo "version 0.2 was asked for and found"
  exit 1
fi
grep -q 'version: 0.1.0' "$work/later.log"
echo "$first, $headers headers"
