// The cut list's words and layout, on plans made by hand.
#include <string>
#include <vector>

#include "arrisline/report.h"
#include "catch.h"
#include "report/page.h"
#include "report/pages.h"

using namespace arrisline;
using test::has;
using test::running;

namespace {

constexpr double kIn = kMmPerInch;

// A round-over of 3/8 in on 3/4 in stock: one chamfer, then a hollow 6 rolled over it.
Plan round_over() {
  Plan plan;
  Section& s = plan.section;
  s.name = "shelf edge";
  s.width = 2 * kIn;
  s.thickness = 0.75 * kIn;
  const double r = 0.375 * kIn;
  s.target = {{{r, 0}, {s.width, 0}, {}, Turn::straight},
              {{s.width, 0}, {s.width, s.thickness}, {}, Turn::straight},
              {{s.width, s.thickness}, {0, s.thickness}, {}, Turn::straight},
              {{0, s.thickness}, {0, r}, {}, Turn::straight},
              {{0, r}, {r, 0}, {r, r}, Turn::left}};
  s.source = {-1, -1, -1, -1, 0};
  s.elements = {{1, 0, Chain::face, "bead", 4}};
  plan.feasible = true;

  Cut chamfer;
  chamfer.number = 1;
  chamfer.plane = {PlaneKind::rebate, "rebate 3/4", 0.75 * kIn, 0, {}, {}, {}, 127, 19.05};
  chamfer.made_for = "waste";
  const double middle = 0.5 * 0.21875 * kIn;
  chamfer.poses = chamfer.set = {{{middle, middle}, 45}};
  chamfer.lines = {{Side::edge, 0.2197 * kIn, 0.21875 * kIn, true},
                   {Side::face, 0.2197 * kIn, 0.21875 * kIn, true}};
  chamfer.settings = 1;
  chamfer.strokes = 26;
  chamfer.removed = 15;
  chamfer.reason = "takes most of the waste and leaves two arrises for the hollow";

  Cut hollow;
  hollow.number = 2;
  hollow.plane = {PlaneKind::hollow, "hollow 6", r, r, 6, {}, {}, 127, 19.05};
  hollow.made_for = "element 1";
  hollow.elements = {0};
  for (const double tilt : {45.0, 30.0, 60.0})
    hollow.poses.push_back({Point{r, r} + r * outward(tilt), tilt});
  hollow.set = hollow.poses;
  hollow.strokes = 24;
  hollow.removed = 4;
  hollow.rides = Rides::two_arrises;
  hollow.imbalance_set = 0.02;
  hollow.reason = "the arrises are there to ride on";
  plan.cuts = {chamfer, hollow};
  plan.waste_area = 19.5;
  plan.waste_by_flat = 15.6;
  plan.effort = 8.5;
  plan.bound = 8.5;
  plan.optimal = true;
  plan.left.as_set_max_height = 0.03;
  return plan;
}

Kit kit_named(const std::string& name) {
  Kit kit;
  kit.name = name;
  return kit;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = text.find('\n', at);
    REQUIRE(end != std::string::npos);  // every line ends
    out.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

}  // namespace

TEST_CASE("a cut list says what to get out, what to strike, and each cut", "[report]") {
  const std::string page = cut_list(round_over(), kit_named("chest"), {});
  const std::string text = running(page);
  INFO(page);
  CHECK(has(text, "Cut list: shelf edge Stock: 2 in wide, 3/4 in thick."));
  CHECK(has(text, "1. rebate 3/4 2. hollow 6"));
  CHECK(has(
      text,
      "A. 7/32 in from the edge, on the face B. 7/32 in from the face, on the edge Set lines A and B with "
      "care: they lay rails for a later plane."));
  CHECK(has(text,
            "1. rebate 3/4: takes out waste. Hold it leaning 45 degrees toward the edge. Work down to line "
            "A, 7/32 in from the edge, and line B, 7/32 in from the face. Starts in a gauge line."));
  CHECK(
      has(text,
          "2. hollow 6: makes element 1 (bead). First hold it leaning 45 degrees toward the edge, the middle "
          "of the sole about 1/8 in from the edge and about 1/8 in below the face. Then leaning 30 degrees"));
  CHECK(
      has(text, "Rides on two arrises, evenly; with the lines as set, 2 % of the sole's width off centre."));
  CHECK(has(text, "Why now: the arrises are there to ride on."));
  CHECK(has(text,
            "Cut exactly: nothing. With the gauge lines rounded as set: 0.001 in at the thickest; nothing "
            "cut below the finished line."));
  CHECK(has(text, "Flat soles take 80 % of the waste."));
  CHECK(has(text,
            "2 cuts, 1 change of plane, 1 gauge setting. 50 strokes, each the length of the stick, about 3 "
            "minutes at 20 a minute."));
  CHECK(has(text, "Holding was not checked: the kit has no board line."));
}

TEST_CASE("a ride that the rounded lines spoil is said in words", "[report]") {
  Plan plan = round_over();
  plan.cuts.back().imbalance_set = 0.5;
  CHECK(has(running(cut_list(plan, kit_named("chest"), {})),
            "Rides on two arrises, evenly; with the lines as set one of them stands low: try the plane, and "
            "ease the other till it bears on both."));
}

TEST_CASE("upright cuts are given by width and depth", "[report]") {
  Plan plan = round_over();
  const double w = plan.section.width;
  Cut cut = plan.cuts[0];
  cut.lines = {{Side::edge, 0.5 * kIn, 0.5 * kIn, false}, {Side::face, 0.125 * kIn, 0.125 * kIn, false}};
  cut.set = {{{0.125 * kIn, 0.125 * kIn}, 0}};
  plan.cuts = {cut};
  CHECK(has(running(cut_list(plan, {}, {})),
            "1/2 in wide from the edge (line A), 1/8 in deep from the face (line B)."));

  SECTION("side by side") {
    plan.cuts[0].set = {{{0.125 * kIn, 0.125 * kIn}, 0}, {{0.875 * kIn, 0.125 * kIn}, 0}};
    CHECK(has(running(cut_list(plan, {}, {})),
              "1 1/4 in wide from the edge, 1/8 in deep from the face (line B), "
              "in 2 passes side by side. Also by line A, 1/2 in from the edge."));
  }
  SECTION("as far as a curve that was cut before, where no line is struck") {
    plan.cuts[0].lines = {{Side::face, kIn / 32, kIn / 32, false}};
    plan.cuts[0].set = {{{0, kIn / 32}, 0}};
    CHECK(
        has(running(cut_list(plan, {}, {})),
            "From the edge up to element 1 (bead), about 3/8 in wide, 1/32 in deep from the face (line A)."));
  }
  SECTION("clear of both edges") {
    plan.cuts[0].plane.width = 0.25 * kIn;
    plan.cuts[0].set = {{{0.375 * kIn, 0.125 * kIn}, 0}};
    CHECK(has(running(cut_list(plan, {}, {})),
              "From 1/4 in to 1/2 in from the edge (line A), 1/8 in deep from the face (line B)."));
  }
  SECTION("from the back edge") {
    plan.cuts[0].lines[0] = {Side::back, 0.5 * kIn, 0.5 * kIn, false};
    plan.cuts[0].set = {{{w - 0.125 * kIn, 0.125 * kIn}, 0}};
    CHECK(has(running(cut_list(plan, {}, {})), "1/2 in wide from the back edge (line A), 1/8 in deep"));
  }
  SECTION("from the underside") {
    plan.cuts[0].lines[1].from = Side::underside;
    plan.cuts[0].set = {{{0.125 * kIn, 0.625 * kIn}, 180}};
    plan.cuts[0].lies = Lies::underside_up;
    const std::string text = running(cut_list(plan, {}, {}));
    CHECK(has(text, "A. 1/2 in from the edge, on the underside"));
    CHECK(has(text, "Turn the blank over end over end: underside up"));
    CHECK(has(text, "1/2 in wide from the edge (line A), 1/8 in deep from the underside (line B)."));
  }
  SECTION("bearing on the working edge") {
    plan.cuts[0].lines = {{Side::face, 0.5 * kIn, 0.5 * kIn, false},
                          {Side::edge, 0.125 * kIn, 0.125 * kIn, false}};
    plan.cuts[0].set = {{{0.125 * kIn, 0.125 * kIn}, 90}};
    CHECK(
        has(running(cut_list(plan, {}, {})),
            "On its side, bearing on the edge: 1/2 in wide from the face (line A), 1/8 in deep from the edge "
            "(line B)."));
  }
}

TEST_CASE("each cut says how the blank lies and which way it is planed", "[report]") {
  Plan plan = round_over();
  const std::string arrow =
      "Mark an arrow on the face of the blank, the way the plane goes while the blank lies face up";
  CHECK(has(running(cut_list(plan, {}, {})), arrow));
  struct Case {
    Lies lies;
    const char* move;
    const char* words;
    bool tears;
  };
  for (const Case& one :
       {Case{Lies::face_up, "", "Blank face up; planed along the arrow.", false},
        Case{Lies::end_for_end, "Turn the blank end for end: face up, back edge toward you.",
             "Blank face up, end for end; planed against the arrow,", true},
        Case{Lies::underside_up, "Turn the blank over end over end: underside up, working edge toward you.",
             "Blank underside up, working edge toward you; planed against the arrow, which is with the grain",
             false},
        Case{Lies::rolled_over, "Roll the blank over about its length: underside up, back edge toward you.",
             "Blank underside up, back edge toward you; planed along the arrow,", true}}) {
    plan.cuts[1].lies = one.lies;
    const std::string text = running(cut_list(plan, {}, {}));
    INFO(text);
    CHECK(has(text, one.move));
    CHECK(has(text, one.words));
    CHECK(has(text, "against the grain: take thin shavings, or it tears.") == one.tears);
  }
  // The line for a cut from the back edge is struck on the edge that is then free.
  plan.cuts[0].lies = Lies::rolled_over;
  plan.cuts[0].lines = {{Side::underside, 5, 5, false}, {Side::back, 5, 5, false}};
  const std::string text = running(cut_list(plan, {}, {}));
  CHECK(has(text, "from the underside, on the back edge"));
  CHECK(has(text, "from the back edge, on the underside"));
}

namespace {

Cut square_cut(int number, double near, double deep, std::vector<GaugeLine> lines) {
  Cut cut;
  cut.number = number;
  cut.plane = {PlaneKind::rebate, "rebate 40", 40, 0, {}, {}, {}, 127, 19.05};
  cut.poses = cut.set = {{{near + 20, deep}, 0}};
  cut.lines = std::move(lines);
  return cut;
}

GaugeLine line_at(Side from, double mm) {
  return {from, mm, mm, false};
}

Plan steps_of(std::vector<Cut> cuts) {
  Plan plan = round_over();  // 50.8 wide, 19.05 thick
  plan.cuts = std::move(cuts);
  return plan;
}

std::string in_mm(const Plan& plan) {
  ReportOptions options;
  options.unit = Unit::mm;
  return running(cut_list(plan, {}, options));
}

}  // namespace

TEST_CASE("a line is struck on the side where its cut comes out", "[report]") {
  // One step at either edge with the blank face up all along; both floors are 6 below the face.
  const std::string text = in_mm(steps_of({
      square_cut(1, -32, 6, {line_at(Side::edge, 8), line_at(Side::face, 6)}),
      square_cut(2, 40.8, 6, {line_at(Side::back, 10), line_at(Side::face, 6)}),
  }));
  INFO(text);
  CHECK(has(text, "B. 6 mm from the face, on the edge"));
  CHECK(has(text, "C. 10 mm from the back edge, on the face"));
  CHECK(has(text, "D. 6 mm from the face, on the back edge"));
  CHECK(has(text, "10 mm wide from the back edge (line C), 6 mm deep from the face (line D)"));
}

TEST_CASE("a line is gauged from what still stands when it is struck", "[report]") {
  Cut lowered = square_cut(1, -5, 3, {line_at(Side::face, 3)});
  lowered.poses.push_back({{35, 3}, 0});
  lowered.set = lowered.poses;
  const Cut shoulder = square_cut(2, -28, 8, {line_at(Side::edge, 12), line_at(Side::face, 8)});
  SECTION("the floor of a cut right across it, where that is far enough off") {
    const std::string text = in_mm(steps_of(
        {lowered, shoulder, square_cut(3, -20, 6, {line_at(Side::edge, 20), line_at(Side::face, 6)})}));
    INFO(text);
    CHECK(has(text, "E. 3 mm from the floor of cut 1, once cut 2 is done"));
  }
  SECTION("the other side of the blank") {
    const std::string text = in_mm(steps_of(
        {lowered, shoulder, square_cut(3, -20, 4, {line_at(Side::edge, 20), line_at(Side::face, 4)})}));
    INFO(text);
    CHECK(has(text, "E. 15.05 mm from the underside, once cut 2 is done"));
  }
  SECTION("the side itself, where the stock of the gauge reaches it") {
    const std::string text =
        in_mm(steps_of({square_cut(1, -28, 8, {line_at(Side::edge, 12), line_at(Side::face, 8)}),
                        square_cut(2, -20, 6, {line_at(Side::edge, 20), line_at(Side::face, 6)})}));
    INFO(text);
    CHECK(has(text, "D. 6 mm from the face, once cut"));
  }
}

namespace {

/// A sole 10 wide that leans 45 degrees, with its middle there.
Cut slanted_cut(int number, Point at, double tilt, std::vector<GaugeLine> lines) {
  Cut cut = square_cut(number, 0, 0, std::move(lines));
  cut.plane.width = 10;
  cut.poses = cut.set = {{at, tilt}};
  return cut;
}

}  // namespace

TEST_CASE("a slanted cut that ends in a corner works down to that", "[report]") {
  // A step of 12 by 4 at the back edge; from its foot a bevel to the back edge, 12 further down.
  Cut step = square_cut(1, 38.8, 4, {line_at(Side::back, 12), line_at(Side::face, 4)});
  Cut bevel = slanted_cut(2, {44.8, 10}, -45, {line_at(Side::face, 4), line_at(Side::face, 16)});
  bevel.plane.width = 20;
  const std::string text = in_mm(steps_of({step, bevel}));
  INFO(text);
  CHECK(has(text,
            "Work down to the corner that cut 1 left, 4 mm from the face, and line C, 16 mm from the face."));
  CHECK(has(text, "B. 4 mm from the face, on the back edge"));
  CHECK(has(text, "C. 16 mm from the face, on the back edge"));
  CHECK_FALSE(has(text, "D. "));
}

TEST_CASE("a line inside the wood is struck on the wall that an earlier cut left", "[report]") {
  // A groove 40 wide and 8 deep in the middle of the face; its arris nearer the edge is taken off 5 by 5.
  const Cut groove =
      square_cut(1, 5.4, 8, {line_at(Side::face, 8), line_at(Side::edge, 5.4), line_at(Side::edge, 45.4)});
  const Cut chamfer = slanted_cut(2, {4.4, 1.5}, -45, {line_at(Side::edge, 2.9), line_at(Side::face, 2.5)});
  const std::string text = in_mm(steps_of({groove, chamfer}));
  INFO(text);
  CHECK(has(text, "D. 2.9 mm from the edge, on the face"));
  CHECK(has(text, "E. 2.5 mm from the face, on the wall of cut 1 that looks to the back edge"));
}

TEST_CASE("a line is struck once what its gauge bears on is there too", "[report]") {
  // The wall at the line is left by cut 1; the floor beside it that the gauge bears on, by cut 2.
  const std::string text = in_mm(steps_of({
      square_cut(1, -32, 10, {line_at(Side::edge, 8), line_at(Side::face, 10)}),
      square_cut(2, -5, 3, {line_at(Side::face, 3)}),
      square_cut(3, -28, 6, {line_at(Side::edge, 12), line_at(Side::face, 6)}),
  }));
  INFO(text);
  CHECK(has(text, "E. 3 mm from the floor of cut 2, once cut 2 is done"));
}

TEST_CASE("lines to set with care are named, by what for", "[report]") {
  Plan plan = steps_of({
      square_cut(1, -32, 6, {{Side::edge, 8, 8, true}, {Side::face, 6, 6, true}}),
      square_cut(2, 40.8, 7, {line_at(Side::back, 10), {Side::face, 7.15, 7, true, true}}),
  });
  const std::string rails = "Set lines A and B with care: they lay rails for a later plane.";
  const std::string close =
      "Set line D with care: by the gauge's own division it would leave more than the 0.2 mm asked for.";
  std::string text = in_mm(plan);
  INFO(text);
  CHECK(has(text, rails));
  CHECK(has(text, close));
  CHECK_FALSE(has(text, "As set, that is more"));
  // Where that is not fine enough, the line is named once more with its exact figure.
  plan.left.as_set_max_height = 0.3;
  plan.cuts[1].lines[1].finer = true;
  text = in_mm(plan);
  CHECK(has(text,
            "As set, that is more than the 0.2 mm asked for: work line D to 7.15 mm, finer than it is set."));
}

TEST_CASE("a sole that sits on or outside the blank is said to", "[report]") {
  Plan plan = round_over();
  plan.cuts[1].poses = {{{0, 0}, 45}, {{-3, -2}, 45}, {{plan.section.width + 3, 20}, -120}};
  const std::string text = running(cut_list(plan, {}, {}));
  INFO(text);
  CHECK(has(text, "the middle of the sole at the edge and level with the face."));
  CHECK(has(text, "about 1/8 in outside the edge and about 3/32 in above the face."));
  CHECK(has(
      text,
      "Then leaning 60 degrees toward the back edge, from the underside, about 1/8 in outside the back edge "
      "and about 1/32 in clear of the underside."));
}

TEST_CASE("a figure used twice is struck once", "[report]") {
  Plan plan = round_over();
  plan.cuts.push_back(plan.cuts[0]);
  plan.cuts[2].lines[1].set = 0.5 * kIn;
  const std::string text = running(cut_list(plan, {}, {}));
  CHECK(has(text, "C. 1/2 in from the face, on the edge"));
  CHECK_FALSE(has(text, "D. "));
  CHECK(has(text, "line A, 7/32 in from the edge, and line C, 1/2 in from the face"));
}

TEST_CASE("what is left as set is stated when it exceeds what was asked for", "[report]") {
  Plan plan = round_over();
  plan.left.as_set_max_height = 0.31;
  plan.left.max_height = 0.1;
  plan.left.where = "element 1 (bead)";
  const std::string text = running(cut_list(plan, {}, {}));
  CHECK(has(text, "Cut exactly: 0.004 in at the thickest, on element 1 (bead)."));
  CHECK(has(text, "As set, that is more than the 0.008 in asked for"));
  plan.left.as_set_deepest_gouge = 0.1;
  CHECK(has(running(cut_list(plan, {}, {})), "0.004 in cut below the finished line."));
}

TEST_CASE("flats on an arc are owned up to", "[report]") {
  Plan plan = round_over();
  CHECK_FALSE(has(cut_list(plan, {}, {}), "leaves flats"));
  plan.cuts[0].elements = {0};
  CHECK(has(running(cut_list(plan, {}, {})), "Cut 1 leaves flats on element 1 (bead): no hollow or round"));
}

TEST_CASE("notes say which cuts overhang the board, and whether holding was checked", "[report]") {
  Plan plan = round_over();
  Kit kit = kit_named("chest");
  plan.cuts[1].overhang = true;
  CHECK(has(running(cut_list(plan, kit, {})), "Cut 2 passes below the blank: the edge must overhang"));
  CHECK(has(running(cut_list(plan, kit, {})), "Let the working edge overhang the board."));
  plan.cuts[1].lies = Lies::end_for_end;
  CHECK(has(running(cut_list(plan, kit, {})), "Let the back edge overhang the board."));
  plan.cuts[1].lies = Lies::face_up;
  plan.cuts[0].overhang = true;
  CHECK(has(running(cut_list(plan, kit, {})), "Cuts 1 and 2 pass below the blank"));
  kit.board = Board{};
  CHECK(has(running(cut_list(plan, kit, {})), "Holding was not checked. "));
  plan.holding_checked = true;
  CHECK(has(running(cut_list(plan, kit, {})), "Holding was checked"));
}

TEST_CASE("reasons name the element, and remedies read aloud", "[report]") {
  Plan plan = round_over();
  plan.feasible = false;
  plan.cuts.clear();
  plan.reasons = {{0, "no hollow of that radius", std::nullopt, std::nullopt},
                  {-1, "nothing to hold it by", std::nullopt, std::nullopt}};
  CHECK(has(running(check_answer(plan, {})), "No remedy found"));
  plan.remedies_left_off = true;
  CHECK_FALSE(has(running(check_answer(plan, {})), "No remedy found"));
  CHECK(has(running(check_answer(plan, {})), "The search for remedies was left off before it found one"));
  plan.remedies_left_off = false;
  Remedy add;
  Plane hollow;
  hollow.kind = PlaneKind::hollow;
  hollow.number = 6;
  hollow.radius = hollow.width = 9.525;
  Plane plough;
  plough.kind = PlaneKind::plough;
  plough.width = 3.175;
  Plane scraper;
  scraper.kind = PlaneKind::scraper;
  add.add = {hollow, plough, scraper};
  Remedy redraw;
  redraw.redraw = {{0, 6.35}};
  redraw.departure = 0.5;
  Remedy allow;
  allow.tolerance = 0.3302;
  Remedy scrape;
  scrape.scrape = 0.508;
  plan.remedies = {add, redraw, allow, scrape};
  for (const std::string& text : {running(cut_list(plan, {}, {})), running(check_answer(plan, {}))}) {
    INFO(text);
    CHECK(has(text, "Element 1 (bead): no hollow of that radius."));
    CHECK(has(text, "The whole: nothing to hold it by."));
    CHECK(has(text,
              "- Add a hollow 6 of radius 3/8 in with a sole 3/8 in wide, a plough iron 1/8 in wide and a "
              "scraper."));
    CHECK(has(text,
              "- Draw element 1 (bead) with a radius of 1/4 in, the ends where they are; the line then lies "
              "0.5 mm (0.02 in) from the drawing at most."));
    CHECK(has(text, "- Allow 0.013 in of wood above the finished line (plan --tolerance)."));
    CHECK(has(text, "- Leave the scraper up to 0.02 in (plan --scrape)."));
    CHECK_FALSE(has(text, "No remedy found"));
    CHECK_FALSE(has(text, "left off"));
  }
  plan.remedies_left_off = true;
  CHECK(has(running(check_answer(plan, {})),
            "(plan --scrape). The search for remedies was left off before everything was tried"));
  plan.remedies_left_off = false;
  CHECK(has(running(check_answer(plan, {Unit::mm})), "a radius of 6.35 mm"));
  CHECK(has(running(check_answer(plan, {Unit::mm})), "lies 0.5 mm from"));
  CHECK(check_answer(plan, {}).substr(0, 15) == "no   shelf edge");
  CHECK(running(check_answer(round_over(), {})) == "yes shelf edge: 2 cuts with rebate 3/4, hollow 6. ");
  plan.reasons.clear();
  plan.undecided = true;
  CHECK(check_answer(plan, {}).substr(0, 11) == "not decided");
}

TEST_CASE("no line is wider than 80 columns and no control byte gets out, whatever the names", "[report]") {
  const std::vector<std::string> hostile = {std::string(3000, 'x'),
                                            "\x1b[31mred\x1b]0;title\x07",
                                            "two\nlines\r\tand a tab",
                                            "\xff\xfe\xc0\xaf\xed\xa0\x80",
                                            "\xc2\x9b"
                                            "31m and \xe2\x80\xae reversed \xef\xbb\xbf",
                                            [] {
                                              std::string wide;
                                              for (int i = 0; i < 500; ++i)
                                                wide += "\xe6\x9c\xa8";  // U+6728, two columns
                                              return wide;
                                            }(),
                                            [] {
                                              std::string heap = "e";
                                              for (int i = 0; i < 500; ++i)
                                                heap += "\xcc\x81";  // combining acute
                                              return heap;
                                            }(),
                                            std::string("nul\0byte", 8)};
  int wrapped = 0;
  for (const std::string& name : hostile) {
    for (const bool feasible : {true, false}) {
      Plan plan = round_over();
      plan.feasible = feasible;
      plan.section.name = plan.section.elements[0].name = name;
      for (Cut& cut : plan.cuts) {
        cut.plane.label = cut.reason = name;
        cut.number = 1234567;
        cut.overhang = true;
      }
      plan.left.where = name;
      plan.left.max_height = 1e30;
      plan.effort = 1e18;
      plan.reasons = {{0, name, Reason::Nearest{PlaneKind::round, 1e9, 1e9, 2000000000}, std::nullopt}};
      for (const std::string& page : {cut_list(plan, kit_named(name), {}), check_answer(plan, {})}) {
        for (const std::string& line : lines_of(page)) {
          INFO(line);
          CHECK(columns(line) <= 80);
          CHECK(visible(line) == line);
          if (columns(line) > 76) ++wrapped;
        }
      }
    }
  }
  CHECK(wrapped > 20);
}

TEST_CASE("elements that one cut makes are told in one row", "[report]") {
  Plan plan = round_over();
  plan.section.elements = {
      {1, 0, Chain::face, "bead", 4}, {2, 0, Chain::face, "step", 5}, {3, 0, Chain::face, "fillet", 6}};
  plan.cuts[0].elements = {1, 2};
  plan.cuts[1].elements = {0, 1, 2};
  const std::string text = running(cut_list(plan, {}, {}));
  CHECK(has(text, "rebate 3/4: makes element 2 (step) and element 3 (fillet)."));
  CHECK(has(text, "hollow 6: makes element 1 (bead), element 2 (step) and element 3 (fillet)."));
}

TEST_CASE("colour is only there when asked for and carries nothing by itself", "[report]") {
  ReportOptions options;
  const std::string plain = cut_list(round_over(), {}, options);
  options.colour = true;
  std::string coloured = cut_list(round_over(), {}, options);
  CHECK(plain.find('\x1b') == std::string::npos);
  CHECK(coloured.find('\x1b') != std::string::npos);
  for (const std::string& code : {std::string("\x1b[1m"), std::string("\x1b[0m")})
    for (std::size_t at = coloured.find(code); at != std::string::npos; at = coloured.find(code))
      coloured.erase(at, code.size());
  CHECK(coloured == plain);
}

TEST_CASE("text is made visible", "[report]") {
  CHECK(visible("a\x1b[0m\tb\n") == "a\\x1b[0m b\\x0a");
  CHECK(visible("\xe2\x80\xae") == "\\u{202e}");
  CHECK(visible("caf\xc3\xa9 \xc3") == "caf\xc3\xa9 \\xc3");
  CHECK(shorten("abcdefghij", 8) == "abcde...");
  CHECK(shorten("abcdefgh", 8) == "abcdefgh");
}
