#!/usr/bin/env python3
"""The grammars for editors in examples/editors: they have the words of `arrisline words`, every one and no other, and the
examples tokenised with them are classified to the last character, but for names that stand in no quotation marks.

vim tokenises for itself where it is installed; the TextMate grammar's expressions are applied here.
"""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

TOP = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.environ.get("ARRISLINE_PROGRAM", str(TOP / "build/release/arrisline"))
VIM = TOP / "examples/editors/vim"
TEXTMATE = TOP / "examples/editors/textmate/arrisline.tmLanguage.json"
EXAMPLES = sorted(path for path in (TOP / "examples").iterdir() if path.suffix in (".profile", ".kit", ".job"))
DUMP = """
set nomore
let out = []
for line in range(1, line('$'))
  for column in range(1, strlen(getline(line)))
    call add(out, line . ' ' . column . ' ' . synIDattr(synID(line, column, 1), 'name'))
  endfor
endfor
call writefile(out, $ARRISLINE_OUT)
qall!
"""
# The kind of one character of an example, in both grammars: line, the text that is looked for, and what it is.
SAMPLES = [
    ("bookcase-top.profile", "profile  ", "Naming", "keyword.control"),
    ("bookcase-top.profile", "stock", "Statement", "keyword.control"),
    ("bookcase-top.profile", "ovolo    3/8", "Element", "entity.name.function"),
    ("bookcase-top.profile", "1/8 ", "Figure", "constant.numeric"),
    ("bookcase-top.profile", "thick", "Word", "keyword.other"),
    ("bookcase-top.profile", "# ", "Comment", "comment"),
    ("half-set.kit", "half set\n", "Name", "string.unquoted"),
    ("half-set.kit", "hollow   2", "Plane", "support.type"),
    ("hall-bookcase.job", '"left return"', "Quoted", "string.quoted"),
    ("hall-bookcase.job", "mitre", "Word", "keyword.other"),
]


def words():
    text = subprocess.run([PROGRAM, "words", "--ascii"], capture_output=True, text=True, check=True).stdout
    return set(re.findall(r"^ {2,4}([a-z-]+)  +\S", text, re.M))


def in_vim(path):
    with tempfile.TemporaryDirectory() as name:
        script, out = pathlib.Path(name) / "dump.vim", pathlib.Path(name) / "out"
        script.write_text(DUMP)
        subprocess.run(["vim", "-es", "-N", "-u", "NONE", "-i", "NONE", "--cmd", f"set rtp^={VIM}", "--cmd",
                        "filetype on | syntax on", str(path), "-S", str(script)], stdin=subprocess.DEVNULL,
                       env={**os.environ, "ARRISLINE_OUT": str(out), "HOME": name}, timeout=60, check=False)
        kinds = {}
        for line in out.read_text().split("\n"):
            if line:
                row, column, *kind = line.split(" ")
                kinds[int(row), int(column)] = kind[0].removeprefix("arrisline") if kind else ""
        return kinds


def in_textmate(path):
    """At each place the pattern that matches earliest, the first of those that do so at one place."""
    patterns = [(re.compile(one["match"]), one) for one in json.loads(TEXTMATE.read_text())["patterns"]]
    kinds = {}
    for row, line in enumerate(path.read_text().split("\n"), 1):
        at = 0
        while at < len(line):
            found = [(match.start(), order, match) for order, (regex, _) in enumerate(patterns)
                     if (match := regex.search(line, at)) and match.end() > match.start()]
            if not found:
                break
            _, order, match = min(found, key=lambda one: one[:2])
            rule = patterns[order][1]
            spans = [(match.span(), rule["name"])] if "name" in rule else [
                (match.span(int(group)), capture["name"]) for group, capture in rule["captures"].items()]
            for (start, end), name in spans:
                for column in range(start, end):
                    kinds[row, column + 1] = name
            at = match.end()
    return kinds


def faults_of(grammar, kinds_of, sample_place):
    faults, classified = [], 0
    for path in EXAMPLES:
        kinds = kinds_of(path)
        text = path.read_text()
        for row, line in enumerate(text.split("\n"), 1):
            # The maker's own names: of wood, of mouldings, of files.
            names = re.match(r"\s*(mould|blank|buy)\b", line)
            for column, character in enumerate(line, 1):
                kind = kinds.get((row, column), "")
                classified += bool(kind)
                if not kind and character not in " ,\t" and not names:
                    faults.append(f"{grammar}: {path.name}:{row}:{column}: {character!r} is nothing")
        for sample in SAMPLES:
            if sample[0] != path.name:
                continue
            place = text.index(sample[1])
            row, column = text.count("\n", 0, place) + 1, place - (text.rfind("\n", 0, place) + 1) + 1
            kind = kinds.get((row, column), "")
            if not kind.startswith(sample[sample_place]):
                faults.append(f"{grammar}: {path.name}: {sample[1]!r} is {kind!r}, not {sample[sample_place]!r}")
    if classified < 3000:
        faults.append(f"{grammar}: only {classified} characters were classified")
    return faults


def main():
    known = words()
    faults = []
    in_files = {
        "vim": {word for row in re.findall(r"^syntax keyword \w+ (.*?)(?: nextgroup=.*)?$", (VIM / "syntax/arrisline.vim").read_text(), re.M)
                for word in row.split()},
        "TextMate": {word for one in json.loads(TEXTMATE.read_text())["patterns"]
                     for group in re.findall(r"\(\?:([a-z|-]+)\)", one["match"]) for word in group.split("|")},
    }
    for grammar, has in in_files.items():
        faults += [f"{grammar} lacks the word {word}" for word in sorted(known - has)]
        faults += [f"{grammar} has {word}, which is no word of any file" for word in sorted(has - known)]
    faults += faults_of("TextMate", in_textmate, 3)
    if shutil.which("vim"):
        faults += faults_of("vim", in_vim, 2)
    else:
        print("vim is not installed: passed over")
    print("\n".join(faults[:40]) if faults else f"{len(known)} words, {len(EXAMPLES)} files")
    sys.exit(1 if faults or len(known) < 80 or len(EXAMPLES) < 17 else 0)


main()
