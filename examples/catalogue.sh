#!/bin/sh
# catalogue.sh [COUNT]: a catalogue of COUNT mouldings (5000 if nothing is said), made from the trade's shapes in
# sixteenths of an inch, and planned a hundred at a time by GNU parallel, as many at once as there are cores. Each
# record carries its kit, so that the same line serves other machines (docs/many-machines.md). Prints what came
# of it; the answers stay in build/catalogue. Works from any folder; installs Debian packages that are missing.
set -eu
top=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
count=${1:-5000}
case $count in
  '' | *[!0-9]* | 0*)
    echo "usage: examples/catalogue.sh [COUNT]" >&2
    exit 2
    ;;
esac
. "$top/.ci/packages.sh"
need_packages parallel
sh "$top/.ci/build.sh" arrisline

work=$top/build/catalogue
mkdir -p "$work"
awk -v count="$count" '
  function length_of(n) { return n % 16 == 0 ? n / 16 : n > 16 ? int(n / 16) " " n % 16 "/16" : n "/16" }
  function start(n) { return "start face " length_of(n) "\\n" }
  function step(n) { return "step down " length_of(n) "\\n" }
  function fillet(n) { return "fillet out " length_of(n) "\\n" }
  # The end of each line of the kit becomes \n within the text.
  { kit = kit $0 "\\n" }
  END {
    gsub(/"/, "\\\"", kit)
    split("chamfer,round-over,ovolo,cavetto,ogee,reverse ogee,thumbnail,rebate,flute,quirk", names, ",")
    for (i = 0; i < count; ++i) {
      kind = i % 10
      # Digits of i, each in its own range: sizes, the fillets above and below.
      n = int(i / 10)
      size = 2 + n % 9; n = int(n / 9)
      above = 1 + n % 3; n = int(n / 3)
      below = 1 + n % 3; n = int(n / 3)
      wide = 2 + n % 4
      radius = length_of(size)
      if (kind == 0) chain = start(size) "chamfer " radius "\\n"
      if (kind == 1) chain = start(size) "ovolo " radius "\\n"
      if (kind == 2) chain = start(size + below) step(above) "ovolo " radius "\\n" fillet(below)
      if (kind == 3) chain = start(size + below) step(above) "cavetto " radius "\\n" fillet(below)
      if (kind == 4) chain = start(size + below) step(above) "ogee out " radius " down " radius "\\n" fillet(below)
      if (kind == 5) chain = start(size + below) step(above) "reverse-ogee out " radius " down " radius "\\n" fillet(below)
      if (kind == 6) chain = start(size + above) "thumbnail out " length_of(size + above) " down " radius "\\n"
      if (kind == 7) chain = start(size + below) step(size) fillet(size + below)
      if (kind == 8) chain = start(8 + 2 * size) "cove out " length_of(2 * size) " radius " length_of(size + above - 1) "\\n"
      if (kind == 9) chain = start(8 + size) "quirk out " radius " down " length_of(above + below) "\\n"
      printf "{\"id\": %d, \"profile\": \"profile %s %d\\nstock %d wide 1 1/4 thick\\n%s\", \"kit\": \"%s\"}\n",
        i + 1, names[kind + 1], i + 1, wide, chain, kit
    }
  }' "$top/examples/half-set.kit" >"$work/records.jsonl"

# -k keeps the answers in the order of the records. Over ssh the same line has -S HOST,HOST in it. Each job is one
# thread, since parallel itself fills the cores. It ends with the number of jobs that had an error among their answers.
failed=0
parallel --will-cite --pipe -N 100 -k "$top/build/release/arrisline" stream --threads 1 --limit 1 \
  <"$work/records.jsonl" >"$work/answers.jsonl" || failed=$?

awk -v count="$count" '
  /^\{ "id": [^,]*, "error"/ { ++errors; next }
  /"feasible": true/ { ++yes; next }
  /"feasible": false/ { ++no; next }
  /"undecided": true/ { ++open; next }
  { ++strange }
  END {
    printf "%d mouldings: the half set cuts %d and does not cut %d; %d not decided, %d errors\n",
      NR, yes, no, open, errors
    exit !(NR == count && strange == 0)
  }' "$work/answers.jsonl"
echo "the answers are in build/catalogue/answers.jsonl" >&2
exit $((failed > 0))
