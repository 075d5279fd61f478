// The stops of the board, against the plane's region asked point by point.
#include <algorithm>

#include "job/jobs.h"
#include "plan/sweep.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

Board board(std::vector<double> stops_in, double screw = 8, double clear = 1.5) {
  Board out;
  for (const double stop : stops_in) out.stops.push_back(stop * kMmPerInch);
  out.screw = screw;
  out.clear = clear;
  return out;
}

/// Least height above the board at which a pose of the cuts has a point over the stop's column, by asking the
/// region at points a tenth of a millimetre apart; the thickness where none has.
double room_by_points(const Plan& plan, std::size_t first, std::size_t last, double x, double half) {
  const double thickness = plan.section.thickness;
  double out = thickness;
  for (std::size_t c = first; c <= last; ++c) {
    for (const Pose& pose : plan.cuts[c].poses) {
      const Sweep sweep(plan.cuts[c].plane, pose);
      for (double at = x - half; at <= x + half; at += half / 40) {
        for (double height = 0; height < out; height += 0.05)
          if (sweep.depth({at, thickness - height}) > 0) out = height;
      }
    }
  }
  return out;
}

}  // namespace

TEST_CASE("a stop well under the wood may stand any height, one under a rebate up to it", "[stops]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", kRebate), kit("rebate 3/4\n"), {});
  REQUIRE(plan.feasible);
  // On a blank 2 in wide: stops 1 and 1 3/4 in from the fence are 1 and 1/4 in from the working edge.
  const std::vector<StopSetting> settings = stop_settings(plan, 2 * kMmPerInch, board({1, 1.75, 3}));
  REQUIRE(settings.size() == 1);
  CHECK(settings[0].held);
  REQUIRE(settings[0].stops.size() == 3);
  CHECK(settings[0].stops[0].clear);
  CHECK(settings[0].stops[0].holds);
  CHECK(settings[0].stops[0].height == Approx(0.75 * kMmPerInch));
  CHECK_FALSE(settings[0].stops[1].clear);
  CHECK(settings[0].stops[1].holds);
  CHECK(settings[0].stops[1].height == Approx(0.5 * kMmPerInch - 1.5));  // clearance under the rebate's floor
  // Beyond the working edge: the plane does not come so far out.
  CHECK_FALSE(settings[0].stops[2].holds);
}

TEST_CASE("common practice, no source: stops stand under the wood right up to the work and below the plane",
          "[stops]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", kRoundOver), pair_of_sixes(), {});
  REQUIRE(plan.feasible);
  const std::vector<StopSetting> settings = stop_settings(plan, 2 * kMmPerInch, board({0.5, 1, 1.5, 1.75}));
  for (const StopSetting& setting : settings) {
    CHECK(setting.held);
    for (const Stop& stop : setting.stops)
      if (stop.holds) CHECK(stop.height >= 0.125 * kMmPerInch);
  }
}

TEST_CASE("no stop may stand where a plane comes, for all the cuts it is set for", "[stops]") {
  int under_the_work = 0;
  for (const char* chain :
       {kRoundOver, kCavetto, kRebate, "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8",
        "start face 3/4\ncove out 5/16 down 3/16 radius 3/8\nfillet out 1/8\nbead out 5/16 down 3/16 radius "
        "3/8"}) {
    const Plan plan = make_plan(profile("2 wide, 3/4 thick", chain), pair_of_sixes(), {});
    REQUIRE(plan.feasible);
    for (const double width : {2.0, 3.5}) {
      const Board stops = board({0.5, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.25, 3.75});
      for (const StopSetting& setting : stop_settings(plan, width * kMmPerInch, stops)) {
        for (const Stop& stop : setting.stops) {
          const double x = width * kMmPerInch - stop.at;
          const double room = room_by_points(plan, setting.first, setting.last, x, 5.5);
          INFO(chain << ", " << width << " in wide, stop " << stop.at / kMmPerInch);
          if (stop.clear) {
            CHECK(room == Approx(plan.section.thickness));
          } else {
            ++under_the_work;
            // The points lie up to 0.05 mm in from the region's edge.
            CHECK(stop.height == Approx(std::max(0.0, room - 1.5)).margin(0.15));
          }
        }
      }
    }
  }
  CHECK(under_the_work > 30);
}

TEST_CASE("the narrowest blank that is held has a stop's column in wood and under the work", "[stops]") {
  // A rebate 1/2 in wide and 1/4 in deep: a stop under it may stand 1/2 in high less its clearance, so any
  // stop in wood holds. Its column is 5.5 mm to each side; a stop 1 in from the fence needs a blank of 1 in
  // and that.
  const Plan plan = make_plan(profile("1 wide, 3/4 thick", kRebate), kit("rebate 3/4\n"), {});
  REQUIRE(plan.feasible);
  const std::optional<double> least = narrowest_held(plan, 1 * kMmPerInch, 4 * kMmPerInch, board({1}));
  REQUIRE(least);
  CHECK(*least >= kMmPerInch + 5.5);
  CHECK(*least < kMmPerInch + 5.5 + kMmPerInch / 64);
  CHECK_FALSE(narrowest_held(plan, 1 * kMmPerInch, 2 * kMmPerInch, board({2})));
  // Held at once where a stop is near enough to the fence.
  CHECK(*narrowest_held(plan, 1 * kMmPerInch, 2 * kMmPerInch, board({0.5})) == Approx(kMmPerInch));
}

TEST_CASE("stops are set anew only where none holds all the while", "[stops]") {
  // Worked from both edges, the blank turned end for end: what holds for one half lies under the other.
  const Plan plan = make_plan(profile("1 1/2 wide, 3/4 thick",
                                      "start face 1/2\nstep down 5/8\nfillet out 1/2\nside back\nstart face "
                                      "1/2\nstep down 5/8\nfillet out 1/2"),
                              kit("rebate 3/4\n"), {});
  REQUIRE(plan.feasible);
  const std::vector<StopSetting> settings = stop_settings(plan, 1.5 * kMmPerInch, board({0.75}));
  for (const StopSetting& setting : settings) CHECK(setting.held);
  CHECK(settings.size() == 1);  // the middle holds for both
  const std::vector<StopSetting> none = stop_settings(plan, 1.5 * kMmPerInch, board({0.2}));
  REQUIRE(none.size() == 1);
  CHECK_FALSE(none[0].held);
}
