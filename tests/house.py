#!/usr/bin/env python3
"""The house in order, by what DEVELOPERS.md says of it.

A file of src includes only its own layer and those above it in the table of layers, which leaves no room for a cycle, and no
folder of src lacks a row; a header of include/arrisline includes nothing of src. No file of code is over 800 lines, and no two
types of the program have one name.

The checks are first tried on faults made for the purpose, each of which must be found.
"""
import pathlib
import re
import sys
import tempfile

MOST_LINES = 800
# The readers put sections together, and lie with the rest of the text: told in DEVELOPERS.md beneath the table.
EXCEPTIONS = {("text", "section")}
CODE = (".h", ".cpp", ".py", ".sh", ".cmake")


def layers(text):
    """The folders of src in the order of the table, each with the public headers that its row names."""
    rows = re.findall(r"^\| ([a-z]+) \| (.*?) \|", text.split("## Inside the planner")[0], re.M)
    order = []
    for name, files in rows:
        if name == "layer":
            continue
        # "src/replay" as a folder; the app has a file of its own beside it.
        for folder in re.findall(r"`src/([a-z]+)`", files):
            order.append((name, folder))
    return order


def includes(path):
    for number, line in enumerate(path.read_text(errors="replace").split("\n"), 1):
        found = re.match(r'#include [<"]([^">]+)[">]', line)
        if found:
            yield number, found[1]


def code_files(top, folders):
    for folder in folders:
        for path in sorted((top / folder).rglob("*")):
            if path.is_file() and path.suffix in CODE:
                yield path


def layer_faults(top):
    faults = []
    order = layers((top / "DEVELOPERS.md").read_text())
    rank = {folder: place for place, (_, folder) in enumerate(order)}
    if len(rank) < 10:
        faults.append(f"DEVELOPERS.md: the table of layers has only {sorted(rank)}")
    folders = {path.name for path in (top / "src").iterdir() if path.is_dir()}
    for lacking in sorted(folders - rank.keys()):
        faults.append(f"src/{lacking} has no row in the table of layers of DEVELOPERS.md")
    for stale in sorted(rank.keys() - folders):
        faults.append(f"DEVELOPERS.md has a row for src/{stale}, which is not there")
    counted, unused = 0, set(EXCEPTIONS)
    for path in code_files(top, ["src", "include"]):
        own = path.relative_to(top).parts[1] if path.is_relative_to(top / "src") else None
        for number, name in includes(path):
            of = name.split("/")[0]
            if of not in folders:
                continue
            counted += 1
            where = f"{path.relative_to(top)}:{number}"
            if own is None:
                faults.append(f"{where}: a public header includes {name} of src")
            elif (own, of) in EXCEPTIONS:
                unused.discard((own, of))
            elif own in folders and rank.get(of, 99) > rank.get(own, 99):
                faults.append(f"{where}: {own} includes {name}, of a later layer")
    faults += [f"the exception that {own} may include {of} is needed no longer" for own, of in sorted(unused)]
    return faults, counted


def size_faults(top):
    return [f"{path.relative_to(top)} has {lines} lines, more than {MOST_LINES}"
            for path in code_files(top, ["src", "include", "tests", ".packaging"])
            if (lines := path.read_text(errors="replace").count("\n")) > MOST_LINES]


def name_faults(top):
    """Two types of one name in the program's namespace, even in files that never meet, share the functions that the
    compiler makes for them, and one gets the other's."""
    defined = {}
    for path in code_files(top, ("src", "include")):
        nameless = False
        for line in path.read_text().splitlines():
            if line == "namespace {":
                nameless = True
            elif line == "}  // namespace":
                nameless = False
            found = re.match(r"(?:struct|class|enum class) (\w+)(?: final)?(?: :.*)? \{", line)
            if found and not nameless:
                defined.setdefault(found.group(1), []).append(str(path.relative_to(top)))
    return [f"{name} is a type in {' and in '.join(sorted(files))}" for name, files in sorted(defined.items()) if len(files) > 1]


def check(top):
    found, included = layer_faults(top)
    return found + size_faults(top) + name_faults(top), included


def self_test(top):
    """A small house with a fault of each kind."""
    with tempfile.TemporaryDirectory() as name:
        made = pathlib.Path(name)
        for folder in ("src/text", "src/plan", "src/odd", "include/arrisline", "tests", ".packaging"):
            (made / folder).mkdir(parents=True)
        (made / "DEVELOPERS.md").write_text(
            "| layer | files | role |\n|---|---|---|\n| text | `src/text` | x |\n| plan | `src/plan` | x |\n"
            "| gone | `src/gone` | x |\n")
        (made / "src/text/a.cpp").write_text('#include "plan/b.h"\n')
        (made / "src/plan/b.h").write_text('#include "text/c.h"\nstruct Twice {\n};\n')
        (made / "src/text/c.h").write_text("class Twice {\n};\n")
        (made / "include/arrisline/d.h").write_text('#include "text/c.h"\n')
        (made / "tests/long.py").write_text("\n" * (MOST_LINES + 1))
        faults, _ = check(made)
        wanted = ["has only", "src/odd has no row", "src/gone, which", "text includes plan/b.h", "public header", "needed no longer",
                  "more than 800", "Twice is a type in src/plan/b.h and in src/text/c.h"]
        missed = [one for one in wanted if not any(one in fault for fault in faults)]
        if missed or len(faults) != len(wanted):
            print("\n".join(faults))
            sys.exit(f"not found: {missed}, of {len(faults)} found")


def main():
    top = pathlib.Path(__file__).resolve().parent.parent
    self_test(top)
    faults, included = check(top)
    print("\n".join(faults) if faults else f"{included} includes between folders")
    if included < 300:
        sys.exit("too little was looked at")
    sys.exit(1 if faults else 0)


main()
