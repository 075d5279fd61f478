#!/usr/bin/env python3
"""The how-tos of DEVELOPERS.md, followed: each is made in a copy of the tree, built, tested and run.

A step is `FILE`, before|after|in place of `WORDS`: and a block of code below it; the words must stand in one line of the file.
Or `FILE`, everywhere in place of `WORDS`: or `FILE`, a new file: with a block. What the steps change is compiled without
optimisation and linked before the library of the build, so that it counts. Then run: every test case that a step touches, those
that read files of the grammar where it is touched, the checks of the editors' grammars, of completions, documents and the house, and
the commands at the end, whose output is compared as tests/docs.py does.

usage: how_to.py BUILD NAME      NAME is "trade shape", "kind of plane" or "output"
       how_to.py --approve BUILD NAME    writes down what the commands print now
"""
import concurrent.futures
import json
import os
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
import docs  # noqa: E402

TOP = pathlib.Path(__file__).resolve().parent.parent
STEP = re.compile(r"`([^`\n]+)`,\s+(?:(a new file)|(before|after|(?:everywhere )?in\s+place\s+of)\s+(`` ?(.+?) ?``|`([^`\n]+)`)):\n\n"
                  r"^( *)(`{3,4})\w+\n(.*?)^\7\8$", re.M | re.S)
# Headers that nearly everything includes. What neither names these words, nor includes a header of src that does, is the same
# object with the change: a new kind stands behind the others, a new function beside them.
NAMED_BY = {"include/arrisline/plane.h": r"\b(?:PlaneKind|is_flat)\b", "include/arrisline/sheet.h": r"\btext_sheet\b"}
# Where the grammar of random profiles is touched, this reads files that it makes.
OF_GRAMMAR = ("tests/plan/grammar.h", "tests/text/tidy_test.cpp", "profiles and kits of the grammar are the same when they are tidied")


def how_to(name):
    text = (TOP / "DEVELOPERS.md").read_text()
    found = re.search(rf"^### Add an? {name}$(.*?)(?=^##)", text, re.M | re.S)
    if not found:
        sys.exit(f"DEVELOPERS.md has no how-to to add a {name}")
    return found[1]


class Copy:
    """A copy of the tree, and what the steps have changed in it."""

    def __init__(self, top, folder):
        self.top, self.tree = top, folder / "tree"
        shutil.copytree(top, self.tree, ignore=shutil.ignore_patterns("build", ".git"))
        self.changed, self.faults = {}, []  # files, each with the lines put in or changed, from 1

    def follow(self, text):
        """Returns what is left when the steps are taken out, and how many they were."""
        rest, steps = STEP.sub("", text), 0
        for name, new, how, _, ticked, words, indent, _, body in (match.groups() for match in STEP.finditer(text)):
            code = "".join(line[len(indent):] if line.startswith(indent) else line for line in body.splitlines(True))
            steps += 1
            self.step(name, "a new file" if new else " ".join(how.split()), ticked or words, code)
        return rest, steps

    def step(self, name, how, words, code):
        path = self.tree / name
        if how == "a new file":
            if path.exists():
                self.faults.append(f"{name} is there already")
            else:
                path.write_text(code)
                self.changed[name] = list(range(1, code.count("\n") + 1))
            return
        if not path.exists():
            self.faults.append(f"{name} is not there")
            return
        lines = path.read_text().splitlines(True)
        at = [number for number, line in enumerate(lines) if words in line]
        if not at or (len(at) > 1 and not how.startswith("everywhere")):
            self.faults.append(f"{name} has {words!r} in {len(at)} lines")
            return
        for number in at:
            if how == "before":
                lines.insert(number, code)
            elif how == "after":
                lines.insert(number + 1, code)
            else:
                lines[number] = lines[number].replace(words, code.rstrip("\n"))
        path.write_text("".join(lines))
        self.changed.setdefault(name, [])
        self.changed[name] += [number + 1 + (how == "after") for number in at]

    def cases(self, name):
        """The test cases that the changes of a file of tests lie in."""
        out, current = set(), None
        touched = set(self.changed[name])
        added = set(re.findall(r'TEST_CASE\("([^"]+)"', (self.tree / name).read_text()))
        if (self.top / name).exists():
            added -= set(re.findall(r'TEST_CASE\("([^"]+)"', (self.top / name).read_text()))
        for number, line in enumerate((self.tree / name).read_text().split("\n"), 1):
            found = re.match(r'TEST_CASE\("([^"]+)"', line)
            current = found[1] if found else current
            if number in touched and current:
                out.add(current)
        return out | added


def run(words, **options):
    return subprocess.run(words, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False, **options)


class Build:
    """The objects of a build, and how each is compiled."""

    def __init__(self, build, copy):
        self.build, self.copy = build, copy
        self.commands = {}
        for entry in json.loads((build / "compile_commands.json").read_text()):
            source = pathlib.Path(entry["directory"], entry["file"]).resolve()
            if source.is_relative_to(TOP):
                self.commands[str(source.relative_to(TOP))] = shlex.split(entry["command"])
        self.objects = []

    def includes(self, source):
        """The files of the tree that a source included when it was built."""
        words = self.commands[source]
        dependencies = self.build / f"{words[words.index('-o') + 1]}.d"
        if dependencies.exists():
            return re.findall(r"\S+", dependencies.read_text().replace("\\\n", " "))
        return self.by_ninja().get(words[words.index("-o") + 1], [])

    def by_ninja(self):
        if not hasattr(self, "listed"):
            self.listed, target = {}, None
            for line in run(["ninja", "-C", str(self.build), "-t", "deps"]).stdout.split("\n"):
                if line.startswith("    "):
                    self.listed[target].append(line.strip())
                elif ": #deps" in line:
                    target = line.split(":")[0]
                    self.listed[target] = []
        return self.listed

    def affected(self):
        """Sources of the library and the program that the change makes other objects of."""
        changed = self.copy.changed
        headers = [name for name in changed if name.endswith(".h") and not name.startswith("tests/")]
        naming = {}
        out = {name for name in changed if name.startswith("src/") and name.endswith(".cpp")}
        for source in self.commands:
            if not source.startswith("src/"):
                continue
            paths = [(self.build / name).resolve() for name in self.includes(source)]
            files = [str(path.relative_to(TOP)) for path in paths if path.is_relative_to(TOP)]
            if len(files) < 2 and source != "src/main.cpp":
                sys.exit(f"what {source} includes is not known; build it first")
            for header in set(headers) & set(files):
                words = NAMED_BY.get(header)
                if words is None:
                    out.add(source)
                    continue
                for name in files:
                    if name.startswith("include/"):
                        continue
                    if (name, words) not in naming:
                        naming[name, words] = re.search(words, (TOP / name).read_text()) is not None
                    if naming[name, words]:
                        out.add(source)
        return sorted(out)

    def compile(self, source):
        """The object of a source of the copy."""
        like = source if source in self.commands else next(
            one for one in self.commands if pathlib.Path(one).parent == pathlib.Path(source).parent)
        words = [word.replace(str(TOP), str(self.copy.tree)) for word in self.commands[like]]
        # A launcher before the compiler is left out: what it keeps is of no use here.
        while pathlib.Path(words[0]).name in ("ccache", "sccache"):
            words.pop(0)
        place = words.index("-o") + 1
        target = self.copy.tree / "build" / (source.replace("/", "-") + ".o")
        words[place], words[-1] = str(target), str(self.copy.tree / source)
        answer = run([word for word in words if not re.fullmatch(r"-O\d|-g\d?", word)] + ["-O0"], cwd=self.build)
        return target, answer.stdout if answer.returncode or answer.stdout else ""

    def link(self, target, objects):
        """As the build links the program: its own words, with these objects before the library."""
        made = run(["ninja", "-C", str(self.build), "-t", "commands", "arrisline"]).stdout.strip().split("\n")[-1]
        words = [word for word in shlex.split(made) if word not in (":", "&&")]
        words[words.index("-o") + 1] = str(target)
        words = [word for word in words if not word.endswith("main.cpp.o")]
        library = next(place for place, word in enumerate(words) if word.endswith("libarrisline.a"))
        words[library:library] = [str(one) for one in objects]
        answer = run(words, cwd=self.build)
        if answer.returncode:
            sys.exit(f"{target.name} does not link:\n{answer.stdout}")


def self_test(folder):
    """Steps that do not fit, each of which must be found."""
    small = folder / "small"
    small.mkdir()
    (small / "a.h").write_text("one\ntwo\ntwo\n")
    copy = Copy(small, folder / "of-small")
    rest, steps = copy.follow("1. Do. `a.h`, after `one`:\n\n   ```cpp\n     more\n   ```\n\n`a.h`, in place of `two`:\n\n```cpp\nx\n```\n\n"
                              "`b.h`, before `one`:\n\n```cpp\nx\n```\n\n`a.h`, a new file:\n\n```cpp\nx\n```\nThe end.\n")
    wanted = ["a.h has 'two' in 2 lines", "b.h is not there", "a.h is there already"]
    if copy.faults != wanted or steps != 4 or (copy.tree / "a.h").read_text() != "one\n  more\ntwo\ntwo\n" or "x" in rest:
        sys.exit(f"the steps of the self-test: {steps}, {copy.faults}")


def main():
    arguments = [one for one in sys.argv[1:] if one != "--approve"]
    build, name = pathlib.Path(arguments[0]).resolve(), arguments[1]
    with tempfile.TemporaryDirectory() as there:
        folder = pathlib.Path(there).resolve()
        self_test(folder)
        text = how_to(name)
        copy = Copy(TOP, folder)
        rest, steps = copy.follow(text)
        if copy.faults or steps < 10:
            sys.exit("\n".join([*copy.faults, f"{steps} steps"]))
        (copy.tree / "build/release").mkdir(parents=True)
        made = Build(build, copy)
        sources = made.affected()
        tests = [one for one in copy.changed if one.startswith("tests/") and one.endswith("_test.cpp")]
        cases = {case for one in tests for case in copy.cases(one)}
        if OF_GRAMMAR[0] in copy.changed:
            tests.append(OF_GRAMMAR[1])
            cases.add(OF_GRAMMAR[2])
        with concurrent.futures.ThreadPoolExecutor(2) as pool:
            compiled = dict(zip(sources + tests, pool.map(made.compile, sources + tests)))
        wrong = [f"{source}:\n{said}" for source, (_, said) in compiled.items() if said]
        if wrong:
            sys.exit("\n".join(wrong))
        library = [compiled[source][0] for source in sources if source != "src/main.cpp"]
        program, tester = copy.tree / "build/release/arrisline", folder / "tester"
        made.link(program, [build / "CMakeFiles/arrisline.dir/src/main.cpp.o", *library])
        faults = []
        if len(cases) < 2:
            faults.append(f"only {len(cases)} test cases: {sorted(cases)}")
        made.link(tester, [build / "tests/CMakeFiles/arrisline_tests.dir/main.cpp.o", *(compiled[one][0] for one in tests), *library])
        chosen = ",".join('"' + re.sub(r'([\\,\[\]])', r"\\\1", case) + '"' for case in sorted(cases))
        answer = run([str(tester), chosen], cwd=copy.tree)
        if answer.returncode or f"in {len(cases)} test case" not in answer.stdout:
            faults.append(f"{len(cases)} test cases:\n{answer.stdout}")
        for check in ("editors.py", "completions.py", "docs.py", "house.py"):
            answer = run([sys.executable, str(copy.tree / "tests" / check)], env={**os.environ, "ARRISLINE_PROGRAM": str(program)})
            if answer.returncode:
                faults.append(f"tests/{check}:\n{answer.stdout}")
        page, wanted = docs.page_of(TOP / "DEVELOPERS.md", rest, program)
        faults += page.faults
        if page.commands < 2:
            faults.append(f"only {page.commands} commands")
        if "--approve" in sys.argv:
            whole = (TOP / "DEVELOPERS.md").read_text()
            for old, new in zip(re.findall(r"^```console\n.*?^```$", rest, re.M | re.S),
                                re.findall(r"^```console\n.*?^```$", wanted, re.M | re.S), strict=True):
                whole = whole.replace(old, new)
            (TOP / "DEVELOPERS.md").write_text(whole)
        elif wanted != rest:
            faults.append("the commands at the end print something else; how_to.py --approve puts it right:\n"
                          + run(["diff", "-u", "--label", "shown", "--label", "printed", *two_files(folder, rest, wanted)]).stdout)
        print("\n".join(faults) if faults else f"{name}: {steps} steps, {len(compiled)} files compiled, {len(cases)} test cases, "
              f"{page.commands} commands")
        sys.exit(1 if faults else 0)


def two_files(folder, *texts):
    for number, text in enumerate(texts):
        (folder / f"text-{number}").write_text(text)
        yield str(folder / f"text-{number}")


main()
