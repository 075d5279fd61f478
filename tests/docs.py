#!/usr/bin/env python3
"""Every command and file that the docs show: run, and what is printed compared.

In docs/*.md a block that begins ```file NAME is a file, and one that begins ```console has commands after "$ " with what
they print below, both streams as a terminal shows them, and "(exit code N)" where it is not 0. The blocks of one document share
a folder, in which examples/ is at hand. Besides, the table of planes.md is reckoned anew, and the glossary draws what the program does.

usage: docs.py [--approve] [DOCUMENT...]    --approve writes down what is printed now; read git diff before keeping it
"""
import fractions
import math
import os
import pathlib
import re
import subprocess
import sys
import tempfile

TOP = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.environ.get("ARRISLINE_PROGRAM", str(TOP / "build/release/arrisline"))
BLOCK = re.compile(r"^```(console|file ([^\n]+))\n(.*?)^```$", re.M | re.S)
# Commands, so that none is lost without a word.
LEAST = {"beginners.md": 12, "first-moulding.md": 12, "glossary.md": 22, "how-it-thinks.md": 4, "planes.md": 4}


def printed(commands, folder):
    out = ""
    for command in commands:
        answer = subprocess.run(["sh", "-c", command], cwd=folder / "in", stdin=subprocess.DEVNULL, text=True,
                                stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=120,
                                env={**os.environ, "PATH": f"{folder}/bin:{os.environ['PATH']}", "LC_ALL": "C.UTF-8"})
        out += f"$ {command}\n{answer.stdout}"
        if answer.returncode:
            out += f"(exit code {answer.returncode})\n"
    return out


def renewed(text):
    """The document as it ought to be, and how many commands it has."""
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "bin").mkdir()
        (folder / "in").mkdir()
        (folder / "bin/arrisline").symlink_to(PROGRAM)
        (folder / "in/examples").symlink_to(TOP / "examples")
        count = 0

        def run(block):
            nonlocal count
            if block[2]:
                (folder / "in" / block[2]).write_text(block[3])
                return block[0]
            commands = re.findall(r"^\$ (.*)$", block[3], re.M)
            count += len(commands)
            return f"```console\n{printed(commands, folder)}```"

        return BLOCK.sub(run, text), count


def length(text):
    return float(sum(fractions.Fraction(part) for part in text.split()))


def table_faults():
    """The radii in planes.md against the circle through the ends of the chord and the top of the rise, found by halving."""
    text = (TOP / "docs/planes.md").read_text()
    rises = [length(one) for one in re.findall(r"rise (\S+) (?=\|)", re.search(r"^\| chord .*$", text, re.M)[0])]
    rows = re.findall(r"^\| ([0-9 /]+) \| ([0-9. |]+) \|$", text, re.M)
    faults = 0
    for chord, cells in rows:
        for rise, cell in zip(rises, cells.split(" | "), strict=True):
            # The larger the radius, the less an arc rises over its chord.
            low, high = length(chord) / 2, 100.0
            for _ in range(200):
                middle = (low + high) / 2
                rises_by = middle - math.sqrt(middle**2 - (length(chord) / 2) ** 2)
                low, high = (middle, high) if rises_by > rise else (low, middle)
            if abs(low - float(cell)) > 0.00501:
                print(f"docs/planes.md: chord {chord}, rise {rise}: {cell}, not {low:.4f}")
                faults += 1
    if len(rows) * len(rises) < 28:
        print("docs/planes.md: its table is not found")
        faults += 1
    return faults


def glossary_faults():
    """Words that the program draws and the glossary does not, and the other way round."""
    listed = subprocess.run([PROGRAM, "words", "--ascii"], text=True, stdout=subprocess.PIPE, check=True).stdout
    drawn = set(re.findall(r"^  (\S+) .*\n {6}[^a-z\n]+$", listed, re.M))
    shown = set(re.findall(r"^\$ sh draw (\S+)$", (TOP / "docs/glossary.md").read_text(), re.M))
    for word in sorted(drawn ^ shown):
        print(f"docs/glossary.md: {'not drawn' if word in drawn else 'no picture of the program'}: {word}")
    if len(drawn) < 22:
        print(f"arrisline words: only {len(drawn)} drawn words found")
    return len(drawn ^ shown) + (len(drawn) < 22)


def main():
    if not os.access(PROGRAM, os.X_OK):
        sys.exit(f"{PROGRAM}: no such program; build it, or name another by ARRISLINE_PROGRAM")
    approve = "--approve" in sys.argv
    named = [pathlib.Path(one) for one in sys.argv[1:] if one != "--approve"]
    faults, commands = table_faults() + glossary_faults(), 0
    for path in named or sorted((TOP / "docs").glob("*.md")):
        text = path.read_text()
        wanted, count = renewed(text)
        commands += count
        if count < LEAST.get(path.name, 0):
            print(f"{path}: only {count} commands")
            faults += 1
        if approve:
            path.write_text(wanted)
        elif wanted != text:
            faults += 1
            subprocess.run(["diff", "-u", str(path), "-"], input=wanted, text=True, check=False)
    print(f"{commands} commands")
    sys.exit(1 if faults else 0)


main()
