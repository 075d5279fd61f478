// Strokes that make one line, and those that do not.
#include "trace/one_line.h"

#include <random>

#include "catch.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

using Points = std::vector<Point>;

std::string lines(const std::vector<std::pair<Point, Point>>& all) {
  std::string out;
  for (const auto& [a, b] : all) {
    out += "<line x1='" + std::to_string(a.x) + "' y1='" + std::to_string(a.y) + "' x2='" +
           std::to_string(b.x) + "' y2='" + std::to_string(b.y) + "'/>\n";
  }
  return svg_of(out);
}

}  // namespace

TEST_CASE("lines are joined whatever their order and direction, as the first one runs", "[trace][join]") {
  // A staircase of twelve flats.
  Points stairs;
  for (int i = 0; i < 12; ++i) stairs.push_back({5.0 * ((i + 1) / 2), 3.0 * (i / 2)});
  std::mt19937 random(4);
  for (int turn = 0; turn < 40; ++turn) {
    std::vector<std::pair<Point, Point>> parts;
    for (std::size_t i = 0; i + 1 < stairs.size(); ++i) {
      parts.emplace_back(stairs[i], stairs[i + 1]);
      if (random() % 2 == 0) std::swap(parts.back().first, parts.back().second);
    }
    std::shuffle(parts.begin(), parts.end(), random);
    const Tracing tracing = traced(lines(parts), "a.svg");
    Points expected = stairs;
    const bool forward =
        parts.front().first.x + parts.front().first.y < parts.front().second.x + parts.front().second.y;
    if (!forward) std::reverse(expected.begin(), expected.end());
    CHECK(tracing.points == expected);
    CHECK_FALSE(tracing.closed);
    // With one more line, from end to end, it is closed, and begins with the first line as that is drawn.
    parts.emplace_back(stairs.back() + Point{0, 20}, stairs.back());
    parts.emplace_back(stairs.back() + Point{0, 20}, stairs.front() + Point{-1, 20});
    parts.emplace_back(stairs.front(), stairs.front() + Point{-1, 20});
    const Tracing closed = traced(lines(parts), "a.svg");
    CHECK(closed.closed);
    CHECK(closed.points.size() == stairs.size() + 2);
    CHECK(closed.points[0] == parts.front().first);
    CHECK(closed.points[1] == parts.front().second);
  }
}

TEST_CASE("ends within a hundredth of a millimetre are one", "[trace][join]") {
  CHECK(traced(lines({{{0, 0}, {5, 0}}, {{5.009, 0}, {9, 3}}}), "a.svg").points ==
        Points{{0, 0}, {5, 0}, {9, 3}});
  CHECK(traced(lines({{{0, 0}, {5, 0}}, {{5, 0.009}, {9, 3}}, {{9, 3.009}, {0, 0.009}}}), "a.svg").points ==
        Points{{0, 0}, {5, 0}, {9, 3}});
  CHECK(said(lines({{{0, 0}, {5, 0}}, {{5.011, 0}, {9, 3}}}), "a.svg") ==
        "3:1: another line begins here, at (5.011, 0); expected one line, and the first begins at line 2, "
        "column 1; "
        "nearest to another one is its end at (5.011, 0), 0.011 from (5, 0); to read one of them alone, give "
        "its layer or id: --layer NAME\n");
  // In inches as much; where the unit is not known, a ten-thousandth of the drawing.
  CHECK(said("<svg width='10in' viewBox='0 0 10 10'><path d='M0 0H5M5.0003 0L9 3'/></svg>", "a.svg").empty());
  CHECK_FALSE(
      said("<svg width='10in' viewBox='0 0 10 10'><path d='M0 0H5M5.0005 0L9 3'/></svg>", "a.svg").empty());
  CHECK(said("<svg><path d='M0 0H5M5.00009 0H10'/></svg>", "a.svg").size() == 0);
  CHECK_FALSE(said("<svg><path d='M0 0H5M5.0011 0H10'/></svg>", "a.svg").empty());
  // What is shorter than that is no line: here it would have two ends at a joint of two others.
  CHECK(traced(lines({{{0, 0}, {5, 0}}, {{5, 0}, {5, 0.005}}, {{5, 0.005}, {9, 3}}}), "a.svg").points ==
        Points{{0, 0}, {5, 0}, {9, 3}});
}

TEST_CASE("several lines are named, each where it begins", "[trace][join]") {
  CHECK(said(svg_of("<path d='M0 0H5'/>\n<path d='M9 9V20\nM30 30h1'/>"), "a.svg") ==
        "3:10: another line begins here, at (9, 9); expected one line, and the first begins at line 2, "
        "column 10; "
        "nearest to another one is its end at (9, 9), 9.849 from (5, 0); to read one of them alone, give its "
        "layer or id: --layer NAME\n"
        "4:1: another line begins here, at (30, 30); expected one line, and the first begins at line 2, "
        "column 10; "
        "nearest to another one is its end at (30, 30), 23.259 from (9, 20)\n");
  CHECK(said(svg_of("<rect width='5' height='5'/><circle cx='30' r='4'/>"), "a.svg") ==
        "2:29: another line begins here, at (34, 0); expected one line, and the first begins at line 2, "
        "column 1; to read one of them alone, give its layer or id: --layer NAME\n");
}

TEST_CASE("a line that branches is refused where it does", "[trace][join]") {
  CHECK(said(lines({{{0, 0}, {5, 0}}, {{5, 0}, {9, 3}}, {{5, 0}, {9, -3}}}), "a.svg") ==
        "4:1: here the line branches: more than two lines meet at (5, 0); expected a single line, without a "
        "fork\n");
  // Three ends near one another, but in different squares of the search.
  CHECK(said(lines({{{0, 0}, {4.996, 0}}, {{5.004, 0}, {9, 3}}, {{5, 0.004}, {9, 7}}}), "a.svg") ==
        "4:1: here the line branches: more than two lines meet at (5, 0.004); expected a single line, "
        "without a fork\n");
  CHECK(said(svg_of("<path d='M0 0H5V5Z'/><path d='M0 0L-5-5'/>"), "a.svg") ==
        "2:31: here the line branches: more than two lines meet at (0, 0); expected a single line, without a "
        "fork\n");
}

TEST_CASE("points are no nearer to one another than what rounding leaves", "[trace][join]") {
  CHECK(traced_path("M0 0H5L5.000001 0V5L0 0.000001Z").points == Points{{0, 0}, {5, 0}, {5.000001, 5}});
  CHECK(traced_path("M0 0L5 0L5 0L5 0L5 5").points == Points{{0, 0}, {5, 0}, {5, 5}});
}

TEST_CASE("chords are as near as a known unit asks, or in proportion", "[trace][join]") {
  const auto count = [](const std::string& size, double radius) {
    const std::string r = std::to_string(radius);
    return traced("<svg " + size + "><path d='M0 0A" + r + " " + r + " 0 0 1 " + std::to_string(2 * radius) +
                      " 0'/></svg>",
                  "a.svg")
        .points.size();
  };
  // Of a half circle: π / √(8 c / r) steps, with c = 0.002 mm.
  const auto expected = [](double mm) {
    return static_cast<std::size_t>(std::ceil(kPi / std::sqrt(8 * 0.002 / mm))) + 1;
  };
  CHECK(count("width='100mm' viewBox='0 0 100 100'", 10) == expected(10));
  CHECK(count("width='100in' viewBox='0 0 100 100'", 10) == expected(254));
  CHECK(count("", 10) == expected(50));  // as if the drawing, 20 wide, were 100 mm
  CHECK(count("", 0.01) == expected(50));
  TracingOptions options;
  options.width = 60;
  const Tracing tracing =
      traced("<svg width='1mm' viewBox='0 0 1 1'><path d='M0 0A5 5 0 0 1 10 0'/></svg>", "a.svg", options);
  CHECK(tracing.mm_per_unit == Approx(6));
  for (std::size_t i = 0; i + 1 < tracing.points.size(); ++i)
    CHECK(5 - distance(0.5 * (tracing.points[i] + tracing.points[i + 1]), Point{5, 0}) <= 0.002 / 6);
}
