// What the planner takes for two arrises on wood cut at random, held against the replay's own looking.
#include "replay/seating.h"

#include <cmath>
#include <optional>
#include <random>

#include "arrisline/section.h"
#include "catch.h"
#include "plan/rails.h"
#include "plan/rest.h"
#include "plan/touch.h"
#include "plan/wood.h"

using namespace arrisline;

namespace {

constexpr unsigned kSeed = 4;
constexpr int kWoods = 2500;

struct Chance {
  std::mt19937 random{kSeed};

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  }
  double tilt() { return random() % 2 == 0 ? 45 * std::round(between(-2, 2)) : between(-100, 100); }

  Plane curved() {
    Plane out;
    out.kind = random() % 2 == 0 ? PlaneKind::hollow : PlaneKind::round;
    out.radius = out.width = between(4, 14);
    return out;
  }
};

/// Wood both ways: as the planner keeps it and as the replay does.
struct Twice {
  Wood wood{blank_outline(40, 19)};
  replaying::Standing standing{40, 19};
  std::vector<Plane> planes;

  explicit Twice(Chance& chance) : planes(6) {
    for (Plane& plane : planes) {
      plane = chance.curved();
      if (chance.random() % 2 == 0) plane.kind = PlaneKind::rebate;
      Point at{chance.between(-2, 30), chance.between(1, 14)};
      if (chance.random() % 2 == 0) at = {std::round(at.x), std::round(at.y)};
      const Pose pose{at, chance.tilt()};
      wood.cut(Sweep(plane, pose));
      standing.take(replaying::sweep_of(plane, pose, 500));
    }
  }
};

/// The pose slid across the wood until the sole meets it on both sides of its middle together.
std::optional<Pose> balanced(const Wood& wood, const Plane& sole, const Pose& pose) {
  auto slid = [&](double by) { return Pose{pose.at + by * across(pose.tilt), pose.tilt}; };
  auto difference = [&](double by) {
    const Pose there = slid(by);
    const Sweep sweep(sole, there);
    const double half = sole.width / 2, off = kOffMiddle * sole.width;
    return rest_height_between(wood.edges(), sweep, -half, -off) -
           rest_height_between(wood.edges(), sweep, off, half);
  };
  double low = -6, at_low = difference(low);
  for (double high = low + 0.5; high <= 6; high += 0.5) {
    const double at_high = difference(high);
    if (std::isfinite(at_low) && std::isfinite(at_high) && (at_low < 0) != (at_high < 0)) {
      double a = low, b = high;
      while (b - a > 1e-9) {
        const double mid = (a + b) / 2;
        ((difference(mid) < 0) == (at_low < 0) ? a : b) = mid;
      }
      return slid(a);
    }
    low = high;
    at_low = at_high;
  }
  return std::nullopt;
}

}  // namespace

TEST_CASE("rails that the planner takes for well laid guide the sole by the replay too",
          "[touch][property]") {
  INFO("seed " << kSeed);
  Chance chance;
  int well = 0;
  for (int i = 0; i < kWoods; ++i) {
    const Twice twice(chance);
    for (int tries = 0; tries < 5; ++tries) {
      const Plane sole = chance.curved();
      const Pose start{{chance.between(-2, 30), chance.between(2, 17)}, chance.tilt()};
      const std::optional<Pose> pose = balanced(twice.wood, sole, start);
      if (!pose) continue;
      const Guidance guided = guidance(touch(twice.wood.edges(), Sweep(sole, *pose)), sole);
      if (!well_laid(guided, sole)) continue;
      ++well;
      const replaying::Seating seating = replaying::seat(twice.standing, sole, *pose);
      REQUIRE(seating.two_arrises);
      REQUIRE(std::abs(seating.imbalance - guided.imbalance) < 0.03);
    }
  }
  CHECK(well > 400);
}

TEST_CASE("the tip of an undercut lip is no rail", "[touch]") {
  // A step whose wall leans in under its arris, and a round that bears on the tip.
  Plane rebate;
  rebate.width = 10;
  Plane round;
  round.kind = PlaneKind::round;
  round.radius = round.width = 12;
  for (const double under : {0.0, 30.0}) {
    Wood wood(blank_outline(40, 19));
    // Upright or leaning, the side of the rebate plane passes through (20, 0).
    wood.cut(Sweep(rebate, {Point{20, 0} + 5 * across(-under) - 6 * outward(-under), -under}));
    wood.cut(Sweep(rebate, {{31, 0.9}, 0}));
    const Pose pose{{24.5, 2}, 0};
    const Touch bears = touch(wood.edges(), Sweep(round, pose));
    REQUIRE(bears.any);
    const bool tip = std::any_of(bears.contacts.begin(), bears.contacts.end(),
                                 [](const Contact& contact) { return contact.tip; });
    CHECK(tip == (under > 0));
  }
}
