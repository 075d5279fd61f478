"""What documents name, held against the tree and the program; used by docs.py.

Links and their headings, paths, headers, constants, tags of tests, variables and presets must be there, as must the files of
a table "files in `src/…`". A command line of the program must have its command, its options and, where they are of few, their
words, as `arrisline completions` offers them.
"""
import functools
import pathlib
import re
import subprocess
import sys

FOLDERS = r"(?:examples|tests|src|docs|include|\.ci|\.packaging)"
# Options of other programs, in words that begin with an option.
OTHERS = {"--pipe", "--basefile", "--install", "--growth"}
# Files that a reader makes, or that come with Debian packages.
READERS = {"shop.cpp"}
# A pattern, not a name.
PATTERNS = {"kName"}


class CommandLine:
    """Commands and their options, from what bash is offered."""

    def __init__(self, program):
        script = subprocess.run([program, "completions", "bash"], text=True, stdout=subprocess.PIPE, check=True).stdout
        self.commands = {}
        words = dict(re.findall(r"^ {4}(\w+)\) _arrisline_words '([^']*)' ;;$", script, re.M))
        for name, options, place, rest in re.findall(r"^    (\w+)\)\n {6}options='([^']*)' place=(\w+)\n(.*?)^ {6};;", script, re.M | re.S):
            takes = {}
            for these, what in re.findall(r"^ {8}(\S+(?: \| \S+)*)\) takes=(\w+) ;;", rest, re.M):
                for option in these.split(" | "):
                    takes[option] = words[what].split() if what in words else None
            of = {option: takes.get(option, ()) for option in options.split()}
            of["-h"] = ()
            self.commands[name] = (of, words[place].split() if place in words else None)
        if len(self.commands) < 14 or "--prefer" not in self.commands["plan"][0]:
            sys.exit(f"arrisline completions bash: only {sorted(self.commands)} found")
        self.options = {option for options, _ in self.commands.values() for option in options} | {"--version", "--help"}

    def fault(self, words):
        """What is wrong with the words after `arrisline`, or nothing."""
        if not words or words[0] in ("--help", "--version", "-h"):
            return ""
        if words[0] not in self.commands:
            return f"there is no command {words[0]}"
        options, place = self.commands[words[0]]
        rest = list(words[1:])
        while rest:
            word = rest.pop(0)
            if not word.startswith("-") or word == "-":
                # A word in capitals stands for anything.
                if place is not None and not word.isupper() and word not in place:
                    return f"{words[0]} takes {' or '.join(place)[:60]}, not {word}"
                continue
            name, _, value = word.partition("=")
            if name not in options:
                return f"{words[0]} has no option {name}"
            if options[name] == ():
                continue
            value = value or (rest.pop(0) if rest else "")
            if options[name] is not None and value and not value.isupper() and value not in options[name]:
                return f"{name} takes {' or '.join(options[name])}, not {value}"
        return ""


def command_lines(code):
    """The words after each `arrisline` that begins a command, up to where the shell takes over."""
    for found in re.findall(r"(?:^|[|;(] *|-k |\|\| |'|\$ )(arrisline(?: [^\n|<>;#]*)?)", code, re.M):
        yield [part.strip("\"'") for part in re.findall(r"\"[^\"]*\"|\S+", re.split(r"\s[<>|)]|'$", found)[0])][1:]


@functools.cache
def tree(top):
    """The names of all files, and all code but this file, whose page of faults names what is nowhere."""
    names = [path for path in top.rglob("*") if path.is_file() and not path.relative_to(top).parts[0].startswith(("build", ".git"))]
    code = "\n".join(path.read_text(errors="replace") for path in names
                     if path.name != "docs_words.py" and path.suffix in (".h", ".cpp", ".py", ".sh", ".txt", ".json", ".cmake"))
    return {path.name for path in names}, code


def anchor(heading):
    return re.sub(r"[^\w\- ]", "", heading.replace("`", "")).strip().lower().replace(" ", "-")


def link_faults(path, text):
    for target in re.findall(r"\]\(([^)\s]+)\)", text):
        if re.match(r"https?:", target):
            yield f"a link out of the tree: {target}"
            continue
        name, _, heading = target.partition("#")
        to = (path.parent / name).resolve() if name else path
        if not to.exists():
            yield f"a link to what is not there: {target}"
        elif heading and heading not in map(anchor, re.findall(r"^#+ (.*)$", to.read_text(), re.M)):
            yield f"a link to a heading that is not there: {target}"
        else:
            yield ""


def path_faults(top, text):
    # What a how-to makes is not there yet.
    new = set(re.findall(r"`([^`]+)`, a new file:", text))
    for found in re.findall(rf"(?<![\w/.~-])({FOLDERS}/[\w.*/-]*\w)", text):
        if found in new:
            continue
        yield "" if (top / found).exists() or list(top.glob(found)) else f"{found} is not there"
    for folder, rows in re.findall(r"^\| files in `(src/\w+)` \|[^\n]*\n\|[-|]+\|\n((?:\|[^\n]*\n)+)", text, re.M):
        for cell in re.findall(r"^\| (.*?) \|", rows, re.M):
            for name in re.findall(r"`([\w.]+)`", cell):
                stands = [name] if "." in name else [f"{name}.cpp", f"{name}.h"]
                yield "" if any((top / folder / one).exists() for one in stands) else f"{folder} has no {name}"


def span_faults(top, span, command_line):
    """Of words in backticks."""
    names, code = tree(top)
    first = span.split()[0] if span.split() else ""
    if first == "arrisline" or (first in command_line.commands and re.search(r"\s--?[a-z]", span)):
        for words in command_lines(span if first == "arrisline" else f"arrisline {span}"):
            fault = command_line.fault(words)
            yield f"`{span}`: {fault}" if fault else ""
    elif first.startswith("--") and first not in OTHERS:
        # Of whichever command: one must take the word behind it too.
        alone = [name for name, (options, _) in command_line.commands.items() if first in options]
        good = first in ("--version", "--help") or any(not command_line.fault([name, *span.split()[:2]]) for name in alone
                                                        if command_line.commands[name][1] is None or len(span.split()) < 3)
        yield "" if good else f"`{span}`: no command has this option"
    elif re.fullmatch(r"[\w-]+\.(h|cpp|py|sh|cmake)", span) and span not in READERS:
        yield "" if span in names else f"`{span}`: no file of this name"
    elif re.fullmatch(r"k[A-Z]\w+", span) and span not in PATTERNS:
        yield "" if re.search(rf"\b{span}\b", code) else f"`{span}`: no such constant"


def faults_of(top, path, text, command_line):
    """Faults, and how many names and options were looked at."""
    # The commands of the how-tos know what is added there; tests/how_to.py runs them.
    shown = re.sub(r"^## How to$.*?(?=^## |\Z)", "", text, flags=re.M | re.S)
    fenced = re.findall(r"^```(?:sh|console|python)\n(.*?)^```$", shown, re.M | re.S)
    open_text = re.sub(r"^ *```.*?^ *```$", "", text, flags=re.M | re.S)
    found = [*link_faults(path, open_text), *path_faults(top, text)]
    for block in fenced:
        commands = re.findall(r"^\$ (.*)$", block, re.M) or block.split("\n")
        for line in commands:
            for words in command_lines(re.sub(r"\s#.*", "", line)):
                # Mistakes are shown with what the program says of them; options it does not have are not among them.
                fault = command_line.fault(words)
                found.append(f"{line}: {fault}" if fault else "")
    for span in re.findall(r"`([^`]+)`", open_text):
        found += span_faults(top, " ".join(span.split()), command_line)
    _, code = tree(top)
    for tags in re.findall(r"arrisline_(?:tests|referee) \"((?:\[\w+\],?)+)\"", text):
        for tag in re.findall(r"\[\w+\]", tags):
            found.append("" if re.search(rf"TEST_CASE\((?:[^;{{]*?){re.escape(tag)}", code) else f"no test has the tag {tag}")
    for name in set(re.findall(r"\bARRISLINE_\w+", text)):
        found.append("" if re.search(rf"\b{name}\b", code) else f"nothing reads {name}")
    presets = (top / "CMakePresets.json").read_text() if (top / "CMakePresets.json").exists() else ""
    for name in re.findall(r"--preset (\w+)", text):
        found.append("" if f'"name": "{name}"' in presets else f"there is no preset {name}")
    return [f"{path}: {one}" for one in found if one], len(found)


FAULTY = """See [this](none.md) and [that](trust.md#nothing-of-the-kind), and tests/none.cpp.

| files in `src/plan` | role |
|---|---|
| `sweep`, `sweeping` | x |

`arrisline paln a.profile`, `arrisline plan a.profile --kitt b.kit`, `check --jason`, `--prefer fewest-strokes`,
`arrisline new pofile`, `none_such.h`, `kNoneSuch`, `arrisline_tests "[nonesuch]"`, `ARRISLINE_NONE=1 ctest --preset fast`.

```sh
sort list | arrisline stream --threads 2 --kits b.kit
```
"""
FOUND = ["not there: none.md", "heading that is not there: trust.md", "tests/none.cpp is not there", "src/plan has no sweeping",
         "there is no command paln", "plan has no option --kitt", "check has no option --jason", "`--prefer fewest-strokes`",
         "not pofile", "none_such.h`: no file", "no such constant", "tag [nonesuch]", "nothing reads ARRISLINE_NONE", "no preset fast",
         "stream has no option --kits"]


def self_test(top, command_line):
    """A page with a fault of each kind."""
    faults, _ = faults_of(top, pathlib.Path(top / "docs/faulty.md"), FAULTY, command_line)
    missed = [one for one in FOUND if not any(one in fault for fault in faults)]
    if missed or len(faults) != len(FOUND):
        sys.exit("\n".join([*faults, f"not found: {missed}, of {len(faults)} found"]))
