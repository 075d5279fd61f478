#!/usr/bin/env python3
"""What bash, zsh and fish offer at the tab key, asked of the shells themselves.

Each case is a command line and what must be offered at its end. zsh is driven at a terminal of its own, so there only
what the line grows to is compared. A shell that is not installed is passed over, and said so; bash must be there.
The program is $ARRISLINE_PROGRAM, or build/release/arrisline.
"""
import os
import pathlib
import pty
import re
import select
import shutil
import subprocess
import sys
import tempfile

TOP = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.environ.get("ARRISLINE_PROGRAM", str(TOP / "build/release/arrisline"))
FILES = ["a.profile", "b b.profile", "chest.kit", "hall.job", "plan.json", "piece.csv", "piece.dxf", "note.txt",
         "old.svg", "more/in.kit"]

# (words of the line, the last being completed; what is offered, sorted)
CASES = [
    (["pl"], ["plan"]),
    (["s"], ["scale", "stream", "survey"]),
    (["plan", ""], ["a.profile", "b b.profile", "more"]),
    (["plan", "a"], ["a.profile"]),
    (["plan", "a.profile", "--kit", ""], ["chest.kit", "more"]),
    (["plan", "a.profile", "--kit", "more/"], ["more/in.kit"]),
    (["plan", "--pre"], ["--prefer"]),
    (["plan", "--prefer", ""], ["fewest-cuts", "fewest-planes", "least-strokes"]),
    (["plan", "--prefer", "fewest-c"], ["fewest-cuts"]),
    (["plan", "--unit", ""], ["inch", "mm"]),
    (["plan", "--paper", ""], ["a4", "letter"]),
    (["plan", "--sheet", ""], ["more", "old.svg"]),
    (["check", "a.profile", "b"], ["b b.profile"]),
    (["job", ""], ["hall.job", "more"]),
    (["job", "-o", "n"], ["note.txt"]),
    (["replay", ""], ["more", "plan.json"]),
    (["trace", "p"], ["piece.csv", "piece.dxf"]),
    (["survey", "--kits", ""], ["more"]),
    (["new", ""], ["job", "kit", "profile"]),
    (["completions", ""], ["bash", "fish", "zsh"]),
    (["words", "ho"], ["hold", "hollow"]),
    (["words", "reverse"], ["reverse-ogee"]),
    (["fmt", "c"], ["chest.kit"]),
    (["fmt", "--c"], ["--check"]),
]
# With the value written against the option, where the shell has it in words of its own.
BASH_CASES = [
    (["plan", "--unit", "="], ["inch", "mm"]),
    (["plan", "--unit", "=", "m"], ["mm"]),
    (["plan", "--kit", "=", "c"], ["chest.kit"]),
    (["plan", "--limit", ""], []),
]
# A line as it is typed, and what the tab key makes of it.
ZSH_CASES = [
    ("arrisline pla", "arrisline plan "),
    ("arrisline plan a.profile --kit ch", "arrisline plan a.profile --kit chest.kit "),
    ("arrisline plan --prefer fewest-c", "arrisline plan --prefer fewest-cuts "),
    ("arrisline plan --pre", "arrisline plan --prefer="),
    ("arrisline job --paper le", "arrisline job --paper letter "),
    ("arrisline words rev", "arrisline words reverse-ogee "),
    ("arrisline new j", "arrisline new job "),
    ("arrisline job h", "arrisline job hall.job "),
    ("arrisline plan --unit=i", "arrisline plan --unit=inch "),
]


def run(*command):
    return subprocess.run([PROGRAM, *command], capture_output=True, text=True, check=True).stdout


def commands():
    return re.findall(r"^  ([a-z]+) ", run("--help"), re.M)


def options(command):
    """As its help tells of them, which options_test.cpp holds against the table."""
    found = re.findall(r"^  (?:(-[a-z]), )?(--[a-z-]+)", run(command, "--help"), re.M)
    return sorted(name for pair in found for name in pair if name and name != "-h")


def in_bash(folder, words):
    script = ('source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _arrisline;'
              ' printf "%s\\n" "${COMPREPLY[@]}"')
    answer = subprocess.run(["bash", "--norc", "-c", script, "bash", str(folder / "script"), "arrisline", *words],
                            cwd=folder / "in", capture_output=True, text=True)
    assert answer.returncode == 0 and not answer.stderr, answer
    return sorted(line for line in answer.stdout.split("\n") if line)


def in_fish(folder, words):
    line = " ".join(["arrisline", *(word.replace(" ", "\\ ") for word in words)])
    script = f"source {folder}/script; complete -C {sh_quoted(line)}"
    answer = subprocess.run(["fish", "--no-config", "-c", script], cwd=folder / "in", capture_output=True, text=True,
                            env={**os.environ, "HOME": str(folder)})
    assert answer.returncode == 0 and not answer.stderr, answer
    return sorted(line.split("\t")[0].rstrip("/") for line in answer.stdout.split("\n") if line)


def sh_quoted(text):
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'"


class Zsh:
    """An interactive zsh whose line after the tab key is written to a file by a key of the test's own."""

    def __init__(self, folder):
        self.folder = folder
        setup = ("PS1='> '; unsetopt BEEP LIST_BEEP; autoload -Uz compinit; compinit -u -d dump;"
                 f" source {folder}/script;"
                 f" keep() {{ print -r -- \"$BUFFER|\" > {folder}/line; BUFFER=''; }}; zle -N keep; bindkey '^X' keep\n")
        pid, self.terminal = pty.fork()
        if pid == 0:
            os.chdir(folder / "in")
            os.environ.update(TERM="xterm", HOME=str(folder), ZDOTDIR=str(folder))
            os.execvp("zsh", ["zsh", "-f", "-i"])
        self.pid = pid
        os.write(self.terminal, setup.encode())

    def completed(self, line):
        kept = self.folder / "line"
        kept.unlink(missing_ok=True)
        os.write(self.terminal, line.encode() + b"\t\x18")
        for _ in range(600):
            if select.select([self.terminal], [], [], 0.05)[0]:
                os.read(self.terminal, 65536)
            if kept.exists() and kept.read_text().endswith("|\n"):
                return kept.read_text()[:-2]
        raise AssertionError(f"zsh does not answer to {line!r}")

    def close(self):
        os.write(self.terminal, b"exit\n")
        os.close(self.terminal)
        os.waitpid(self.pid, 0)


def main():
    faults = []
    tried = 0

    def check(shell, words, got, wanted):
        nonlocal tried
        tried += 1
        if got != wanted:
            faults.append(f"{shell}, {words}: offered {got}, expected {wanted}")

    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "in/more").mkdir(parents=True)
        for file in FILES:
            (folder / "in" / file).write_text("")
        every = commands()
        assert len(every) >= 11, every

        (folder / "script").write_text(run("completions", "bash"))
        for words, wanted in CASES + BASH_CASES:
            check("bash", words, in_bash(folder, words), wanted)
        for command in every:
            check("bash", [command, "-"], in_bash(folder, [command, "-"]), options(command))
        check("bash", [""], in_bash(folder, [""]), sorted([*every, "--help", "--version"]))

        if shutil.which("fish"):
            (folder / "script").write_text(run("completions", "fish"))
            for words, wanted in CASES:
                check("fish", words, in_fish(folder, words), wanted)
            for command in every:
                # Names with their short forms, and -h, which is offered everywhere.
                got = {one for one in in_fish(folder, [command, "--"])}
                check("fish", [command, "--"], sorted(got), [one for one in options(command) if one.startswith("--")])
        else:
            print("fish is not installed: passed over")

        if shutil.which("zsh"):
            (folder / "script").write_text(run("completions", "zsh"))
            zsh = Zsh(folder)
            for line, wanted in ZSH_CASES:
                check("zsh", line, zsh.completed(line), wanted)
            zsh.close()
        else:
            print("zsh is not installed: passed over")

    for fault in faults:
        print(fault)
    print(f"{tried} lines completed, {len(faults)} not as expected")
    sys.exit(1 if faults else 0)


main()
