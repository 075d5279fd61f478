#!/usr/bin/env python3
"""Puts one small fault at a time into the geometry and the replay and sees whether the tests notice.

    python3 tests/mutate.py [--seed N] [--count N] [--jobs N] [--only FILE:LINE]... [FILE...]

Works on copies under build/mutants; the tree itself is never touched. A mutant is one operator, figure, condition or
statement changed in one place; one that does not compile, or that the compiler warns of, is not counted. Killed: a test
fails, or runs over its time. The survivors are listed. Exit code 1 when fewer than 90 % are killed.
"""
import argparse
import pathlib
import random
import re
import resource
import shutil
import subprocess
import sys
import threading

TOP = pathlib.Path(__file__).resolve().parent.parent
AIM = 0.90
# The tests that are nearest, in a program of their own, take some seconds; the rest is built for and asked of those
# mutants alone that outlive them.
SECOND = "[examples],[random],[app],[slips],[section],[off_line],[gauge_error]"
FIRST_SECONDS, SECOND_SECONDS = 120, 1200
MOST_BYTES = 4 << 30

SWAPS = [
    # Not < into <=: on measured figures nothing lies on the border, and the two are the same program.
    (r"<=", [">="]), (r">=", ["<="]), (r"==", ["!="]), (r"!=", ["=="]),
    (r"(?<![<\-=])<(?![<=])", [">"]), (r"(?<![>\-=])>(?![>=])", ["<"]),
    (r"&&", ["||"]), (r"\|\|", ["&&"]),
    (r"(?<=[\w)\]] )\+(?= )", ["-"]), (r"(?<=[\w)\]] )-(?= )", ["+"]),
    (r"(?<=[\w)\]] )\*(?= )", ["/"]), (r"(?<=[\w)\]] )/(?= )", ["*"]),
    (r"\+=", ["-="]), (r"-=", ["+="]),
    (r"(?<=[(, ])-(?=[\w(])", [""]), (r"!(?=[\w(])", [""]),
    (r"\bstd::min\b", ["std::max"]), (r"\bstd::max\b", ["std::min"]),
    (r"\bstd::(?:sin|cos)\b", ["std::tan"]), (r"\bstd::abs\b", [""]),
    (r"\bcross\b", ["dot"]), (r"\bdot\b", ["cross"]),
    (r"\bTurn::left\b", ["Turn::right"]), (r"\bTurn::right\b", ["Turn::left"]),
    (r"\btrue\b", ["false"]), (r"\bfalse\b", ["true"]),
    (r"\bcontinue;", ["break;"]), (r"\bbreak;", ["continue;"]),
    (r"(?<![\w.])\d+(?:\.\d*)?(?:e-?\d+)?(?![\w.])", None),  # a figure: see figure()
]


def figure(text):
    """Figures as they may be mistaken: by ten times where they bound something, by one where they count."""
    if re.fullmatch(r"\d+", text):
        return [str(int(text) + 1)] + ([str(int(text) - 1)] if int(text) > 0 else [])
    if float(text) == 0:
        return ["1.0"]  # ten times nothing is the same program
    return [f"({text} * 10)", f"({text} / 10)"]


def plain(source):
    """The source with comments, strings and directives blanked, every place kept."""
    def blank(match):
        return re.sub(r"[^\n]", " ", match.group())
    return re.sub(r'//[^\n]*|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])\'|^\s*#[^\n]*|static_assert\([^;]*;|<\w+(?:::\w+)*>',
                  blank, source, flags=re.M)


def mutants(path):
    """(path, line, from, to, start, end) for every change this file takes."""
    source = (TOP / path).read_text()
    code = plain(source)
    found = []
    for pattern, into in SWAPS:
        for match in re.finditer(pattern, code):
            for new in (figure(match.group()) if into is None else into):
                found.append((match.start(), match.end(), new))
    # A statement left out: calls and assignments alone on their line.
    for match in re.finditer(r"^[ ]{2,}(?!return|using|const|static|else|if|for|while|struct|class|case|default|public|"
                             r"private)[\w:.\[\]>()-]+(?:\([^{}]*\)| [-+*/|]?= [^{}]*);$", code, flags=re.M):
        if "\n\n" not in match.group():
            found.append((match.start(), match.end(), ""))
    # A condition that always or never holds.
    for match in re.finditer(r"\bif \(([^{};]*)\)(?= )", code):
        if match.group(1).count("(") == match.group(1).count(")"):
            found += [(match.start(1), match.end(1), f"{word} && ({match.group(1)})" if word == "false" else
                       f"{word} || ({match.group(1)})") for word in ("true", "false")]
    return [(path, source.count("\n", 0, a) + 1, source[a:b], new, a, b) for a, b, new in found]


def run(command, seconds, cwd):
    def bounded():  # a loop without end must not take the machine's memory first
        resource.setrlimit(resource.RLIMIT_AS, (MOST_BYTES, MOST_BYTES))
    try:
        return subprocess.run(command, cwd=cwd, timeout=seconds, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                              preexec_fn=bounded).returncode
    except subprocess.TimeoutExpired:
        return "time"


class Bench:
    """A copy of the tree with its own build."""
    def __init__(self, number):
        self.tree = TOP / "build" / "mutants" / str(number)
        self.build = self.tree / "build" / "release"
        listed = subprocess.run(["git", "ls-files", "-co", "--exclude-standard"], cwd=TOP, check=True,
                                capture_output=True, text=True).stdout.split("\n")
        for name in filter(None, listed):
            to = self.tree / name
            to.parent.mkdir(parents=True, exist_ok=True)
            if (TOP / name).exists() and (not to.exists() or to.read_bytes() != (TOP / name).read_bytes()):
                shutil.copy(TOP / name, to)
        for command in (["cmake", "--preset", "release"], self.make("arrisline_first_tests")):
            subprocess.run(command, cwd=self.tree, check=True, stdout=subprocess.DEVNULL)

    def make(self, *targets):
        return ["cmake", "--build", "--preset", "release", "-j", "1", "--target", *targets]

    def fails(self):
        """Whether a test fails or runs over its time; None where the tree does not compile."""
        tests = str(self.build / "tests")
        if run(self.make("arrisline_first_tests"), 900, self.tree) != 0:
            return None
        if run([tests + "/arrisline_first_tests", "-a"], FIRST_SECONDS, self.tree) != 0:
            return True
        subprocess.run(self.make("arrisline", "arrisline_tests"), cwd=self.tree, check=True, stdout=subprocess.DEVNULL)
        golden = ["ctest", "--test-dir", str(self.build), "-R", "golden (replay|verify)"]
        rest = [tests + "/arrisline_tests", "-a", SECOND]
        return any(run(command, seconds, self.tree) != 0
                   for command, seconds in ((golden, FIRST_SECONDS), (rest, SECOND_SECONDS)))

    def killed(self, mutant):
        """None where it does not compile."""
        path, _, _, new, start, end = mutant
        file = self.tree / path
        source = file.read_text()
        file.write_text(source[:start] + new + source[end:])
        try:
            return self.fails()
        finally:
            file.write_text(source)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--only", action="append", default=[], metavar="FILE:LINE",
                        help="of the mutants drawn try those of this line alone")
    parser.add_argument("files", nargs="*")
    options = parser.parse_args()
    files = options.files or sorted(str(p.relative_to(TOP)) for folder in ("geometry", "replay")
                                    for p in (TOP / "src" / folder).glob("*.cpp"))
    every = [m for f in files for m in mutants(f)]
    chosen = random.Random(options.seed).sample(every, min(options.count, len(every)))
    if options.only:  # after the draw, so that a survivor of a seed is found again by the same seed
        chosen = [m for m in chosen if f"{m[0]}:{m[1]}" in options.only]
    print(f"{len(every)} mutants in {len(files)} files, {len(chosen)} tried (seed {options.seed})", flush=True)
    queue, lock, done, survivors = list(reversed(chosen)), threading.Lock(), [], []

    def work(number):
        bench = Bench(number)
        if bench.fails() is not False:  # else every mutant would count as killed
            sys.exit("the tests fail though no fault is put in")
        while True:
            with lock:
                if not queue:
                    return
                mutant = queue.pop()
            dead = bench.killed(mutant)
            with lock:
                path, line, old, new = mutant[:4]
                what = " ".join(old.split()) + " -> " + (" ".join(new.split()) or "nothing")
                word = {None: "does not compile", True: "killed", False: "SURVIVED"}[dead]
                print(f"{path}:{line}: {what}: {word}", flush=True)
                if dead is not None:
                    done.append(dead)
                if dead is False:
                    survivors.append(f"{path}:{line}: {what}")

    threads = [threading.Thread(target=work, args=(i,)) for i in range(options.jobs)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    share = sum(done) / max(1, len(done))
    print(f"\n{sum(done)} of {len(done)} mutants killed, {100 * share:.1f} %; survivors:")
    print("\n".join("  " + s for s in sorted(survivors)))
    return 0 if done and share >= AIM else 1


if __name__ == "__main__":
    sys.exit(main())
