"""HTML sheets in a real browser: python3 browser.py [unittest's own arguments]

Takes the program from $ARRISLINE_PROGRAM. Where $ARRISLINE_SHOTS names a folder, the pictures of the pages are
kept there. Debian packages: chromium, chromium-driver, poppler-utils.
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unittest

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
sys.dont_write_bytecode = True
from measures import CONTRAST, COUNT_LABELS, CURRENT, HEADINGS, LABELS, LINES, SHOWN, SMALL  # noqa: E402
from webdriver import Browser  # noqa: E402

EXAMPLES = pathlib.Path(__file__).resolve().parents[2] / "examples"
SIZES = ((360, 740), (820, 1180), (1280, 800))
# To break the page with.
HOSTILE = "<script>document.title='broken'</script><img src=x onerror=alert(1)> \"&amp;'<h1>"


def program(*arguments):
    return subprocess.run([os.environ["ARRISLINE_PROGRAM"], *map(str, arguments)], capture_output=True, text=True,
                          check=False)


class Sheets(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        if shutil.which("pdftotext") is None:
            raise SystemExit("pdftotext is missing: install the Debian package poppler-utils")
        cls.folder = pathlib.Path(tempfile.mkdtemp(prefix="arrisline-sheets-"))
        cls.addClassCleanup(shutil.rmtree, cls.folder, ignore_errors=True)
        shots = os.environ.get("ARRISLINE_SHOTS")
        cls.shots = pathlib.Path(shots) if shots else None
        cls.listed = {}
        text = (EXAMPLES / "bookcase-top.profile").read_text()
        hostile = cls.written("hostile.profile", re.sub(r"^profile .*$", lambda _: "profile " + HOSTILE, text, flags=re.M))
        sides = cls.written("sides.profile", "units inch\nstock 1 1/2 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n"
                            "side underside\nstart face 1/2\nstep down 1/4\nfillet out 1/2\n")
        wide = cls.written("wide.profile", "units inch\nstock 15 3/4 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n")
        tiny = cls.written("tiny.profile", "units mm\nstock 3 wide, 3 thick\nstart face 1\nstep down 1\nfillet out 1\n")
        small = cls.written("small.kit", "units mm\nrebate 6\nshop gauge .05\n")
        half, sixes = EXAMPLES / "half-set.kit", EXAMPLES / "pair-of-sixes.kit"
        for name, code, arguments in (
                ("plan", 0, ("plan", EXAMPLES / "hall-cyma.profile", "--kit", half)),
                ("many", 0, ("plan", EXAMPLES / "bookcase-base.profile", "--kit", half)),
                ("no", 1, ("plan", EXAMPLES / "hall-cyma.profile", "--kit", sixes)),
                ("sides", 0, ("plan", sides, "--kit", half)),
                ("wide", 0, ("plan", wide, "--kit", half, "--gauge-error", "1/64")),
                ("tiny", 0, ("plan", tiny, "--kit", small)),
                ("hostile", 0, ("plan", hostile, "--kit", half)),
                ("job", 0, ("job", EXAMPLES / "hall-bookcase.job"))):
            said = program(*arguments, "--sheet", cls.folder / f"{name}.html")
            if said.returncode != code:
                raise AssertionError(f"{arguments}: exit code {said.returncode}\n{said.stderr}")
            cls.listed[name] = said.stdout
        cls.browser = Browser()
        cls.addClassCleanup(cls.browser.close)

    @classmethod
    def written(cls, name, text):
        path = cls.folder / name
        path.write_text(text)
        return path

    def setUp(self):
        self.browser.scripts(True)
        self.browser.prefer(color_scheme="light", reduced_motion="reduce")
        self.browser.window(1280, 800)
        self.open_blank()

    def open_blank(self):
        self.browser.open("about:blank")
        self.browser.log("browser")
        self.browser.log("performance")

    def tearDown(self):
        self.assertEqual(self.browser.log("browser"), [], "the console is empty")
        for url in self.browser.requests():
            self.assertRegex(url, r"^(about:blank|file://" + re.escape(str(self.folder)) + r"/\w+\.html(#\S*)?)$",
                             "nothing is fetched but the page")

    def open(self, name, step=""):
        self.browser.open(f"{self.folder}/{name}.html{step}")

    def cuts(self, name):
        return len(re.findall(r"^ +\d+\. .*: ", self.listed[name].split("\nCuts\n")[1].split("\nWhat is left\n")[0],
                              re.M))

    def check_at(self, step, of, bench=".bench"):
        """The step is shown, marked in the list, told, and on the slider and the buttons."""
        ask = self.browser.ask
        self.assertEqual(ask(SHOWN, bench), [step])
        self.assertEqual(ask(CURRENT, bench), [step])
        self.assertEqual(ask("return Number(document.querySelector(arguments[0] + ' input').value)", bench), step)
        self.assertEqual(ask("return Array.from(document.querySelectorAll(arguments[0] + ' button'), "
                             "(b) => b.getAttribute('aria-disabled'))", bench),
                         [str(step == 0).lower(), str(step == of).lower()])

    def said(self):
        return self.browser.ask("return document.querySelector('.said').textContent")

    def test_buttons(self):
        self.open("plan")
        last = self.cuts("plan")
        self.assertGreaterEqual(last, 5)
        self.check_at(0, last)
        for step in range(1, last + 1):
            self.browser.click("button:last-of-type")
            self.check_at(step, last)
            self.assertTrue(self.said().startswith(f"Cut {step} of {last}: "), self.said())
        self.browser.click("button:last-of-type")
        self.check_at(last, last)
        self.browser.click("button:first-of-type")
        self.check_at(last - 1, last)

    def test_keys(self):
        self.open("plan")
        last = self.cuts("plan")
        for key, step in (("ArrowRight", 1), ("ArrowRight", 2), ("ArrowLeft", 1), ("End", last), ("ArrowRight", last),
                          ("Home", 0), ("ArrowLeft", 0)):
            self.browser.key(key)
            self.check_at(step, last)
        self.assertEqual(self.said(), "The finished section")

    def test_keys_on_the_slider(self):
        self.open("plan")
        last = self.cuts("plan")
        self.browser.ask("document.querySelector('input').focus()")
        for key, step in (("ArrowRight", 1), ("End", last), ("ArrowLeft", last - 1), ("Home", 0)):
            self.browser.key(key)
            self.check_at(step, last)

    def test_everything_is_reached_by_the_keyboard(self):
        self.open("plan")
        reached = []
        for _ in range(60):
            self.browser.key("Tab")
            what = self.browser.ask("const e = document.activeElement; return e === document.body ? '' : e.tagName + "
                                    "' ' + (e.getAttribute('aria-label') || e.textContent)")
            if what in reached or not what:
                break
            reached.append(what)
        for wanted in ("BUTTON Back", "INPUT Cut shown", "BUTTON Next", "A The finished section"):
            self.assertIn(wanted, reached)
        self.assertEqual(sum(what.startswith("A ") for what in reached), self.cuts("plan") + 2)  # and the cautions

    def test_rows(self):
        self.open("plan")
        last = self.cuts("plan")
        for step in (3, 0, last):
            self.browser.click(f".list li:nth-child({step + 1}) a")
            self.check_at(step, last)

    def test_a_row_below_the_picture_brings_it_back(self):
        self.browser.window(360, 740, touch=True)
        self.open("plan")
        self.browser.click(".list li:last-child a")
        self.check_at(self.cuts("plan"), self.cuts("plan"))
        top = self.browser.ask("return document.querySelector('.now').getBoundingClientRect().top")
        self.assertTrue(-5 <= top <= 370, top)

    def test_swipes(self):
        self.browser.window(360, 740, touch=True)
        self.open("plan")
        last = self.cuts("plan")
        self.browser.ask("document.querySelector('.stage').scrollIntoView()")
        for start, end, step in (((300, 150), (80, 160), 1), ((300, 150), (80, 150), 2), ((80, 150), (300, 140), 1),
                                 ((200, 150), (180, 150), 1), ((200, 250), (150, 60), 1), ((80, 150), (300, 150), 0),
                                 ((80, 150), (300, 150), 0)):
            self.browser.swipe(start, end)
            self.check_at(step, last)
            self.browser.ask("document.querySelector('.stage').scrollIntoView()")

    def test_the_page_comes_back_to_its_step(self):
        self.open("plan")
        self.browser.key("ArrowRight")
        self.browser.key("ArrowRight")
        self.browser.do("POST", "/refresh", {})
        self.check_at(2, self.cuts("plan"))
        self.open("plan", "#plan-step4")
        self.check_at(4, self.cuts("plan"))

    def test_without_scripts_all_steps_are_shown(self):
        self.browser.scripts(False)
        for name in ("plan", "many", "sides"):
            for size in SIZES:
                self.browser.window(*size, touch=size[0] < 1000)
                self.open(name)
                self.assertEqual(self.browser.ask("return document.documentElement.className"), "")
                self.assertEqual(self.browser.ask(SHOWN, ""), list(range(self.cuts(name) + 1)))
                self.assertEqual(self.browser.ask(
                    "return Array.from(document.querySelectorAll('button'), (b) => b.getClientRects().length)"), [0, 0])
                tops = self.browser.ask("return Array.from(document.querySelectorAll('.step'), "
                                        "(s) => s.getBoundingClientRect().top)")
                self.assertEqual(tops, sorted(tops))
                self.check_words(name)

    def check_words(self, name):
        """Every line of the list is on the page, as a person reads it."""
        page = " ".join(self.browser.ask("return document.body.innerText").split())
        lines = [line for line in self.listed[name].splitlines() if line.strip()]
        for line in lines:
            words = " ".join(line.split())
            self.assertIn(words, page)
        self.assertGreater(len(lines), 20)

    def test_paper(self):
        for name in ("plan", "many", "sides", "job"):
            self.open(name)
            if name == "plan":
                self.browser.key("ArrowRight")  # whichever step is shown, all are printed
            pdf = self.folder / f"{name}.pdf"
            self.browser.print_to(pdf)
            words = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
            titles = self.browser.ask("return Array.from(document.querySelectorAll('.step'), "
                                      "(s) => s.firstElementChild.textContent)")
            self.assertGreaterEqual(len(titles), 3)
            for title in titles:
                self.assertIn(title[:40], words)
            self.assertIn("The irons are sharp", words)
            self.assertNotIn("Back\n", words)
            self.assertNotRegex(words, r"\bNext\b")

    def test_sizes_and_schemes(self):
        for name in ("plan", "many", "sides", "wide", "job", "no"):
            for width, height in SIZES:
                for scheme in ("light", "dark"):
                    with self.subTest(page=name, width=width, scheme=scheme):
                        self.browser.window(width, height, touch=width < 1000)
                        self.browser.prefer(color_scheme=scheme, reduced_motion="reduce")
                        self.open(name)
                        wide = self.browser.ask("return document.documentElement.scrollWidth")
                        self.assertLessEqual(wide, width)
                        self.assertEqual(self.browser.ask(SMALL), [])
                        least, words, seen = self.browser.ask(CONTRAST)
                        self.assertGreater(seen, 10 if name == "no" else 20)
                        self.assertGreaterEqual(least, 4.5, words)
                        if self.shots:
                            self.browser.screenshot(self.shots / f"{name}-{width}-{scheme}.png")
                        if name == "plan":
                            for role, got in self.browser.ask(LINES).items():
                                self.assertGreaterEqual(got, 3, role)

    def test_dark_is_dark(self):
        ground = "return getComputedStyle(document.body).backgroundColor.match(/\\d+/g).map(Number)"
        self.open("plan")
        self.assertGreater(min(self.browser.ask(ground)), 200)
        self.browser.prefer(color_scheme="dark")
        self.assertLess(max(self.browser.ask(ground)), 60)

    def test_labels_stay_apart(self):
        for name in ("plan", "many", "sides", "wide", "tiny"):
            labels = 0
            for step in range(self.cuts(name) + 1):
                self.open(name, f"#plan-step{step}")
                self.check_at(step, self.cuts(name))
                self.assertEqual(self.browser.ask(LABELS), [])
                labels += self.browser.ask(COUNT_LABELS)
            self.assertGreater(labels, self.cuts(name))
        self.browser.scripts(False)
        self.open("job")
        self.assertEqual(self.browser.ask(LABELS), [])

    def test_a_job_has_steps_of_its_own_for_each_plan(self):
        self.open("job")
        ids = self.browser.ask("return Array.from(document.querySelectorAll('.work > h2'), (h) => h.id)")
        self.assertEqual(ids, ["run1", "run2", "run3", "run4"])
        second = "[aria-labelledby=run2] .bench"
        self.browser.click(".contents li:nth-child(2) a")
        self.browser.ask("document.querySelector(arguments[0]).scrollIntoView()", second)
        self.browser.key("ArrowRight")
        self.assertEqual(self.browser.ask(SHOWN, second), [1])
        self.assertEqual(self.browser.ask(SHOWN, "[aria-labelledby=run1] .bench"), [0])

    def test_reasons_where_there_is_no_plan(self):
        self.open("no")
        self.assertEqual(self.browser.ask("return document.querySelectorAll('button').length"), 0)
        self.assertEqual(self.browser.ask("return document.querySelectorAll('svg')[0].getClientRects().length"), 1)
        page = " ".join(self.browser.ask("return document.body.innerText").split())
        self.assertIn("No: these planes cannot cut it", page)
        self.assertIn("What would do, each by itself:", page)

    def test_labels_for_assistive_technology(self):
        for name in ("plan", "many", "job", "no"):
            self.open(name)
            ask = self.browser.ask
            self.assertEqual(ask("return document.documentElement.lang"), "en")
            self.assertEqual(ask("return document.querySelectorAll('main').length"), 1)
            levels = ask(HEADINGS)
            self.assertEqual(levels.count(1), 1)
            self.assertEqual(levels[0], 1)
            for before, after in zip(levels, levels[1:]):
                self.assertLessEqual(after, before + 1, f"{name}: {levels}")
            self.assertEqual(ask("""return Array.from(document.querySelectorAll("svg")).filter((svg) =>
                svg.getAttribute("role") !== "img" || !svg.querySelector("title").textContent ||
                !svg.querySelector("desc").textContent ||
                !document.getElementById(svg.getAttribute("aria-labelledby"))).length"""), 0)
            self.assertEqual(ask("""return Array.from(document.querySelectorAll("button, input, nav")).filter((e) =>
                !(e.textContent.trim() || e.getAttribute("aria-label"))).length"""), 0)

    def test_the_measures_can_fail(self):
        self.open("plan", "#plan-step1")
        ask = self.browser.ask
        ask("""const label = document.querySelector(".now svg text"); label.parentNode.append(label.cloneNode(true));
            document.querySelector("button").style.minHeight = "30px";
            document.querySelector("h1").style.color = "rgb(150, 140, 130)";""")
        self.assertEqual(len(ask(LABELS)), 1)
        self.assertEqual(len(ask(SMALL)), 1)
        self.assertLess(ask(CONTRAST)[0], 4.5)
        ask("document.querySelector('.now svg text').setAttribute('x', -3)")
        self.assertEqual(len(ask(LABELS)), 1)

    def test_less_motion(self):
        moving = "return getComputedStyle(document.querySelector('.now figure')).animationName"
        self.open("plan")
        self.assertEqual(self.browser.ask(moving), "none")
        self.browser.prefer(reduced_motion="no-preference")
        self.assertEqual(self.browser.ask(moving), "appear")

    def test_type_grows_with_the_screen(self):
        sizes = []
        for width in (360, 1280, 1920, 3840):
            self.browser.window(width, width * 9 // 16)
            self.open("plan")
            sizes.append(float(self.browser.ask("return getComputedStyle(document.body).fontSize")[:-2]))
        self.assertGreaterEqual(sizes[0], 16)
        self.assertGreater(sizes[2], 1.25 * sizes[0])
        self.assertEqual(sizes, sorted(sizes))

    def test_no_other_script_runs(self):
        self.open("plan")
        self.browser.ask("""const s = document.createElement("script"); s.textContent = "window.broken = 1";
            document.body.append(s); document.body.setAttribute("onclick", "window.broken = 2"); document.body.click();""")
        self.assertIsNone(self.browser.ask("return window.broken || null"))
        refused = self.browser.log("browser")
        self.assertEqual(len(refused), 2, refused)
        for entry in refused:
            self.assertIn("Content Security Policy", entry["message"])

    def test_names_stay_names(self):
        self.assertIn(HOSTILE, " ".join(self.listed["hostile"].split()))
        self.open("hostile")
        title = "Cut list: " + HOSTILE
        self.assertEqual(self.browser.ask("return document.querySelector('h1').textContent"), title)
        self.assertEqual(self.browser.ask("return document.title"), title)
        self.assertEqual(self.browser.ask("return document.querySelectorAll('h1').length"), 1)
        self.assertEqual(self.browser.ask("return document.querySelectorAll('script').length"), 1)
        self.assertEqual(self.browser.ask("return document.querySelectorAll('img').length"), 0)


if __name__ == "__main__":
    unittest.main(verbosity=2)
