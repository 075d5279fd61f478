// Gauge lines, their rounding toward the wood, and the stops of the board.
#include "plan/gauge.h"

#include <algorithm>
#include <cmath>

#include "plan/gouge.h"
#include "plan/holding.h"
#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

TEST_CASE("a square rebate is gauged from the edge and from the face", "[gauge]") {
  const Plan plan =
      make_plan(profile("2 wide, 3/4 thick", "start face .505\nstep down .255\nfillet out .505"),
                kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.cuts.size() == 1);
  const Cut& cut = plan.cuts[0];
  REQUIRE(cut.lines.size() == 2);
  CHECK(cut.lines[0].from == Side::face);
  CHECK(cut.lines[0].at == Approx(0.255 * kMmPerInch));
  CHECK(cut.lines[1].from == Side::edge);
  CHECK(cut.lines[1].at == Approx(0.505 * kMmPerInch));
  // To the 1/32 in below: 8/32 and 16/32, so that wood is left and none is cut too deep.
  CHECK(cut.lines[0].set == Approx(0.25 * kMmPerInch));
  CHECK(cut.lines[1].set == Approx(0.5 * kMmPerInch));
  CHECK(cut.set[0].at.y == Approx(0.25 * kMmPerInch));
  CHECK(plan.left.as_set_deepest_gouge == 0);
  CHECK(plan.left.as_set_max_height == Approx(0.005 * kMmPerInch).margin(1e-3));
  CHECK(plan.left.max_height == Approx(0).margin(1e-6));
}

TEST_CASE("figures that fall on the gauge's division stay", "[gauge]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2"),
                              kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.cuts.size() == 1);
  for (const GaugeLine& line : plan.cuts[0].lines) CHECK(line.set == Approx(line.at));
  CHECK(plan.left.as_set_max_height == Approx(0).margin(1e-6));
}

TEST_CASE("a chamfer has two lines, and its sole goes through both as set", "[gauge]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face .3\nbevel out .3 down .2"),
                              kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.cuts.size() == 1);
  const Cut& cut = plan.cuts[0];
  REQUIRE(cut.lines.size() == 2);
  for (const GaugeLine& line : cut.lines) {
    CHECK(line.set <= line.at + 1e-9);
    const Point on = line.from == Side::face ? Point{0, line.set} : Point{line.set, 0};
    CHECK(to_sole_frame(cut.set[0], on).y == Approx(0).margin(1e-9));
  }
  CHECK(plan.left.as_set_deepest_gouge <= 0.01);
}

TEST_CASE("a trench between two walls is as wide as its two lines say", "[gauge]") {
  // From .745 to 1.755 in, both rounded to the trench's inside: 3/4 and 1 3/4.
  const Plan plan =
      make_plan(profile("3 wide, 3/4 thick", "start face 1.755\nstep down 1/8\nfillet out 1.01\nstep up 1/8"),
                kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.feasible);
  REQUIRE(plan.cuts.size() == 1);
  const Cut& cut = plan.cuts[0];
  REQUIRE(cut.lines.size() == 3);
  double low = 1e9, high = -1e9;
  for (const Pose& pose : cut.set) {
    low = std::min(low, pose.at.x - 0.375 * kMmPerInch);
    high = std::max(high, pose.at.x + 0.375 * kMmPerInch);
  }
  CHECK(low == Approx(0.75 * kMmPerInch));
  CHECK(high == Approx(1.75 * kMmPerInch));
  CHECK(plan.left.as_set_max_height == Approx(0.005 * kMmPerInch).margin(1e-3));
  CHECK(faults(plan) == "");
}

TEST_CASE("divisions are 1/32 in and 1/128 for rails, 0.5 mm and 0.1, or the shop's", "[gauge]") {
  Kit plain;
  PlanOptions options;
  CHECK(divisions(plain, options).coarse == Approx(kMmPerInch / 32));
  CHECK(divisions(plain, options).fine == Approx(kMmPerInch / 128));
  options.unit = Unit::mm;
  CHECK(divisions(plain, options).coarse == 0.5);
  CHECK(divisions(plain, options).fine == 0.1);
  plain.shop.gauge = 0.25;
  CHECK(divisions(plain, options).coarse == 0.25);
}

TEST_CASE("a stop must stand in wood and below the plane", "[gauge][board]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  // The fence is at the back edge: a stop 1 in from it stands under the middle of the blank.
  const Plan held = make_plan(section, kit("units inch\nrebate 3/4\nboard stops at 1\n"), {});
  CHECK(held.feasible);
  CHECK(held.holding_checked);
  CHECK(faults(held) == "");
  // A stop beyond the working edge stands in no wood.
  const Plan lost = make_plan(section, kit("units inch\nrebate 3/4\nboard stops at 3\n"), {});
  CHECK_FALSE(lost.feasible);
  REQUIRE_FALSE(lost.reasons.empty());
  CHECK(lost.reasons[0].why.find("held") != std::string::npos);
  // A rebate through all but 1/16 in of the thickness leaves the stop under it no room.
  const Section deep = profile("2 wide, 3/4 thick", "start face 1 1/2\nstep down 11/16\nfillet out 1 1/2");
  CHECK_FALSE(make_plan(deep, kit("units inch\nrebate 3/4\nboard stops at 1\n"), {}).feasible);
  CHECK(make_plan(deep, kit("units inch\nrebate 3/4\nboard stops at 1/4\n"), {}).feasible);
}

TEST_CASE("lines that lay rails are set to the finer division, always toward the wood", "[gauge]") {
  const Plan plan =
      make_plan(profile("2 wide, 3/4 thick", "start face 3/8\ncavetto 3/8"), test::pair_of_sixes(), {});
  REQUIRE(plan.feasible);
  int moved = 0;
  for (const Cut& cut : plan.cuts) {
    for (const GaugeLine& line : cut.lines) {
      INFO("cut " << cut.number << ", line at " << line.at << " set at " << line.set);
      REQUIRE((line.from == Side::edge || line.from == Side::face));
      CHECK(line.fine);
      const double division = kMmPerInch / 128;
      CHECK(std::abs(line.set / division - std::round(line.set / division)) < 1e-9);
      // Gauged from the side that is cut away, a smaller figure leaves more wood.
      CHECK(line.set <= line.at + 1e-9);
      CHECK(line.set > line.at - division);
      if (line.set < line.at - 1e-6) ++moved;
    }
  }
  CHECK(moved >= 2);
  // gouge_depth() is found to 1e-4 mm.
  CHECK(plan.left.as_set_deepest_gouge <= 1e-4);
  CHECK(plan.left.as_set_max_height <= 0.2);
}

TEST_CASE("what a stop holds by may be gone after another cut", "[gauge][board]") {
  // One stop, 1/2 in from the working edge on stock 2 in wide. A rebate 1 in wide in the underside takes the
  // wood that it holds face up, so a chamfer on the face can only come before; the rebate itself, cut with
  // the underside up in two settings, is held by the face.
  const Section section = profile("2 wide, 3/4 thick",
                                  "start face 1/8\nchamfer 1/8\nside underside\nstart face 1\nstep down "
                                  "1/4\nfillet out 1");
  const Kit planes = kit("units inch\nrebate 3/4\nboard stops at 1 1/2\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  const Plane& rebate = problem.plane(0);
  const double in = kMmPerInch;
  const std::vector<Pose> chamfer = {{{in / 16, in / 16}, 45}};
  const std::vector<Pose> under = {{{in - 3 * in / 8, in / 2}, 180}, {{3 * in / 8, in / 2}, 180}};
  Wood wood(problem.blank);
  auto cut = [&](const std::vector<Pose>& poses) {
    for (const Pose& pose : poses) {
      CHECK_FALSE(gouges(section.target, Sweep(rebate, pose), 1e-6));
      wood.cut(Sweep(rebate, pose));
    }
  };
  cut(chamfer);
  const auto is_held = [&](const std::vector<Pose>& poses, Lies lies) {
    return !held(problem, rebate, poses, wood, LieSet(lies)).empty();
  };
  CHECK(is_held(chamfer, Lies::face_up));
  cut(under);
  CHECK(is_held(under, Lies::underside_up));
  CHECK(wood.area() == Approx(area(section.target)));
  CHECK_FALSE(is_held(chamfer, Lies::face_up));
}

TEST_CASE("a stop under both rebates holds in neither order", "[gauge][board]") {
  // The stop 1/4 in from the working edge: each cut takes the wood by which the other would be held.
  const Section section = profile("2 wide, 3/4 thick",
                                  "start face 1/2\nstep down 1/4\nfillet out 1/2\nside underside\nstart face "
                                  "1/2\nstep down 1/4\nfillet out 1/2");
  const Plan lost = make_plan(section, kit("units inch\nrebate 3/4\nboard stops at 1 3/4\n"), {});
  REQUIRE_FALSE(lost.feasible);
  CHECK(lost.reasons[0].why.find("held by a stop") != std::string::npos);
  // With one more, under wood that stays, it goes.
  const Plan held = make_plan(section, kit("units inch\nrebate 3/4\nboard stops at 1, 1 3/4\n"), {});
  REQUIRE(held.feasible);
  CHECK(faults(held) == "");
}

TEST_CASE("the side of a ridge that the sole takes away is no wall to start against", "[gauge]") {
  // From the back the floor is cut up to the line of the step; what stands before it is then a ridge, and the
  // side of a plane that takes the ridge away has air beyond it.
  const Section section = test::profile(
      "80/32 wide, 24/32 thick",
      "start back 1/8\nfillet out 64/32\nstep down 2/32\nbead out 12/32 down 12/32\nfillet out 4/32");
  const Plan plan = make_plan(section, test::kit("units inch\nrebate 1/4\nhollow 6\nround 6\n"), {});
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan) == "");
}
