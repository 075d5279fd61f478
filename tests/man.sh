#!/bin/sh
# The manual pages through both formatters without a word of complaint, and every command, option and word in them.
# usage: man.sh FOLDER; the program is $ARRISLINE_PROGRAM
set -eu
folder=$1
for page in arrisline.1 arrisline-files.5; do
  gzip -dc "$folder/$page.gz" | cmp - "$folder/$page"
  mandoc -T lint "$folder/$page"
  said=$(LC_ALL=C.UTF-8 MANWIDTH=80 man --warnings -l "$folder/$page" 2>&1 >/dev/null)
  [ -z "$said" ] || { echo "man says of $page: $said"; exit 1; }
done

program=$(LC_ALL=C.UTF-8 mandoc -T utf8 -O width=300 "$folder/arrisline.1" | sed 's/.\x08//g')
options=0
for command in $("$ARRISLINE_PROGRAM" --help | sed -n 's/^  \([a-z][a-z]*\) .*/\1/p'); do
  for option in $("$ARRISLINE_PROGRAM" "$command" --help | grep -oE -- '--[a-z][a-z-]+' | sort -u); do
    echo "$program" | awk -v command="$command" '/^(   )?[^ ]/ { within = $1 == command } within' | grep -q -e "$option" ||
      { echo "arrisline(1) lacks $option of $command"; exit 1; }
    options=$((options + 1))
  done
done
[ "$options" -ge 50 ]

files=$(mandoc -T ascii -O width=300 "$folder/arrisline-files.5" | sed 's/.\x08//g')
words=0
for word in $("$ARRISLINE_PROGRAM" words --ascii | sed -nE 's/^ {2,4}([a-z-]+)  .*/\1/p' | sort -u); do
  echo "$files" | grep -qE -- "^ +$word( |\$)" || { echo "arrisline-files(5) lacks $word"; exit 1; }
  words=$((words + 1))
done
[ "$words" -ge 80 ]
echo "$options options, $words words"
