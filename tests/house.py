#!/usr/bin/env python3
"""The house in order, by what DEVELOPERS.md says of it.

A file of src includes only its own layer and those above it in the table of layers, which leaves no room for a cycle, and no
folder of src lacks a row; a header of include/arrisline stands in one row, and includes nothing of src. No file of code is over 800 lines, and no two
types of the program have one name.

The checks are first tried on faults made for the purpose, each of which must be found.
"""
import pathlib
import re
import sys
import tempfile

MOST_LINES = 800
CODE = (".h", ".cpp", ".py", ".sh", ".cmake")


def layers(text):
    """Where in the order of the table each folder of src stands, and each public header by the name it is included under."""
    rows = re.findall(r"^\| ([a-z]+) \| (.*?) \|", text.split("## Inside the planner")[0], re.M)
    folders, headers = {}, {}
    for place, (name, files) in enumerate(rows):
        # "src/replay" as a folder; the app has a file of its own beside it.
        folders |= {folder: place for folder in re.findall(r"`src/([a-z]+)`", files)}
        headers |= {f"arrisline/{header}": place for header in re.findall(r"`(?:include/arrisline/)?([a-z_]+\.h)`", files)}
    return folders, headers


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
    rank, headers = layers((top / "DEVELOPERS.md").read_text())
    if len(rank) < 10:
        faults.append(f"DEVELOPERS.md: the table of layers has only {sorted(rank)}")
    folders = {path.name for path in (top / "src").iterdir() if path.is_dir()}
    public = {f"arrisline/{path.name}" for path in (top / "include/arrisline").iterdir()}
    for lacking in sorted(folders - rank.keys()):
        faults.append(f"src/{lacking} has no row in the table of layers of DEVELOPERS.md")
    for lacking in sorted(public - headers.keys()):
        faults.append(f"include/{lacking} is in no row of the table of layers of DEVELOPERS.md")
    for stale in sorted([f"src/{name}" for name in rank.keys() - folders] + [f"include/{name}" for name in headers.keys() - public]):
        faults.append(f"DEVELOPERS.md has {stale} in a row, which is not there")
    counted = 0
    for path in code_files(top, ["src", "include"]):
        inside = path.relative_to(top).parts[1:]
        own = headers.get("/".join(inside)) if path.is_relative_to(top / "include") else rank.get(inside[0])
        for number, name in includes(path):
            of = name.split("/")[0]
            if of not in folders and of != "arrisline":
                continue
            counted += 1
            where = f"{path.relative_to(top)}:{number}"
            if path.is_relative_to(top / "include") and of != "arrisline":
                faults.append(f"{where}: a public header includes {name} of src")
            elif own is not None and headers.get(name, rank.get(of, -1)) > own:
                faults.append(f"{where}: {'/'.join(inside[:-1])} includes {name}, of a later layer")
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
            "| gone | `include/arrisline/d.h`, `early.h`, `gone.h`, `src/gone` | x |\n"
            "| late | `include/arrisline/late.h` | x |\n")
        (made / "src/text/a.cpp").write_text('#include "plan/b.h"\n')
        (made / "src/plan/b.h").write_text('#include "text/c.h"\nstruct Twice {\n};\n')
        (made / "src/text/c.h").write_text("class Twice {\n};\n")
        (made / "include/arrisline/d.h").write_text('#include "text/c.h"\n')
        (made / "include/arrisline/early.h").write_text('#include "arrisline/late.h"\n')
        (made / "include/arrisline/late.h").write_text("")
        (made / "include/arrisline/odd.h").write_text("")
        (made / "src/plan/e.cpp").write_text('#include "arrisline/early.h"\n')
        (made / "tests/long.py").write_text("\n" * (MOST_LINES + 1))
        faults, _ = check(made)
        wanted = ["has only", "src/odd has no row", "src/gone in", "include/arrisline/gone.h in", "include/arrisline/odd.h is in no row",
                  "text includes plan/b.h", "arrisline includes arrisline/late.h", "plan includes arrisline/early.h", "public header", "more than 800",
                  "Twice is a type in src/plan/b.h and in src/text/c.h"]
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
