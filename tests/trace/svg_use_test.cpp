// Copies in an SVG, by SVG 1.1, 5.4 to 5.6: `use` of what has an id, symbols; and against librsvg.
#include "arrisline/limits.h"
#include "catch.h"
#include "trace/by_librsvg.h"
#include "trace/tracing.h"

namespace arrisline::testing {
namespace {

using Points = std::vector<Point>;

/// The points of a drawing that says where it has its links from.
std::string linked(const std::string& content) {
  return "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='100mm' "
         "height='100mm' viewBox='0 0 100 100'>\n" +
         content + "\n</svg>\n";
}

Points drawn(const std::string& content) {
  return traced(linked(content), "a.svg").points;
}

std::string said_of(const std::string& content) {
  return said(linked(content), "a.svg");
}

const std::string kStep = "<defs><path id='step' d='M0 0V2H4'/></defs>";
const std::string kLine = "<path d='M0 0H5'/>";

TEST_CASE("a copy is drawn where 'use' puts it", "[trace][svg]") {
  const Points step{{10, 20}, {10, 22}, {14, 22}};
  CHECK(drawn(kStep + "<use xlink:href='#step' x='10' y='20'/>") == step);
  CHECK(drawn(kStep + "<use href='#step' x='10' y='20'/>") == step);
  CHECK(drawn(kStep + "<use href='#step' xlink:href='#other' x='10' y='20'/>") == step);
  CHECK(drawn("<use xlink:href='#step' x='10' y='20'/>" + kStep) == step);
  CHECK(drawn(kStep + "<use xlink:href='#step' transform='translate(10 20)'/>") == step);
  // Its transform first, then x and y within that, then the transform of what it names.
  CHECK(
      drawn(
          "<defs><g id='step' transform='scale(2)'><path d='M0 0V1H2'/></g></defs>"
          "<g transform='translate(4 0)'><use xlink:href='#step' transform='scale(2)' x='3' y='10'/></g>") ==
      Points{{10, 20}, {10, 24}, {18, 24}});
  // A percentage is one of the viewport; what stands in a 'use' itself is not drawn.
  CHECK(drawn(kStep + "<use xlink:href='#step' x='10%' y='20%'><title>a</title>" + kLine + "</use>") == step);
  // What is drawn where it stands is drawn there too: two steps of one stair.
  CHECK(drawn("<path id='step' d='M0 0V2H4'/><use xlink:href='#step' x='4' y='2'/>") ==
        Points{{0, 0}, {0, 2}, {4, 2}, {4, 4}, {8, 4}});
}

TEST_CASE("copies of copies", "[trace][svg]") {
  CHECK(drawn(kStep +
              "<defs><g id='pair'><use xlink:href='#step'/><use xlink:href='#step' x='4' y='2'/></g></defs>"
              "<use xlink:href='#pair'/><use xlink:href='#pair' x='8' y='4'/>") ==
        Points{{0, 0}, {0, 2}, {4, 2}, {4, 4}, {8, 4}, {8, 6}, {12, 6}, {12, 8}, {16, 8}});
  CHECK(drawn(kStep +
              "<defs><use id='a' xlink:href='#step' x='6'/></defs><use xlink:href='#a' x='4' y='20'/>") ==
        Points{{10, 20}, {10, 22}, {14, 22}});
}

TEST_CASE("a symbol is drawn where it is copied alone", "[trace][svg]") {
  const std::string symbol = "<symbol id='s' viewBox='0 0 10 10'><path d='M0 0V2H4'/></symbol>";
  CHECK(drawn(symbol + kLine) == Points{{0, 0}, {5, 0}});
  CHECK(drawn(symbol + "<use xlink:href='#s' x='5' y='6' width='20' height='20'/>") ==
        Points{{5, 6}, {5, 10}, {13, 10}});
  // As large as the viewport where nothing is said.
  CHECK(drawn(symbol + "<use xlink:href='#s'/>") == Points{{0, 0}, {0, 20}, {40, 20}});
  CHECK(drawn("<symbol id='s'><path d='M0 0V2H4'/></symbol><use xlink:href='#s' x='1' width='7'/>") ==
        Points{{1, 0}, {1, 2}, {5, 2}});
  // An svg keeps its place, and takes the size of the 'use'.
  CHECK(drawn("<defs><svg id='s' x='1' y='2' width='10' height='10' viewBox='0 0 10 10'>"
              "<path d='M0 0V2H4'/></svg></defs><use xlink:href='#s' width='30' height='30'/>") ==
        Points{{1, 2}, {1, 8}, {13, 8}});
}

TEST_CASE("librsvg puts copies at the same place", "[trace][svg]") {
  for (const char* use :
       {"x='30' y='40'", "transform='rotate(20) skewX(10)' x='30'",
        "x='8cm' y='40%' width='300' height='250'", "transform='matrix(-.5 0 .1 .5 500 0)' width='30%'"}) {
    for (const char* target :
         {"<defs><g id='a' transform='scale(9)'>LINE</g></defs>",
          "<symbol id='a' viewBox='2 3 40 50' overflow='visible' preserveAspectRatio='xMinYMax "
          "meet'>LINE</symbol>",
          "<defs><svg id='a' x='20' viewBox='2 3 40 50' width='400' height='500' "
          "overflow='visible'>LINE</svg></defs>",
          "<defs><path id='b' fill='none' stroke='black' d='M5 6L20 9 30 20'/><use id='a' x='9' "
          "xlink:href='#b'/></defs>"}) {
      std::string content = target;
      // librsvg leaves an svg its own size where the standard has that of the 'use'.
      if (content.find("<svg") != std::string::npos && std::string(use).find("width") != std::string::npos)
        continue;
      const std::size_t at = content.find("LINE");
      if (at != std::string::npos)
        content.replace(at, 4, "<path fill='none' stroke='black' d='M5 6L20 9 30 20'/>");
      const std::string svg =
          "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='900' "
          "height='900'>" +
          content + "<use xlink:href='#a' " + use + "/></svg>";
      CAPTURE(svg);
      CHECK(apart(in_mm(traced(svg, "a.svg"), false), in_mm(by_librsvg(svg), false)) < 0.002);
    }
  }
}

TEST_CASE("a copy looks as its 'use' says where it says nothing itself", "[trace][svg][layers]") {
  const std::string none = "<use xlink:href='#step' fill='none' stroke='none'/>";
  CHECK(drawn(kStep + none + "<path d='M9 9H5'/>") == Points{{9, 9}, {5, 9}});
  CHECK(drawn("<defs><path id='step' stroke='red' d='M0 0V2'/></defs>" + none) == Points{{0, 0}, {0, 2}});
  CHECK(drawn(kStep + "<use xlink:href='#step' display='none'/>" + kLine) == Points{{0, 0}, {5, 0}});
  CHECK(drawn("<g display='none'><path id='step' d='M0 0V2'/></g><use xlink:href='#step'/>") ==
        Points{{0, 0}, {0, 2}});
}

TEST_CASE("a copy is on the layer of its 'use'", "[trace][svg][layers]") {
  const std::string twice = linked("<path id='line' d='M0 0H5'/><use id='copy' xlink:href='#line' y='9'/>");
  CHECK(traced(twice, "a.svg", layer("line")).points == Points{{0, 0}, {5, 0}});
  CHECK(traced(twice, "a.svg", layer("copy")).points == Points{{0, 9}, {5, 9}});
  // What is drawn nowhere else may be asked for by its own id.
  CHECK(traced(linked(kStep + kLine + "<use xlink:href='#step' y='9'/>"), "a.svg", layer("step")).points ==
        Points{{0, 9}, {0, 11}, {4, 11}});
}

TEST_CASE("what cannot be copied is named", "[trace][svg]") {
  CHECK(said_of("<use/>" + kLine) ==
        "2:1: warning: this 'use' names nothing; give it the id of what it copies, as href='#line'\n");
  CHECK(said_of("<use xlink:href='other.svg#a'/>" + kLine) ==
        "2:1: warning: what lies in another file is not read; take it into this drawing where it is part of "
        "the line\n");
  CHECK(said_of("<use xlink:href='#a'/><use xlink:href='#a'/><use xlink:href='#b'/>" + kLine) ==
        "2:1: warning: nothing in this drawing has the id 'a'; save the drawing again, as plain SVG\n"
        "2:45: warning: nothing in this drawing has the id 'b'; save the drawing again, as plain SVG\n");
  CHECK(said_of("<defs><use xlink:href='#a'/></defs>" + kLine).empty());
}

TEST_CASE("what is copied into itself is refused", "[trace][svg]") {
  CHECK(said_of("<g id='a'><path d='M0 0H5'/>\n<use xlink:href='#a' y='9'/></g>") ==
        "3:1: 'a' is copied into itself here; take this 'use' out of it\n");
  CHECK(said_of("<use id='a' xlink:href='#a'/>") ==
        "2:1: 'a' is copied into itself here; take this 'use' out of it\n");
  CHECK(said_of("<defs>\n<g id='a'><use xlink:href='#b'/></g>\n<g id='b'><use xlink:href='#a'/></g></defs>\n"
                "<use xlink:href='#a'/>") ==
        "4:11: 'a' is copied into itself here; take this 'use' out of it\n");
}

TEST_CASE("limits of copies", "[trace][svg]") {
  // Each copies the one before it twice: far more than there is room for, from a few bytes.
  const auto doubled = [](const std::string& least) {
    std::string groups = "<defs><g id='g0'>" + least + "</g>";
    for (int i = 1; i < 40; ++i) {
      const std::string use = "<use href='#g" + std::to_string(i - 1) + "'";
      groups += "<g id='g" + std::to_string(i) + "'>" + use + "/>" + use + "/></g>";
    }
    return said_of(groups + "</defs><use href='#g39'/>");
  };
  std::string many_lines;
  for (int i = 1; i < 100; ++i) many_lines += "H" + std::to_string(i);
  CHECK(doubled("<path d='M0 0" + many_lines + "'/>")
            .find("with this element the drawing has more than 100000 lines and curves; draw the line with "
                  "fewer") != std::string::npos);
  CHECK(doubled("").find("with this element what 'use' copies comes to more than 64 MB; draw the line alone" +
                         to_raise("kMaxCopiedBytes")) != std::string::npos);
  std::string chain = "<defs><path id='g0' d='M0 0H1'/>";
  for (int i = 1; i < 200; ++i)
    chain += "<use id='g" + std::to_string(i) + "' href='#g" + std::to_string(i - 1) + "'/>";
  CHECK(said_of(chain + "</defs><use href='#g199'/>").empty());
  CHECK(said_of("<g>" + chain + "</defs><g transform='scale(2)'><use href='#g199'/></g></g>").empty());
  // What a type of document declares for every element is kept with each that is copied.
  const std::string heavy(200'000, 'x');
  std::string many = "<!DOCTYPE svg [<!ATTLIST g a CDATA '" + heavy + "'>]><svg><g id='a'>";
  for (int i = 0; i < 400; ++i) many += "<g/>";
  CHECK(said(many + "</g><use href='#a'/></svg>", "a.svg")
            .find("the names and values in this drawing take more than 64 MB; draw the line alone") !=
        std::string::npos);
}

}  // namespace
}  // namespace arrisline::testing
