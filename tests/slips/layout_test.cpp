// Planes that follow lines, walls and rails which are off, against figures worked out by hand.
#include "slips/layout.h"

#include <cmath>

#include "plan/planning.h"
#include "plan/problem.h"
#include "replay/plans.h"

using namespace arrisline;
using test::kit;
using test::profile;

namespace {

constexpr double kIn = kMmPerInch;

/// The figure of the one setting gauged from that side nearest to `at`.
std::size_t setting_at(const Layout& layout, Side from, double at) {
  for (std::size_t i = 0; i < layout.settings().size(); ++i) {
    if (layout.settings()[i].from == from && std::abs(layout.settings()[i].set - at) < 1e-3) return i;
  }
  FAIL("no setting at " << at);
  return 0;
}

/// A round-over with its chamfer gauged from edge and face, set as drawn.
Plan chamfered_round_over() {
  Plan plan = plans::round_over();
  const double leg = plans::kSix * (2 - std::sqrt(2.0));
  plan.cuts[0].lines = {{Side::edge, leg, leg, true}, {Side::face, leg, leg, true}};
  return plan;
}

}  // namespace

TEST_CASE("nothing off, and every pose stands as set", "[slips]") {
  for (const char* chain : {"start face .51\nstep down .26\nfillet out .51", "start face 3/8\ncavetto 3/8",
                            "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"}) {
    const Plan plan = make_plan(profile("2 wide, 3/4 thick", chain), test::pair_of_sixes(), {});
    REQUIRE(plan.feasible);
    const Layout layout(plan);
    const Slipped slipped = layout.slip(std::vector<double>(layout.settings().size()));
    for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
      REQUIRE(slipped.poses[i].size() == plan.cuts[i].set.size());
      for (std::size_t k = 0; k < plan.cuts[i].set.size(); ++k) {
        CHECK(distance(slipped.poses[i][k].at, plan.cuts[i].set[k].at) < 1e-9);
        CHECK(slipped.poses[i][k].tilt == Approx(plan.cuts[i].set[k].tilt));
      }
    }
  }
}

TEST_CASE("a figure that the cut before set is one setting", "[slips]") {
  // Two grooves of one depth, one after the other: three settings, the depth used by both.
  const std::string groove = "step down 1/4\nfillet out 1/4\nstep up 1/4\n";
  const Plan plan = make_plan(
      profile("3 wide, 3/4 thick", "start face 1 1/4\n" + groove + "side face\nstart face 2 1/2\n" + groove),
      kit("units inch\nplough 1/4\n"), {});
  REQUIRE(plan.cuts.size() == 2);
  const Layout layout(plan);
  int stated = 0;
  for (const Cut& cut : plan.cuts) stated += cut.settings;
  CHECK(layout.settings().size() == static_cast<std::size_t>(stated));
  REQUIRE(layout.settings().size() == 3);
  const std::size_t depth = setting_at(layout, Side::face, kIn / 4);
  CHECK(layout.settings()[depth].cuts == std::vector<std::size_t>{0, 1});
  std::vector<double> off(3);
  off[depth] = 0.3;
  const Slipped slipped = layout.slip(off);
  for (const std::vector<Pose>& poses : slipped.poses) {
    REQUIRE(poses.size() == 1);  // in a groove as wide as the sole there is no room for a second
    CHECK(poses[0].at.y == Approx(kIn / 4 + 0.3));
  }
}

TEST_CASE("a wide rebate goes with its wall, and what it bares at the edge is taken in one more pass",
          "[slips]") {
  // 1 in wide with a 3/4 in plane, in two passes from the wall out.
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face 3/4\nstep down 1/4\nfillet out 3/4"),
                              kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.cuts.size() == 1);
  REQUIRE(plan.cuts[0].poses.size() == 1);  // exactly as wide as the sole
  const Layout layout(plan);
  const std::size_t wall = setting_at(layout, Side::edge, 0.75 * kIn);
  for (const double by : {0.5, -0.5}) {
    std::vector<double> off(2);
    off[wall] = by;
    const std::vector<Pose> poses = layout.slip(off).poses[0];
    double low = 1e9, high = -1e9;
    for (const Pose& pose : poses) {
      low = std::min(low, pose.at.x - 0.375 * kIn);
      high = std::max(high, pose.at.x + 0.375 * kIn);
    }
    CHECK(high == Approx(0.75 * kIn + by));
    CHECK(low <= 1e-9);
    CHECK(poses.size() == (by > 0 ? 2U : 1U));
  }
}

TEST_CASE("a sole that runs against a wall goes where the wall went", "[slips]") {
  // By hand: a rebate to half its depth by a line, then to all of it against the wall so made.
  Plan plan;
  plan.section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  plan.feasible = true;
  const double x = 0.5 * kIn, y = 0.25 * kIn;
  plan.cuts = {plans::cut(1, plans::rebate(), {plans::rebate_pose(x, y / 2)}, 0, Rides::gauge_line),
               plans::cut(2, plans::rebate(), {plans::rebate_pose(x, y)}, 0, Rides::wall)};
  plan.cuts[0].lines = {{Side::face, y / 2, y / 2, false}, {Side::edge, x, x, false}};
  plan.cuts[1].lines = {{Side::face, y, y, false}};
  const Layout layout(plan);
  REQUIRE(layout.settings().size() == 3);
  std::vector<double> off(3);
  off[setting_at(layout, Side::edge, x)] = -0.2;
  const Slipped slipped = layout.slip(off);
  CHECK(slipped.poses[1][0].at.x == Approx(plans::rebate_pose(x, y).at.x - 0.2));
  CHECK(slipped.poses[1][0].at.y == Approx(y));
}

TEST_CASE("a chamfer goes through its two lines, wherever they are", "[slips]") {
  const Plan plan = chamfered_round_over();
  const double leg = plan.cuts[0].lines[0].at;
  const Layout layout(plan);
  REQUIRE(layout.settings().size() == 2);
  for (const double by_edge : {-0.4, 0.0, 0.3}) {
    for (const double by_face : {-0.2, 0.5}) {
      std::vector<double> off(2);
      off[setting_at(layout, Side::edge, leg)] = by_edge;
      if (setting_at(layout, Side::edge, leg) == 0) off[1] = by_face;
      if (setting_at(layout, Side::edge, leg) == 1) off[0] = by_face;
      const Pose pose = layout.slip(off).poses[0][0];
      CHECK(to_sole_frame(pose, {leg + by_edge, 0}).y == Approx(0).margin(1e-9));
      CHECK(to_sole_frame(pose, {0, leg + by_face}).y == Approx(0).margin(1e-9));
    }
  }
}

TEST_CASE("a line struck on a floor goes down with the floor", "[slips]") {
  // Ovolo between fillets: the chamfer is struck on the floor of the step and on the wall of the fillet.
  const Plan plan =
      make_plan(profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"),
                kit("units inch\nhollow 6\nrebate 3/4\nshop weight slant 1\n"), {});
  REQUIRE(plan.feasible);
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    if (!plan.cuts[i].plane.is_flat() || is_square(plan.cuts[i].set.front().tilt)) continue;
    const Layout layout(plan);
    // Where the sole of the chamfer met the step's floor before and after the floor sank.
    const std::size_t floor = setting_at(layout, Side::face, kIn / 8);
    std::vector<double> off(layout.settings().size());
    const auto height_at = [&](const Pose& pose, double x) {
      const Point e = across(pose.tilt);
      return (pose.at + ((x - pose.at.x) / e.x) * e).y;
    };
    double edge_line = 0;
    for (const GaugeLine& line : plan.cuts[i].lines)
      if (line.from == Side::edge) edge_line = line.set;
    REQUIRE(edge_line > kIn / 8);
    const double before = height_at(layout.slip(off).poses[i][0], edge_line);
    off[floor] = 0.25;
    CHECK(height_at(layout.slip(off).poses[i][0], edge_line) == Approx(before + 0.25));
  }
}

TEST_CASE("a hollow settles between its rails", "[slips]") {
  const Plan plan = chamfered_round_over();
  const double r = plans::kSix;
  const Layout layout(plan);
  const auto seat_with = [&](double by_edge, double by_face) {
    std::vector<double> off(2);
    const std::size_t edge = setting_at(layout, Side::edge, plan.cuts[0].lines[0].at);
    off[edge] = by_edge;
    off[1 - edge] = by_face;
    return layout.slip(off).seats[1];
  };
  // Both lines alike: the flat is deeper and the rails wider apart, still even about the middle.
  for (const double by : {-0.5, 0.0, 0.5, 1.0}) {
    const Seat seat = seat_with(by, by);
    CHECK(seat.aside == Approx(0).margin(1e-5));
    REQUIRE(seat.guidance.two_arrises);
    CHECK(seat.guidance.imbalance == Approx(0).margin(1e-4));
    const double rail = r * std::tan(to_radians(22.5)) + by / std::sqrt(2.0);
    CHECK(seat.guidance.right == Approx(rail).margin(1e-3));
  }
  // Wider apart than the sole: 0.414 R + L/√2 over R/2.
  CHECK_FALSE(seat_with(1.3, 1.3).guidance.two_arrises);
  // One line too far in and the other as much too near: one rail moves out of the wood by L/√2 and the other
  // into it, both go across by L/√2, and the sole, which slopes by k at its rails, settles (1 − k)/k of that
  // aside. k = u/√(r² − u²) at u = r·tan 22.5°.
  const double u = std::tan(to_radians(22.5));
  const double k = u / std::sqrt(1 - u * u);
  for (const double by : {0.02, -0.02}) {
    const Seat seat = seat_with(by, -by);
    CHECK(seat.guidance.two_arrises);
    CHECK(seat.aside == Approx(0.02 / std::sqrt(2.0) * (1 - k) / k).epsilon(0.02));
  }
}
