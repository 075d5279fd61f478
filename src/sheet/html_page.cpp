// Style and script of an HTML sheet. Shown by tests/sheet/html_test.cpp and tests/sheet/browser.py.
#include "sheet/html_page.h"

#include "sheet/sha256.h"
#include "sheet/svg.h"

namespace arrisline {
namespace {

// Colours: text on its ground has a contrast of 4.5 : 1 and more, in the pictures too. Type grows with the
// screen, so that a class can read it from a projector, and with the reader's own setting.
constexpr const char* kStyle = R"css(
:root{
--page:#f6f0e3;--card:#fffdf7;--ink:#231c14;--soft:#5b4e3e;--line:#cdbfa6;--mark:#f1e3c4;--act:#234f78;--on-act:#ffffff;--warn:#8a2b1c;
--wood:#e9dcc3;--grain:#4a3b28;--blank:#6b6b6b;--sole:#234f78;--gauge:#8a2b1c;--leader:#4d4d4d;
color-scheme:light dark}
@media screen and (prefers-color-scheme:dark){:root{
--page:#191510;--card:#211c16;--ink:#f3eadb;--soft:#c9bba4;--line:#574a39;--mark:#3d3221;--act:#9cc9f2;--on-act:#10202e;--warn:#ffab97;
--wood:#57472f;--grain:#d8c39b;--blank:#a39a8c;--sole:#9cc9f2;--gauge:#ffab97;--leader:#b8ad9c}}
*{box-sizing:border-box}
html{font-size:clamp(1rem,0.8rem + 0.42vw,2rem);-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:var(--page);color:var(--ink);font-family:sans-serif;line-height:1.45;overflow-wrap:anywhere}
header,main{max-width:96rem;margin:0 auto;padding:0 1rem}
h1,h2,h3,h4{font-family:serif;line-height:1.2;margin:1.2em 0 0.4em}
h1{font-size:1.7rem;margin:0.9rem 0 0.3rem}
h2{font-size:1.3rem}
h3{font-size:1.1rem}
h4{font-size:1rem}
p{margin:0.25em 0}
a{color:var(--act)}
:focus-visible{outline:3px solid var(--act);outline-offset:2px}
.facts{color:var(--soft)}
.facts p{display:inline;margin-right:1em}
.care{border-left:0.3rem solid var(--warn);padding:0.2rem 0 0.2rem 0.7rem;margin:0.7rem 0}
.care a{display:inline-block;padding:0.6rem 0.2rem;color:var(--warn)}
.words,.part{max-width:44rem}
.in{padding-left:1.2em}
.items{list-style:none;margin:0.25em 0;padding:0}
.items li{position:relative;padding:0.1em 0 0.1em 2.2em}
.lead{position:absolute;left:0;font-weight:bold}
.said{position:absolute;width:1px;height:1px;margin:-1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
figure{margin:0 0 0.6rem;background:var(--card);border:1px solid var(--line);padding:0.3rem}
svg{display:block;width:100%;height:auto}
.key{border:0;background:none;padding:0;max-width:26rem}
.key svg{margin:0.4rem 0}
.step,.still{margin-bottom:2rem}
.still figure{max-width:48rem;margin-top:0.8rem}
.step h2,.step h3{margin-top:0.4em}
.list ol,.contents ol{list-style:none;margin:0;padding:0}
.list h2,.list h3,.list h4{margin-top:0.4em;font-size:1.1rem}
.list a,.contents a{display:flex;align-items:center;min-height:2.75rem;min-width:44px;padding:0.3rem 0.7rem;color:var(--ink);text-decoration:none;border-left:0.3rem solid transparent}
.contents ol{columns:20rem}
.contents li{break-inside:avoid}
.contents a{text-decoration:underline;color:var(--act)}
.list a:hover{background:var(--mark)}
.list a[aria-current]{background:var(--mark);border-left-color:var(--act);font-weight:bold}
.work{border-top:2px solid var(--line);margin-top:2rem}
.tools{display:flex;gap:0.6rem;align-items:center;position:sticky;bottom:0;background:var(--page);padding:0.5rem 0;border-top:1px solid var(--line);z-index:1}
.tools[hidden]{display:none}
button{font:inherit;font-weight:bold;min-width:5.2rem;min-height:max(44px,2.75rem);padding:0 1rem;border:2px solid var(--act);border-radius:0.4rem;background:var(--act);color:var(--on-act);cursor:pointer;touch-action:manipulation}
button[aria-disabled=true]{background:none;color:var(--soft);border-color:var(--line);cursor:default}
input[type=range]{flex:1;min-width:4rem;height:max(44px,2.75rem);margin:0;accent-color:var(--act)}
@media screen{
.live .step:not(.now){display:none}
.live .step{margin-bottom:0.8rem}
.live .show{display:flex;flex-direction:column}
.live .key{order:1}
.live .tools{order:2}
.live .stage{touch-action:pan-y pinch-zoom}
.live .now figure svg{max-height:54vh}
.ready{max-width:none;columns:17rem;column-gap:2rem}
.ready .part{break-inside:avoid}
.ready .part>:first-child{margin-top:0;padding-top:0.4em}
}
@media screen and (max-width:40rem){
.step figure{margin-left:-1rem;margin-right:-1rem;border-left:0;border-right:0}
.list{margin-top:1rem}
}
@media screen and (min-width:56rem){
.bench{display:grid;grid-template-columns:minmax(0,1fr) minmax(15rem,22rem);gap:0 2rem;align-items:start}
.list{position:sticky;top:0;max-height:100vh;overflow:auto}
.after,.sheet{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,24rem),1fr));gap:0 2.5rem}
.sheet{grid-template-columns:minmax(0,1fr)}
}
@media screen and (prefers-reduced-motion:no-preference){
.live .now figure{animation:appear 0.18s}
@keyframes appear{from{opacity:0.4}to{opacity:1}}
}
@media print{
html{font-size:10.5pt}
body{background:none}
header,main{max-width:none;padding:0}
figure{border:0;padding:0}
.list,.tools,.said,.care a{display:none}
.contents a{display:inline;padding:0}
.contents ol,.after,.sheet{columns:2;column-gap:8mm}
.key{max-width:80mm}
.work{border:0;margin:0}
.work+.work{break-before:page}
.step{display:grid;grid-template-columns:100mm minmax(0,1fr);gap:0 5mm;break-inside:avoid;margin-bottom:5mm}
.step h2,.step h3{grid-column:1 / 3}
h1,h2,h3,h4{break-after:avoid}
.part p,.after .part{break-inside:avoid}
a{color:inherit;text-decoration:none}
}
)css";

/// Pictures take the page's colours; their widths and dashes stay those of svg_styles().
constexpr const char* kPictures = R"css(
svg text{fill:var(--ink)}
svg .ground{fill:var(--card)}
svg .hatch{stroke:var(--grain)}
svg .wood{fill:var(--wood);stroke:var(--grain)}
svg .taken{stroke:var(--grain)}
svg .blank{stroke:var(--blank)}
svg .finished,svg .centre,svg .measure{stroke:var(--ink)}
svg .plane,svg .sole,svg .turn{stroke:var(--sole)}
svg .gauge{stroke:var(--gauge)}
svg .leader{stroke:var(--leader)}
svg .rail{fill:var(--ink)}
)css";

// Written without "<" and "&", which an XML parser would take for markup.
constexpr const char* kScript = R"js(
"use strict";
document.documentElement.classList.add("live");

function make(bench) {
  const stage = bench.querySelector(".stage");
  const list = bench.querySelector(".list");
  const steps = Array.from(stage.querySelectorAll(".step"));
  const rows = Array.from(list.querySelectorAll("a"));
  const [back, next] = bench.querySelectorAll("button");
  const range = bench.querySelector("input");
  const said = bench.querySelector(".said");
  const last = steps.length - 1;
  let now = 0;

  function show(to, tell) {
    now = Math.min(Math.max(to, 0), last);
    steps.forEach((step, i) => step.classList.toggle("now", i === now));
    rows.forEach((row) => row.removeAttribute("aria-current"));
    rows[now].setAttribute("aria-current", "step");
    back.setAttribute("aria-disabled", String(now === 0));
    next.setAttribute("aria-disabled", String(now === last));
    const words = steps[now].firstElementChild.textContent;
    range.value = now;
    range.setAttribute("aria-valuetext", words);
    if (list.scrollHeight > list.clientHeight) list.scrollTop = rows[now].offsetTop - list.clientHeight / 2;
    if (!tell) return;
    said.textContent = words;
    // So that the page comes back to this step when it is loaded again.
    try { history.replaceState(null, "", "#" + steps[now].id); } catch { /* not allowed here */ }
  }

  back.addEventListener("click", () => show(now - 1, true));
  next.addEventListener("click", () => show(now + 1, true));
  range.addEventListener("input", () => show(Number(range.value), true));
  rows.forEach((row, i) => row.addEventListener("click", (event) => {
    event.preventDefault();
    show(i, true);
    const top = stage.getBoundingClientRect().top;
    if (0 > top || top > innerHeight / 2) stage.scrollIntoView();
  }));

  // A swipe: one finger, well across, on a page that is not zoomed (there it moves the page).
  let from = null;
  stage.addEventListener("pointerdown", (event) => {
    const finger = event.pointerType !== "mouse";
    const zoomed = (window.visualViewport ? visualViewport.scale : 1) > 1.05;
    from = event.isPrimary ? (finger ? (zoomed ? null : event) : null) : null;
  });
  stage.addEventListener("pointercancel", () => { from = null; });
  stage.addEventListener("pointerup", (event) => {
    if (from === null) return;
    const across = event.clientX - from.clientX;
    const down = event.clientY - from.clientY;
    from = null;
    if (Math.abs(across) > Math.max(40, 2 * Math.abs(down))) show(now + (across > 0 ? -1 : 1), true);
  });

  bench.querySelector(".tools").hidden = false;
  show(0, false);
  return { bench, steps, show, keys: () => ({ ArrowLeft: now - 1, ArrowRight: now + 1, Home: 0, End: last }) };
}

const benches = Array.from(document.querySelectorAll(".bench"), make);

// Keys go to the plan with the focus in it, or else to the one that fills most of the window.
function chosen(target) {
  let best = null;
  let most = 0;
  for (const one of benches) {
    if (one.bench.contains(target)) return one;
    const box = one.bench.getBoundingClientRect();
    const seen = Math.min(box.bottom, innerHeight) - Math.max(box.top, 0);
    if (seen > most) { best = one; most = seen; }
  }
  return best;
}

document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
  if (event.target instanceof HTMLInputElement) return;  // the slider has keys of its own
  const one = chosen(event.target);
  const to = one === null ? undefined : one.keys()[event.key];
  if (to === undefined) return;
  event.preventDefault();
  one.show(to, true);
});

function follow() {
  for (const one of benches) {
    const at = one.steps.findIndex((step) => "#" + step.id === location.hash);
    if (at >= 0) one.show(at, false);
  }
}
addEventListener("hashchange", follow);
follow();
)js";

}  // namespace

std::string html_page(const std::string& title, const std::string& body, Paper paper) {
  const std::string style = svg_styles() + kStyle + kPictures +
                            "@page{size:" + (paper == Paper::a4 ? "A4" : "letter") + ";margin:14mm}\n";
  const std::string script = kScript;
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\"/>\n"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-" +
         sha256_base64(style) + "'; script-src 'sha256-" + sha256_base64(script) +
         "'; base-uri 'none'; form-action 'none'\"/>\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
         "<meta name=\"color-scheme\" content=\"light dark\"/>\n<title>" +
         title + "</title>\n<style>" + style + "</style>\n</head>\n<body>\n" + body + "<script>" + script +
         "</script>\n</body>\n</html>\n";
}

}  // namespace arrisline
