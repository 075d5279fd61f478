"""What browser.py asks of a page: bodies of functions that run in it."""

# What a person sees of the steps: their numbers.
SHOWN = """return Array.from(document.querySelectorAll(arguments[0] + " .step"), (step, i) =>
    step.getClientRects().length ? i : -1).filter((i) => i >= 0)"""
CURRENT = """return Array.from(document.querySelectorAll(arguments[0] + " .list a"), (row, i) =>
    row.getAttribute("aria-current") === "step" ? i : -1).filter((i) => i >= 0)"""

# Pairs of labels in one picture whose boxes share more than a hair, and labels beyond their picture (but for the
# room below the baseline, which figures do not use).
LABELS = """const out = [];
for (const svg of document.querySelectorAll("svg")) {
  if (!svg.getClientRects().length) continue;
  const view = svg.viewBox.baseVal;
  const labels = Array.from(svg.querySelectorAll("text"), (text) => ({words: text.textContent, box: text.getBBox()}));
  labels.forEach(({words, box}, i) => {
    if (box.x < -0.05 || box.y < -0.05 || box.x + box.width > view.width + 0.05 || box.y + box.height > view.height + 0.6)
      out.push("beyond the picture: " + words);
    for (const other of labels.slice(i + 1)) {
      const across = Math.min(box.x + box.width, other.box.x + other.box.width) - Math.max(box.x, other.box.x);
      const down = Math.min(box.y + box.height, other.box.y + other.box.height) - Math.max(box.y, other.box.y);
      if (across > 0.05 && down > 0.05) out.push(words + " on " + other.words);
    }
  });
}
return out"""
COUNT_LABELS = """return Array.from(document.querySelectorAll("svg")).filter((svg) => svg.getClientRects().length)
    .reduce((sum, svg) => sum + svg.querySelectorAll("text").length, 0)"""

# The W3C's relative luminance and contrast (WCAG 2.1).
FORMULA = """
const rgb = (colour) => colour.match(/[\\d.]+/g).map(Number);
const linear = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
const light = (colour) => {
  const part = rgb(colour).slice(0, 3).map((v) => linear(v / 255));
  return 0.2126 * part[0] + 0.7152 * part[1] + 0.0722 * part[2];
};
const contrast = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
"""

# The least contrast of any text that is seen, with the text; in a picture against the ground and against the wood.
CONTRAST = FORMULA + """
const clear = (colour) => rgb(colour).length === 4 && rgb(colour)[3] === 0;
function ground(element) {
  for (let e = element; e; e = e.parentElement) {
    const colour = getComputedStyle(e).backgroundColor;
    if (!clear(colour)) return colour;
  }
  return "rgb(255, 255, 255)";
}
let least = [99, ""];
let seen = 0;
for (const element of document.body.querySelectorAll("*")) {
  const own = Array.from(element.childNodes).some((node) => node.nodeType === 3 && node.textContent.trim());
  if (!own || !element.getClientRects().length || element.matches("script, title, desc")) continue;
  ++seen;
  const svg = element.closest("svg");
  const style = getComputedStyle(element);
  const grounds = [ground(svg ? svg.parentElement : element)];
  if (svg && svg.querySelector(".wood")) grounds.push(getComputedStyle(svg.querySelector(".wood")).fill);
  for (const under of grounds) {
    const got = contrast(svg ? style.fill : style.color, under);
    if (got < least[0]) least = [got, element.textContent.trim().slice(0, 60)];
  }
}
return [least[0], least[1], seen]"""

# WCAG asks 3 : 1 of what is needed to understand a picture: lines against what they are drawn on.
LINES = FORMULA + """
const look = (selector, what) => getComputedStyle(document.querySelector(selector))[what];
const wood = look("svg .wood", "fill"), ground = getComputedStyle(document.querySelector(".step figure")).backgroundColor;
const out = {};
for (const role of ["finished", "sole", "gauge", "turn", "hatch", "wood"])
  out[role] = Math.min(role === "hatch" ? 99 : contrast(look("svg ." + role, "stroke"), wood), contrast(look("svg ." + role, "stroke"), ground));
return out"""

# Things to press that are too small for a finger.
SMALL = """return Array.from(document.querySelectorAll("button, input, .list a, .contents a"), (e) => [e.textContent, e.getBoundingClientRect()])
  .filter(([, box]) => box.width && (box.width < 44 || box.height < 44)).map(([words, box]) => words + " " + box.width + " x " + box.height)"""

HEADINGS = """return Array.from(document.querySelectorAll("h1, h2, h3, h4, h5, h6"), (h) => Number(h.tagName[1]))"""
