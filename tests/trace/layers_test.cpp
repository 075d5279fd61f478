// A drawing with more in it than the line of the section: its frame, dimensions, what is hidden.
#include "catch.h"
#include "trace/tracing.h"

namespace arrisline::testing {
namespace {

using Points = std::vector<Point>;

const std::string kSheet = svg_of(
    "<g id='frame'><rect width='90' height='90'/></g>\n"
    "<g id='g12' xmlns:draw='urn:draw' draw:label='Moulding'><path id='line' d='M10 10H20V20'/></g>\n"
    "<path id='dim' d='M10 5H20'/>");

TEST_CASE("of an SVG one element is read by its id or label", "[trace][svg][layers]") {
  const Points line{{10, 10}, {20, 10}, {20, 20}};
  CHECK(traced(kSheet, "a.svg", layer("line")).points == line);
  CHECK(traced(kSheet, "a.svg", layer("g12")).points == line);
  CHECK(traced(kSheet, "a.svg", layer("moulding")).points == line);
  CHECK(traced(kSheet, "a.svg", layer("dim")).points == Points{{10, 5}, {20, 5}});
  CHECK(said(kSheet, "a.svg", layer("line")).empty());
}

TEST_CASE("a layer that is not there is told from those that are", "[trace][layers]") {
  CHECK(said(kSheet, "a.svg", layer("lin")) ==
        "1:1: no layer of the drawing is called 'lin'; it has 'frame', 'g12', 'Moulding', 'line', 'dim'; did "
        "you "
        "mean 'line'?\n");
  CHECK(said(svg_of("<path d='M0 0H9'/>"), "a.svg", layer("line")) ==
        "1:1: no layer of the drawing is called 'line'; its layers have no names: leave --layer out\n");
  CHECK(said("0 0\n1 0\n1 1\n2 1\n", "a.csv", layer("line")) ==
        "1:1: these are points, which have no layers; leave --layer out\n");
  std::string many;
  for (int i = 0; i < 13; ++i) many += "<path id='p" + std::to_string(i) + "' d='M0 0H9'/>";
  CHECK(said(svg_of(many), "a.svg", layer("moulding")) ==
        "1:1: no layer of the drawing is called 'moulding'; it has 'p0', 'p1', 'p2', 'p3', 'p4', 'p5', 'p6', "
        "'p7', "
        "'p8', 'p9', 'p10', 'p11' and others\n");
}

// SVG 1.1, 11.3 and 11.4: what is neither filled nor stroked is not painted.
TEST_CASE("what an SVG neither fills nor strokes is not read", "[trace][svg][layers]") {
  const std::string line = "<path d='M10 10H20V20'/>";
  const Points points{{10, 10}, {20, 10}, {20, 20}};
  CHECK(traced(svg_of("<path fill='none' stroke='none' d='M0 0H5'/>" + line), "a.svg").points == points);
  CHECK(traced(svg_of("<path style='fill: none; stroke:none' d='M0 0H5'/>" + line), "a.svg").points ==
        points);
  CHECK(traced(svg_of("<g fill='none' stroke='none'><path d='M0 0H5'/></g>" + line), "a.svg").points ==
        points);
  // The style goes before the attribute, what is said within before what is said around.
  CHECK(traced(svg_of("<g fill='none' stroke='none'><path style='stroke:#000' stroke='none' "
                      "d='M10 10H20V20'/></g>"),
               "a.svg")
            .points == points);
  // A sheet of styles may stroke it.
  CHECK(traced(svg_of("<path fill='none' class='thin' d='M10 10H20V20'/>"), "a.svg").points == points);
}

TEST_CASE("of a DXF one layer is read, whatever its capitals", "[trace][dxf][layers]") {
  const std::string drawing = dxf_of(
      "0 LINE 8 FRAME 10 0 20 0 11 90 21 0 "
      "0 LWPOLYLINE 8 Moulding 90 3 10 10 20 10 10 20 20 10 10 20 20 20 "
      "0 POLYLINE 8 DIMS 0 VERTEX 8 DIMS 10 1 20 1 0 VERTEX 8 DIMS 10 2 20 2 0 SEQEND 8 DIMS "
      "0 LINE 10 50 20 50 11 60 21 50");
  CHECK(traced(drawing, "a.dxf", layer("moulding")).points == Points{{10, 10}, {20, 10}, {20, 20}});
  CHECK(traced(drawing, "a.dxf", layer("dims")).points == Points{{1, 1}, {2, 2}});
  CHECK(traced(drawing, "a.dxf", layer("0")).points == Points{{50, 50}, {60, 50}});
  CHECK(said(drawing, "a.dxf", layer("moulds")) ==
        "1:1: no layer of the drawing is called 'moulds'; it has 'FRAME', 'Moulding', 'DIMS', '0'\n");
}

// DXF reference, group codes of LAYER: a colour less than 0 is off, bit 1 of group 70 frozen.
TEST_CASE("layers of a DXF that are off or frozen are not read", "[trace][dxf][layers]") {
  const auto with_frame = [](const std::string& colour, const std::string& flags) {
    return dxf_groups("0 SECTION 2 TABLES 0 TABLE 2 LAYER 70 1 0 LAYER 2 frame 70 " + flags + " 62 " +
                      colour +
                      " 0 ENDTAB 0 ENDSEC 0 SECTION 2 ENTITIES 0 LINE 8 FRAME 10 0 20 0 11 90 21 0 "
                      "0 LINE 8 line 10 10 20 10 11 20 21 10 0 ENDSEC 0 EOF");
  };
  const Points line{{10, 10}, {20, 10}};
  CHECK(traced(with_frame("-7", "0"), "a.dxf").points == line);
  CHECK(traced(with_frame("7", "1"), "a.dxf").points == line);
  CHECK_FALSE(said(with_frame("7", "0"), "a.dxf").empty());
  // Asked for by name it is read all the same.
  CHECK(traced(with_frame("-7", "0"), "a.dxf", layer("frame")).points == Points{{0, 0}, {90, 0}});
}

}  // namespace
}  // namespace arrisline::testing
