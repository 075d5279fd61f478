// SVG drawings as programs write them: size, elements, what is not drawn; and against librsvg, which draws
// them anew with absolute coordinates and one matrix.
#include "arrisline/limits.h"
#include "catch.h"
#include "trace/by_librsvg.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

using Points = std::vector<Point>;

/// Of a drawing with these attributes and a line from (0, 0) to (10, 5): mm in one of its units, 0 if
/// unknown.
double unit_of(const std::string& attributes) {
  return traced("<svg " + attributes + "><path d='M0 0L10 5'/></svg>", "a.svg").mm_per_unit.value_or(0);
}

std::string said_of(const std::string& content) {
  return said(svg_of(content), "a.svg");
}

}  // namespace

TEST_CASE("a drawing's unit follows from its size and its viewBox", "[trace][svg]") {
  CHECK(unit_of("width='50mm' height='30mm' viewBox='0 0 50 30'") == 1);
  CHECK(unit_of("width='2in' height='1in' viewBox='0 0 200 100'") == 25.4 * 2 / 200);
  CHECK(unit_of("width='5cm' viewBox='0 0 25 9'") == 2);
  CHECK(unit_of("height='18mm' viewBox='0 0 25 9'") == 2);
  CHECK(unit_of("width='100%' height='18mm' viewBox='0 0 25 9'") == 2);
  CHECK(unit_of("width='96' height='48' viewBox='0 0 254 127'") == Approx(0.1));
  CHECK(unit_of("width='72pt' height='36pt' viewBox='0 0 72 36'") == Approx(25.4 / 72));
  // Without a viewBox a unit is a px.
  CHECK(unit_of("width='50mm' height='30mm'") == 25.4 / 96);
  CHECK(unit_of("width='300' height='200'") == 25.4 / 96);
  // 7.8: the whole box fits, or the whole viewport is covered.
  CHECK(unit_of("width='50mm' height='10mm' viewBox='0 0 50 30'") == Approx(10.0 / 30));
  CHECK(unit_of("width='50mm' height='10mm' viewBox='0 0 50 30' preserveAspectRatio='xMinYMin slice'") == 1);
  // Nothing says how large it is.
  CHECK(unit_of("viewBox='0 0 50 30'") == 0);
  CHECK(unit_of("width='100%' height='100%' viewBox='0 0 50 30'") == 0);
  CHECK(unit_of("width='auto' height='10em' viewBox='0 0 50 30'") == 0);
  CHECK(unit_of("") == 0);

  const Tracing stretched = traced(
      "<svg width='50mm' height='10mm' viewBox='0 0 100 100' preserveAspectRatio='none'><path d='M0 0L10 "
      "5'/></svg>",
      "a.svg");
  CHECK(stretched.mm_per_unit == 1.0);
  CHECK(stretched.points == Points{{0, 0}, {5, 0.5}});

  TracingOptions options;
  options.width = 40;
  CHECK(traced("<svg width='50mm' viewBox='0 0 50 30'><path d='M2 0L10 5'/></svg>", "a.svg", options)
            .mm_per_unit == 5.0);
  CHECK(said("<svg><path d='M2 0V5'/></svg>", "a.svg", options) ==
        "1:15: the line is upright, so that the width given says nothing; leave --width out\n");
}

TEST_CASE("mistakes in the size of a drawing", "[trace][svg]") {
  CHECK(said("<svg width='0mm'/>", "a.svg") == "1:13: the drawing has no size; give its page one\n");
  CHECK(said("<svg height='-5'/>", "a.svg") == "1:14: the drawing has no size; give its page one\n");
  for (const char* sizes : {"width='1e300mm' viewBox='0 0 1e-300 1'", "height='1mm' viewBox='0 0 1 1e99'"}) {
    CHECK(said("<svg " + std::string(sizes) + "><path d='M0 0h1'/></svg>", "a.svg") ==
          "1:1: the size of the drawing and that of its viewBox are too far apart; save the drawing again, "
          "as plain SVG\n");
  }
  CHECK(said("<svg width='5yd'\n viewBox='0 0 1'/>", "a.svg") ==
        "1:14: unknown unit 'yd'; expected mm, cm, in, pt, pc, px or no unit\n2:11: a viewBox takes 4 "
        "numbers: x, y, width, height, such as 0 0 210 297\n");
}

TEST_CASE("shapes are the paths that they stand for", "[trace][svg]") {
  const auto points = [](const std::string& content) { return traced(svg_of(content), "a.svg"); };
  const Tracing line = points("<line x1='1' y1='2' x2='3' y2='4'/>");
  CHECK(line.points == Points{{1, 2}, {3, 4}});
  CHECK(line.drawn);
  CHECK_FALSE(line.closed);
  CHECK(line.upward == Upward::y_down);
  CHECK(points("<line x2='3'/>").points == Points{{0, 0}, {3, 0}});
  CHECK(points("<line x2='1in'/>").points == Points{{0, 0}, {96, 0}});
  CHECK(points("<polyline points='0,0 1,1-2,3'/>").points == Points{{0, 0}, {1, 1}, {-2, 3}});
  const Tracing polygon = points("<polygon points='0 0 4 0 4 3'/>");
  CHECK(polygon.points == Points{{0, 0}, {4, 0}, {4, 3}});
  CHECK(polygon.closed);
  const Tracing rect = points("<rect x='1' y='2' width='10' height='5'/>");
  CHECK(rect.points == Points{{1, 2}, {11, 2}, {11, 7}, {1, 7}});
  CHECK(rect.closed);
  // 9.2: one radius stands for both, and neither is more than half its side.
  const auto alike_path = [&](const std::string& shape, const std::string& data) {
    CAPTURE(shape);
    const Tracing a = points(shape);
    const Tracing b = traced_path(data);
    CHECK(alike(a.points, b.points));
    CHECK(a.closed == b.closed);
  };
  alike_path("<rect width='10' height='6' rx='2'/>",
             "M2 0H8A2 2 0 0 1 10 2V4A2 2 0 0 1 8 6H2A2 2 0 0 1 0 4V2A2 2 0 0 1 2 0Z");
  alike_path("<rect width='10' height='6' rx='2' ry='9'/>",
             "M2 0H8A2 3 0 0 1 10 3A2 3 0 0 1 8 6H2A2 3 0 0 1 0 3A2 3 0 0 1 2 0Z");
  const Tracing circle = points("<circle cx='5' cy='5' r='3'/>");
  CHECK(circle.closed);
  CHECK(circle.points.front() == Point{8, 5});
  CHECK(apart(circle, traced_path("M8 5A3 3 0 0 1 2 5A3 3 0 0 1 8 5Z")) < 0.002);
  const Tracing ellipse = points("<ellipse cx='1' rx='3' ry='2'/>");
  CHECK(ellipse.closed);
  for (const Point p : ellipse.points) CHECK((p.x - 1) * (p.x - 1) / 9 + p.y * p.y / 4 == Approx(1));
  for (const char* nothing :
       {"<rect width='5'/>", "<circle cx='3'/>", "<ellipse rx='5'/>", "<polyline points='1 1'/>",
        "<polygon/>", "<path/>", "<path d=''/>", "<line x1='1' x2='1'/>"})
    CHECK(points(std::string(nothing) + "<path d='M0 0H1'/>").points == Points{{0, 0}, {1, 0}});
}

TEST_CASE("mistakes in shapes", "[trace][svg]") {
  CHECK(said_of("<polyline points='0 0 1'/>") ==
        "2:24: points are pairs of numbers, and the last one here has no y; add it, or leave the x out\n");
  CHECK(said_of("<polyline points='0 0 1 x'/>") ==
        "2:25: a number is expected here; save the drawing again, as plain SVG\n");
  CHECK(said_of("<rect width='-5' height='2'/>") ==
        "2:14: a size is not negative; write it without the minus\n");
  CHECK(said_of("<circle r='5%'/>") ==
        "2:12: this unit is not read; expected mm, cm, in, pt, pc, px or none\n");
  CHECK(said_of("<line x1='a' y2='b'/>") ==
        "2:11: a length is expected here, such as 10mm, 2in or 40\n2:18: a length is expected here, such as "
        "10mm, 2in or 40\n");
}

TEST_CASE("only what is drawn is read", "[trace][svg]") {
  const std::string line = "<path d='M0 0H5'/>";
  for (const char* other :
       {"<defs><path d='M9 9H5'/></defs>", "<clipPath id='c'><rect width='5' height='5'/></clipPath>",
        "<g display='none'><g><path d='M9 9H5'/></g></g>",
        "<path style='stroke:red;display : none;' d='M9 9H5'/>",
        "<path style='display:none !important' d='M9 9H5'/>",
        "<g style='visibility:hidden'><path d='M9 9H5'/></g>", "<symbol><path d='M9 9H5'/></symbol>",
        "<mask><rect width='5' height='5'/></mask>", "<marker><path d='M9 9H5'/></marker>",
        "<pattern><path d='M9 9H5'/></pattern>",
        "<metadata><x:y xmlns:x='u'><path d='M9 9H5'/></x:y></metadata>", "<title>path</title>",
        "<style>path{marker:none}</style>", "<x:path xmlns:x='http://example.org/' d='M9 9H5'/>",
        "<g visibility='collapse'><path d='M9 9H5'/></g>", "<g visibility='hidden'><text>a</text></g>",
        "<!-- <path d='M9 9H5'/> -->"}) {
    CAPTURE(other);
    CHECK(traced(svg_of(other + line), "a.svg").points == Points{{0, 0}, {5, 0}});
    CHECK(said_of(line + other).empty());
  }
  CHECK(traced(svg_of("<g style='displays:none'><a><switch>" + line + "</switch></a></g>"), "a.svg").points ==
        Points{{0, 0}, {5, 0}});
  // What is hidden may hold what is not.
  CHECK(traced(svg_of("<g visibility='hidden'><path d='M9 9H5'/><g style='visibility:visible'>" + line +
                      "</g></g>"),
               "a.svg")
            .points == Points{{0, 0}, {5, 0}});
  CHECK(traced("<s:svg xmlns:s='http://www.w3.org/2000/svg'><s:path d='M0 0H5'/></s:svg>", "a.svg").points ==
        Points{{0, 0}, {5, 0}});
}

TEST_CASE("what is not read is named once", "[trace][svg]") {
  CHECK(said_of("<text>ovolo</text><path d='M0 0H5'/><text/>") ==
        "2:1: warning: words are not read; turn them into paths where they are part of the line\n");
  CHECK(said_of("<image/><path d='M0 0H5'/>") ==
        "2:1: warning: pictures are not read; draw the line over it, and leave it out\n");
  CHECK(said_of("<foreignObject><p/></foreignObject><path d='M0 0H5'/>") ==
        "2:1: warning: what is no SVG is not read; draw it as a path where it is part of the line\n");
  CHECK(said_of("<pth d='M0 0'/><path d='M0 0H5'/>") ==
        "2:1: warning: 'pth' is not read; did you mean 'path'?\n");
  CHECK(said_of("<image/>") ==
        "1:1: there is no line in the drawing; draw that of the section, in one piece\n2:1: warning: "
        "pictures are not read; draw the line over it, and leave it out\n");
}

TEST_CASE("transforms nest", "[trace][svg]") {
  CHECK(alike(
      traced(svg_of("<g transform='translate(10,20)'><g transform='rotate(90)'><path transform='scale(2)' "
                    "d='M1 0L3 1'/></g></g>"),
             "a.svg")
          .points,
      {{10, 22}, {8, 26}}));
  // A circle under a skewed map is an ellipse: each point, sent back, lies on the circle.
  const Tracing skewed =
      traced(svg_of("<path transform='matrix(2 0 .5 .5 3 0)' d='M5 0A5 5 0 0 1 0 5'/>"), "a.svg");
  CHECK(skewed.points.size() > 20);
  for (const Point p : skewed.points) {
    const double y = p.y / 0.5;
    const double x = (p.x - 3 - 0.5 * y) / 2;
    CHECK(x * x + y * y == Approx(25));
  }
  CHECK(said_of("<g transform='rotat(3)'><path d='M0 0H5'/></g>") ==
        "2:15: 'rotat' is no function of a transform; one of matrix, translate, scale, rotate, skewX or "
        "skewY is expected here; did you mean 'rotate'?; save the drawing again, as plain SVG\n");
  CHECK(said_of("<path transform='scale(0)' d='M0 0H5'/>") ==
        "1:1: there is no line in the drawing; draw that of the section, in one piece\n");
  CHECK(said_of("<path transform='scale(1e300)' d='M0 0H5e10'/>") ==
        "2:35: this line goes farther than 1000000000 units from the origin; move the drawing there\n");
}

TEST_CASE("drawings as programs write them", "[trace][svg]") {
  // Made by hand to the standard: namespaces of the program's own, a page, layers, entities in the type.
  const std::string layered = R"svg(<?xml version="1.0" encoding="UTF-8" standalone="no"?>
<!-- drawn over a photograph -->
<svg width="60mm" height="40mm" viewBox="0 0 60 40" version="1.1" id="svg5"
   xmlns:program="http://example.org/program" xmlns="http://www.w3.org/2000/svg">
  <program:view id="view7" pagecolor="#ffffff" program:zoom="2"/>
  <defs id="defs2"><linearGradient id="g"/></defs>
  <g program:label="Layer 1" id="layer1" transform="translate(-5,-2.5)">
    <path style="fill:none;stroke:#000000;stroke-width:0.264583px" d="m 15,12.5 h 10 v 5 c 0,2.76142 2.23858,5 5,5 h 10"
       id="path10" program:nodes="ccscc" />
  </g>
</svg>
)svg";
  const Tracing tracing = traced(layered, "a.svg");
  CHECK(tracing.mm_per_unit == 1.0);
  CHECK(tracing.points.front() == Point{10, 10});
  CHECK(tracing.points[1] == Point{20, 10});
  CHECK(tracing.points[2] == Point{20, 15});
  CHECK(tracing.points.back() == Point{35, 20});
  // The curve is a quarter of a circle to within 0.03 % of its radius, as handles of 0.5523 are (closed
  // form).
  for (std::size_t i = 2; i + 1 < tracing.points.size(); ++i)
    CHECK(distance(tracing.points[i], Point{25, 15}) == Approx(5).epsilon(3e-4));

  const std::string with_entities = R"svg(<?xml version="1.0"?>
<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd" [
  <!ENTITY ns_svg "http://www.w3.org/2000/svg">
]>
<svg xmlns="&ns_svg;" x="0px" y="0px" width="141.732px" height="99.213px" viewBox="0 0 141.732 99.213"
  enable-background="new 0 0 141.732 99.213" xml:space="preserve">
<polyline fill="none" stroke="#000000" points="10.5,10.5 40.5,10.5 40.5,30.5 "/>
</svg>
)svg";
  CHECK(traced(with_entities, "a.svg").points == Points{{10.5, 10.5}, {40.5, 10.5}, {40.5, 30.5}});
  CHECK(traced("\xEF\xBB\xBF" + layered, "a.svg").points == tracing.points);
}

TEST_CASE("librsvg draws the same line", "[trace][svg]") {
  const std::string straight_and_cubic = "M2 3h10v5c-1 1-2 3-4 2s-3-2-6-1q-4 2-3 8t4 8L20 40l4-3 3 3H50V20";
  const std::string arcs = "M2 3h10v5a8 5 30 01-5 5A20 16 -20 1 0 20 40l4-3 3 3H50a15 15 0 0 0-10-30";
  for (const std::string& data : {straight_and_cubic, arcs}) {
    for (const char* transform : {"", "translate(3,4)", "rotate(10) scale(1.5,1)", "matrix(1 .2 -.3 .9 4 2)",
                                  "skewX(20) skewY(-5)"}) {
      for (const char* size :
           {"width='60mm' height='60mm' viewBox='-5 -5 70 70'", "width='300' height='300'",
            "width='3in' height='30mm' viewBox='-5 -5 70 70'",
            "width='3in' height='30mm' viewBox='-5 -5 70 70' preserveAspectRatio='xMinYMax slice'",
            "width='90mm' height='40mm' viewBox='-5 -5 70 70' preserveAspectRatio='none'"}) {
        CAPTURE(data, transform, size);
        const std::string svg = std::string("<svg xmlns='http://www.w3.org/2000/svg' ") + size +
                                "><g transform='" + transform + "'><path fill='none' stroke='black' d='" +
                                data + "'/></g></svg>";
        const Tracing own = in_mm(traced(svg, "a.svg"), true);
        const Tracing theirs = in_mm(by_librsvg(svg), true);
        CHECK(own.points.size() > 60);
        // Chords of both, and what cairo rounds. librsvg makes arcs of cubics, a quarter turn each at the
        // most, that go off by 0.000273 of the radius (closed form); the longest half axis is 20, made longer
        // by at most 1.5, and a unit is at most 90/70 mm.
        CHECK(apart(own, theirs) < (data == arcs ? 0.004 + 0.000273 * 20 * 1.5 * 90 / 70 : 0.005));
      }
    }
  }
}

TEST_CASE("librsvg puts a drawing within a drawing at the same place", "[trace][svg]") {
  for (const char* aspect :
       {"none", "xMinYMin", "xMidYMid meet", "xMaxYMax", "xMinYMax slice", "xMaxYMid slice"}) {
    for (const char* place :
         {"x='200' y='300' width='100' height='60'", "x='8cm' y='40%' width='30%' height='25%'"}) {
      CAPTURE(aspect, place);
      const std::string svg =
          std::string("<svg xmlns='http://www.w3.org/2000/svg' width='900' height='900'><svg ") + place +
          " viewBox='2 3 40 50' overflow='visible' preserveAspectRatio='" + aspect +
          "'><path fill='none' stroke='black' d='M5 6L20 9 30 20'/></svg></svg>";
      CHECK(apart(in_mm(traced(svg, "a.svg"), false), in_mm(by_librsvg(svg), false)) < 0.002);
    }
  }
}

TEST_CASE("what is no SVG", "[trace][svg]") {
  CHECK(said("<html><svg/></html>", "a.svg") ==
        "1:1: this is 'html'; expected the drawing to be an 'svg'; save the drawing again, as plain SVG\n");
  CHECK(said("<svg>\n<g>\n</svg>", "a.svg") ==
        "3:3: the drawing is broken here (mismatched tag); save the drawing again, as plain SVG\n");
  CHECK(said("<svg>\n<path d='M0 0", "a.svg") ==
        "2:1: the drawing is broken here (unclosed token); save the drawing again, as plain SVG\n");
  CHECK(said("<svg><x:g/></svg>", "a.svg") ==
        "1:6: the drawing is broken here (unbound prefix); save the drawing again, as plain SVG\n");
  CHECK(said("<svg/><svg/>", "a.svg") ==
        "1:7: the drawing is broken here (junk after document element); save the drawing again, as plain "
        "SVG\n");
  CHECK(said("", "a.svg") ==
        "1:1: the drawing is broken here (no element found); save the drawing again, as plain SVG\n");
  CHECK(said("<svg>\xE9</svg>", "a.svg") ==
        "1:6: the drawing is broken here (not well-formed (invalid token)); save the drawing again, as plain "
        "SVG\n");
  CHECK(said("<svg>&what;</svg>", "a.svg") ==
        "1:6: the drawing is broken here (undefined entity); save the drawing again, as plain SVG\n");
  CHECK(said("<svg/>", "a.svg") ==
        "1:1: there is no line in the drawing; draw that of the section, in one piece\n");
}

TEST_CASE("limits of a drawing", "[trace][svg]") {
  const auto nested = [](std::size_t depth) {
    std::string open;
    std::string close;
    for (std::size_t i = 0; i < depth; ++i) {
      open += "<g>";
      close += "</g>";
    }
    return "<svg>" + open + "<path d='M0 0H1'/>" + close + "</svg>";
  };
  CHECK(said(nested(kMaxDrawingDepth - 2), "a.svg").empty());
  CHECK(said(nested(kMaxDrawingDepth - 1), "a.svg") ==
        "1:771: elements lie more than 256 deep within one another here; take the groups apart" +
            to_raise("kMaxDrawingDepth") + "\n");
  const auto entities = [](std::size_t count) {
    std::string declared;
    for (std::size_t i = 0; i < count; ++i) declared += "<!ENTITY e" + std::to_string(i) + " 'x'>\n";
    return "<!DOCTYPE svg [\n" + declared + "]><svg><path d='M0 0H1'/></svg>";
  };
  CHECK(said(entities(kMaxSvgEntities), "a.svg").empty());
  CHECK(said(entities(kMaxSvgEntities + 1), "a.svg")
            .find("the drawing declares more than 100 entities; save it again as plain SVG" +
                  to_raise("kMaxSvgEntities")) != std::string::npos);
  // Entities of entities: stopped by Expat before they grow.
  std::string bomb = "<!DOCTYPE svg [<!ENTITY a0 'aaaaaaaaaaaaaaaaaaaa'>";
  for (int i = 1; i < 12; ++i) {
    bomb += "<!ENTITY a" + std::to_string(i) + " '";
    for (int k = 0; k < 10; ++k) bomb += "&a" + std::to_string(i - 1) + ";";
    bomb += "'>";
  }
  CHECK(said(bomb + "]><svg>&a11;</svg>", "a.svg")
            .find("limit on input amplification factor (from DTD and entities) "
                  "breached") != std::string::npos);
  CHECK(said("<!DOCTYPE svg [<!ENTITY a '&b;'><!ENTITY b '&a;'>]><svg>&a;</svg>", "a.svg")
            .find("the drawing is broken here (recursive entity reference)") != std::string::npos);

  std::string names = "<svg";
  for (int i = 0; names.size() < kMaxDrawingBytes - 100; ++i)
    names += " xmlns:a" + std::to_string(i) + "='u'";
  CHECK(said(names + "/>", "a.svg") ==
        "1:1: the names and values in this drawing take more than 64 MB; draw the line alone" +
            to_raise("kMaxXmlBytes") + "\n");

  std::string many = "M0 0";
  for (std::size_t i = 0; i <= kMaxDrawnPoints; ++i) many += "h1";
  CHECK(said("<svg><path d='" + many + "'/></svg>", "a.svg") ==
        "1:6: with this element the drawing has more than 100000 lines and curves; draw the line with fewer" +
            to_raise("kMaxDrawnPoints") + "\n");
  std::string points;
  for (std::size_t i = 0; i <= 2 * kMaxDrawnPoints; ++i) points += "1 ";
  CHECK(said("<svg><polyline points='" + points + "'/></svg>", "a.svg")
            .find("at most 200000 numbers are expected here") != std::string::npos);
  // Few curves, but far more points than a line may have.
  std::string curls = "M0 0";
  for (int i = 0; i < 3000; ++i) curls += "c90 0 90 90 1 90";
  CHECK(said("<svg width='1000mm' viewBox='0 0 1 1'><path d='" + curls + "'/></svg>", "a.svg")
            .find("with this line the drawing takes more than 100000 points; draw the line with fewer" +
                  to_raise("kMaxDrawnPoints")) != std::string::npos);
  CHECK(said("<svg>" + std::string(kMaxDrawingBytes, ' ') + "</svg>", "a.svg") ==
        "1:1: the drawing is larger than 16 MB, the most that is read of one; draw the line alone" +
            to_raise("kMaxDrawingBytes") + "\n");
}
