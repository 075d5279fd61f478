#!/usr/bin/env python3
"""Every command and file that README.md, DEVELOPERS.md and docs/*.md show: run, and what is printed compared.

A fenced block begins with its kind:
  console      commands after "$ " with what they print below, both streams as a terminal shows them, and "(exit code N)"
               where it is not 0
  file NAME    a file: written, and then used by a command of the document; one that none names must read without a mistake
  part FILE    lines of a file of the tree, in its order, word for word
  sh           commands without what they print: each must end well. PROFILE, KIT and FILE, and files that the reader is to
               have, are those of tests/docs. What stands in NOT_RUN is not run
  python       for other machines: it must compile
Any other block is a fault, and so is an indented one that is no formula. The blocks of one document share a folder, in which
examples/ is at hand. The section "How to" of DEVELOPERS.md is run by tests/how_to.py. docs_words.py holds the words of the
documents against the tree, docs_tables.py their tables against the program.

The checks are first tried on a document of faults, each of which must be found.

usage: docs.py [--approve] [DOCUMENT...]    --approve writes down what is printed now; read git diff before keeping it
       docs.py --write FOLDER DOCUMENT      only writes the files of a document
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
import docs_tables  # noqa: E402
import docs_words  # noqa: E402

TOP = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = os.environ.get("ARRISLINE_PROGRAM", str(TOP / "build/release/arrisline"))
FENCE = re.compile(r"^( *)```([^\n`]*)\n(.*?)^\1```$", re.M | re.S)
# What an indented block may be: "r = …".
FORMULA = re.compile(r"^ {4}[a-z]\w* = [^=]+$")
# The names that stand for files of the reader's own.
PLACES = {"PROFILE": "edge.profile", "KIT": "chest.kit", "FILE": "bookcase.job"}
# Commands of ```sh blocks that are not run, and why.
NOT_RUN = {
    r"sh examples/run\.sh$": "installs packages and builds the program; what it then runs, README shows as well",
    r"sh tests/\w+\.sh\b": "builds and runs the tests, which would run themselves",
    r"\.ci/run$": "the same, for an hour",
    r"python3 tests/mutate\.py": "takes hours",
    r"python3 tests/docs\.py": "is this",
    r"python3 tests/app/messages\.py --approve": "would write into the tree; the same without it is a test of its own",
    r"cmake --preset": "builds the program",
    r"ctest --preset": "would run the tests within the tests",
    r"(ARRISLINE_\w+=\S+ )*build/release/tests/arrisline_(tests|referee) ": "takes minutes",
    r"build/bench/": "takes minutes, and measures this machine",
    r"ARRISLINE_PROGRAM=\S+ ARRISLINE_SHOTS=\S+ python3 tests/sheet/browser\.py": "is a test of its own, without the pictures",
    r"parallel ": "GNU parallel is not among the packages of the tests; examples/catalogue.sh runs it",
    r"sbatch ": "needs a cluster",
}
# Files that no command of their document names, and what uses them.
USED_BY = {"library.md": "tests/consumer/consumer.sh"}
# Commands run and files written, so that none is lost without a word.
LEAST = {"README.md": (22, 2), "beginners.md": (11, 9), "files.md": (1, 5), "first-moulding.md": (12, 3), "glossary.md": (22, 1),
         "how-it-thinks.md": (4, 3), "jobs.md": (2, 1), "library.md": (0, 2), "many-machines.md": (6, 3), "plan-json.md": (2, 3),
         "planes.md": (4, 3), "reshaping.md": (3, 0), "sheets.md": (2, 0), "traces.md": (2, 1)}


class Page:
    """One document, its folder and the faults found in it."""

    def __init__(self, path, text, folder):
        self.path, self.text, self.folder = path, text, folder
        self.faults, self.commands, self.not_run = [], 0, set()
        self.written = {}  # by name: whether a command has used it
        self.files = 0

    def fault(self, words):
        self.faults.append(f"{self.path}: {words}")

    def run(self, command):
        return subprocess.run(["sh", "-c", command], cwd=self.folder / "in", stdin=subprocess.DEVNULL, text=True, check=False,
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=300, errors="replace",
                              env={**{name: value for name, value in os.environ.items()
                                      if name not in ("NO_COLOR", "SOURCE_DATE_EPOCH")},
                                   "PATH": f"{self.folder}/bin:{os.environ['PATH']}", "LC_ALL": "C.UTF-8"})

    def console(self, body):
        commands = re.findall(r"^\$ (.*)$", body, re.M)
        if not commands:
            self.fault(f"a console block without a command: {body[:60]!r}")
        out = ""
        for command in commands:
            self.use(command)
            answer = self.run(command)
            out += f"$ {command}\n{answer.stdout}"
            if answer.stdout and not answer.stdout.endswith("\n"):
                out += "\n"
            if answer.returncode:
                out += f"(exit code {answer.returncode})\n"
        self.commands += len(commands)
        return out

    def shell(self, body):
        for line in filter(None, body.split("\n")):
            pattern = next((one for one in NOT_RUN if re.match(one, re.sub(r"\s+#.*", "", line))), None)
            if pattern:
                self.not_run.add(pattern)
                continue
            command = re.sub(r"\b(PROFILE|KIT|FILE)\b", lambda word: PLACES[word[0]], line)
            self.use(command)
            for lent in (TOP / "tests/docs").iterdir():
                there = self.folder / "in" / lent.name
                if lent.name in re.sub(r"(-o|>) *\S+", "", command).split() and not there.exists():
                    shutil.copy(lent, there)
            answer = self.run(command)
            self.commands += 1
            if answer.returncode:
                self.fault(f"exit code {answer.returncode} of: {line}\n{answer.stdout}")

    def use(self, command):
        for name in self.written:
            if re.search(rf"(?<![\w./-]){re.escape(name)}(?![\w-])", command):
                self.written[name] = True

    def write(self, name, body):
        self.settle(name)
        self.written[name] = False
        self.files += 1
        (self.folder / "in" / name).write_text(body)

    def settle(self, name):
        """Of a file that is written over, or at the end: something must have read it."""
        if self.written.pop(name, True):
            return
        by = USED_BY.get(self.path.name)
        if by and re.search(rf"docs/{re.escape(self.path.name)}", (TOP / by).read_text()):
            return
        if not name.endswith((".profile", ".kit", ".job")):
            self.fault(f"{name} is shown, and no command uses it")
            return
        answer = self.run(f"arrisline fmt {name} -o tidied")
        if answer.returncode or answer.stdout:
            self.fault(f"{name} does not read:\n{answer.stdout}")

    def part(self, name, body):
        there = map(str.split, (TOP / name).read_text().split("\n") if (TOP / name).exists() else [])
        for line in body.rstrip("\n").split("\n"):
            if line.split() not in there:  # goes on behind the line found before
                self.fault(f"{name} has no line, or not in this place: {line}")
                return

    def block(self, match):
        indent, kind, body = match.groups()
        if kind == "console" and not indent:
            return f"```console\n{self.console(body)}```"
        if kind.startswith("file ") and not indent:
            self.write(kind[5:], body)
        elif kind.startswith("part ") and not indent:
            self.part(kind[5:], body)
        elif kind == "sh" and not indent:
            self.shell(body)
        elif kind == "python" and not indent:
            try:
                compile(body, str(self.path), "exec")
            except SyntaxError as error:
                self.fault(f"no Python: {error}")
        else:
            self.fault(f"a block of no kind that is checked: {kind or body[:60]!r}")
        return match[0]

    def renewed(self):
        """The document as it ought to be."""
        text, how_to = self.text, ""
        if self.path.name == "DEVELOPERS.md":
            found = re.search(r"^## How to$.*?(?=^## |\Z)", text, re.M | re.S)
            how_to = found[0] if found else ""
            text = text.replace(how_to, "\0") if how_to else text
        plain = FENCE.sub("\n", text)
        for line in re.findall(r"(?<=\n\n)(?: {4}[^\n]*\n)+", plain):
            if not all(map(FORMULA.match, line.rstrip("\n").split("\n"))):
                self.fault(f"an indented block, which nothing runs: {line.strip()[:60]!r}")
        if "```" in plain:
            self.fault("a fence that does not close")
        text = FENCE.sub(self.block, text)
        for name in list(self.written):
            self.settle(name)
        return text.replace("\0", how_to)


def page_of(path, text, program=PROGRAM):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "bin").mkdir()
        (folder / "in").mkdir()
        (folder / "bin/arrisline").symlink_to(program)
        (folder / "in/examples").symlink_to(TOP / "examples")
        page = Page(path, text, folder)
        return page, page.renewed()


FAULTY = """A page.

    arrisline words ogee

```text
what nobody prints
```
```console
$ arrisline --version
arrisline 99
```
```file a.kit
kit a
holow 6
```
```file b.txt
read by nobody
```
```sh
arrisline plan PROFILE --kit KIT --prefer nothing
```
```part examples/pair-of-sixes.kit
rebate   3/4
no such line
```
```python
a = = b
```
"""


def self_test(command_line):
    """A page with a fault of each kind, and one without any."""
    page, text = page_of(TOP / "docs/faulty.md", FAULTY)
    wanted = ["indented block", "no kind that is checked: 'text'", "a.kit does not read", "b.txt is shown", "exit code 2 of",
              "no line, or not in this place: no such line", "no Python"]
    missed = [one for one in wanted if not any(one in fault for fault in page.faults)]
    if missed or len(page.faults) != len(wanted) or "arrisline 99" in text or page.commands != 2:
        sys.exit("\n".join([*page.faults, f"not found: {missed}, of {len(page.faults)} found"]))
    docs_words.self_test(TOP, command_line)


def main():
    arguments = sys.argv[1:]
    if arguments[:1] == ["--write"]:
        folder, document = map(pathlib.Path, arguments[1:])
        for name, body in re.findall(r"^```file ([^\n]+)\n(.*?)^```$", document.read_text(), re.M | re.S):
            (folder / name).write_text(body)
        return
    if not os.access(PROGRAM, os.X_OK):
        sys.exit(f"{PROGRAM}: no such program; build it, or name another by ARRISLINE_PROGRAM")
    approve = "--approve" in arguments
    named = [pathlib.Path(one).resolve() for one in arguments if one != "--approve"]
    everything = [TOP / "README.md", TOP / "DEVELOPERS.md", *sorted((TOP / "docs").glob("*.md"))]
    command_line = docs_words.CommandLine(PROGRAM)
    self_test(command_line)
    faults = [] if named else docs_tables.faults(TOP, PROGRAM)
    commands = files = words = 0
    not_run = set()
    for path in named or everything:
        page, wanted = page_of(path, path.read_text())
        found, looked_at = docs_words.faults_of(TOP, path, page.text, command_line)
        faults += page.faults + found
        commands, files, words = commands + page.commands, files + page.files, words + looked_at
        not_run |= page.not_run
        least = LEAST.get(path.name, (0, 0))
        if page.commands < least[0] or page.files < least[1]:
            faults.append(f"{path}: only {page.commands} commands and {page.files} files")
        if approve:
            path.write_text(wanted)
        elif wanted != page.text:
            faults.append(f"{path} shows something else than is printed; docs.py --approve {path.name} puts it right")
            subprocess.run(["diff", "-u", str(path), "-"], input=wanted, text=True, check=False)
    if not named:
        faults += [f"NOT_RUN: no document has {pattern}" for pattern in NOT_RUN if pattern not in not_run]
        if words < 600:
            faults.append(f"only {words} words of the documents were looked at")
    print("\n".join(faults) if faults else f"{commands} commands, {files} files, {words} names and options")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
