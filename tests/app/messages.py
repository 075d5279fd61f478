#!/usr/bin/env python3
"""Every message that a maker can get, provoked, and held to what a message owes: it says what to do next.

tests/app/messages.txt has the cases. A line "$ ARGUMENTS" runs the program in a folder with the files of SETUP; lines before it that
begin with "| " are a file, its name after "| @ ", and "|b " is a line of it with escapes, without an end; "|x N " is one N times. Below stands what is
said, one message a line, as --approve writes it. At its end stand the messages that are not provoked, each with the reason.

Of each message:
- it says what to do: names what was expected, or the name that was meant; or shows an example; or bids something; or names a
  command of ours, which there must be;
- it has none of the words of JARGON, for which a maker would have to be a programmer;
- it ends as a sentence in a line does, calls nothing out, and holds no raw control byte.

Besides, the sources are searched for what makes messages. Every run of words in them must be said in some case, or stand at the end
of the table. A message that is put together elsewhere than in such a call, or of the very words of another, is not found so.

usage: messages.py [--approve]
"""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
TABLE = TOP / "tests/app/messages.txt"
PROGRAM = os.environ.get("ARRISLINE_PROGRAM", str(TOP / "build/release/arrisline"))

SETUP = {
    "good.profile": "profile good\nstock 2 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n",
    "good.kit": "kit good\nrebate 3/4\nhollow 6\nround 6\nplough 1/8 1/4\nscraper\n",
    "small.kit": "kit small\nrebate 3/4\n",
    "plough.kit": "kit plough\nplough 1/2\nscraper\n",
    "good.job": "kit good.kit\nblank poplar 3/4 thick 5 1/2 wide 96 long\nmould shelf good.profile width 2 length 42\n",
    "two words.profile": "stock 2 wide, 3/4 thick\nstart face 3/8\nchamfer 3/8\n",
    "many/empty.txt": "",
}

# Of those that are about JSON, which only programs hand in: they may call its parts by name.
OF_PROGRAMS = ("stream", "replay")
JARGON = re.compile(
    r"\b(tokens?|pars(e|er|ed|ing)|JSON|finite|schema|UTF-?(8|16)|errno|NUL|null|bytes?|MiB|strings?|arrays?|objects?|"
    r"integers?|boolean|exponents?|overflow\w*|invalid|illegal|syntax|exceptions?|stdin|stdout|standard (input|output)|"
    r"arguments?|parameters?|buffers?|regex|statements?|encod\w+|descriptors?|XML|ASCII|exit code)\b", re.I)
# What a program's own box for saving calls its choices, and options and kinds of files that a maker picks by name.
NAMED_SO = ("with the encoding UTF-8", "(UTF-16)", "--json", "--ascii", "--plain", "DXF R12 in ASCII")
BIDS = ("add allow ask begin build check choose copy cut draw extend give keep leave let lean make measure mend move name "
        "plan put report round run save set shorten show split start take trace turn unpack use wait widen write").split()
TO_RAISE = re.compile(r"; to raise this limit, make k\w+ larger in include/arrisline/limits\.h and build again$")

HEAD = re.compile(r"^(arrisline( [a-z]+)?|\S+:\d+:\d+): (error|warning|fault|note): ")


def read_table():
    cases, files, outside = [], [], []
    section = cases
    for line in TABLE.read_text().split("\n"):
        if line.startswith("| @ "):
            if not files or cases and cases[-1]["files"] is files:
                files = []
            files.append([line[4:], b""])
        elif line.startswith("|b "):
            files[-1][1] += line[3:].encode().decode("unicode_escape").encode("latin-1")
        elif line.startswith("|x "):
            _, count, what = line.split(" ", 2)
            files[-1][1] += what.encode().decode("unicode_escape").encode("latin-1") * int(count)
        elif line.startswith("|"):
            files[-1][1] += line[2:].encode() + b"\n"
        elif line.startswith("$ "):
            cases.append({"run": line[2:], "files": files, "said": []})
        elif line.startswith("= "):
            section = outside
            reason = line[2:]
            outside.append([reason, []])
        elif line.startswith("- "):
            outside[-1][1].append(line[2:])
        elif line and not line.startswith("#"):
            if section is outside:
                sys.exit(f"{TABLE}: not understood: {line}")
            cases[-1]["said"].append(line)
    return cases, outside


def messages_of(run, out, err):
    """What is said, one a line: the heads of diagnostics without the lines they quote, and what goes with them."""
    said = []
    for line in err.split("\n"):
        if line.startswith("see") and said:
            said[-1] += " | " + line
        elif line and not line.startswith("  "):
            said.append(line)
    if run.startswith("stream"):
        for line in filter(None, out.split("\n")):
            error = json.loads(line).get("error")
            if error:
                said += [error["message"]] + [one["message"] for one in error["diagnostics"]]
    elif run.startswith("replay"):
        said = [" | ".join([line for line in out.split("\n") if line] + said)]
    elif run.startswith(("check", "plan")) and not err:
        said = [re.sub(r"\s+", " ", out).strip()]
    return said


def provoke(case, folder):
    for name, content in case["files"]:
        (folder / name).write_bytes(content)
    answer = subprocess.run(["sh", "-c", f'"$ARRISLINE" {case["run"]}'], cwd=folder, stdin=subprocess.DEVNULL, capture_output=True,
                            timeout=120, env={**os.environ, "ARRISLINE": PROGRAM, "LC_ALL": "C.UTF-8", "TERM": "dumb"})
    raw = [b for b in answer.stdout + answer.stderr if b < 0x20 and b != 0x0A or b == 0x7F]
    out, err = answer.stdout.decode(), answer.stderr.decode()
    for name, _ in case["files"]:
        (folder / name).unlink(missing_ok=True)
    return messages_of(case["run"], out, err), answer.returncode, raw


def commands():
    text = subprocess.run([PROGRAM, "--help"], text=True, stdout=subprocess.PIPE, check=True).stdout
    found = set(re.findall(r"^  ([a-z]+)(?: |$)", text.split("-h, --help")[0], re.M))
    if len(found) < 10:
        sys.exit("arrisline --help: its commands are not found")
    return found


def says_what_to_do(message, known):
    """By what the message does so; nothing where it does not."""
    text = TO_RAISE.sub("", HEAD.sub("", message))
    if "did you mean '" in text:
        return "the name that was meant"
    for command in re.findall(r"arrisline (--help|--version|[a-z]+)", text):
        if command.startswith("--") or command in known:
            return "a command"
    if re.search(r"(such as|as in|as|for example:?) '?\"?[^ ]*[\d'\"(]", text):
        return "an example"
    if re.search(r"\bexpected (?!here|,)\S", text):
        return "what was expected"
    if re.search(r" is (a number of seconds|[\w-]+(, [\w-]+)* or [\w-]+), .*not '", text):
        return "what there is"
    for clause in re.split(r"[;:,|]| and | or |\. | - ", text):
        words = clause.split()
        if words and words[0].lower() in BIDS:
            return "a bidding"
    return ""


def faults_of(message, run, known):
    out = []
    if not says_what_to_do(message, known):
        out.append("does not say what to do next")
    plain = re.sub(r"'[^']*'|\"[^\"]*\"", "''", TO_RAISE.sub("", message))
    for words in NAMED_SO:
        plain = plain.replace(words, "")
    plain = re.sub(r"\(.*?\)(?=; save the drawing again)", "", plain)  # what the reader of XML calls it
    word = JARGON.search(plain)
    if word and not run.startswith(OF_PROGRAMS):
        out.append(f"has the word '{word[0]}'")
    for command in re.findall(r"\barrisline ([a-z]+)", HEAD.sub("", message)):
        if command not in known:
            out.append(f"names a command that there is not: {command}")
    if "!" in plain:
        out.append("calls out")
    if re.search(r"[,;]$|  |\bgive other figures$", message) or message.endswith(".") and not run.startswith(("check", "plan", "replay")):
        out.append("does not end as a message does")
    return out


def without_comments(text):
    pattern = r'R"(\w*)\((?:.|\n)*?\)\1"|"(?:\\.|[^"\\\n])*"|//[^\n]*|/\*(?:.|\n)*?\*/'
    return re.sub(pattern, lambda m: m[0] if m[0].startswith('"') else ('""' if m[0].startswith("R") else ""), text)


def statements(text):
    """Of a C++ source, each with its line; brackets and strings kept whole enough for literals to stay with their call."""
    line, start, current, depth = 1, 1, "", 0
    for part in re.split(r'("(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])\')', text):
        if part[:1] in ('"', "'"):
            current += part if part[0] == '"' else "0"
            continue
        for c in part:
            line += c == "\n"
            depth += (c == "(") - (c == ")")
            if c in ";{}" and depth <= 0:
                yield start, current
                current, depth = "", 0
            else:
                if not current.strip():
                    start = line
                current += c


def decoded(literal):
    """What a C++ literal says; nothing for one with bytes that are no text."""
    if "\\x" in literal:
        return ""
    plain = re.sub(r"\\u[0-9A-Fa-f]{4}", "", literal)
    return plain.replace("\\n", "\n").replace('\\"', '"').replace("\\\\", "\\")


MAKES = re.compile(
    r"\b(error|warn|warn_once|fail|fail_\w+|usage_error|bad_usage|refusal|refused|refuse|missing|fault|error_record|our_fault|runtime_error|over|complain|at_first|"
    r"read_(length|number|whole|name|word|named_length)|known_words|not_plain)\s*\(|\bwhy\b\s*\+?=[^=]|"
    r"\b(message|reason|trouble|trouble_|fault|fault\.text|err|no_input_|said|what|wanted)\s*\+?=[^=]|\bk(Save|Ask|Begin|Such)\w*\b")
# Where whole functions only word what others say.
WORDED_IN = ("text/file.cpp", "wording/foreign.cpp", "wording/length.cpp", "text/other_kind.cpp", "wording/spelling.cpp", "app/output.cpp",
             "app/parse.cpp", "app/app.cpp", "trace/read_tracing.cpp", "trace/dxf.cpp", "trace/svg_path.cpp", "trace/svg.cpp",
             "plan/reasons.cpp", "report/plan_json_syntax.cpp", "report/reasons.cpp")
FOLDERS = ("wording", "text", "app", "section", "trace", "job", "cutting", "reach", "plan", "sheet", "report")
# The form of a plan as JSON, and what the replay finds in one, are for programs: tests/replay holds their words, and each of them is
# followed by what to do.
NOT_MESSAGES = ("app/help.cpp", "text/vocabulary.cpp", "report/plan_json_read.cpp", "report/plan_json_cuts.cpp",
                "report/plan_json_words.h", "report/json_members.h")


def words_in_sources():
    """Each run of words in a call that makes a message: the words, and where they stand."""
    out = {}
    for folder in FOLDERS:
        for path in sorted((TOP / "src" / folder).glob("*.*")):
            name = f"{folder}/{path.name}"
            if name in NOT_MESSAGES:
                continue
            text = re.sub(r"^\s*#.*$", "", without_comments(path.read_text()), flags=re.M)
            for line, statement in statements(text):
                if not MAKES.search(statement) and name not in WORDED_IN:
                    continue
                joined = re.sub(r'"\s+"', "", statement)
                for literal in re.findall(r'"((?:\\.|[^"\\])*)"', joined):
                    said = decoded(literal).strip(" ;:,|\n")
                    if len(re.findall(r"[A-Za-z]{2,}", said)) >= 2 and len(said) > 8:
                        out.setdefault(said, f"src/{name}:{line}")
    return out


def held_faults(reason, list_, known):
    """Of messages that a test in C++ has: whether it has them, and whether they are as messages are to be."""
    held = re.search(r"held in (\S+)$", reason)
    if not held:
        return
    text = re.sub(r'"\s+"', "", (TOP / held[1]).read_text())
    lines = [line for one in re.findall(r'"((?:\\.|[^"\\])*)"', text) for line in decoded(one).split("\n")]
    run = next((one for one in OF_PROGRAMS if one in held[1]), "")
    for words in list_:
        having = [line for line in lines if words in line]
        if not having:
            yield f"{held[1]}: does not hold: {words}"
        elif not reason.startswith("part of") and not any(not faults_of(line, run, known) for line in having):
            yield f"{held[1]}: {faults_of(having[0], run, known)[0]}: {having[0]}"


def rule_is_sound(known):
    """The rule tells one from the other on messages made for it."""
    good = ("a:1:1: error: no stock; expected a line such as 'stock 2 wide'", "x: error: there is no such file; did you mean 'y'?",
            "x: error: write a unit against its number: '3/8in'", "x: error: it is wrong; leave it out", "see: arrisline plan --help")
    bad = ("x: error: the number is wrong", "x: error: unexpected input", "x: error: see: arrisline nonsense",
           "x: error: writes are refused", "x: error: something is amiss here")
    return all(says_what_to_do(one, known) for one in good) and not any(says_what_to_do(one, known) for one in bad) \
        and faults_of("x: error: bad token; leave it out", "check", known) and not faults_of("x: error: bad word; leave it out", "check", known)


def main():
    if not os.access(PROGRAM, os.X_OK):
        sys.exit(f"{PROGRAM}: no such program; build it, or name another by ARRISLINE_PROGRAM")
    known = commands()
    if not rule_is_sound(known):
        sys.exit("messages.py: its own rule is not sound")
    cases, outside = read_table()
    faults, every, new = 0, set(), {}

    def complain(text):
        nonlocal faults
        faults += 1
        print(text)

    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for file, content in SETUP.items():
            (folder / file).parent.mkdir(exist_ok=True)
            (folder / file).write_text(content)
        for case in cases:
            said, code, raw = provoke(case, folder)
            new[id(case)] = said
            if raw:
                complain(f"$ {case['run']}: raw control bytes: {raw[:5]}")
            if not said:
                complain(f"$ {case['run']}: nothing is said, exit code {code}")
            if said != case["said"] and "--approve" not in sys.argv:
                complain(f"$ {case['run']}: says\n  " + "\n  ".join(said) + "\nand not\n  " + "\n  ".join(case["said"]))
            every.update(said)
            for message in said:
                for fault in faults_of(message, case["run"], known):
                    complain(f"$ {case['run']}: {fault}: {message}")
    if "--approve" in sys.argv:
        approve(new, cases)
    whole = re.sub(r"\s+", " ", " ".join(every))
    excused = {words for _, list_ in outside for words in list_}
    in_sources = words_in_sources()
    for words, where in in_sources.items():
        said = re.sub(r"\s+", " ", words) in whole
        if not said and words not in excused:
            complain(f"{where}: no case has the message: {words}")
        if said and words in excused:
            complain(f"{TABLE.name}: provoked after all: {words}")
    for words in sorted(excused - in_sources.keys()):
        complain(f"{TABLE.name}: no longer in the sources: {words}")
    for reason, list_ in outside:
        for fault in held_faults(reason, list_, known):
            complain(fault)
    print(f"{len(cases)} cases, {len(every)} different messages, {len(in_sources)} runs of words in the sources, "
          f"{len(excused)} of them not provoked")
    if len(every) < 200 or len(in_sources) < 250:
        complain("so few are found that something is amiss with the search")
    sys.exit(1 if faults else 0)


def approve(new, cases):
    """Writes down what is said now; the cases and the end of the table stay as they are."""
    out, at, dropping = [], 0, False
    for line in TABLE.read_text().split("\n"):
        if line.startswith("$ "):
            out.append(line)
            out += new[id(cases[at])]
            at, dropping = at + 1, True
        elif line == "" or line.startswith(("#", "|", "= ", "- ")):
            dropping = False
            out.append(line)
        elif not dropping:
            out.append(line)
    TABLE.write_text("\n".join(out))


if __name__ == "__main__":
    main()
