// Lines that meet themselves, against a look at every pair.
#include <random>
#include <set>

#include "catch.h"
#include "trace/one_line.h"
#include "trace/tracing.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

/// Whole figures, so that the arithmetic is exact.
long long side(Point a, Point b, Point c) {
  const auto whole = [](double v) { return static_cast<long long>(v); };
  const long long s = whole(b.x - a.x) * whole(c.y - a.y) - whole(b.y - a.y) * whole(c.x - a.x);
  return s > 0 ? 1 : s < 0 ? -1 : 0;
}

bool within(Point p, Point a, Point b) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

/// Whether two straight pieces share a point: by the textbook, an end on the other one or ends on either
/// side.
bool share(Point a, Point b, Point c, Point d) {
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true;
  return (side(a, b, c) == 0 && within(c, a, b)) || (side(a, b, d) == 0 && within(d, a, b)) ||
         (side(c, d, a) == 0 && within(a, c, d)) || (side(c, d, b) == 0 && within(b, c, d));
}

using Pairs = std::set<std::pair<std::size_t, std::size_t>>;

Pairs by_every_pair(const DrawnLine& line) {
  Pairs pairs;
  const std::size_t n = line.points.size();
  const std::size_t count = n - (line.closed ? 0 : 1);
  const auto at = [&](std::size_t i) { return line.points[i % n]; };
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = i + 1; j < count; ++j) {
      const bool next = j == i + 1;
      const bool round = line.closed && i == 0 && j + 1 == count;
      bool meets = false;
      if (next || round) {
        const Point joint = next ? at(j) : at(0);
        const Point back = (next ? at(i) : at(1)) - joint;
        const Point on = (next ? at(j + 1) : at(j)) - joint;
        meets = cross(back, on) == 0 && dot(back, on) > 0;
      } else {
        meets = share(at(i), at(i + 1), at(j), at(j + 1));
      }
      if (meets) pairs.emplace(i, j);
    }
  }
  return pairs;
}

struct Found {
  Pairs pairs;
  Pairs along;  // those of them where one runs along the other
};

/// Pairs of pieces by the places that are named: piece i is drawn by byte i, on a line of its own.
Found found(const DrawnLine& line) {
  Faults faults(std::string_view(), "a.svg");
  const std::string text(line.points.size(), '\n');
  faults.text = text;
  find_crossings(line, faults);
  Found out;
  for (const Diagnostic& one : faults.list) {
    const std::size_t number = one.message.find("drawn at line ");
    REQUIRE(number != std::string::npos);
    const std::pair pair(std::stoul(one.message.substr(number + 14)) - 1,
                         static_cast<std::size_t>(one.line) - 1);
    out.pairs.insert(pair);
    if (one.message.find("runs back along") != std::string::npos) out.along.insert(pair);
  }
  return out;
}

/// Those of all pairs that a chain of neighbours joins to one of these.
Pairs beside(Pairs these, const Pairs& all) {
  const auto near = [](std::size_t a, std::size_t b) { return std::max(a, b) - std::min(a, b) <= 1; };
  for (std::size_t before = 0; before != these.size();) {
    before = these.size();
    for (const auto& pair : all) {
      if (std::any_of(these.begin(), these.end(), [&](const auto& one) {
            return near(one.first, pair.first) && near(one.second, pair.second);
          }))
        these.insert(pair);
    }
  }
  return these;
}

}  // namespace

TEST_CASE("crossings are those that every pair shows", "[trace][crossings]") {
  std::mt19937 random(21);
  int clean = 0;
  int crossed = 0;
  int echoed = 0;
  for (int turn = 0; turn < 4000; ++turn) {
    DrawnLine line;
    line.closed = turn % 2 == 0;
    const int size = 3 + static_cast<int>(random() % 7);
    const unsigned wide = turn % 3 == 0 ? 6 : 1000;
    for (int i = 0; i < size; ++i) {
      Point p{static_cast<double>(random() % wide), static_cast<double>(random() % wide)};
      if (!line.points.empty() && turn % 5 == 0)
        p.x = line.points.back().x + static_cast<double>(random() % 3);
      if (!line.points.empty() && p == line.points.back()) continue;
      line.at.push_back(line.points.size());
      line.points.push_back(p);
    }
    while (line.points.size() > 1 && line.points.back() == line.points.front()) {
      line.points.pop_back();
      line.at.pop_back();
    }
    if (line.points.size() < 3) continue;
    const Pairs expected = by_every_pair(line);
    if (expected.size() > kMaxTraceMistakes) continue;
    (expected.empty() ? clean : crossed) += 1;
    // What comes of running along itself is told once: all else is told.
    const Found told = found(line);
    Pairs known = told.pairs;
    known.merge(beside(told.along, expected));
    CHECK(known == expected);
    echoed += told.pairs == expected ? 0 : 1;
  }
  CHECK(echoed > 100);
  CHECK(clean > 300);
  CHECK(crossed > 300);
}

TEST_CASE("a long line is searched in little time for one crossing", "[trace][crossings]") {
  // A spiral of 100 000 points, whose last piece goes back to the middle: through every turn but its own.
  DrawnLine spiral;
  for (std::size_t i = 0; i < 100000; ++i) {
    const double t = 1e-3 * static_cast<double>(i);
    spiral.points.push_back({t * std::cos(t), t * std::sin(t)});
    spiral.at.push_back(0);
  }
  Faults none("\n\n", "a.svg");
  find_crossings(spiral, none);
  CHECK(none.errors == 0);
  spiral.points.push_back({95, 0.3});
  spiral.at.back() = 1;
  spiral.at.push_back(1);
  find_crossings(spiral, none);
  CHECK(none.errors == 1);
}

TEST_CASE("a folding that cannot be searched is refused", "[trace][crossings]") {
  DrawnLine folds;
  for (std::size_t i = 0; i < 60000; ++i) {
    folds.points.push_back(
        {(i % 2 == 0 ? 0 : 100) + 1e-5 * static_cast<double>(i), 1e-4 * static_cast<double>(i)});
    folds.at.push_back(0);
  }
  Faults faults("x", "a.svg");
  find_crossings(folds, faults);
  REQUIRE(faults.list.size() == 1);
  CHECK(faults.list[0].message ==
        "the line lies so closely folded that where it crosses itself cannot be found; draw it more simply");
}

TEST_CASE("how a line meets itself is said, with both places", "[trace][crossings]") {
  const auto said_of = [](const std::string& data) {
    return said(svg_of("<path d='" + data + "'/>"), "a.svg");
  };
  const std::string rest = "; draw one that nowhere meets itself\n";
  CHECK(said_of("M0 0L10 10\nL10 0\nL0 10") ==
        "4:1: this crosses what is drawn at line 2, column 14, at (5, 5)" + rest);
  CHECK(said_of("M0 0H10V5\nL5 0") ==
        "3:1: this touches what is drawn at line 2, column 14, at (5, 0)" + rest);
  const std::string once = "; draw every stretch of it once\n";
  CHECK(said_of("M0 0H10\nH5V5") ==
        "3:1: this runs back along what is drawn at line 2, column 14, at (10, 0)" + once);
  // By the closed form at y = 30 (1/4 - 13.5/58) = 0.5172; here of the chords.
  CHECK(said_of("M0 0C10 10-9 10 1 0") == "2:14: this crosses itself at (0.5, 0.518)" + rest);
  CHECK(said_of("M0 0H10M10 0H0") ==
        "2:22: this runs back along what is drawn at line 2, column 14, at (10, 0)" + once);
  // Near, and not touching.
  CHECK(said_of("M0 0H10V5L5 0.001").empty());
}

TEST_CASE("a line drawn twice is told once", "[trace][crossings]") {
  const std::string cavetto = "M40 20V23H37A9.5 9.5 0 0 1 27.5 32.5H24.5V37";
  const std::string twice = "; draw every stretch of it once\n";
  CHECK(said(svg_of("<path d='" + cavetto + "'/>\n<path d='" + cavetto + "'/>"), "a.svg") ==
        "3:16: this runs back along what is drawn at line 2, column 16, at (40, 23)" + twice);
  // Another crossing is another mistake.
  CHECK(said(svg_of("<path d='M0 0H10V-1\nV5\nH-5V-5H5\nV1'/>"), "a.svg") ==
        "3:1: this runs back along what is drawn at line 2, column 17, at (10, -1)" + twice +
            "5:1: this crosses what is drawn at line 2, column 14, at (5, 0); draw one that nowhere meets "
            "itself\n");
}
