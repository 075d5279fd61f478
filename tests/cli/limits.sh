#!/bin/sh
# limits.sh FOLDER: the largest inputs that are read, of each kind, keep the program under 200 MiB; one byte or
# one element more is refused with exit code 2. Memory is what was resident at the most (peak.py).
# Exit 77: this program cannot run in so little (sanitizers).
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
work=$1
rm -rf "$work"
mkdir -p "$work"
cd "$work"
most=$((200 * 1024))  # KiB
bounded() { timeout 60 python3 "$here/peak.py" "$most" "$ARRISLINE_PROGRAM" "$@" >out 2>err; }
bounded --version || exit 77

failed=0
# expect CODE WORDS ARGUMENTS: the exit code, and words of what is printed.
expect() {
  code=$1
  words=$2
  shift 2
  got=0
  bounded "$@" || got=$?
  if [ "$got" -ne "$code" ] || ! cat out err | grep -q -e "$words"; then
    echo "arrisline $*: exit code $got, expected $code and '$words':"
    cat out err | head -n 3 | cut -c 1-200
    failed=1
  fi
}
# repeat TIMES FORMAT: awk's printf, with the number of the line.
repeat() { awk -v n="$1" -v format="$2" 'BEGIN { for (i = 1; i <= n; ++i) printf format, i }'; }
# fill FILE BYTES CHARACTERS: goes on with these characters up to so many bytes.
fill() { yes "$3" | tr -d '\n' | head -c $(($2 - $(wc -c <"$1"))) | tr '~' '\n' >>"$1"; }

text=$((4 << 20))
json=$((16 << 20))
printf 'hollow 6\nround 6\nrebate 3/4\nscraper\n' >small.kit
printf 'stock 2 wide, 3/4 thick\nstart face 3/8\novolo 3/8\n' >small.profile

# Elements, and then bytes: empty lines, comments, commas, mistakes.
{ printf 'units mm\nstock 2000 wide 2000 thick\nstart face 1000\n'; repeat 50000 'step down .01\nfillet out .02\n'; } >elements
cp elements lines
fill lines $text '~'
cp elements comments
fill comments $text '#~'
expect 1 'at most 60' check elements lines comments --kit small.kit
expect 1 'at most 60' plan elements --kit small.kit --sheet a.svg --sheet a.pdf --sheet a.html
printf 'profile ' >name
head -c 990 /dev/zero | tr "\0" x >>name
{ echo; cat small.profile; } >>name
expect 0 'hollow 6' plan name --kit small.kit --sheet a.svg --sheet a.pdf --sheet a.html
{ cat elements; echo 'step down .01'; } >more-elements
expect 2 'kMaxElements' check more-elements --kit small.kit
printf 'stock 2 wide, 3/4 thick\nstart face 3/8\n' | tee words >commas
for line in 1 2 3; do
  printf 'bead ' | tee -a words >>commas
  fill commas $((line * (1 << 20))) ','
  fill words $((line * (1 << 20))) 'a '
  echo | tee -a words >>commas
done
printf 'x\n' >mistakes
fill mistakes $text 'x~'
expect 2 'nothing follows this comma' check commas --kit small.kit
expect 2 'unknown word' plan words --kit small.kit
expect 2 'mistakes: reading stopped' plan mistakes --kit small.kit
echo >>lines
expect 2 'kMaxFileBytes' check lines --kit small.kit
cp small.profile line
fill line $(((1 << 20) + 100)) ' '
expect 2 'kMaxLineBytes' check line --kit small.kit
{ cat small.profile; printf 'profile '; repeat 1001 'a'; } >name
expect 2 'kMaxName' check name --kit small.kit

# Planes, by number and by the elements of their soles; bytes.
repeat 1000 'hollow 6\n' >planes
cp planes planes-and-lines
fill planes-and-lines $text '~'
awk 'BEGIN { for (i = 1; i <= 700; ++i) { print "shaped s" i; for (k = 0; k < 500; ++k) print "ovolo 3mm"; print "end" } }' >soles
for kit in planes planes-and-lines soles; do
  expect 1 'no ' check small.profile --kit $kit --limit 1
done
{ cat planes; echo 'hollow 6'; } >more-planes
expect 2 'kMaxPlanes' check small.profile --kit more-planes
printf 'rebate 1\nplough ' >irons
fill irons $((1 << 20)) '1 '
expect 2 'kMaxPlanes' check small.profile --kit irons

# A plan, and what it does not need, to the most of bytes, values and depth.
bounded plan small.profile --kit small.kit --json
sed '$d' out >plan
start() { cp plan "$1"; printf ',"x":%s' "$2" >>"$1"; }
finish() { printf '%s}' "$2" >>"$1"; }
start objects '['
repeat 499000 '{},' >>objects
finish objects '{}]'
start names '{'
repeat 499000 '"%d":0,' >>names
finish names '"x":0}'
start long '"'
fill long $((json - 2)) 'a'
finish long '"'
start blank '0'
fill blank $((json - 1)) '~'
finish blank ''
for one in objects names long blank; do expect 0 'the plan holds' replay $one; done
fill blank $((json + 1)) ' '
expect 2 'kMaxPlanBytes' replay blank
start values '['
repeat 500000 '0,' >>values
finish values '0]'
expect 2 'kMaxJsonValues' replay values
repeat 1000000 '[' >deep
expect 2 'kMaxJsonDepth' replay deep
printf '"' >open
fill open $json 'a'
expect 2 'not JSON' replay open
printf '\n' >not
fill not $((json - 1)) '~'
printf 'x' >>not
expect 2 'not JSON' replay not

# The most poses that an outline may have: 200 edges, 500 cuts of one pose each.
awk 'BEGIN {
  print "{\"format\":\"arrisline-plan\",\"version\":1,\"units\":\"mm\",\"stock\":{\"width\":1000,\"thickness\":500},"
  print "\"target\":{\"start\":[100,0],\"edges\":[{\"to\":[1000,0]},{\"to\":[1000,500]},{\"to\":[0,500]},{\"to\":[0,97]}"
  for (i = 1; i < 98; ++i) printf ",{\"to\":[%d,%d],\"element\":1},{\"to\":[%d,%d],\"element\":1}\n", i, 98 - i, i, 97 - i
  print ",{\"to\":[100,0]}]},\"feasible\":true,\"left\":{\"max_height\":0,\"area\":0,\"scrape\":false},"
  print "\"waste\":{\"area\":0,\"by_flat\":0},\"cuts\":["
  for (i = 1; i <= 500; ++i)
    printf "%s{\"number\":%d,\"plane\":{\"kind\":\"rebate\",\"width\":19},\"for\":\"waste\",\"removed\":1,\"rides\":\"gauge line\",\"poses\":[{\"at\":[%g,%g],\"tilt\":45}]}\n", (i > 1 ? "," : ""), i, i / 6, 84 - i / 6
  print "]}" }' >most
expect 1 'cut 1' replay most

# Jobs: as many mouldings, blanks and pieces as may be, of one profile and of as many widths; profiles of their own
# take no more at once than one does.
job() {
  printf 'kit small.kit\nbuy ash 3/4 thick 12 wide 144 long\nsaw kerf 1/16\nboard stops at 1/2, 1, 2, 3, 4\n'
  awk 'BEGIN { for (i = 1; i < 100; ++i) printf "blank ash 3/4 thick %g wide %g long count 3\n", 6 + i / 16, 96 + i / 8 }'
  awk -v n="$1" -v width="$2" 'BEGIN {
    for (i = 1; i <= n; ++i) printf "mould m%d small.profile width %g length %g count 50\n", i, 1 + i * width, 10 + i / 8 }'
}
job 200 0 >lengths.job
job 200 .01 >widths.job
for one in lengths widths; do
  expect 0 'fewest possible\|may be done with' job $one.job --limit 2
  expect 0 '"bound"' job $one.job --limit 2 --json
done
job 201 0 >more.job
expect 2 'kMaxMoulds' job more.job
job 200 0 | sed 's/count 50/count 51/' >pieces.job
expect 2 'kMaxPieces' job pieces.job

# Traced sections: ten million points in no order; the largest drawings, sound and not.
awk 'BEGIN {
  srand(1)
  for (i = 0; i < 10000000; ++i) { t = 45 * rand(); printf "%.3f,%.3f\n", (t < 20 ? t : 20), (t < 20 ? 0 : t - 20) } }' >points
expect 0 'step     down' trace points --unit mm
rm points
{ printf "<svg width='999mm' viewBox='0 0 999 999'><path d='M0 0"; repeat 49000 'h.01'; printf 'v5'; repeat 49000 'h.01'; printf "'/></svg>"; } >wide.svg
fill wide.svg $json '~'
expect 0 'step     down' trace wide.svg
echo >>wide.svg
expect 2 'kMaxDrawingBytes' trace wide.svg
{ printf '<svg '; repeat 900000 'xmlns:a%d="u" '; printf '/>'; } >names.svg
expect 2 'kMaxXmlBytes' trace names.svg
{ printf '0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n'; repeat 1300000 '10\n%d\n20\n'; } | head -c $json >line.dxf
expect 2 'kMaxDrawnPoints' trace line.dxf
exit $failed
