// What two planes side by side leave between their sides.
#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

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
