#!/bin/sh
# Runs every test but the campaigns counting the lines and branches it reaches, and prints them by layer and file. Fails where the
# geometry, the planner or the replay has fewer than 95 of 100 lines reached.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/.ci/packages.sh"
# shellcheck disable=SC2086 # one word a package
need_packages $build_packages gcovr

cd "$top"
cmake --preset coverage >/dev/null
find build/coverage -name '*.gcda' -delete  # counts of an older build do not fit this one
cmake --build --preset coverage -- --quiet
find build/coverage -name '*.gcda' -delete
# Left out: the golden that limits the size of files, which the counters' own files exceed, and the largest inputs, which
# are held to the memory of the optimised program.
ctest --preset coverage -j 2 -LE campaign -E 'golden output_refused|the largest inputs' | tail -n 3

all=build/coverage/reached.json
# Two threads of one program may still lose a count where one is stopped between reading and writing it.
gcovr -r . --object-directory build/coverage -f src/ -f include/ --gcov-ignore-parse-errors \
  --exclude-throw-branches --exclude-unreachable-branches --json "$all" >/dev/null
gcovr -r . -a "$all"
# Unread, but not /dev/null: gcovr removes what it is told to write to.
table=build/coverage/layer.txt
short=0
for layer in text section geometry trace plan reach replay slips cutting job report sheet app; do
  least=0
  case $layer in geometry | plan | replay) least=95 ;; esac
  counts=$(gcovr -r . -a "$all" -f "src/$layer/" -s -o "$table" --fail-under-line "$least" 2>/dev/null) || short=1
  echo "$layer: $(echo "$counts" | grep -E '^(lines|branches)' | tr '\n' ' ')"
done
if [ "$short" -ne 0 ]; then
  echo "coverage.sh: a layer has fewer lines reached than it must" >&2
  exit 1
fi
