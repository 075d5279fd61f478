// DXF drawings in ASCII, by the published reference of the format: groups, LINE, ARC, POLYLINE, LWPOLYLINE,
// the header's units.
#include "arrisline/limits.h"
#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

using Points = std::vector<Point>;

Tracing traced_dxf(const std::string& entities, const std::string& header = "9 $INSUNITS 70 4") {
  return traced(dxf_of(entities, header), "a.dxf");
}

std::string said_of(const std::string& entities) {
  return said(dxf_of(entities), "a.dxf");
}

const std::string kLine = "0 LINE 8 0 10 0 20 0 11 10 21 5";

}  // namespace

TEST_CASE("lines and arcs of a drawing", "[trace][dxf]") {
  const Tracing line = traced_dxf("0 LINE 8 0 10 0 20 0 30 0 11 10 21 5.5 31 0");
  CHECK(line.points == Points{{0, 0}, {10, 5.5}});
  CHECK(line.drawn);
  CHECK_FALSE(line.closed);
  CHECK(line.upward == Upward::y_up);
  // An ARC runs counter-clockwise from group 50 to group 51, in degrees.
  const Tracing arc = traced_dxf("0 ARC 10 3 20 4 40 5 50 270 51 90");
  CHECK(distance(arc.points.front(), Point{3, -1}) < 1e-12);
  CHECK(distance(arc.points.back(), Point{3, 9}) < 1e-12);
  CHECK(arc.points.size() > 50);
  for (const Point p : arc.points) {
    CHECK(distance(p, Point{3, 4}) == Approx(5));
    CHECK(p.x >= 3 - 1e-12);
  }
  // A step, a hollow and a fillet, in any order.
  const Tracing joined = traced_dxf(
      "0 ARC 10 10 20 5 40 5 50 180 51 270 0 LINE 10 5 20 5 11 5 21 9 0 LINE 10 20 20 0 11 10 21 0");
  CHECK(joined.points.front() == Point{5, 9});
  CHECK(joined.points.back() == Point{20, 0});
  // Extruded along -z it is seen from behind: x runs the other way.
  const Tracing behind = traced_dxf("0 ARC 10 -3 20 4 40 5 50 0 51 90 230 -1");
  CHECK(distance(behind.points.front(), Point{-2, 4}) < 1e-12);
  CHECK(distance(behind.points.back(), Point{3, 9}) < 1e-12);
  CHECK(traced_dxf("0 ARC 10 0 20 0 40 5 50 0 51 0").closed);
}

TEST_CASE("ends are joined that lie apart by what few decimals round off", "[trace][dxf][join]") {
  // A line and an arc of 1/6 in, in inches.
  const auto drawn = [](const std::string& end, const std::string& centre) {
    return dxf_of("0 LINE 10 0.000 20 0.000 11 " + end + " 21 0.000 0 ARC 10 " + centre +
                      " 20 -0.167 40 0.167 50 0.000 51 90.000",
                  "9 $INSUNITS 70 1");
  };
  CHECK(traced(drawn("1.000", "1.001"), "a.dxf").points.size() > 4);
  CHECK(traced(drawn("1.000", "1.002"), "a.dxf").points.size() > 4);
  CHECK_FALSE(said(drawn("1.000", "1.003"), "a.dxf").empty());
  // By more decimals it is a gap, and by fewer no more than the tolerance is closed.
  CHECK_FALSE(said(drawn("1.00000", "1.001"), "a.dxf").empty());
  CHECK_FALSE(said(dxf_of("0 LINE 10 0.0 20 0.0 11 1.0 21 0.0 0 LINE 10 1.1 20 0.0 11 2.0 21 1.0",
                          "9 $INSUNITS 70 4"),
                   "a.dxf")
                  .empty());
  // A gap too small for three decimals is told by more.
  CHECK(
      said(dxf_of("0 LINE 10 0 20 0 11 1 21 0 0 LINE 10 1.00045 20 0 11 2 21 1", "9 $INSUNITS 70 1"), "a.dxf")
          .find(", 0.00045 from (1, 0)") != std::string::npos);
}

TEST_CASE("polylines and their bulges", "[trace][dxf]") {
  // A bulge is the tangent of a quarter of the included angle, negative where the arc goes clockwise; 0 is
  // straight, 1 is a half circle (DXF reference, VERTEX and LWPOLYLINE, group 42).
  const std::string old =
      "0 POLYLINE 66 1 70 0 0 VERTEX 10 0 20 0 0 VERTEX 10 10 20 0 42 1 0 VERTEX 10 10 20 4 0 VERTEX 10 20 "
      "20 4 "
      "42 -0.41421356237309503 0 VERTEX 10 22 20 2 0 SEQEND";
  const std::string light =
      "0 LWPOLYLINE 90 5 70 0 43 0 10 0 20 0 10 10 20 0 42 1 10 10 20 4 10 20 20 4 "
      "42 -0.41421356237309503 10 22 20 2";
  const Tracing tracing = traced_dxf(old);
  CHECK(traced_dxf(light).points == tracing.points);
  CHECK(tracing.points[0] == Point{0, 0});
  CHECK(tracing.points[1] == Point{10, 0});
  CHECK(tracing.points.back() == Point{22, 2});
  std::size_t half = 0;
  std::size_t quarter = 0;
  for (const Point p : tracing.points) {
    if (p.y > 0 && p.y < 4 && p.x < 15) {
      ++half;
      CHECK(distance(p, Point{10, 2}) == Approx(2));
      CHECK(p.x > 10);  // to the left of the way up it is the right-hand half: counter-clockwise
    }
    if (p.x > 20 && p.x < 22) {
      ++quarter;
      // Clockwise by a quarter, from (20, 4) to (22, 2): about (20, 2).
      CHECK(distance(p, Point{20, 2}) == Approx(2));
    }
  }
  CHECK(half > 20);
  CHECK(quarter > 10);
  CHECK(traced_dxf("0 LWPOLYLINE 70 1 10 0 20 0 10 4 20 0 10 4 20 3").closed);
  CHECK(traced_dxf("0 POLYLINE 70 1 0 VERTEX 10 0 20 0 0 VERTEX 10 4 20 0 0 VERTEX 10 4 20 3 0 SEQEND")
            .points == Points{{0, 0}, {4, 0}, {4, 3}});
  // The frame of a fitted curve, flag 16 of a vertex, is no part of it.
  CHECK(
      traced_dxf(
          "0 POLYLINE 70 4 0 VERTEX 10 9 20 9 70 16 0 VERTEX 10 0 20 0 70 8 0 VERTEX 10 4 20 0 70 8 0 SEQEND")
          .points == Points{{0, 0}, {4, 0}});
  CHECK(traced_dxf("0 LWPOLYLINE 210 0 220 0 230 -1 10 0 20 0 42 1 10 4 20 0").points.back() == Point{-4, 0});
}

TEST_CASE("the header says the unit", "[trace][dxf]") {
  const auto unit = [](const std::string& header) {
    return traced_dxf(kLine, header).mm_per_unit.value_or(0);
  };
  CHECK(unit("9 $INSUNITS 70 1") == 25.4);
  CHECK(unit("9 $INSUNITS 70 2") == Approx(304.8));
  CHECK(unit("9 $INSUNITS 70 4") == 1);
  CHECK(unit("9 $INSUNITS 70 5") == 10);
  CHECK(unit("9 $INSUNITS 70 6") == 1000);
  CHECK(traced_dxf("0 LINE 10 0 20 0 11 1e6 21 0", "9 $INSUNITS 70 8").mm_per_unit == 25.4 / 1e6);
  CHECK(unit("9 $INSUNITS 70 9") == Approx(0.0254));
  CHECK(unit("9 $INSUNITS 70 10") == Approx(914.4));
  CHECK(unit("9 $INSUNITS 70 13") == 0.001);
  CHECK(unit("9 $INSUNITS 70 14") == 100);
  CHECK(unit("9 $INSUNITS 70 3") == 0);
  CHECK(unit("9 $ACADVER 1 AC1009") == 0);
  CHECK(unit("") == 0);
  CHECK(unit("9 $MEASUREMENT 70 1") == 1);
  CHECK(unit("9 $MEASUREMENT 70 0 9 $INSUNITS 70 0") == 25.4);
  CHECK(unit("9 $MEASUREMENT 70 0 9 $INSUNITS 70 4") == 1);
  CHECK(unit("9 $MEASUREMENT 70 1 9 $INSUNITS 70 3") == 0);
}

TEST_CASE("a drawing as programs write it", "[trace][dxf]") {
  // Made by hand to the reference: comments, tables, blocks, blanks before codes, CRLF, a code page of its
  // own.
  std::string text =
      "999\r\nwritten by hand\r\n  0\r\nSECTION\r\n  2\r\nHEADER\r\n  9\r\n$DWGCODEPAGE\r\n  3\r\n"
      "ANSI_1252\r\n  9\r\n$EXTMIN\r\n 10\r\n0.0\r\n 20\r\n0.0\r\n  9\r\n$INSUNITS\r\n 70\r\n     4\r\n"
      "  0\r\nENDSEC\r\n  0\r\nSECTION\r\n  2\r\nTABLES\r\n  0\r\nTABLE\r\n  2\r\nLAYER\r\n  0\r\nLAYER\r\n"
      "  2\r\nGEH\xC4USE\r\n  0\r\nENDTAB\r\n  0\r\nENDSEC\r\n  0\r\nSECTION\r\n  2\r\nBLOCKS\r\n  0\r\n"
      "BLOCK\r\n  0\r\nLINE\r\n 10\r\n90.0\r\n 20\r\n0.0\r\n 11\r\n95.0\r\n 21\r\n0.0\r\n  0\r\nENDBLK\r\n"
      "  0\r\nENDSEC\r\n  0\r\nSECTION\r\n  2\r\nENTITIES\r\n  0\r\nLINE\r\n  "
      "5\r\n2F\r\n100\r\nAcDbEntity\r\n"
      "  8\r\nGEH\xC4USE\r\n100\r\nAcDbLine\r\n 10\r\n1.5\r\n 20\r\n-2.0E+00\r\n 30\r\n0.0\r\n 11\r\n10.0\r\n"
      " 21\r\n+5.0\r\n 31\r\n0.0\r\n  0\r\nENDSEC\r\n  0\r\nEOF\r\n";
  CHECK(traced(text, "a.dxf").points == Points{{1.5, -2}, {10, 5}});
  CHECK(traced(text, "a.dxf").mm_per_unit == 1.0);
  CHECK(traced("\xEF\xBB\xBF" + dxf_of(kLine), "a.dxf").points == Points{{0, 0}, {10, 5}});
}

TEST_CASE("what is not read is named", "[trace][dxf]") {
  CHECK(said_of("0 CIRCLE 10 0 20 0 40 5 " + kLine) ==
        "6:1: warning: 'CIRCLE' is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them; draw "
        "it with these "
        "where it is part of the line\n");
  CHECK(said_of(kLine + " 0 POINT 10 0 0 TEXT 1 a 0 POINT 10 3") ==
        "18:1: warning: 'POINT' is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them (2 of "
        "them); draw it "
        "with these where it is part of the line\n22:1: warning: 'TEXT' is not read, only LINE, ARC, "
        "POLYLINE, LWPOLYLINE and blocks of them; draw it with these where it is part of the line\n");
  CHECK(said_of("0 SPLINE " + kLine) ==
        "6:1: warning: 'SPLINE' is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them; turn "
        "it into a "
        "polyline where "
        "it is part of the line\n");
  CHECK(said_of("0 LINE 67 1 10 5 20 5 11 6 21 6 0 POLYLINE 67 1 0 VERTEX 67 1 10 0 20 9 0 VERTEX 10 1 20 9 "
                "0 SEQEND " +
                kLine) ==
        "6:1: warning: what lies on a layout sheet is not read; draw it in model space where it is part of "
        "the line\n");
  CHECK(said_of("0 LINE 60 1 10 5 20 5 11 6 21 6 " + kLine).empty());
  CHECK(said_of("0 POLYLINE 70 64 0 VERTEX 10 0 20 9 0 VERTEX 10 1 20 9 0 SEQEND " + kLine) ==
        "6:1: warning: a POLYLINE that is a mesh is not read; draw the line as a flat one\n");
  CHECK(
      said_of("0 TEXT 1 a") ==
      "1:1: there is no line in the drawing; draw that of the section, in one piece\n6:1: warning: 'TEXT' is "
      "not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them; draw it with these where it is "
      "part of the line\n");
}

TEST_CASE("mistakes in entities are said where they stand", "[trace][dxf]") {
  CHECK(said_of("0 LINE 10 0 20 0 21 5") ==
        "6:1: this LINE has no group 11, x of its end; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 LINE") ==
        "6:1: this LINE has no group 10, x of its start; save the drawing again, as DXF R12\n6:1: this LINE "
        "has no group 20, y of its start; save the drawing again, as DXF R12\n6:1: this LINE has no group "
        "11, x of its end; save the drawing again, as DXF R12\n6:1: this LINE has no group 21, y of its end; "
        "save the drawing again, as DXF R12\n");
  CHECK(said_of("0 ARC 50 0") ==
        "6:1: this ARC has no group 10, x of its centre; save the drawing again, as DXF R12\n6:1: this ARC "
        "has no group 20, y of its centre; save the drawing again, as DXF R12\n6:1: this ARC has no group "
        "40, its radius; save the drawing again, as DXF R12\n6:1: this ARC has no group 51, the angle where "
        "it ends; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 ARC 10 0 20 0 40 5 51 90") ==
        "6:1: this ARC has no group 50, the angle where it begins; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 ARC 10 0 20 0 40 0 50 0 51 90") ==
        "12:1: the radius of an arc is more than 0; leave this arc out\n");
  CHECK(said_of("0 LINE 10 x 20 1,5 11 nan 21 1e10") ==
        "8:1: 'x' is not a number; group 10 is one; save the drawing again, as DXF R12\n10:1: '1,5' is not a "
        "number; group 20 is one; save the drawing again, as DXF R12\n12:1: 'nan' is not a number; group 11 "
        "is one; save the drawing again, as DXF R12\n14:1: '1e10' is too large; expected a number up to "
        "1000000000, as on a drawing in mm\n");
  CHECK(said_of("0 ARC 10 0 20 0 40 5 50 0 51 90 210 1 230 0") ==
        "6:1: this ARC lies askew in space; draw the line flat, seen from above\n");
  CHECK(said_of("0 POLYLINE 0 VERTEX 20 3 0 VERTEX 10 3 42 a 0 SEQEND") ==
        "8:1: this VERTEX has no group 10, its x; save the drawing again, as DXF R12\n12:1: this VERTEX has "
        "no group 20, its y; save the drawing again, as DXF R12\n16:1: 'a' is not a number; group 42 is one; "
        "save the drawing again, as DXF R12\n");
  CHECK(said_of("0 LWPOLYLINE 42 1 10 0 20 0") ==
        "8:1: group 42 comes before the first vertex, group 10; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 LWPOLYLINE 10 0 10 1 20 0") ==
        "8:1: this vertex has no group 20, its y; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 POLYLINE 0 VERTEX 10 0 20 0 " + kLine) ==
        "14:1: here is 'LINE'; expected VERTEX or SEQEND, since a POLYLINE goes on; save the drawing again, "
        "as DXF R12\n");
}

TEST_CASE("a drawing that is not whole", "[trace][dxf]") {
  CHECK(said("", "a.dxf") == "1:1: the drawing is empty; save the drawing again, as DXF R12\n");
  CHECK(said("0\nLINE\n", "a.dxf") ==
        "2:1: a DXF drawing begins with group 0, SECTION; save the drawing again, as DXF R12\n");
  CHECK(said("nothing\n", "a.dxf") ==
        "1:1: 'nothing' is no group code; expected a whole number, with its value on the line after it; save "
        "the drawing again, as DXF R12\n");
  CHECK(said(dxf_groups("0 SECTION 2 ENTITIES " + kLine), "a.dxf") ==
        "17:1: the drawing breaks off: group 0, EOF, is missing; save the drawing again, as DXF R12\n");
  CHECK(said(dxf_groups("0 SECTION 2 ENTITIES 0 POLYLINE 0 VERTEX 10 1 20 1 0 EOF"), "a.dxf") ==
        "15:1: the drawing breaks off: a POLYLINE has no SEQEND; save the drawing again, as DXF R12\n");
  CHECK(said("0\nSECTION\n2\nENTITIES\n0", "a.dxf") ==
        "5:1: the drawing breaks off: the value of group 0 is missing; save the drawing again, as DXF R12\n");
  CHECK(said("0\nSECTION\n2\nENTITIES\n\n0\nEOF\n", "a.dxf") ==
        "5:1: this line is empty; expected a whole number, with its value on the line after it; save the "
        "drawing again, as DXF R12\n");
  CHECK(said_of("0 LINE 1x 0") ==
        "7:1: '1x' is no group code; expected a whole number, with its value on the line after it; save the "
        "drawing again, as DXF R12\n");
}

TEST_CASE("entities that do not make one line", "[trace][dxf]") {
  CHECK(said_of(kLine + " 0 LINE 10 20 20 5 11 30 21 5") ==
        "18:1: another line begins here, at (20, 5); expected one line, and the first begins at line 6, "
        "column 1; "
        "nearest to another one is its end at (20, 5), 10 from (10, 5); to read one of them alone, give its "
        "layer or id: --layer NAME\n");
  CHECK(said_of("0 LWPOLYLINE 10 0 20 0 10 10 20 10 10 10 20 0 10 0 20 10") ==
        "16:1: this crosses what is drawn at line 8, column 1, at (5, 5); draw one that nowhere meets "
        "itself\n");
}

TEST_CASE("a DXF that does not lie flat is refused", "[trace][dxf]") {
  const std::string flat = " lies askew in space; draw the line flat, seen from above\n";
  CHECK(said_of("0 LINE 10 0 20 0 30 0 11 10 21 0 31 5") == "6:1: this LINE" + flat);
  const auto polyline = [](const std::string& height) {
    return "0 POLYLINE 70 8 0 VERTEX 10 0 20 0 30 2 0 VERTEX 10 5 20 5 30 " + height + " 0 SEQEND";
  };
  CHECK(said_of(polyline("3")) == "6:1: this POLYLINE" + flat);
  CHECK(said_of(polyline("2")).empty());
}

TEST_CASE("a DXF that has lost vertices is refused", "[trace][dxf]") {
  CHECK(said_of("0 LWPOLYLINE 90 3 10 0 20 0 10 10 20 10") ==
        "8:1: this LWPOLYLINE is to have 3 vertices, and 2 follow; save the drawing again, as DXF R12\n");
  CHECK(said_of("0 LWPOLYLINE 90 2 10 0 20 0 10 10 20 10").empty());
}

TEST_CASE("limits of a DXF drawing", "[trace][dxf]") {
  std::string vertices;
  for (std::size_t i = 0; i <= kMaxDrawnPoints + 1; ++i) vertices += " 10 " + std::to_string(i) + " 20 0";
  const std::string more =
      "6:1: with this entity the drawing has more than 100000 lines and arcs; draw the line with fewer" +
      to_raise("kMaxDrawnPoints") + "\n";
  CHECK(said_of("0 LWPOLYLINE" + vertices) ==
        "8:1: with this entity the drawing has more than 100000 lines and arcs; draw the line with fewer" +
            to_raise("kMaxDrawnPoints") + "\n");
  std::string bulges;
  for (std::size_t i = 0; i <= 3 * kMaxDrawnPoints + 20; ++i) bulges += " 42 0";
  CHECK(said_of("0 LWPOLYLINE" + bulges) == more);
}
