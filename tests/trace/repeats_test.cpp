// A point that a list holds twice tells nothing more than once.
#include "trace/repeats.h"

#include <algorithm>
#include <random>

#include "catch.h"
#include "section/sections.h"
#include "trace/mouldings.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

using Points = std::vector<Point>;

TEST_CASE("each place is kept once, where it first comes", "[trace][repeats]") {
  CHECK(without_repeats({{0, 0}, {0, 0}, {1, 0}, {1, 1}, {1, 1}}) == Points{{0, 0}, {1, 0}, {1, 1}});
  CHECK(without_repeats({{0, 0}, {1, 0}, {0, 0}, {1, 0}, {2, 0}}) == Points{{0, 0}, {1, 0}, {2, 0}});
  CHECK(without_repeats({{0, 0}, {1, 0}, {1, 1}, {1, 0}, {0, 0}}) == Points{{0, 0}, {1, 0}, {1, 1}});
  // The same x, or the same y, is another place.
  CHECK(without_repeats({{0, 0}, {0, 1}, {1, 0}, {1, 1}}) == Points{{0, 0}, {0, 1}, {1, 0}, {1, 1}});
  // What closes the line says so.
  CHECK(without_repeats({{0, 0}, {1, 0}, {1, 1}, {0, 0}}) == Points{{0, 0}, {1, 0}, {1, 1}, {0, 0}});
  CHECK(without_repeats({{0, 0}, {0, 0}, {1, 0}, {1, 1}, {0, 0}, {0, 0}}) ==
        Points{{0, 0}, {1, 0}, {1, 1}, {0, 0}});
}

TEST_CASE("points written more than once give what they give once", "[trace][repeats]") {
  const std::vector<Edge> line =
      with_sides(worked_line(section_of(
                     "units mm\nstock 60 wide, 40 thick\nstart face 24.5\nstep down 4\ncove out 9 down 9\n"
                     "fillet out 4.5\nstep down 3\nbead out 7 down 7\nfillet out 4\n")),
                 6);
  for (const std::size_t points : {300U, 800U}) {
    Digitiser by;
    by.points = points;
    by.scatter = 0.05;
    const Tracing once = digitised(line, by, 3);
    const FittedProfile plain = on_halves(once);
    REQUIRE(kinds(worked_line(plain.section)) == "step cove fillet step bead fillet ");
    const auto gives_the_same = [&](const char* how, const Points& repeated) {
      INFO(points << " points, " << how);
      Tracing tracing = once;
      tracing.points = repeated;
      const FittedProfile found = on_halves(tracing);
      const std::vector<Edge> line_found = worked_line(found.section);
      const std::vector<Edge> expected = worked_line(plain.section);
      REQUIRE(kinds(line_found) == kinds(expected));
      for (std::size_t i = 0; i < expected.size(); ++i) {
        CHECK(line_found[i].from == expected[i].from);
        CHECK(line_found[i].to == expected[i].to);
        CHECK(line_found[i].centre == expected[i].centre);
      }
      CHECK(found.scatter == plain.scatter);
    };
    Points each_twice, some_more_often, back = once.points;
    std::mt19937 random(7);
    for (const Point p : once.points) {
      each_twice.insert(each_twice.end(), 2, p);
      some_more_often.insert(some_more_often.end(), 1 + random() % 3, p);
    }
    back.insert(back.end(), once.points.rbegin(), once.points.rend());
    Points over_again = once.points;
    over_again.insert(over_again.end(), once.points.begin(), once.points.end());
    gives_the_same("each twice", each_twice);
    gives_the_same("some two and three times", some_more_often);
    gives_the_same("the list over again", over_again);
    gives_the_same("there and back", back);
  }
}

TEST_CASE("corners written twice are corners", "[trace][repeats]") {
  Tracing tracing;
  tracing.points = {{0, 0}, {5, 0}, {5, 0}, {9.5, 0}, {9.5, 3}, {13, 3}, {13, 3}, {16, 3}};
  const FittedProfile found = on_halves(tracing);
  CHECK(found.joined == 6);
  CHECK(kinds(worked_line(found.section)) == "step fillet ");
}

}  // namespace
}  // namespace arrisline::testing
