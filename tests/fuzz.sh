#!/bin/sh
# fuzz.sh SECONDS [NAME...]: runs the fuzzers of tests/fuzz, those of the readers or those named, for so many
# seconds each, two at a time; `plan` runs only when named. Seeds are the examples, the examples in docs/, the
# plans of the examples and tests/fuzz/seeds. What a fuzzer learns is kept under build/fuzz/corpus, what it finds under
# build/fuzz/found; exit 1 where there is a finding.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$top/.ci/packages.sh"
# shellcheck disable=SC2086 # one word a package
need_packages $build_packages clang libclang-rt-14-dev

seconds=${1:-}
case $seconds in
  '' | *[!0-9]*)
    echo "usage: tests/fuzz.sh SECONDS [NAME...]" >&2
    exit 2
    ;;
esac
shift
cd "$top"
if [ $# -eq 0 ]; then
  set -- profile kit job plan_json stream points svg dxf
fi
for name in "$@"; do
  if [ ! -f "tests/fuzz/$name.cpp" ]; then
    echo "fuzz.sh: there is no fuzzer $name" >&2
    exit 2
  fi
done

cmake --preset fuzz >/dev/null
cmake --build --preset fuzz --target arrisline arrisline_fuzzers -- --quiet

work=build/fuzz
seeds=$work/seeds
found=$work/found
rm -rf "$seeds"
mkdir -p "$found"
for name in "$@"; do mkdir -p "$seeds/$name" "$work/corpus/$name"; done
mkdir -p "$seeds/profile" "$seeds/kit" "$seeds/job" "$seeds/plan_json"
cp examples/*.profile "$seeds/profile"
cp examples/*.kit "$seeds/kit"
cp examples/*.job "$seeds/job"
awk -v to="$seeds/job/docs-" '/^```/ { inside = !inside; ++n; next } inside { print > (to n) }' docs/jobs.md
# The blocks of the guide to the files go to both readers: each may learn words from the other's.
awk -v to="$seeds/profile/docs-" '/^```/ { inside = !inside; ++n; next } inside { print > (to n) }' docs/files.md
cp "$seeds"/profile/docs-* "$seeds/kit"
awk -v to="$seeds/plan_json/docs-" '/^```/ { inside = !inside; ++n; next } inside { print > (to n) }' docs/plan-json.md
for profile in examples/*.profile; do
  for kit in examples/*.kit; do
    # A "no" is a seed like any other; where no plan is found in time there is none.
    plan=$seeds/plan_json/$(basename "$profile" .profile)-$(basename "$kit" .kit)
    $work/arrisline plan "$profile" --kit "$kit" --json --limit 0.5 >"$plan" || [ $? -eq 1 ]
  done
done

# Records, one a file, of the golden that has some of each kind.
mkdir -p "$seeds/stream"
sed -n '/^=== file/,/^=== command/p' tests/cli/stream.golden tests/cli/stream_errors.golden |
  awk -v to="$seeds/stream/" '/^=== / || /^$/ { next } { print > (to (++n)) }'

# Traced sections, each made to show something else.
for name in points svg dxf; do
  mkdir -p "$seeds/$name"
  cp tests/fuzz/seeds/"$name"/* "$seeds/$name"
done

# Choices for the grammar, enough of them for a whole profile and kit.
mkdir -p "$seeds/plan"
for one in 1 2 3 4 5 6 7 8; do
  LC_ALL=C awk -v seed="$one" 'BEGIN { srand(seed); for (i = 0; i < 300; ++i) printf "%c", 1 + int(rand() * 255) }' \
    >"$seeds/plan/$one"
done

# With the sanitizers everything is some ten times slower and larger. So one input may take 20 s; the whole may
# take 2 GiB, most of which is what the sanitizers remember of all inputs so far; and one block of memory may have
# 200 MiB, all that the program is allowed without them.
run() {
  dictionary=
  [ ! -f "tests/fuzz/$1.dict" ] || dictionary=-dict=tests/fuzz/$1.dict
  nothing=
  [ -d "$seeds/$1" ] && nothing=$seeds/$1
  # The fuzzer sees to its own time; the limit is for one that does not come back.
  # shellcheck disable=SC2086 # each is one word, or none
  ASAN_OPTIONS=quarantine_size_mb=16:malloc_context_size=6:allocator_release_to_os_interval_ms=500 \
    timeout -k 10 "$((seconds + 90))" "$work/tests/fuzz_$1" \
    -max_total_time="$seconds" -timeout=20 -rss_limit_mb=2048 -malloc_limit_mb=200 -print_final_stats=1 \
    -artifact_prefix="$found/$1-" $dictionary "$work/corpus/$1" $nothing >"$work/$1.log" 2>&1
}

report() {
  runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$work/$1.log")
  peak=$(sed -n 's/^stat::peak_rss_mb: *//p' "$work/$1.log")
  reached=$(sed -n 's/^#.* cov: \([0-9]*\) ft: \([0-9]*\) corp: \([0-9]*\).*/\1 edges reached, \2 features, \3 inputs kept/p' \
    "$work/$1.log" | tail -n 1)
  echo "$1: ${runs:-no} executions, ${reached:-nothing reached}, ${peak:-?} MiB"
}

bad=0
while [ $# -gt 0 ]; do
  one=$1
  two=${2:-}
  shift
  [ -z "$two" ] || shift
  run "$one" &
  first=$!
  if [ -n "$two" ]; then
    run "$two" || { bad=1; failed_two=1; }
  fi
  wait "$first" || { bad=1; failed_one=1; }
  report "$one"
  [ -z "${failed_one:-}" ] || tail -n 40 "$work/$one.log"
  if [ -n "$two" ]; then
    report "$two"
    [ -z "${failed_two:-}" ] || tail -n 40 "$work/$two.log"
  fi
  failed_one=
  failed_two=
done
if [ "$bad" -ne 0 ]; then
  echo "fuzz.sh: a finding; the inputs are in $found" >&2
  exit 1
fi
