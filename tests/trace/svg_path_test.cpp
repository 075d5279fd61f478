// Path data: every command of SVG 1.1, chapter 8.3, its short forms and its mistakes.
#include "trace/svg_path.h"

#include <charconv>

#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

/// The strokes in words: M from, then L to, C handles to, A centre to; Z is a line like any other.
std::string strokes_of(const std::string& data) {
  Faults faults(data, "a.svg");
  std::vector<DrawnPath> strokes;
  read_path({data, 0, true}, {}, strokes, faults);
  std::string out;
  for (const Diagnostic& one : faults.list)
    out += "! " + std::to_string(one.column) + "+" + std::to_string(one.length) + ": " + one.message + "\n";
  const auto figure = [](double value) {
    const double rounded = std::round(value * 1000) / 1000;
    char buffer[32];
    const auto end = std::to_chars(buffer, buffer + sizeof buffer, rounded + 0.0).ptr;
    return std::string(buffer, end);
  };
  const auto point = [&](Point p) { return figure(p.x) + "," + figure(p.y); };
  for (const DrawnPath& stroke : strokes) {
    out += "M" + point(stroke.from);
    for (const Curve& curve : stroke.curves) {
      if (curve.kind == Curve::Kind::line) out += " L" + point(curve.to);
      if (curve.kind == Curve::Kind::cubic)
        out += " C" + point(curve.a) + " " + point(curve.b) + " " + point(curve.to);
      if (curve.kind == Curve::Kind::arc) {
        out += " A" + point(curve.centre) + " " + figure(to_degrees(curve.until - curve.from)) + " " +
               point(curve.to);
      }
    }
    out += "\n";
  }
  return out;
}

}  // namespace

TEST_CASE("every command, absolute and relative", "[trace][svg]") {
  CHECK(strokes_of("M1 2L3 4H5V6Z") == "M1,2 L3,4 L5,4 L5,6 L1,2\n");
  CHECK(strokes_of("m1 2l3 4h5v6z") == "M1,2 L4,6 L9,6 L9,12 L1,2\n");
  CHECK(strokes_of("M1 1C2 2 3 3 4 1S6 0 7 1") == "M1,1 C2,2 3,3 4,1 C5,-1 6,0 7,1\n");
  CHECK(strokes_of("M1 1c1 1 2 2 3 0s2-1 3 0") == "M1,1 C2,2 3,3 4,1 C5,-1 6,0 7,1\n");
  // A quadratic is the cubic with handles two thirds of the way to its own.
  CHECK(strokes_of("M0 0Q3 3 6 0T12 0") == "M0,0 C2,2 4,2 6,0 C8,-2 10,-2 12,0\n");
  CHECK(strokes_of("M0 0q3 3 6 0t6 0") == "M0,0 C2,2 4,2 6,0 C8,-2 10,-2 12,0\n");
  CHECK(strokes_of("M0 0A5 5 0 0 1 10 0") == "M0,0 A5,0 180 10,0\n");
  CHECK(strokes_of("m1 1a5 5 0 1 0 10 0") == "M1,1 A6,1 -180 11,1\n");
  // Smooth curves after another kind of command begin with their own point as handle.
  CHECK(strokes_of("M0 0H3S5 5 6 6") == "M0,0 L3,0 C3,0 5,5 6,6\n");
  CHECK(strokes_of("M0 0C1 1 2 2 3 0T6 0") == "M0,0 C1,1 2,2 3,0 C3,0 4,0 6,0\n");
  CHECK(strokes_of("M0 0Q3 3 6 0S9 9 9 0") == "M0,0 C2,2 4,2 6,0 C6,0 9,9 9,0\n");
}

TEST_CASE("repeats without the letter", "[trace][svg]") {
  CHECK(strokes_of("M1 2 3 4 5 6") == "M1,2 L3,4 L5,6\n");
  CHECK(strokes_of("m1 2 3 4 5 6") == "M1,2 L4,6 L9,12\n");
  CHECK(strokes_of("M0 0L1 1 2 0H3 4V5 6") == "M0,0 L1,1 L2,0 L3,0 L4,0 L4,5 L4,6\n");
  CHECK(strokes_of("M0 0q3 3 6 0 3-3 6 0") == "M0,0 C2,2 4,2 6,0 C8,-2 10,-2 12,0\n");
  CHECK(strokes_of("M0 0c1 1 2 1 3 0 1-1 2-1 3 0") == "M0,0 C1,1 2,1 3,0 C4,-1 5,-1 6,0\n");
  CHECK(strokes_of("M0 0t3 3 3 3") == "M0,0 C0,0 1,1 3,3 C5,5 6,6 6,6\n");
}

TEST_CASE("numbers in their shortest forms", "[trace][svg]") {
  CHECK(strokes_of("M.5.5-.5-.5") == "M0.5,0.5 L-0.5,-0.5\n");
  CHECK(strokes_of("M1-2+3-4") == "M1,-2 L3,-4\n");
  CHECK(strokes_of("M1e1,2E-1L1.e0-1e+1") == "M10,0.2 L1,-10\n");
  CHECK(strokes_of("M0 0a1 1 0 01 2 0") == "M0,0 A1,0 180 2,0\n");
  CHECK(strokes_of("M0 0a1 1 0 012 0") == "M0,0 A1,0 180 2,0\n");
  CHECK(strokes_of("M0,0a1,1,0,1,1,2,0 1 1 0 112 0") == "M0,0 A1,0 180 2,0 A3,0 180 4,0\n");
  CHECK(strokes_of("M0 0a1 1 0 00.5.5-1-1-0 01-.5-.5").find('!') == std::string::npos);
  CHECK(strokes_of(" \t\n M \r\n 0 , 0 \f L 1 \n 1 , 2 2 ") == "M0,0 L1,1 L2,2\n");
}

TEST_CASE("subpaths", "[trace][svg]") {
  CHECK(strokes_of("M0 0L1 0M5 5L6 6") == "M0,0 L1,0\nM5,5 L6,6\n");
  CHECK(strokes_of("M1 1l1 0m5 5l1 1") == "M1,1 L2,1\nM7,6 L8,7\n");
  CHECK(strokes_of("M1 1L2 1L2 2zl5 5") == "M1,1 L2,1 L2,2 L1,1\nM1,1 L6,6\n");
  CHECK(strokes_of("M1 1L2 1L1 1zm1 1l1 0") == "M1,1 L2,1 L1,1\nM2,2 L3,2\n");
  CHECK(strokes_of("M1 1M2 2zz") == "");
  CHECK(strokes_of("") == "");
  CHECK(strokes_of(" \n") == "");
  CHECK(strokes_of("M0 0a1 1 0 0 0 0 0L1 1") == "M0,0 L1,1\n");
}

TEST_CASE("what is wrong in path data is said where it stands, and reading goes on", "[trace][svg]") {
  CHECK(strokes_of("L1 1") ==
        "! 1+1: path data begin with M or m, the place where the line begins; save the drawing again, as "
        "plain SVG\nM0,0 L1,1\n");
  CHECK(strokes_of("M0 0B1 1L2 2") ==
        "! 5+1: 'B' is no command; one of M, L, H, V, C, S, Q, T, A and Z is expected here; save the drawing "
        "again, as plain SVG\nM0,0 L2,2\n");
  CHECK(strokes_of("M0 0\u00e9L2 2") ==
        "! 5+1: '\u00e9' is no command; one of M, L, H, V, C, S, Q, T, A and Z is expected here; save the "
        "drawing again, as plain SVG\nM0,0 L2,2\n");
  CHECK(strokes_of("M0 0h1z12 3") ==
        "! 8+2: a command of M, L, H, V, C, S, Q, T, A and Z is expected here; save the drawing again, as "
        "plain SVG\nM0,0 L1,0 L0,0\n");
  CHECK(strokes_of("M0 0L1") ==
        "! 7+1: a number is expected here: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
  CHECK(strokes_of("M0 0H") ==
        "! 6+1: a number is expected here: 'H' takes 1 number, x; save the drawing again, as plain SVG\n");
  CHECK(strokes_of("M0 0v,1") ==
        "! 6+1: a number is expected here: 'v' takes 1 number, y; save the drawing again, as plain SVG\n");
  CHECK(strokes_of("M0 0C1 2 3 4 five 6 L7 7") ==
        "! 14+4: a number is expected here: 'C' takes 6 numbers, x1 y1 x2 y2 x y; save the drawing again, as "
        "plain SVG\nM0,0 L7,7\n");
  CHECK(strokes_of("M0 0S1 2 3L7 7") ==
        "! 11+2: a number is expected here: 'S' takes 4 numbers, x2 y2 x y; save the drawing again, as plain "
        "SVG\nM0,0 L7,7\n");
  CHECK(strokes_of("M0 0q1 2 3z") ==
        "! 11+1: a number is expected here: 'q' takes 4 numbers, x1 y1 x y; save the drawing again, as plain "
        "SVG\n");
  CHECK(strokes_of("M0 0A1 1 0 2 0 5 5L1 1") ==
        "! 12+1: a flag, 0 or 1, is expected here: 'A' takes 7 numbers, rx ry angle large-arc-flag "
        "sweep-flag x y; save the drawing again, as plain SVG\nM0,0 L1,1\n");
  CHECK(strokes_of("M0 0L1 1,") ==
        "! 10+1: a number is expected after the comma; save the drawing again, as plain SVG\nM0,0 L1,1\n");
  CHECK(
      strokes_of("M0 0L1 1,L2 2") ==
      "! 10+2: a number is expected after the comma; save the drawing again, as plain SVG\nM0,0 L1,1 L2,2\n");
  CHECK(strokes_of("M0 0L1 1e999") ==
        "! 8+5: this number is too large: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
  CHECK(strokes_of("M0 0L1 1e-999") == "M0,0 L1,0\n");
  CHECK(strokes_of("M25,,0H13V3") ==
        "! 5+1: a number is expected here: 'M' takes 2 numbers, x y; save the drawing again, as plain SVG\n"
        "M0,0 L13,0 L13,3\n");
  CHECK(strokes_of("M0 0L1,,1") ==
        "! 8+1: a number is expected here: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
  CHECK(strokes_of("M0 0Lnan inf") ==
        "! 6+3: a number is expected here: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
}

TEST_CASE("a mistake in path data of several lines has the file's line and column", "[trace][svg]") {
  CHECK(said("<svg width='10mm' viewBox='0 0 10 10'>\r\n<path id='\u00e9' d='M0 0\r\n  l1 1\r\n  \tl1 "
             "x'/></svg>",
             "a.svg") ==
        "4:7: a number is expected here: 'l' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
  CHECK(said("<svg width='10mm' viewBox='0 0 10 10'>\n<path\n  fill=\"'d='\"\n  d = \"M0 0\nX\"/></svg>",
             "a.svg") ==
        "5:1: 'X' is no command; one of M, L, H, V, C, S, Q, T, A and Z is expected here; save the drawing "
        "again, as plain SVG\n");
  // A value with references stands elsewhere than it is written; the mistake is at its beginning.
  CHECK(said("<svg width='10mm' viewBox='0 0 10 10'>\n<path d='M0 0&#32;L1 x'/></svg>", "a.svg") ==
        "2:10: a number is expected here: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
  CHECK(said("<!DOCTYPE svg [<!ENTITY p 'M0 0 L1 x'>]>\n<svg width='10mm' viewBox='0 0 10 10'>\n<path "
             "d='&p;'/></svg>",
             "a.svg") ==
        "3:10: a number is expected here: 'L' takes 2 numbers, x y; save the drawing again, as plain SVG\n");
}

TEST_CASE("the first twenty mistakes of a path are said", "[trace][svg]") {
  std::string data = "M0 0";
  for (int i = 0; i < 30; ++i) data += "L x ";
  const std::string all = said(svg_of("<path d='" + data + "'/>"), "a.svg");
  CHECK(std::count(all.begin(), all.end(), '\n') == 21);
  CHECK(all.find("more than 20 mistakes: the first of them are shown; mend these first\n") !=
        std::string::npos);
}
