// The worst that a gauge set wrong can do: cases worked out by hand, and plans that random slips never make
// worse than was said.
#include <algorithm>
#include <cmath>
#include <random>

#include "arrisline/slips.h"
#include "plan/planning.h"
#include "slips/layout.h"
#include "slips/off_line.h"

using namespace arrisline;
using test::kit;
using test::need;
using test::profile;

namespace {

constexpr double kFound = 2.2e-3;  // to which two figures that are found to 0.001 mm agree

Section example(const std::string& name) {
  return need(read_profile_file(ARRISLINE_SOURCE_DIR "/examples/" + name + ".profile"));
}

Kit kit_file(const std::string& name) {
  return need(read_kit_file(ARRISLINE_SOURCE_DIR "/examples/" + name + ".kit"));
}

std::vector<OffLine> off_with(const Plan& plan, const Layout& layout, const std::vector<double>& off) {
  const Slipped slipped = layout.slip(off);
  std::vector<Sweep> sweeps;
  for (std::size_t i = 0; i < plan.cuts.size(); ++i)
    for (const Pose& pose : slipped.poses[i]) sweeps.emplace_back(plan.cuts[i].plane, pose);
  return off_line(plan.section, sweeps);
}

}  // namespace

TEST_CASE("of a plain rebate each element is off by the error, and each setting is as bad", "[gauge_error]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2"),
                              kit("units inch\nrebate 3/4\n"), {});
  for (const double error : {0.05, 0.4, 1.0}) {
    const GaugeError found = gauge_error(plan, error);
    CHECK(found.error == error);
    CHECK(found.every_sign);
    REQUIRE(found.elements.size() == 2);
    for (const ElementOff& element : found.elements) {
      CHECK(element.lost == Approx(error).margin(kFound));
      CHECK(element.left == Approx(error).margin(kFound));
    }
    REQUIRE(found.settings.size() == 2);
    for (const SettingOff& setting : found.settings) {
      CHECK(setting.moves == Approx(error).margin(kFound));
      // The depth moves the floor, the width the wall.
      CHECK(setting.element == (setting.from == Side::face ? 1 : 0));
      CHECK(setting.cuts == std::vector<int>{1});
    }
    CHECK(found.rides.empty());
  }
}

TEST_CASE("lines rounded toward the wood leave so much less to be lost", "[gauge_error]") {
  // .505 and .255 in are set at 1/2 and 1/4: 0.127 mm short, which is left at first and spares the line.
  const Plan plan =
      make_plan(profile("2 wide, 3/4 thick", "start face .505\nstep down .255\nfillet out .505"),
                kit("units inch\nrebate 3/4\n"), {});
  const GaugeError found = gauge_error(plan, 0.4);
  for (const ElementOff& element : found.elements) {
    CHECK(element.lost == Approx(0.4 - 0.127).margin(kFound));
    CHECK(element.left == Approx(0.4 + 0.127).margin(kFound));
  }
}

TEST_CASE("of a chamfer at 45 degrees", "[gauge_error]") {
  const double leg = kMmPerInch / 4;
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face 1/4\nchamfer 1/4"),
                              kit("units inch\nrebate 3/4\n"), {});
  const double error = 0.3;
  const GaugeError found = gauge_error(plan, error);
  // Both lines off alike shift the flat by the error times sin 45°.
  CHECK(found.elements[0].lost == Approx(error * std::sin(to_radians(45))).margin(kFound));
  CHECK(found.elements[0].left == Approx(error * std::sin(to_radians(45))).margin(kFound));
  // One line short leaves a triangle, the corner of which is as far from the drawn flat; one too far takes
  // the drawn corner down to a flat that leans a little.
  REQUIRE(found.settings.size() == 2);
  for (const SettingOff& setting : found.settings)
    CHECK(setting.moves == Approx(error * std::sin(to_radians(45))).margin(kFound));
  const Layout layout(plan);
  CHECK(off_with(plan, layout, {error, 0})[0].lost ==
        Approx(error * leg / std::hypot(leg, leg + error)).margin(kFound));
}

TEST_CASE("a setting shared by two cuts moves both", "[gauge_error]") {
  const std::string groove = "step down 1/4\nfillet out 1/4\nstep up 1/4\n";
  const Plan plan = make_plan(
      profile("3 wide, 3/4 thick", "start face 1 1/4\n" + groove + "side face\nstart face 2 1/2\n" + groove),
      kit("units inch\nplough 1/4\n"), {});
  REQUIRE(plan.cuts.size() == 2);
  const double error = 0.25;
  const GaugeError found = gauge_error(plan, error);
  REQUIRE(found.settings.size() == 3);
  int shared = 0;
  for (const SettingOff& setting : found.settings) {
    CHECK(setting.moves == Approx(error).margin(kFound));
    if (setting.cuts == std::vector<int>{1, 2}) ++shared;
  }
  CHECK(shared == 1);
  // Six elements: the walls of each groove shift together, a floor goes down or stays up.
  REQUIRE(found.elements.size() == 6);
  for (const ElementOff& element : found.elements) {
    CHECK(element.lost == Approx(error).margin(kFound));
    CHECK(element.left == Approx(error).margin(kFound));
  }
}

TEST_CASE("with no error there is what the lines as set leave", "[gauge_error]") {
  for (const char* name : {"bookcase-top", "bookcase-rail", "hall-cyma", "mirror-glass"}) {
    INFO(name);
    const Plan plan = make_plan(example(name), kit_file("half-set"), {});
    REQUIRE(plan.feasible);
    const GaugeError found = gauge_error(plan, 0);
    double left = 0, lost = 0;
    for (const ElementOff& element : found.elements) {
      left = std::max(left, element.left);
      lost = std::max(lost, element.lost);
    }
    CHECK(left == Approx(plan.left.as_set_max_height).margin(kFound));
    CHECK(lost <= plan.left.as_set_deepest_gouge + kFound);
    for (const SettingOff& setting : found.settings) CHECK(setting.moves == 0);
  }
}

TEST_CASE("the replay finds as much left of a slipped plan", "[gauge_error]") {
  // The same poses judged by other code than that which measures element by element.
  std::mt19937 random(7);
  std::uniform_real_distribution<double> slip(-0.3, 0.3);
  for (const char* name : {"bookcase-top", "bookcase-rail", "bookcase-stile", "mirror-shelf"}) {
    const Plan plan = make_plan(example(name), test::pair_of_sixes(), {});
    REQUIRE(plan.feasible);
    const Layout layout(plan);
    for (int i = 0; i < 10; ++i) {
      std::vector<double> off(layout.settings().size());
      for (double& one : off) one = slip(random);
      Plan slipped = plan;
      const Slipped stands = layout.slip(off);
      for (std::size_t k = 0; k < plan.cuts.size(); ++k) slipped.cuts[k].poses = stands.poses[k];
      const ReplayResult judged = replay(slipped, {});
      double left = 0, lost = 0;
      for (const OffLine& element : off_with(plan, layout, off)) {
        left = std::max(left, element.left);
        lost = std::max(lost, element.lost);
      }
      INFO(name << ", draw " << i);
      CHECK(left == Approx(judged.max_height).margin(5e-3));
      CHECK((lost > 0.02) == (judged.deepest_gouge > 0.02));
      CHECK(lost >= 0.5 * judged.deepest_gouge - kFound);
    }
  }
}

TEST_CASE("no slip within the error is worse than what was said", "[gauge_error]") {
  struct Case {
    const char* profile;
    const char* kit;
    double error;
  };
  std::mt19937 random(20);
  for (const Case& one :
       {Case{"back-rail", "pair-of-sixes", 0.4}, Case{"bookcase-stile", "pair-of-sixes", 0.8},
        Case{"bookcase-shelf", "pair-of-sixes", 0.4}, Case{"bookcase-rail", "pair-of-sixes", 0.2},
        Case{"bookcase-top", "pair-of-sixes", 0.4}, Case{"mirror-cap", "pair-of-sixes", 0.3},
        Case{"hall-cyma", "metric-bench", 0.25}, Case{"mirror-glass", "half-set", 0.4},
        Case{"picture-rail", "half-set", 0.2}, Case{"bookcase-base", "half-set", 0.2},
        Case{"bookcase-plinth", "half-set", 0.2}, Case{"mirror-frame", "half-set", 0.2}}) {
    const Plan plan = make_plan(example(one.profile), kit_file(one.kit), {});
    if (!plan.feasible) continue;
    const GaugeError found = gauge_error(plan, one.error);
    const Layout layout(plan);
    std::uniform_real_distribution<double> slip(-one.error, one.error);
    std::vector<OffLine> worst(found.elements.size());
    for (int i = 0; i < 200; ++i) {
      std::vector<double> off(layout.settings().size());
      // Half of the draws at the ends, where it is worst, the others anywhere.
      for (double& by : off) by = i % 2 == 0 ? slip(random) : std::copysign(one.error, slip(random));
      const std::vector<OffLine> here = off_with(plan, layout, off);
      for (std::size_t k = 0; k < here.size(); ++k) {
        worst[k].lost = std::max(worst[k].lost, here[k].lost);
        worst[k].left = std::max(worst[k].left, here[k].left);
      }
    }
    for (std::size_t k = 0; k < worst.size(); ++k) {
      INFO(one.profile << " with " << one.kit << ", " << describe(plan.section.elements[k]) << ", "
                       << layout.settings().size() << " settings");
      CHECK(worst[k].lost <= found.elements[k].lost + kFound);
      CHECK(worst[k].left <= found.elements[k].left + kFound);
    }
  }
}

TEST_CASE("whether a hollow still rides", "[gauge_error]") {
  const Plan plan = make_plan(profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8"),
                              kit("units inch\nhollow 6\nrebate 3/4\nshop gauge 0.0001\n"), {});
  REQUIRE(plan.feasible);
  const auto riding = std::count_if(plan.cuts.begin(), plan.cuts.end(),
                                    [](const Cut& cut) { return cut.rides == Rides::two_arrises; });
  const GaugeError little = gauge_error(plan, 0.05);
  REQUIRE(little.rides.size() == static_cast<std::size_t>(riding));
  for (const RideOff& ride : little.rides) {
    CHECK_FALSE(ride.rail_lost);
    CHECK(ride.imbalance < 0.15);
    CHECK(ride.aside > 0);
  }
  // Rails 2 mm off lie beyond the sole.
  const GaugeError much = gauge_error(plan, 2);
  CHECK(
      std::any_of(much.rides.begin(), much.rides.end(), [](const RideOff& ride) { return ride.rail_lost; }));
}

TEST_CASE("an error beyond the stock is no more than the stock", "[gauge_error]") {
  for (const char* name : {"back-rail", "bookcase-shelf", "mirror-glass"}) {
    const Plan plan = make_plan(example(name), test::pair_of_sixes(), {});
    REQUIRE(plan.feasible);
    for (const ElementOff& element : gauge_error(plan, 9000).elements) {
      CHECK(element.lost <= plan.section.width);
      CHECK(element.left <= plan.section.width);
    }
  }
}

TEST_CASE("a trench of two passes side by side leaves nothing standing between them", "[gauge_error]") {
  // 1 1/2 in wide with a 3/4 in plane: the passes just meet, and both walls may slip apart.
  const Plan plan = make_plan(
      profile("3 wide, 3/4 thick", "start face 2 1/4\nstep down 1/8\nfillet out 1 1/2\nstep up 1/8"),
      kit("units inch\nrebate 3/4\n"), {});
  REQUIRE(plan.cuts.size() == 1);
  REQUIRE(plan.cuts[0].poses.size() == 2);
  const GaugeError found = gauge_error(plan, 0.3);
  REQUIRE(found.settings.size() == 3);
  REQUIRE(found.elements.size() == 3);
  for (const ElementOff& element : found.elements) {
    CHECK(element.lost == Approx(0.3).margin(kFound));
    CHECK(element.left == Approx(0.3).margin(kFound));
  }
}

TEST_CASE("a slanted flat that stands against a wall leaves no fin at its open end", "[gauge_error]") {
  // A raised panel: the slant's upper end is a side against the wall above it, its lower end lies open.
  const Plan plan = make_plan(
      profile("2 wide, 3/4 thick", "start face 1 1/4\nstep down 1/8\nbevel out 1 down 1/4\nfillet out 1/4"),
      kit("units inch\nrebate 3/4\nshop gauge 0.001\n"), {});
  REQUIRE(plan.feasible);
  const GaugeError found = gauge_error(plan, 0.4);
  // The corner let in beside the wall goes with both of its lines.
  for (const ElementOff& element : found.elements) CHECK(element.left <= std::sqrt(2.0) * 0.4 + kFound);
}
