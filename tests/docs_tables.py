"""Tables of the documents held against the program; used by docs.py.

The table of planes.md is reckoned anew, the glossary draws what the program does, limits.md has the constants with their figures,
and plan-json.md and job-json.md have every member that the program writes, and no other.
"""
import fractions
import json
import math
import pathlib
import re
import subprocess
import tempfile


def length(text):
    return float(sum(fractions.Fraction(part) for part in text.split()))


def radius_faults(top):
    """The radii in planes.md against the circle through the ends of the chord and the top of the rise, found by halving."""
    text = (top / "docs/planes.md").read_text()
    rises = [length(one) for one in re.findall(r"rise (\S+) (?=\|)", re.search(r"^\| chord .*$", text, re.M)[0])]
    rows = re.findall(r"^\| ([0-9 /]+) \| ([0-9. |]+) \|$", text, re.M)
    faults = []
    for chord, cells in rows:
        for rise, cell in zip(rises, cells.split(" | "), strict=True):
            # The larger the radius, the less an arc rises over its chord.
            low, high = length(chord) / 2, 100.0
            for _ in range(200):
                middle = (low + high) / 2
                rises_by = middle - math.sqrt(middle**2 - (length(chord) / 2) ** 2)
                low, high = (middle, high) if rises_by > rise else (low, middle)
            if abs(low - float(cell)) > 0.00501:
                faults.append(f"docs/planes.md: chord {chord}, rise {rise}: {cell}, not {low:.4f}")
    if len(rows) * len(rises) < 28:
        faults.append("docs/planes.md: its table is not found")
    return faults


def glossary_faults(top, program):
    """Words that the program draws and the glossary does not, and the other way round."""
    listed = subprocess.run([program, "words", "--ascii"], text=True, stdout=subprocess.PIPE, check=True).stdout
    drawn = set(re.findall(r"^  (\S+) .*\n {6}[^a-z\n]+$", listed, re.M))
    shown = set(re.findall(r"^\$ sh draw (\S+)$", (top / "docs/glossary.md").read_text(), re.M))
    faults = [f"docs/glossary.md: {'not drawn' if word in drawn else 'no picture of the program'}: {word}"
              for word in sorted(drawn ^ shown)]
    if len(drawn) < 22:
        faults.append(f"arrisline words: only {len(drawn)} drawn words found")
    return faults


def limit_faults(top):
    """Each row of limits.md that names a constant has its figure."""
    headers = (top / "include/arrisline/limits.h").read_text() + (top / "src/section/shapes.h").read_text()
    stands = {}
    for name, value in re.findall(r"^inline constexpr \S+ (kMax\w+) = ([^;]+);", headers, re.M):
        shifted = re.fullmatch(r"std::size_t\{(\d+)\} << (\d+)", value)
        stands[name] = int(shifted[1]) << int(shifted[2]) if shifted else int(float(value.replace("'", "")))
    rows = re.findall(r"^\| [^|]+ \| ([\d ]+?)( [KMG]iB)? \| `(kMax\w+)`", (top / "docs/limits.md").read_text(), re.M)
    faults = []
    for figure, unit, name in rows:
        value = int(figure.replace(" ", "")) << {"": 0, " KiB": 10, " MiB": 20, " GiB": 30}[unit]
        if stands.get(name) != value:
            faults.append(f"docs/limits.md: {name} is {stands.get(name)}, not {value}")
    # Those of the search stand below the table.
    faults += [f"docs/limits.md: no row for {name}" for name in stands
               if name not in [row[2] for row in rows] and f"`{name}`" not in (top / "docs/limits.md").read_text()]
    if len(rows) < 28:
        faults.append(f"docs/limits.md: only {len(rows)} rows found")
    return faults


# A plough with a body, a shaped plane, facets, a preference and a tolerance that would do: what the examples do not have.
FILES = {"groove.profile": "stock 2 wide, 3/4 thick\nstart face 1\nstep down 1/4\nfillet out 1/4\nstep up 1/4\n",
         "plough.kit": "plough 1/4 body 1/8 above 1/2\n",
         "edge.profile": "stock 2 wide, 3/4 thick\nstart face 1/2\novolo 3/8\nfillet out 1/8\n",
         "shaped.kit": "shaped 3/8 ovolo\novolo 3/8\nfillet out 1/8\nend\n",
         "cove.profile": "stock 2 wide, 3/4 thick\nstart face 1/4\ncavetto 1/4\n",
         "fives.kit": "round 5\nrebate 3/4\nscraper\n",
         "flat.kit": "rebate 3/4\nshop facets 12\n",
         "short.job": "kit examples/pair-of-sixes.kit\nblank 3/4 thick 2 wide 24 long\n"
                      "mould edge edge.profile width 1 length 20 count 3\n"}
PLANS = ["plan examples/bookcase-base.profile --kit examples/half-set.kit --gauge-error 1/64", "plan groove.profile --kit plough.kit",
         "plan examples/hall-cyma.profile --kit examples/pair-of-sixes.kit", "plan edge.profile --kit shaped.kit",
         "plan cove.profile --kit fives.kit --scrape 0.25mm",
         "plan edge.profile --kit flat.kit --prefer fewest-cuts"]
JOBS = ["job examples/hall-bookcase.job", "job short.job"]


def members_of(value):
    if isinstance(value, dict):
        for name, part in value.items():
            # The plans of a job are told of in plan-json.md, and stand by the names of its mouldings.
            yield name
            if name != "plans":
                yield from members_of(part)
    elif isinstance(value, list):
        for part in value:
            yield from members_of(part)


def member_faults(top, program, page, commands):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "examples").symlink_to(top / "examples")
        for file, text in FILES.items():
            (folder / file).write_text(text)
        written = set()
        for command in commands:
            answer = subprocess.run([program, *command.split(), "--json"], cwd=folder, text=True, stdout=subprocess.PIPE, check=False)
            if not answer.stdout.startswith("{"):
                return [f"{command} --json prints no object"]
            written.update(members_of(json.loads(answer.stdout)))
    text = (top / "docs" / page).read_text()
    rows = {member for row in re.findall(r"^\| (`[^|]*) \|", text, re.M) for member in re.findall(r"`(\w+)`", row)}
    faults = [f"docs/{page}: nothing of the member {one}" for one in sorted(written)
              if f"`{one}`" not in text and f'"{one}"' not in text]
    return faults + [f"docs/{page}: no plan or job here has the member {one}" for one in sorted(rows - written)]


def faults(top, program):
    return [*radius_faults(top), *glossary_faults(top, program), *limit_faults(top),
            *member_faults(top, program, "plan-json.md", PLANS), *member_faults(top, program, "job-json.md", JOBS)]
