#!/usr/bin/env python3
"""Manual pages from what the program says of itself: arrisline(1) from its help texts, arrisline-files(5) from
files.txt and its table of words. Checked by tests/man.sh.

usage: make.py PROGRAM CHANGELOG FOLDER
"""
import email.utils
import os
import pathlib
import re
import subprocess
import sys
import textwrap

ENVIRONMENT = [
    ("LC_ALL, LC_CTYPE, LANG", "Where the locale is not UTF-8, pictures are drawn with ASCII. In American locales a PDF"
     " is on Letter paper. Figures are written alike in every locale."),
    ("NO_COLOR", "Set to anything, the terminal is left without colour."),
    ("SOURCE_DATE_EPOCH", "The date in a PDF, in seconds since 1970."),
    ("TMPDIR", "Where a plan that was found faulty is kept if it cannot be in the current folder."),
]


def plain(text):
    """Text with nothing that roff would take for its own."""
    text = text.replace("\\", "\\e").replace("-", "\\-").replace("'", "\\(aq").replace("`", "\\(ga")
    return "\n".join("\\&" + line if line.startswith(".") else line for line in text.split("\n"))


def paragraph(text):
    """The same in lines of a moderate length."""
    return plain("\n".join(textwrap.wrap(" ".join(text.split()), 72, break_on_hyphens=False)))


def term(text):
    """A word to be typed is bold, what stands for something else is in italics."""
    shown = []
    for word in text.split(" "):
        kind = "I" if re.fullmatch(r'"?[A-Z][A-Za-z.]*"?(\.\.\.)?', word) else "B"
        shown.append(f"\\f{kind}{plain(word)}\\fR")
    return " ".join(shown)


def blocks_of(text):
    return [block.split("\n") for block in text.strip("\n").split("\n\n")]


def listed(lines):
    """Lines "  TERM   what it is", each perhaps going on below, as pairs."""
    pairs = []
    for line in lines:
        new = re.match(r"  (\S.*?)(?:  +(\S.*))?$", line)
        if new and not line.startswith("   "):
            pairs.append([new[1], new[2] or ""])
        else:
            pairs[-1][1] = (pairs[-1][1] + " " + line.strip()).strip()
    return pairs


def rendered(block):
    """A paragraph, a list or an example of a help text."""
    if block[0].startswith("  "):
        return "".join(f".TP\n{term(name)}\n{paragraph(what)}\n" for name, what in listed(block))
    if block[0].startswith("example:"):
        lines = [line.removeprefix("example:").strip() for line in block]
        return ".PP\nExample:\n.PP\n.in +4n\n.EX\n" + plain("\n".join(lines)) + "\n.EE\n.in\n"
    return ".PP\n" + paragraph(" ".join(block)) + "\n"


def usage_of(block):
    return " ".join(line.strip() for line in block).removeprefix("usage: ")


def heading(page, section, date, version):
    return f'.\\" Made by .packaging/man/make.py.\n.TH {page.upper()} {section} {date} "arrisline {version}"\n'


def program_page(run, date, version):
    top = blocks_of(run("--help"))
    commands = [name.split(" ")[0] for block in top if block[0].startswith("  plan ") for name, _ in listed(block)]
    what = top[0][0].split(": ", 1)[1]
    page = heading("arrisline", 1, date, version)
    page += f".SH NAME\narrisline \\- {plain(what)}\n.SH SYNOPSIS\n"
    usages = {command: blocks_of(run(command, "--help")) for command in commands}
    page += "".join(f"{term(usage_of(usages[command][1]))}\n.br\n" for command in commands).removesuffix(".br\n")
    page += ".SH DESCRIPTION\n"
    page += paragraph("Which plane comes first, where its gauge lines are struck, how far down it goes, and what the next"
                  " plane rides on: arrisline works it out for a profile and the planes on the shelf, replays every cut"
                  " before it shows it, and says why where it cannot be done.") + "\n"
    for block in top[2:]:
        if not block[0].startswith("Exit codes:"):
            page += rendered(block)
    page += ".SH COMMANDS\n"
    for command in commands:
        blocks = usages[command]
        title = " ".join(line.strip() for line in blocks[0]).split(": ", 1)[1]
        page += f".SS {term(usage_of(blocks[1]).removeprefix('arrisline '))}\n{plain(title[0].upper() + title[1:])}.\n"
        page += "".join(rendered(block) for block in blocks[2:])
    page += ".SH EXIT STATUS\n"
    codes = " ".join(" ".join(block) for block in top if block[0].startswith("Exit codes:"))
    for code, meaning in re.findall(r"(\d+) ([^,.]+)", codes):
        page += f".TP\n.B {code}\n{plain(meaning[0].upper() + meaning[1:])}.\n"
    page += ".SH ENVIRONMENT\n" + "".join(f".TP\n.B {name}\n{paragraph(what)}\n" for name, what in ENVIRONMENT)
    return page + ".SH SEE ALSO\n.BR arrisline\\-files (5)\n"


def files_page(run, date, version):
    page = heading("arrisline-files", 5, date, version)
    for block in blocks_of((pathlib.Path(__file__).parent / "files.txt").read_text()):
        if block[0].isupper():
            page += f".SH {block.pop(0)}\n"
        else:
            page += ".PP\n"
        page += paragraph(" ".join(block)) + "\n"
    depth, picture = 0, []

    def flush():
        drawn = ""
        if picture:
            drawn = ".IP\n.EX\n" + "\n".join("\\&" + plain(row) for row in picture) + "\n.EE\n"
            picture.clear()
        return drawn

    for line in run("words", "--ascii").split("\n"):
        if line.startswith("      ") and not re.match(r"    \S", line):
            picture.append(line[6:])
            continue
        page += flush()
        found = re.match(r"(  (?:  )?)(\S+)  +(\S.*)$", line)
        if found:
            level = len(found[1]) // 2 - 1
            page += ".RS\n" * (level - depth) + ".RE\n" * (depth - level)
            depth = level
            page += f".TP\n.B {plain(found[2])}\n{plain(found[3][0].upper() + found[3][1:])}.\n"
        elif line.startswith("In "):
            page += ".RE\n" * depth + f".SH {'WORDS ' + line.upper()}\n"
            depth = 0
    page += ".RE\n" * depth
    page += ".PP\n" + paragraph("Elements and trade shapes are drawn at the end grain, face up, working edge at the left:"
                                 " # is the wood that stays, a full stop what is cut away. Planes stand on their"
                                 " soles.") + "\n"
    return page + ".SH SEE ALSO\n.BR arrisline (1)\n"


def main():
    program, changelog, folder = sys.argv[1:]

    def run(*arguments):
        return subprocess.run([program, *arguments], capture_output=True, text=True, check=True,
                              env={**os.environ, "LC_ALL": "C"}).stdout

    version = run("--version").split()[1]
    stamp = re.search(r"^ -- .*>  (.*)$", pathlib.Path(changelog).read_text(), re.M)[1]
    date = email.utils.parsedate_to_datetime(stamp).date().isoformat()
    out = pathlib.Path(folder)
    out.mkdir(parents=True, exist_ok=True)
    (out / "arrisline.1").write_text(program_page(run, date, version))
    (out / "arrisline-files.5").write_text(files_page(run, date, version))


main()
