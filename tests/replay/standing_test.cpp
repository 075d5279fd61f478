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
