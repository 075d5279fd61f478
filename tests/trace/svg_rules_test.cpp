// Style sheets of an SVG, by SVG 1.1, chapter 6, and CSS 2.1, 6.4: which declaration holds.
#include "trace/svg_rules.h"

#include "catch.h"
#include "trace/tracing.h"

namespace arrisline::testing {
namespace {

using Points = std::vector<Point>;

/// Whether a path from (0, 0) to (5, 0), with these attributes, is read under a sheet, or only what stands
/// beside it.
bool is_read(const std::string& sheet, const std::string& attributes) {
  const std::string drawing =
      svg_of("<defs><style type='text/css'>" + sheet + "</style></defs><path " + attributes +
             " d='M0 0H5'/><line style='stroke:red' x1='5' x2='5' "
             "y2='5'/>");
  const Points points = traced(drawing, "a.svg").points;
  REQUIRE(points.size() >= 2);
  return points.size() == 3;
}

TEST_CASE("rules for a class, an id, an element", "[trace][svg]") {
  const std::string none = "{fill:none;stroke:none}";
  CHECK_FALSE(is_read(".cls-1" + none, "class='cls-1'"));
  CHECK_FALSE(is_read(".b , .cls-1 " + none, "class=' a  cls-1 '"));
  CHECK(is_read(".cls-1" + none, "class='cls-10'"));
  CHECK(is_read(".cls-1" + none, "class='CLS-1'"));
  CHECK_FALSE(is_read("#a" + none, "id='a'"));
  CHECK_FALSE(is_read("path.a{display:none}", "class='a'"));
  CHECK(is_read("rect.a{display:none}", "class='a'"));
  CHECK_FALSE(is_read("path#b { Visibility : Hidden }", "id='b'"));
  CHECK_FALSE(is_read("*.a{display:none}", "class='a'"));
  CHECK(is_read(".a{fill:none;stroke:#000}", "class='a'"));
  CHECK(is_read(".a{fill:none}.b{stroke:#000}", "class='a b'"));
  // As drawing programs write them.
  CHECK_FALSE(
      is_read("<![CDATA[\n\t.st0{fill:none;stroke:#000000;stroke-miterlimit:10;}\n\t.st1{fill:none;"
              "stroke:none;}\n]]>",
              "class='st1'"));
  CHECK_FALSE(is_read("@font-face{font-family:a;src:url(a)} /* {.a{} */ .a{display:none}", "class='a'"));
  CHECK_FALSE(is_read("@charset 'x'; .a{display:none", "class='a'"));
}

TEST_CASE("which of several declarations holds", "[trace][svg]") {
  // Presentation attributes come last of all, the style attribute before any sheet.
  CHECK_FALSE(is_read(".a{display:none}", "class='a' display='inline'"));
  CHECK(is_read(".a{display:inline}", "class='a' display='none'"));
  CHECK(is_read(".a{display:none}", "class='a' style='display:inline'"));
  CHECK_FALSE(is_read(".a{display:none !important}", "class='a' style='display:inline'"));
  CHECK(is_read(".a{display:none!important}", "class='a' style='display:inline ! important'"));
  // An id before a class, a class before an element, then what comes last.
  CHECK(is_read("#b{display:inline}.a{display:none}", "class='a' id='b'"));
  CHECK_FALSE(is_read(".a{display:none}path{display:inline}", "class='a'"));
  CHECK(is_read("path.a{display:inline}.a{display:none}", "class='a'"));
  CHECK_FALSE(is_read("path{display:none}*{display:inline}", ""));
  CHECK(is_read(".a{display:none}.b{display:inline}", "class='b a'"));
  CHECK(is_read(".a{display:none}.a{display:inline}", "class='a'"));
  CHECK_FALSE(is_read(".a{display:none!important}.a{display:inline}", "class='a'"));
  CHECK(is_read(".a{display:none;display:inline}", "class='a'"));
  CHECK_FALSE(is_read("path{display:none!important}#b{display:inline}", "id='b'"));
  // Inherited from what it is in.
  CHECK(traced(svg_of("<style>.a{fill:none;stroke:none}</style><g class='a'><path d='M0 0H5'/>"
                      "<path style='fill:inherit' d='M0 0H5'/></g><path d='M5 0V5'/>"),
               "a.svg")
            .points == Points{{5, 0}, {5, 5}});
}

TEST_CASE("a sheet may stand after what it is for, and be one of several", "[trace][svg]") {
  CHECK(traced(svg_of("<path class='a' d='M0 0H5'/><path d='M5 0V5'/><style>.a{display:inline}</style>"
                      "<style>.a{display:none}</style>"),
               "a.svg")
            .points == Points{{5, 0}, {5, 5}});
  for (const char* attributes : {"type='text/x'", "media='print'"}) {
    CHECK(traced(svg_of("<style " + std::string(attributes) +
                        ">.a{display:none}</style><path class='a' d='M0 0H5'/>"),
                 "a.svg")
              .points == Points{{0, 0}, {5, 0}});
  }
  // Copies have the classes of what they are copies of.
  CHECK(traced(svg_of("<style>.a{display:none}</style><defs><g id='g'><path class='a' d='M0 0H5'/>"
                      "<path d='M5 0V5'/></g></defs><use href='#g'/>"),
               "a.svg")
            .points == Points{{5, 0}, {5, 5}});
}

TEST_CASE("rules that are not read are told where they may matter", "[trace][svg]") {
  const auto said_of = [](const std::string& sheet) {
    return said(svg_of("<style>" + sheet + "</style><path d='M0 0H5'/>"), "a.svg");
  };
  const std::string unread =
      "2:1: warning: of this style sheet only rules for an element, a class or an id are read; set what else "
      "says whether something is drawn on the elements themselves\n";
  for (const char* sheet :
       {"g .a{display:none}", "g>path{fill:none}", ".a.b{stroke:none}", "a:hover{fill:red}",
        "[id]{visibility:hidden}", "@media print{.a{display:none}}", "@import 'a.css';"}) {
    CAPTURE(sheet);
    CHECK(said_of(sheet) == unread);
  }
  for (const char* sheet : {"", "g .a{font-size:9px}", "a:hover{}", "@keyframes a{from{opacity:0}}", "}", "{",
                            "/*", "a", "@", "@media"}) {
    CAPTURE(sheet);
    CHECK(said_of(sheet) == (std::string(sheet) == "@media" ? unread : ""));
  }
}

TEST_CASE("rules take no more room than they are given", "[trace][svg]") {
  StyleRules rules;
  std::size_t room = 2000;
  CHECK(rules.add(".a{fill:none}", room));
  CHECK(room < 2000);
  const std::size_t left = room;
  CHECK(rules.add(".a{stroke:none} .b{color:red}", room));
  CHECK(room == left);
  std::string many;
  for (int i = 0; i < 20; ++i) many += ".b" + std::to_string(i) + "{fill:none}";
  CHECK_FALSE(rules.add(many, room));
  REQUIRE(rules.find("fill", "path", "", "a") != nullptr);
  CHECK(rules.find("fill", "path", "", "a")->value == "none");
  CHECK(rules.find("fill", "path", "", "c") == nullptr);
  CHECK(rules.find("color", "path", "", "a") == nullptr);
}

}  // namespace
}  // namespace arrisline::testing
