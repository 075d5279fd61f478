// Lengths, maps and viewBox by SVG 1.1, chapters 4.2, 7.6, 7.7 and 7.8, and the absolute lengths of CSS 2.1.
#include "trace/svg_values.h"

#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

std::string faults_of(const Faults& faults) {
  std::string out;
  for (const Diagnostic& one : faults.list)
    out += std::to_string(one.column) + "+" + std::to_string(one.length) + ": " + one.message + "\n";
  return out;
}

std::optional<SvgLength> length(const std::string& text, std::string* why = nullptr) {
  Faults faults(text, "a.svg");
  const auto out = length_of(Passage{text, 0, true}, faults);
  if (why) *why = faults_of(faults);
  CHECK(out.has_value() == (faults.errors == 0));
  return out;
}

std::string length_fault(const std::string& text) {
  std::string why;
  length(text, &why);
  return why;
}

Affine transform(const std::string& text) {
  Faults faults(text, "a.svg");
  const auto out = transform_of({text, 0, true}, faults);
  INFO(faults_of(faults));
  REQUIRE(out.has_value());
  return *out;
}

std::string transform_fault(const std::string& text) {
  Faults faults(text, "a.svg");
  CHECK_FALSE(transform_of({text, 0, true}, faults).has_value());
  return faults_of(faults);
}

bool same(const Affine& a, const Affine& b) {
  for (const Point p : {Point{0, 0}, Point{1, 0}, Point{0, 1}}) {
    if (distance(a(p), b(p)) > 1e-12) return false;
  }
  return true;
}

}  // namespace

TEST_CASE("absolute lengths", "[trace][svg]") {
  // CSS 2.1, 4.3.2: 1 in = 2.54 cm = 25.4 mm = 72 pt = 6 pc = 96 px.
  for (const char* inch : {"1in", "2.54cm", "25.4mm", "72pt", "6pc", "96px", "96", " 96 ", "+9.6e1"}) {
    CAPTURE(inch);
    CHECK(length(inch)->mm.value_or(0) == Approx(25.4).epsilon(1e-15));
    CHECK(length(inch)->px() == Approx(96).epsilon(1e-15));
  }
  CHECK(*length("50mm")->mm == 50);
  CHECK_FALSE(length("10em")->mm.has_value());
  CHECK_FALSE(length("1ex")->mm.has_value());
  CHECK(length("100%")->percent);
  CHECK(length("100%")->px() == 0);
  CHECK(length_fault("10feet") == "3+4: unknown unit 'feet'; expected mm, cm, in, pt, pc, px or no unit\n");
  CHECK(length_fault("wide") == "1+4: a length is expected here, such as 10mm, 2in or 40\n");
  CHECK(length_fault("") == "1+1: a length is expected here, such as 10mm, 2in or 40\n");
  CHECK(length_fault("5mm 6mm") == "5+3: the length is complete before this; leave it out\n");
}

TEST_CASE("the functions of a transform", "[trace][svg]") {
  CHECK(same(transform("matrix(1 2 3 4 5 6)"), {1, 2, 3, 4, 5, 6}));
  CHECK(same(transform("translate(3,4)"), {1, 0, 0, 1, 3, 4}));
  CHECK(same(transform("translate(3)"), {1, 0, 0, 1, 3, 0}));
  CHECK(same(transform("scale(2)"), {2, 0, 0, 2, 0, 0}));
  CHECK(same(transform("scale(2 -3)"), {2, 0, 0, -3, 0, 0}));
  CHECK(same(transform("rotate(90)"), {0, 1, -1, 0, 0, 0}));
  CHECK(same(transform("rotate(90 1 2)"), {0, 1, -1, 0, 3, 1}));
  CHECK(same(transform("skewX(45)"), {1, 0, 1, 1, 0, 0}));
  CHECK(same(transform("skewY(45)"), {1, 1, 0, 1, 0, 0}));
  CHECK(same(transform(""), {}));
  // The last one is the first to be done (7.6).
  CHECK(same(transform(" translate( 50 , 90 ),rotate(-45)\n\ttranslate(130,160) "),
             transform("translate(50,90)") * transform("rotate(-45)") * transform("translate(130,160)")));
  CHECK(same(transform("translate(1,2)scale(2)"), {2, 0, 0, 2, 1, 2}));
}

TEST_CASE("mistakes in a transform", "[trace][svg]") {
  CHECK(transform_fault("rotat(3)") ==
        "1+5: 'rotat' is no function of a transform; one of matrix, translate, scale, rotate, skewX or skewY "
        "is expected here; did you mean 'rotate'?; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("scale(1) 5") ==
        "10+1: a function of matrix, translate, scale, rotate, skewX or skewY is expected here; save the "
        "drawing again, as plain SVG\n");
  CHECK(transform_fault("scale 2") ==
        "1+5: 'scale' is followed by its numbers in brackets, as in scale(2)\n");
  CHECK(transform_fault("scale(2") ==
        "1+5: 'scale' is followed by its numbers in brackets, as in scale(2)\n");
  CHECK(transform_fault("matrix(1 2 3)") ==
        "1+6: 'matrix' takes 6 numbers; here are 3; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("translate()") ==
        "1+9: 'translate' takes 1 or 2 numbers; here are 0; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("rotate(1 2)") ==
        "1+6: 'rotate' takes 1 or 3 numbers; here are 2; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("skewX(1,2)") ==
        "1+5: 'skewX' takes 1 number; here are 2; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("scale(1 x)") ==
        "9+1: a number is expected here; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("scale(1,)") ==
        "9+1: a number is expected here; save the drawing again, as plain SVG\n");
  CHECK(transform_fault("matrix(1 2 3 4 5 6 78)") ==
        "20+2: at most 6 numbers are expected here; leave the others out\n");
}

TEST_CASE("viewBox and preserveAspectRatio", "[trace][svg]") {
  const auto box_fault = [](const std::string& text) {
    Faults faults(text, "a.svg");
    CHECK_FALSE(view_box_of({text, 0, true}, faults).has_value());
    return faults_of(faults);
  };
  CHECK(box_fault("0 0 10") == "1+6: a viewBox takes 4 numbers: x, y, width, height, such as 0 0 210 297\n");
  CHECK(box_fault("0 0 10 0") == "1+8: the viewBox has no size; expected a width and a height more than 0\n");
  CHECK(box_fault("0,0,-1,5") == "1+8: the viewBox has no size; expected a width and a height more than 0\n");
  CHECK(box_fault("0 0 a 5") == "5+1: a number is expected here; save the drawing again, as plain SVG\n");
  const std::string wrong = "xMidYmid";
  Faults faults(wrong, "a.svg");
  CHECK_FALSE(aspect_of({wrong, 0, true}, faults).has_value());
  CHECK(faults_of(faults) ==
        "1+8: expected none, or xMin, xMid or xMax with YMin, YMid or YMax (as xMidYMid), then meet or "
        "slice\n");

  // 7.8: a box of 30 by 40 in a viewport of 50 by 30 is drawn at 30/40, or sliced at 50/30.
  const auto map = [](const std::string& text) {
    Faults none(text, "a.svg");
    const auto aspect = aspect_of({text, 0, true}, none);
    REQUIRE(aspect.has_value());
    return view_map({{1, 2}, {30, 40}}, *aspect, {50, 30});
  };
  CHECK(same(map("xMinYMin meet"), {0.75, 0, 0, 0.75, -0.75, -1.5}));
  CHECK(same(map("xMidYMid"), {0.75, 0, 0, 0.75, -0.75 + (50 - 22.5) / 2, -1.5}));
  CHECK(same(map("defer xMaxYMax meet"), {0.75, 0, 0, 0.75, -0.75 + 50 - 22.5, -1.5}));
  const double s = 50.0 / 30;
  CHECK(same(map("xMidYMin slice"), {s, 0, 0, s, -s, -2 * s}));
  CHECK(same(map("xMidYMid slice"), {s, 0, 0, s, -s, -2 * s + (30 - 40 * s) / 2}));
  CHECK(same(map("xMidYMax slice"), {s, 0, 0, s, -s, -2 * s + 30 - 40 * s}));
  CHECK(same(map("none"), {s, 0, 0, 0.75, -s, -1.5}));
}
