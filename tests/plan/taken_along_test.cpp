// The wood that a pose takes along the plane, air not counted.
#include "plan/taken_along.h"

#include <algorithm>

#include "plan/planning.h"
#include "plan/soles.h"
#include "plan/wood.h"

using namespace arrisline;
using test::curved;
using test::flat;

namespace {

double taken(const Wood& wood, const Plane& plane, const Pose& pose) {
  return thickest_taken(wood.edges(), Sweep(plane, pose));
}

/// The greatest thickness of wood within 15 mm over the sole, by many points over many places across it.
double found_by_points(const Wood& wood, const Plane& plane, const Pose& pose) {
  constexpr int kPlaces = 1500;
  constexpr double kStep = 0.02, kUp = 15;  // mm
  double most = 0;
  for (int i = 0; i < kPlaces; ++i) {
    const double u = plane.width * ((i + 0.5) / kPlaces - 0.5);
    double sum = 0;
    for (double v = sole_height(plane, u) + kStep / 2; v < kUp; v += kStep) {
      if (wood.contains(from_sole_frame(pose, {u, v}))) sum += kStep;
    }
    most = std::max(most, sum);
  }
  return most;
}

}  // namespace

TEST_CASE("of whole wood a pose takes as much as it stands deep in it", "[plan][taken]") {
  const Wood wood(blank_outline(60, 30));
  CHECK(taken(wood, flat(10), {{20, 4}, 0}) == Approx(4));
  CHECK(taken(wood, flat(10), {{20, -4}, 0}) == 0);
  // A round is deepest in its middle: 6, and less beside.
  CHECK(taken(wood, curved(PlaneKind::round, 10), {{20, 6}, 0}) == Approx(6));
  // A hollow at its edges, lower than the middle by r - sqrt(r² - w²/4).
  CHECK(taken(wood, curved(PlaneKind::hollow, 10), {{20, 6}, 0}) == Approx(6 + 10 - std::sqrt(75.0)));
}

TEST_CASE("air between two layers of wood is not taken", "[plan][taken]") {
  // 60 by 30 with a trench 20 wide and 10 deep in the middle of its face.
  const Plane wide = flat(20);
  Wood wood(blank_outline(60, 30));
  wood.cut(Sweep(wide, {{30, 10}, 0}));
  // On its side, the sole 5 mm below the face and 5 short of the trench: its 8 mm upright side reaches from
  // 1 to 9 mm deep. Over it lie 15 mm of wood up to the working edge.
  CHECK(taken(wood, flat(8), {{15, 5}, 90}) == Approx(15));
  // Beyond the trench: 5 mm of wood, 20 of air, 20 of wood.
  CHECK(taken(wood, flat(8), {{45, 5}, 90}) == Approx(25));
  // The same, its lower half under the floor of the trench, where there is no air.
  CHECK(taken(wood, flat(8), {{45, 10}, 90}) == Approx(45));
}

TEST_CASE("a round that leans across a flute takes what it bites of either side of it", "[plan][taken]") {
  // A flute roughed to a trench; leaning 60 degrees in it the round grazes the far shoulder. Held against the
  // wood found point by point over many places across the sole.
  const Plane narrow = flat(8);
  Wood wood(blank_outline(50, 20));
  wood.cut(Sweep(narrow, {{25, 5}, 0}));
  const Plane round = curved(PlaneKind::round, 6.35);
  for (const double tilt : {-60.0, -40.0, -20.0, 0.0, 35.0, 60.0}) {
    const Pose pose{Point{25, 0} - 6.35 * outward(tilt), tilt};
    INFO("tilt " << tilt);
    CHECK(taken(wood, round, pose) == Approx(found_by_points(wood, round, pose)).margin(0.02));
  }
}

TEST_CASE("a flute costs no strokes through the air", "[plan][taken]") {
  const Section flute = test::profile("2 wide, 3/4 thick", "start face 1 1/4\ncove out 1/2 radius 1/4");
  const Kit kit = test::kit("units inch\nrebate 1\nrebate 1/2\nplough 1/8 3/16 1/4\nround 4\n");
  const Plan plan = make_plan(flute, kit, {});
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan) == "");
  Wood wood(blank_outline(plan.section.width, plan.section.thickness));
  for (const Cut& cut : plan.cuts) {
    double thick = 0;
    for (const Pose& pose : cut.poses) {
      thick += found_by_points(wood, cut.plane, pose);
      wood.cut(Sweep(cut.plane, pose));
    }
    const double shaving =
        cut.plane.kind == PlaneKind::round ? kit.shop.shaving_curved : kit.shop.shaving_rebate;
    INFO("cut " << cut.number);
    CHECK(cut.strokes * shaving == Approx(thick).margin(0.02 * static_cast<double>(cut.poses.size())));
  }
}
