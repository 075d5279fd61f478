// Soles of shaped planes, worked out from the section that they leave.
#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

Plane shaped(const std::string& elements) {
  const Reading<Kit> reading = read_kit("units mm\nshaped mine\n" + elements + "end\n", "test.kit");
  INFO(shown(reading));
  REQUIRE(reading.value.has_value());
  REQUIRE(reading.value->planes.size() == 1);
  return reading.value->planes.front();
}

/// What the header promises of every sole.
void check_promises(const Plane& plane) {
  REQUIRE_FALSE(plane.sole.empty());
  CHECK(plane.sole.front().from.x == -plane.width / 2);
  CHECK(plane.sole.back().to.x == plane.width / 2);
  double lowest = 1e9;
  for (std::size_t i = 0; i < plane.sole.size(); ++i) {
    CHECK(plane.sole[i].from.x < plane.sole[i].to.x);
    if (i > 0) CHECK(distance(plane.sole[i - 1].to, plane.sole[i].from) < 1e-12);
  }
  for (int i = 0; i <= 2000; ++i)
    lowest = std::min(lowest, sole_height(plane, plane.width * (i / 2000.0 - 0.5)));
  CHECK(lowest == Approx(0).margin(1e-6));
}

}  // namespace

TEST_CASE("an ovolo plane", "[text][kit][sole]") {
  const Plane plane = shaped("ovolo 9\nfillet out 3\n");
  check_promises(plane);
  CHECK(plane.kind == PlaneKind::shaped);
  CHECK(plane.label == "mine");
  CHECK(plane.width == 12);
  REQUIRE(plane.sole.size() == 2);
  // The fillet is nearest the working edge, so at the least u, and deepest.
  CHECK(sole_height(plane, -5) == Approx(0).margin(1e-12));
  CHECK(sole_height(plane, 6) == Approx(9));
  // The bead is worked by a hollow part, whose arc turns right as u rises.
  CHECK(plane.sole[1].turn == Turn::right);
  CHECK(distance(plane.sole[1].centre, Point{6, 0}) < 1e-12);
}

TEST_CASE("a shaped sole of one cove is a round", "[text][kit][sole]") {
  const Plane plane = shaped("cove out 10 radius 10\n");
  check_promises(plane);
  Plane round;
  round.kind = PlaneKind::round;
  round.radius = 10;
  round.width = 10;
  for (const double u : {-5.0, -3.0, 0.0, 2.0, 5.0}) {
    CHECK(sole_height(plane, u) == Approx(sole_height(round, u)).margin(1e-12));
  }
}

TEST_CASE("the section that an upright shaped plane leaves is the one drawn", "[text][kit][sole]") {
  const std::string elements = "fillet out 2\nogee out 12 down 9\nfillet out 2\nbevel out 3 up 1\n";
  const Plane plane = shaped(elements);
  check_promises(plane);
  const auto profile =
      read_profile("units mm\nstock 40 wide 30 thick\nstart face 19\n" + elements + "step down 22\n", "p");
  REQUIRE(profile.value.has_value());
  // Deepest 9 mm below the face, its middle 9.5 mm from the working edge.
  const auto edges = sole_edges(plane, {{9.5, 9}, 0});
  int matched = 0;
  for (const Edge& sole : edges) {
    for (const Edge& wood : profile.value->target) {
      const bool same = distance(sole.from, wood.from) < 1e-9 && distance(sole.to, wood.to) < 1e-9;
      if (same && sole.turn == wood.turn && (!sole.is_arc() || distance(sole.centre, wood.centre) < 1e-9))
        ++matched;
    }
  }
  // The first fillet lies along the face of the stock, and is part of it there.
  CHECK(matched == static_cast<int>(edges.size()) - 1);
}

TEST_CASE("a start line may open a shaped plane and changes nothing", "[text][kit][sole]") {
  CHECK(shaped("start face 20\novolo 9\n").width == shaped("ovolo 9\n").width);
}
