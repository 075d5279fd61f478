#!/usr/bin/env python3
"""doc_commands.py check|rewrite FILE: what a page of docs shows is what the program prints.

A line "`arrisline …` prints:" is followed by a block fenced with ```text: standard output of that command, run
in the top folder. The program is build/release/arrisline, or $ARRISLINE_PROGRAM.
"""
import os
import pathlib
import shlex
import subprocess
import sys

top = pathlib.Path(__file__).resolve().parents[2]
program = os.environ.get("ARRISLINE_PROGRAM", str(top / "build/release/arrisline"))


def printed(command):
    words = shlex.split(command)
    assert words[0] == "arrisline", command
    done = subprocess.run([program, *words[1:]], cwd=top, stdin=subprocess.DEVNULL, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{command}: exit code {done.returncode}\n{done.stderr}")
    return done.stdout


def remade(page):
    out, command, blocks, skipping = [], None, 0, False
    for line in page.splitlines(keepends=True):
        if skipping:
            skipping = line != "```\n"
            if skipping:
                continue
        if line.startswith("`arrisline ") and line.endswith("` prints:\n"):
            command = line[1 : line.rindex("` prints:")]
        out.append(line)
        if line == "```text\n" and command:
            out.append(printed(command))
            command, skipping = None, True
            blocks += 1
    if command or skipping or blocks == 0:
        sys.exit("a command without its block, a block without its end, or no command at all")
    return "".join(out)


def main():
    how, name = sys.argv[1:]
    path = top / name
    page = path.read_text(encoding="utf-8")
    now = remade(page)
    if how == "rewrite":
        path.write_text(now, encoding="utf-8")
    elif now != page:
        sys.exit(f"{name} shows something else than is printed; doc_commands.py rewrite {name} puts it right")


main()
