// Where edges meet lines, circles and points: fractions that can be told by hand.
#include "geometry/crossing.h"

#include <algorithm>

#include "catch.h"
#include "geometry/by_hand.h"

using namespace arrisline;

namespace {

/// Three quarters of a circle of radius 2 about (3, 4), from its rightmost point.
Edge three_quarters(Turn turn) {
  const Point centre{3, 4};
  return {{5, 4}, turn == Turn::left ? Point{3, 2} : Point{3, 6}, centre, turn};
}

std::vector<double> sorted(std::vector<double> ts) {
  std::sort(ts.begin(), ts.end());
  return ts;
}

}  // namespace

TEST_CASE("a point past half a turn of an arc is found where it lies", "[geometry]") {
  for (const Turn turn : {Turn::left, Turn::right}) {
    const Edge arc = three_quarters(turn);
    for (const double t : {0.1, 0.5, 0.7, 0.95}) {
      std::vector<double> ts;
      cross_at(arc, point_at(arc, t), ts);
      REQUIRE(ts.size() == 1);
      CHECK(by_hand::share_of_length(arc, ts[0]) == Approx(t).epsilon(1e-12));
    }
    std::vector<double> ts;
    cross_at(arc, {3, 4}, ts);                               // the centre
    cross_at(arc, {3, turn == Turn::left ? 1.9 : 6.1}, ts);  // a hair off the end
    CHECK(ts.empty());
  }
}

TEST_CASE("a point beside a straight edge, and one beyond its end, are not on it", "[geometry]") {
  const Edge line{{0, 0}, {10, 5}, {}, Turn::straight};
  std::vector<double> ts;
  cross_at(line, {4, 2}, ts);
  REQUIRE(ts.size() == 1);
  CHECK(ts[0] == Approx(0.4));
  ts.clear();
  cross_at(line, {4, 2.001}, ts);
  cross_at(line, {12, 6}, ts);
  CHECK(ts.empty());
  const Edge point = {{1, 1}, {1, 1}, {}, Turn::straight};
  cross_at(point, {1, 1}, ts);  // an edge of no length has no fractions
  CHECK(ts.empty());
}

TEST_CASE("a line that all but touches an arc parts it on whichever side of the centre it lies",
          "[geometry]") {
  const Edge arc = three_quarters(Turn::left);
  // Tangent at the top in plain numbers, (3, 6), at a third of the way; drawn either way.
  for (const double along : {1.0, -1.0}) {
    std::vector<double> ts;
    part_line(arc, {0, 6}, {along, 0}, ts);
    REQUIRE(ts.size() == 2);
    // At a depth d below its top a circle is sqrt(2 r d) to either side.
    const double aside = std::sqrt(2 * 2 * kSame) / (2 * 1.5 * kPi);
    for (double& t : ts) t = by_hand::share_of_length(arc, t);
    const std::vector<double> found = sorted(ts);
    CHECK(found[0] == Approx(1.0 / 3 - aside).epsilon(1e-6));
    CHECK(found[1] == Approx(1.0 / 3 + aside).epsilon(1e-6));
  }
  std::vector<double> ts;
  part_line(arc, {0, 5}, {1, 0}, ts);  // crosses plainly
  CHECK(ts.empty());
}

TEST_CASE("a straight edge of any length that all but touches a circle is parted there", "[geometry]") {
  for (const double length : {0.5, 1.0, 10.0, 50.0}) {
    const Edge line{{3 - length / 2, 6}, {3 + length / 2, 6}, {}, Turn::straight};
    std::vector<double> ts;
    part_circle(line, {3, 4}, 2, ts);
    INFO(length);
    REQUIRE(ts.size() >= 2);  // where it touches may be one more
    const double aside = std::sqrt(2 * 2 * kSame) / length;
    CHECK(sorted(ts).front() == Approx(0.5 - aside).epsilon(1e-6));
    CHECK(sorted(ts).back() == Approx(0.5 + aside).epsilon(1e-6));
    ts.clear();
    part_circle(line, {3, 4}, 2.5, ts);  // crosses plainly, or stays within
    CHECK(ts.empty());
  }
}

TEST_CASE("the carrier of a straight edge is its line, whatever the edge's length", "[geometry]") {
  const Edge edge{{0, 0}, {10, 2e-7}, {}, Turn::straight};  // leaves the x axis by kSame in its middle
  std::vector<double> expected;
  part_line(edge, {2, 0}, {1, 0}, expected);
  REQUIRE(expected.size() == 1);
  CHECK(expected[0] == Approx(0.5));
  for (const double length : {0.25, 1.0, 40.0}) {
    std::vector<double> ts;
    const Edge other = {{2, 0}, {2 + length, 0}, {}, Turn::straight};
    part_carrier(edge, other, ts);
    CHECK(ts == expected);
  }
  const Edge steeper{{0, -3e-7}, {10, 3e-7}, {}, Turn::straight};
  std::vector<double> ts;
  const Edge axis = {{2, 0}, {42, 0}, {}, Turn::straight};
  part_carrier(steeper, axis, ts);
  REQUIRE(ts.size() == 2);
  CHECK(sorted(ts)[0] == Approx(1.0 / 3));  // within kSame of the axis from a third of the way
  CHECK(sorted(ts)[1] == Approx(2.0 / 3));
}
