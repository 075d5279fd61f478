// What two planes side by side leave between their sides.
#include "replay/remains.h"

#include <cmath>

#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

// A step 6 out and 5 down by two rebates 3 wide side by side, their sides `apart`, each 0.05 short of the
// floor.
static double thickest_between(double apart) {
  Plan plan;
  Section& s = plan.section;
  s.width = plans::kWidth;
  s.thickness = plans::kThickness;
  s.target = {{{6, 0}, {s.width, 0}, {}, Turn::straight},
              {{s.width, 0}, {s.width, s.thickness}, {}, Turn::straight},
              {{s.width, s.thickness}, {0, s.thickness}, {}, Turn::straight},
              {{0, s.thickness}, {0, 5}, {}, Turn::straight},
              {{0, 5}, {6, 5}, {}, Turn::straight},
              {{6, 5}, {6, 0}, {}, Turn::straight}};
  s.source = {-1, -1, -1, -1, -1, -1};
  plan.feasible = true;
  Plane outer = plans::rebate(), inner = plans::rebate();
  outer.width = 3;
  inner.width = 3 - apart;
  plan.cuts = {plans::cut(1, outer, {{{1.5, 4.95}, 0}}, 14.85, Rides::gauge_line),
               plans::cut(2, inner, {{{4.5 + apart / 2, 4.95}, 0}}, 14.85, Rides::gauge_line)};
  plan.waste_area = 30;
  plan.waste_by_flat = 29.7;
  return replay(plan, {}).max_height;
}

TEST_CASE("a fin no wider than rounding is no wood, also where it stands on what is left", "[replay]") {
  CHECK(thickest_between(0) == Approx(0.05).margin(1e-4));
  CHECK(thickest_between(1e-6) == Approx(0.05).margin(1e-4));
  CHECK(thickest_between(3e-6) == Approx(0.05).margin(1e-4));
}

TEST_CASE("a fin as thin as a shaving is wood", "[replay]") {
  // The nearest point of the target is the floor below it or the wall 3 mm beside it.
  CHECK(thickest_between(1e-3) == Approx(3).margin(0.01));
  CHECK(thickest_between(0.05) == Approx(3).margin(0.1));
}

TEST_CASE("what chords leave between two soles that meet is no wood", "[replay]") {
  // A round and a hollow that cross at the end of the stick: flattened, a crumb of 1e-8 mm² stands there, 5
  // mm from the target. In truth the farthest is the corner that the hollow's side leaves at x 48.2945.
  const double wide = 50, thick = 20;
  Plane round, hollow;
  round.kind = PlaneKind::round;
  round.width = 13.309938823092851;
  round.radius = 32.042612040828615;
  hollow.kind = PlaneKind::hollow;
  hollow.width = 3.101193330571729;
  hollow.radius = 9.1708104067810332;
  Standing wood(wide, thick);
  ClipperLib::Paths flat{flatten(std::span<const Edge>(blank_outline(wide, thick)))};
  const auto cut = [&](const Plane& plane, const Pose& pose) {
    const Swept swept = sweep_of(plane, pose, 200);
    flat = less(flat, {flatten(swept)});
    wood.take(swept);
  };
  cut(round, {{47.941119125938663, 7.1052431233419133}, 47.831840148495928});
  cut(hollow, {{48.295103586741327, 2.9682636340331046}, -174.77854193175105});
  const Loop target = {{{2, 1}, {30, 1}, {}, Turn::straight},
                       {{30, 1}, {44, 8}, {}, Turn::straight},
                       {{44, 8}, {44, 19}, {}, Turn::straight},
                       {{44, 19}, {2, 19}, {}, Turn::straight},
                       {{2, 19}, {2, 1}, {}, Turn::straight}};
  const Depth found = thickest_left(wood, target, less(flat, {flatten(std::span<const Edge>(target))}));
  CHECK(found.mm == Approx(std::hypot(48.294486836730918 - 44, 1)).margin(2e-4));
}

TEST_CASE("a sole that touches the end of the stick from outside is no surface of it", "[replay]") {
  // By 6 nm it does not reach the wood.
  Plane round;
  round.kind = PlaneKind::round;
  round.width = round.radius = 14;
  Standing wood(50, 20);
  wood.take(sweep_of(round, {{-6e-9, 10}, 90}, 200));
  const Loop target = {{{1, 1}, {49, 1}, {}, Turn::straight},
                       {{49, 1}, {49, 19}, {}, Turn::straight},
                       {{49, 19}, {1, 19}, {}, Turn::straight},
                       {{1, 19}, {1, 1}, {}, Turn::straight}};
  CHECK(thickest_left(wood, target, {}).mm == Approx(std::sqrt(2)).margin(2e-4));
}
