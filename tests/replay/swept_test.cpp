// What a pose takes, and where edges cross, by figures that can be told by hand.
#include "replay/swept.h"

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}

/// A whole circle but for its last degree, from the right.
Edge circle(Point centre, double r) {
  const double end = to_radians(359);
  return {centre + Point{r, 0}, centre + r * Point{std::cos(end), std::sin(end)}, centre, Turn::left};
}

void check_points(std::vector<Point> found, const std::vector<Point>& expected, double within = 1e-12) {
  std::sort(found.begin(), found.end(), [](Point p, Point q) { return p.x != q.x ? p.x < q.x : p.y < q.y; });
  REQUIRE(found.size() == expected.size());
  for (std::size_t i = 0; i < found.size(); ++i) CHECK(distance(found[i], expected[i]) < within);
}

}  // namespace

TEST_CASE("two straight edges cross where both have the point, ends included", "[replay]") {
  const Edge a = line({0, 0}, {8, 4});
  check_points(crossings(a, line({3, 4}, {5, 0})), {{4, 2}});
  check_points(crossings(a, line({4, 2}, {4, 9})), {{4, 2}});
  check_points(crossings(line({4, 9}, {4, 2}), a), {{4, 2}});
  check_points(crossings(a, line({0, 0}, {-3, 5})), {{0, 0}});
  check_points(crossings(a, line({9, 9}, {8, 4})), {{8, 4}});
  CHECK(crossings(a, line({4, 2.001}, {4, 9})).empty());
  CHECK(crossings(a, line({-1, 0}, {-1, -9})).empty());
  CHECK(crossings(a, line({0, 1}, {8, 5})).empty());   // beside it
  CHECK(crossings(a, line({2, 1}, {12, 6})).empty());  // along it
  // Rounding puts an end off by less than a millionth of a micron.
  CHECK(crossings(a, line({4, 2 + 5e-10}, {4, 9})).size() == 1);
  CHECK(crossings(a, line({4, 2 + 5e-9}, {4, 9})).empty());
}

TEST_CASE("a straight edge crosses an arc in two points, one or none", "[replay]") {
  const Edge arc = circle({3, 4}, 5);
  check_points(crossings(line({-9, 7}, {20, 7}), arc), {{-1, 7}, {7, 7}});
  check_points(crossings(arc, line({20, 7}, {-9, 7})), {{-1, 7}, {7, 7}});
  check_points(crossings(arc, line({3, 7}, {20, 7})), {{7, 7}});
  check_points(crossings(arc, line({6, -20}, {6, 20})), {{6, 0}, {6, 8}});
  check_points(crossings(arc, line({0, 0}, {6, 8})), {{0, 0}, {6, 8}});
  CHECK(crossings(arc, line({0, 7}, {6, 7})).empty());
  for (const double y : {9.1, -1.1}) CHECK(crossings(arc, line({-9, y}, {20, y})).empty());
  // Touching, it may be told twice; never by more than a millionth of a micron.
  for (const auto& [off, touches] : {std::pair(0.0, true), std::pair(5e-10, true), std::pair(5e-9, false)})
    for (const double side : {1.0, -1.0}) {
      const std::vector<Point> found =
          crossings(arc, line({-9, 4 + side * (5 + off)}, {20, 4 + side * (5 + off)}));
      CHECK(found.empty() != touches);
      for (const Point p : found) CHECK(distance(p, Point{3, 4 + side * 5}) < 1e-4);
    }
}

TEST_CASE("two arcs cross in two points, one or none", "[replay]") {
  const Edge arc = circle({3, 4}, 5);
  check_points(crossings(arc, circle({9, 4}, 5)), {{6, 0}, {6, 8}});
  check_points(crossings(circle({7, 4}, std::sqrt(17)), arc), {{6, 0}, {6, 8}});
  const Edge upper{{8, 4}, {-2, 4}, {3, 4}, Turn::left};  // where y is over 4
  check_points(crossings(upper, circle({9, 4}, 5)), {{6, 8}});
  check_points(crossings(circle({9, 4}, 5), upper), {{6, 8}});
  CHECK(crossings(arc, circle({14, 4}, 5)).empty());
  CHECK(crossings(arc, circle({4, 4}, 2)).empty());
  CHECK(crossings(arc, circle({4, 4}, 12)).empty());
  CHECK(crossings(arc, circle({3, 4}, 5)).empty());  // along it
  CHECK(crossings(arc, circle({3 + 5e-10, 4}, 5)).empty());
  CHECK(crossings(arc, circle({3, 4}, 4)).empty());
  for (const auto& [off, touches] : {std::pair(0.0, true), std::pair(2e-10, true), std::pair(5e-9, false)}) {
    CHECK(crossings(arc, circle({3, 12 + off}, 3)).empty() != touches);
    CHECK(crossings(arc, circle({3, 6 - off}, 3)).empty() != touches);
    CHECK(crossings(arc, circle({3, 1 + off}, 8)).empty() != touches);
  }
}

TEST_CASE("a pose takes what is over its sole and between its sides", "[replay]") {
  const Plane round = plans::curved(PlaneKind::round, 10);  // 10 wide, its edges 1.34 over the middle
  for (const double tilt : {0.0, 50.0, -160.0}) {
    const Pose pose{{20, 10}, tilt};
    const Swept swept = sweep_of(round, pose, 100);
    const auto taken = [&](double u, double v, double slack = 0) {
      return takes(swept, from_sole_frame(pose, {u, v}), slack);
    };
    CHECK(taken(0, 0.01));
    CHECK_FALSE(taken(0, -0.01));
    CHECK(taken(3, sole_height(round, 3) + 0.01));
    CHECK_FALSE(taken(-3, sole_height(round, 3) - 0.01));
    for (const double side : {1.0, -1.0}) {
      CHECK(taken(side * 4.99, 30));
      CHECK_FALSE(taken(side * 5.01, 30));
      CHECK(taken(side * 4.99, 90, 0.005));
      CHECK_FALSE(taken(side * 4.99, 90, 0.02));
    }
    CHECK(taken(0, 0.01, 0.005));
    CHECK_FALSE(taken(0, 0.01, 0.02));
    CHECK(distance(swept.local(from_sole_frame(pose, {2, 3})), Point{2, 3}) < 1e-13);
  }
}

TEST_CASE("the bounds of a pose are its sole and two sides, as long as is asked", "[replay]") {
  Plane shaped;
  shaped.kind = PlaneKind::shaped;
  shaped.width = 10;
  shaped.sole = {{{-5, 3}, {0, 0}, {}, Turn::straight}, {{0, 0}, {5, 5}, {0, 5}, Turn::left}};
  for (const Plane& plane : {plans::curved(PlaneKind::hollow, 10), shaped}) {
    const Pose pose{{20, 10}, 35};
    const Swept swept = sweep_of(plane, pose, 100);
    CHECK(swept.plane == &plane);
    CHECK(swept.pose == pose);
    const std::size_t n = swept.sole.size();
    REQUIRE(swept.bounds.size() == n + 2);
    for (std::size_t i = 0; i < n; ++i) {
      CHECK(swept.sole[i].turn == swept.bounds[i].turn);
      for (const double t : {0.0, 0.4, 1.0}) {
        const Point uv = swept.local(point_at(swept.bounds[i], t));
        CHECK(uv.y == Approx(sole_height(plane, uv.x)).margin(1e-9));
        // In the frame of the plane the sole is mirrored, so only its ends and centres can be compared.
        if (t == 0) CHECK(distance(uv, swept.sole[i].from) < 1e-12);
        if (t == 1) CHECK(distance(uv, swept.sole[i].to) < 1e-12);
      }
      if (swept.sole[i].is_arc()) CHECK(radius(swept.sole[i]) == Approx(radius(swept.bounds[i])));
    }
    const Edge right = swept.bounds[n], left = swept.bounds[n + 1];
    CHECK(right.from == swept.bounds[n - 1].to);
    CHECK(left.to == swept.bounds[0].from);
    CHECK(distance(right.to, right.from + 100 * outward(35)) < 1e-12);
    CHECK(distance(left.from, left.to + 100 * outward(35)) < 1e-12);
  }
}
