// The replay's own geometry on cases that can be told by hand.
#include "replay/standing.h"

#include <algorithm>

#include "arrisline/plan_json.h"
#include "arrisline/replay.h"
#include "catch.h"
#include "replay/swept.h"

using namespace arrisline;
using namespace arrisline::replaying;

TEST_CASE("an arris and an inner corner are corners; the open, the wood and a plain surface are not",
          "[replay]") {
  Plane rebate;
  rebate.width = 10;
  const Pose pose{{5, 4}, 0};
  Standing wood(40, 20);
  wood.take(sweep_of(rebate, pose, 100));
  CHECK(wood.is_corner({10, 0}));         // where the rebate leaves the face
  CHECK(wood.is_corner({10, 4}));         // its inner corner
  CHECK(wood.is_corner({0, 4}));          // and on the working edge
  CHECK_FALSE(wood.is_corner({5, 4}));    // its floor
  CHECK_FALSE(wood.is_corner({10, 2}));   // its wall
  CHECK_FALSE(wood.is_corner({5, 2}));    // taken
  CHECK_FALSE(wood.is_corner({25, 12}));  // wood all round
}

TEST_CASE("two circles cross in two points, mirror images in the line of their centres", "[replay]") {
  // Of radii 5 about (0, 0) and (6, 0): (3, ±4), the 3-4-5 triangle.
  const Edge a{{0, -5}, {0, 5}, {0, 0}, Turn::left};
  const Edge b{{6, 5}, {6, -5}, {6, 0}, Turn::left};
  std::vector<Point> points = crossings(a, b);
  REQUIRE(points.size() == 2);
  std::sort(points.begin(), points.end(), [](Point p, Point q) { return p.y < q.y; });
  CHECK(norm(points[0] - Point{3, -4}) < 1e-12);
  CHECK(norm(points[1] - Point{3, 4}) < 1e-12);
  // A line at a height of 3 meets the first at x = 4; one at 5.1 passes over it.
  const auto at_height = [](double y) { return Edge{{-10, y}, {10, y}, {}, Turn::straight}; };
  const std::vector<Point> one = crossings(at_height(3), a);
  REQUIRE(one.size() == 1);
  CHECK(norm(one[0] - Point{4, 3}) < 1e-12);
  CHECK(crossings(at_height(5.1), a).empty());
}

TEST_CASE("the second opinion says of which cut its area is, and of the whole as of none", "[replay]") {
  Plan plan;
  plan.section.width = 40;
  plan.section.thickness = 20;
  plan.section.target = {{{10, 0}, {40, 0}, {}, Turn::straight},  {{40, 0}, {40, 20}, {}, Turn::straight},
                         {{40, 20}, {0, 20}, {}, Turn::straight}, {{0, 20}, {0, 4}, {}, Turn::straight},
                         {{0, 4}, {10, 4}, {}, Turn::straight},   {{10, 4}, {10, 0}, {}, Turn::straight}};
  plan.section.source = {-1, -1, -1, -1, 0, 1};
  plan.section.elements = {{1, 0, Chain::face, "step", 1}, {2, 0, Chain::face, "fillet", 2}};
  plan.feasible = true;
  Cut cut;
  cut.number = 1;
  cut.plane.width = 10;
  cut.poses = cut.set = {{{5, 4}, 0}};
  cut.removed = 40;
  plan.cuts = {cut};
  plan.waste_area = plan.waste_by_flat = 40;
  CHECK(second_opinion(plan).empty());

  plan.left.area = 7;
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].cut == 0);
  plan.left.area = 0;
  plan.waste_by_flat = 30;
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].cut == 0);
  plan.waste_by_flat = 40;
  plan.cuts[0].removed = 30;
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].cut == 1);
}

TEST_CASE("why a hollow is not guided is said as it is", "[replay]") {
  Plan plan;
  plan.section.width = 40;
  plan.section.thickness = 20;
  plan.section.target = blank_outline(40, 20);
  plan.section.source = {-1, -1, -1, -1};
  plan.feasible = true;
  Cut cut;
  cut.number = 1;
  cut.plane.kind = PlaneKind::round;
  cut.plane.width = cut.plane.radius = 10;
  cut.rides = Rides::two_arrises;
  cut.poses = cut.set = {{{60, 4}, 0}};  // beside the stick
  plan.cuts = {cut};
  const auto said = [&plan](const std::string& words) {
    const ReplayResult judged = replay(plan, {});
    return std::any_of(judged.findings.begin(), judged.findings.end(),
                       [&](const Finding& f) { return f.text.find(words) != std::string::npos; });
  };
  CHECK(said("the round touches no wood"));
  plan.cuts[0].poses = plan.cuts[0].set = {{{20, 1}, 0}};
  CHECK_FALSE(said("touches no wood"));
  CHECK(said("it touches only at +0.00 of its width from the middle"));
}

namespace {

constexpr double kFar = 200;

/// Wood 40 by 20, and the planes that have been at it.
struct Stick {
  Standing wood{40, 20};
  std::vector<Plane> planes;

  Stick() { planes.reserve(16); }
  Stick& take(double width, const Pose& pose) {
    planes.emplace_back().width = width;
    wood.take(sweep_of(planes.back(), pose, kFar));
    return *this;
  }
  bool has_corner(Point p) const {
    const std::vector<Point>& all = wood.corners();
    return std::any_of(all.begin(), all.end(), [&](Point q) { return distance(p, q) < 1e-9; });
  }
};

}  // namespace

TEST_CASE("the corners are those of what still bounds wood", "[replay]") {
  Stick stick;
  for (const Point p : {Point{0, 0}, Point{40, 0}, Point{40, 20}, Point{0, 20}}) CHECK(stick.has_corner(p));
  stick.take(20, {{0, 4}, 0});
  CHECK_FALSE(stick.has_corner({0, 0}));
  for (const Point p : {Point{10, 0}, Point{10, 4}, Point{0, 4}, Point{40, 0}, Point{0, 20}})
    CHECK(stick.has_corner(p));
  // A groove across the wall of the first takes its arris, and leaves its own.
  stick.take(4, {{11, 6}, 0});
  CHECK_FALSE(stick.has_corner({10, 0}));
  CHECK_FALSE(stick.has_corner({10, 4}));
  for (const Point p : {Point{13, 0}, Point{13, 6}, Point{9, 6}, Point{9, 4}, Point{0, 4}})
    CHECK(stick.has_corner(p));
  // Nothing off the blank, and nothing that is taken.
  for (const Point p : stick.wood.corners()) {
    CHECK(stick.wood.off_blank(p) < 1e-9);
    for (const Swept& swept : stick.wood.taken()) CHECK_FALSE(takes(swept, p, 1e-9));
  }
  CHECK(stick.wood.edges().size() == 4 + 2 * 3);
  CHECK(stick.wood.taken().size() == 2);
}

TEST_CASE("a corner that rounding puts a hair into the next cut is still one", "[replay]") {
  for (const auto& [over, stays] : {std::pair(-0.01, true), std::pair(5e-7, true), std::pair(5e-6, false)}) {
    // The second rebate has its floor, or its wall, so much past the corner that the first has left.
    Stick stick;
    stick.take(10, {{5, 4}, 0}).take(10, {{-3, 4 + over}, 0});
    INFO(over);
    CHECK(stick.has_corner({0, 4}) == stays);
    Stick other;
    other.take(10, {{5, 4}, 0}).take(10, {{15 - over, 6}, 0});
    CHECK(other.has_corner({10, 4}) == stays);
    // The corner that comes later counts likewise.
    Stick later;
    later.take(10, {{-3, 4 + over}, 0}).take(10, {{5, 4}, 0});
    CHECK(later.has_corner({0, 4}) == stays);
    // And off the blank.
    Stick outside;
    outside.take(10, {{5 + 30 + over, 20 - 3}, 0});
    CHECK(outside.has_corner({40 + over, 17}) == stays);
  }
}

TEST_CASE("a point is so far off the blank as it is outside its nearer side", "[replay]") {
  const Standing wood(40, 20);
  CHECK(wood.off_blank({-3, 5}) == 3);
  CHECK(wood.off_blank({45, 5}) == 5);
  CHECK(wood.off_blank({9, -2}) == 2);
  CHECK(wood.off_blank({9, 21}) == 1);
  CHECK(wood.off_blank({-3, 21}) == 3);
  CHECK(wood.off_blank({3, 5}) == -3);
  CHECK(wood.off_blank({38, 5}) == -2);
  CHECK(wood.off_blank({9, 1}) == -1);
  CHECK(wood.off_blank({20, 16}) == -4);
  CHECK(wood.solid({20, 16}));
  CHECK_FALSE(wood.solid({20, 20.001}));
}

TEST_CASE("the topmost wood on a line is under all that has been taken along it", "[replay]") {
  Stick stick;
  const auto top = [&](double x) { return stick.wood.top({{x, 30}, 0}, 0).value_or(-1); };
  CHECK(top(20) == Approx(30));  // of the face, from a pose 30 below it
  stick.take(10, {{5, 4}, 0});
  CHECK(top(5) == Approx(26));
  CHECK(top(11) == Approx(30));
  // From the edge a slot 7 to 11 deep: under a rebate of 7 it counts, under one of 6.9 there is wood over it.
  stick.take(4, {{25, 9}, 90});
  CHECK(top(5) == Approx(26));
  CHECK(top(15) == Approx(30));
  stick.take(10, {{15, 7}, 0});
  CHECK(top(15) == Approx(19));
  CHECK(top(5) == Approx(26));
  stick.take(5, {{7.5, 6.9}, 0});
  CHECK(top(7) == Approx(23.1));
  // Through the stick, beside it, and to the side of it.
  stick.take(6, {{35, 22}, 0});
  CHECK_FALSE(stick.wood.top({{35, 30}, 0}, 0));
  CHECK_FALSE(stick.wood.top({{45, 30}, 0}, 0));
  CHECK_FALSE(stick.wood.top({{-1, 5}, 0}, 0));
  CHECK_FALSE(stick.wood.top({{40, 5}, 0}, 0));
  CHECK(stick.wood.top({{15, 30}, 0}, 3).value() == Approx(19));
  CHECK(stick.wood.top({{30, 12}, 90}, 0).value() == Approx(30));
  CHECK(stick.wood.top({{30, 9}, 90}, 0).value() == Approx(5));
  CHECK(stick.wood.top({{30, 9}, 90}, 3).value() == Approx(30));     // across is up: at a depth of 6
  CHECK(stick.wood.top({{30, 9}, 90}, 6).value() == Approx(10));     // and of 3
  CHECK(stick.wood.top({{500, 12}, 90}, 0).value() == Approx(500));  // however far away the pose
  CHECK(stick.wood.top({{-500, 12}, 90}, 0).value() == Approx(-500));
}

TEST_CASE("wood thinner than a millionth along a line is none", "[replay]") {
  for (const auto& [thin, stands] : {std::pair(3e-7, false), std::pair(5e-6, true)}) {
    // Left between a rebate and a slot under it; over the slot at the face; and of the whole stick.
    Stick between;
    between.take(10, {{5, 4}, 0}).take(4, {{12, 6 + thin}, 90});
    INFO(thin);
    CHECK(between.wood.top({{5, 30}, 0}, 0).value() == Approx(stands ? 26 : 30 - 8 - thin).margin(1e-9));
    Stick face;
    face.take(4, {{12, 2 + thin}, 90});
    CHECK(face.wood.top({{5, 30}, 0}, 0).value() == Approx(stands ? 30 : 26 - thin).margin(1e-9));
    Stick last;
    last.take(10, {{5, 20 - thin}, 0});
    CHECK(last.wood.top({{5, 30}, 0}, 0).has_value() == stands);
    // A line that all but misses the arris of the blank.
    CHECK(Standing(40, 20).top({{0, 20}, 45}, thin / 2).has_value() == stands);
  }
}

TEST_CASE("a surface that turns by more than twenty degrees has a corner there", "[replay]") {
  for (const double sign : {1.0, -1.0})
    for (const auto& [degrees, corner] :
         {std::pair(12.0, false), std::pair(17.0, false), std::pair(23.0, true), std::pair(60.0, true)}) {
      // From (20, 5) on the floor falls away, or rises.
      Stick stick;
      stick.take(80, {{20 - 40 + (sign > 0 ? 1.0 : 0.0), 5}, 0});
      const double tilt = -sign * degrees;
      stick.take(80, {Point{20, 5} + 40 * across(tilt), tilt});
      INFO(sign * degrees);
      CHECK(stick.wood.is_corner({20, 5}) == corner);
    }
}

TEST_CASE("what turns within a few thousandths of a point is its corner, and what is farther is not",
          "[replay]") {
  // A step of 0.01: its arris is one. Two bends of 13 degrees, 0.001 apart, are one corner of 26.
  Stick step;
  step.take(80, {{20 - 40, 5.01}, 0}).take(80, {{20 + 40, 5}, 0});
  CHECK(step.wood.is_corner({20, 5}));
  CHECK(step.wood.is_corner({20, 5.01}));
  CHECK_FALSE(step.wood.is_corner({20.02, 5}));
  Stick bends;
  bends.take(80, {{21 - 40, 5}, 0});
  bends.take(80, {Point{20, 5} + 40 * across(-13), -13});
  bends.take(80, {Point{20, 5} + 0.001 * across(-13) + 40 * across(-26), -26});
  CHECK(bends.wood.is_corner({20, 5}));
  CHECK_FALSE(bends.wood.is_corner({20 + 0.02 * std::cos(0.45), 5 + 0.02 * std::sin(0.45)}));
}
