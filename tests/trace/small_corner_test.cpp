// In a drawing a joint that is smooth but for a degree keeps its figures, and so does one that is smooth.
#include <string>
#include <utility>
#include <vector>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

std::vector<Edge> drawn_line(const std::string& path) {
  return worked_line(on_halves(traced_path(path)).section);
}

TEST_CASE("a joint of a drawing that turns by a degree keeps its whole figures", "[trace][drawn][snap]") {
  struct Case {
    double step, along, down, radius, fillet;  // mm, of a step, a cove and a fillet
  };
  for (const Case& one : {Case{2, 19, 24, 24.5, 2}, Case{2.5, 9, 23.5, 13.5, 1.5},
                          Case{4, 26.5, 14.5, 32.5, 3}, Case{4, 23.5, 26.5, 27, 7.5}}) {
    INFO("radius " << one.radius);
    const auto n = [](double value) { return std::to_string(value) + " "; };
    const std::vector<Edge> back =
        drawn_line("M" + n(one.along + one.fillet + 10) + "0h-10v" + n(one.step) + "a" + n(one.radius) +
                   n(one.radius) + "0 0 1 " + n(-one.along) + n(one.down) + "h" + n(-one.fillet) + "v10");
    REQUIRE(kinds(back) == "step cove fillet ");
    CHECK(length(back[0]) == Approx(one.step).margin(1e-6));
    CHECK(back[1].from.x - back[1].to.x == Approx(one.along).margin(1e-6));
    CHECK(back[1].to.y - back[1].from.y == Approx(one.down).margin(1e-6));
    CHECK(radius(back[1]) == Approx(one.radius).margin(1e-6));
    CHECK(length(back[2]) == Approx(one.fillet).margin(1e-6));
  }
}

TEST_CASE("smooth joints of a drawing keep figures that are not whole", "[trace][drawn][snap]") {
  const std::vector<Edge> back = drawn_line(
      "M60 0H50V3.13A2.3 2.3 0 0 0 47.7 5.43H45a1.7 1.7 0 0 1 -1.7 1.7v2.2a10 10 0 0 1 -10 "
      "10h-3.3a5.5 5.5 0 0 0 0 11h-30v10");
  REQUIRE(kinds(back) == "step bead fillet cove step cove fillet bead fillet ");
  constexpr double kExact = 1e-4;
  for (const auto& [at, r] : {std::pair(1, 2.3), std::pair(3, 1.7), std::pair(5, 10.0), std::pair(7, 5.5)}) {
    INFO("radius " << r);
    const Edge& arc = back[static_cast<std::size_t>(at)];
    CHECK(radius(arc) == Approx(r).margin(kExact));
    if (at < 7) CHECK(arc.from.x - arc.to.x == Approx(r).margin(kExact));
    if (at < 7) CHECK(arc.to.y - arc.from.y == Approx(r).margin(kExact));
  }
  CHECK(length(back[4]) == Approx(2.2).margin(kExact));
  CHECK(length(back[6]) == Approx(3.3).margin(kExact));
}

}  // namespace
}  // namespace arrisline::testing
