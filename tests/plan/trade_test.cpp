// What the trade knows of hollows and rounds, found again in what is read and planned. Common practice, no
// source, but for what is marked as computed or published.
#include <algorithm>
#include <cmath>

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::pair_of_sixes;
using test::profile;

TEST_CASE("number n has a radius of n/16 in and a sole as wide as its radius", "[trade]") {
  for (int n = 1; n <= 18; ++n) {
    INFO("No. " << n);
    const Kit pair = kit("units inch\nhollow " + std::to_string(n) + "\nround " + std::to_string(n) + "\n");
    REQUIRE(pair.planes.size() == 2);
    for (const Plane& plane : pair.planes) {
      CHECK(plane.number == n);
      CHECK(plane.radius == Approx(n * kMmPerInch / 16));
      // Computed: the chord of 60° is the radius (CRC Concise Encyclopedia of Mathematics, "Circular
      // Segment": c = 2R sin(θ/2)).
      CHECK(plane.width == Approx(plane.radius));
      CHECK(to_degrees(2 * plane.half_arc()) == Approx(60));
    }
  }
}

TEST_CASE("a No. 6 is half of 3/4 in stock, and rounds its whole edge", "[trade]") {
  const Section half_round = profile("2 wide, 3/4 thick", "start face 3/8\ntorus 3/4");
  for (const Plane& plane : pair_of_sixes().planes) {
    if (plane.is_curved()) CHECK(plane.radius == Approx(half_round.thickness / 2));
  }
  const Plan plan = make_plan(half_round, pair_of_sixes(), {});
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  // A No. 4 is too tight: on its 1/4 in wide sole it stands off the edge in its middle by the difference of
  // the two rises (computed: 6.35 − √(6.35² − 3.175²) less 9.525 − √(9.525² − 3.175²), .851 − .545 = .306
  // mm), more than the .2 mm that may be left without a scraper.
  CHECK_FALSE(make_plan(half_round, kit("units inch\nhollow 4\nrebate 3/4\n"), {}).feasible);
}

TEST_CASE("a quadrant cove is two tilts of one round", "[trade]") {
  for (const char* chain :
       {"start face 3/8\ncavetto 3/8", "start face 1/2\nstep down 1/8\ncavetto 3/8\nfillet out 1/8"}) {
    INFO(chain);
    const Plan plan = make_plan(profile("2 wide, 3/4 thick", chain), pair_of_sixes(), {});
    REQUIRE(plan.feasible);
    std::vector<double> tilts;
    for (const Cut& cut : plan.cuts) {
      if (!cut.plane.is_curved()) continue;
      CHECK(cut.plane.label == "round 6");
      for (const Pose& pose : cut.poses) tilts.push_back(pose.tilt);
    }
    // 15° to either side of the middle, which leans 45°, and the place where the round is set down first.
    CHECK((tilts.size() == 2 || tilts.size() == 3));
    for (const double tilt : {30.0, 60.0}) {
      CHECK(std::any_of(tilts.begin(), tilts.end(), [&](double t) { return std::abs(t - tilt) < 1e-6; }));
    }
    for (const double tilt : tilts) CHECK(std::abs(tilt - 45) < 15 + 1e-6);
  }
}

TEST_CASE("a cyma over its height and projection is one tilt of each plane", "[trade]") {
  // Published: Peter Nicholson, The Mechanic's Companion: two arcs of 60°, r = ½√(H² + P²); H .45, P .6 give
  // r 3/8, a pair of sixes.
  const Section section = profile("2 wide, 3/4 thick", "start face .6\nogee out .6 down .45");
  int arcs = 0;
  for (const Edge& edge : section.target) {
    if (!edge.is_arc()) continue;
    ++arcs;
    CHECK(radius(edge) == Approx(0.375 * kMmPerInch));
    CHECK(to_degrees(std::abs(sweep(edge))) == Approx(60));
  }
  CHECK(arcs == 2);
  const Plan plan = make_plan(section, pair_of_sixes(), {});
  REQUIRE(plan.feasible);
  int curved = 0;
  for (const Cut& cut : plan.cuts) {
    if (!cut.plane.is_curved()) continue;
    ++curved;
    INFO(cut.plane.label);
    // Both arcs have their middles where their spokes lean atan(.45/.6) = 36.87°. That tilt finishes the
    // arc; the plane may be set down at another first.
    CHECK(cut.poses.size() <= 2);
    CHECK(std::any_of(cut.poses.begin(), cut.poses.end(),
                      [](const Pose& pose) { return std::abs(pose.tilt - 36.869898) < 1e-5; }));
  }
  CHECK(curved == 2);
}
