// How a curved sole sits on ribs whose places and heights are known.
#include "replay/seating.h"

#include <cmath>

#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

constexpr double kFar = 200;
constexpr double kRadius = 20, kSole = 20;  // of the round: a sole of 60 degrees

Plane round_plane() {
  Plane plane = plans::curved(PlaneKind::round, kRadius);
  plane.width = kSole;
  return plane;
}

double depth(double u) {
  return kRadius - std::sqrt(kRadius * kRadius - u * u);
}

/// A rib under the sole from u0 to u1, so much lower than where the sole would meet it.
struct Rib {
  double u0, u1, lower = 0;
};

/// A bed 80 wide, planed away to ribs that a round at (40, 10) just meets.
struct Bed {
  Standing wood{80, 40};
  std::vector<Plane> planes;
  Plane round = round_plane();

  explicit Bed(const std::vector<Rib>& ribs) {
    planes.reserve(64);
    double from = -40;
    for (const Rib& rib : ribs) {
      flat(from, rib.u0, 30);
      const double nearest = rib.u0 > 0 ? rib.u0 : rib.u1 < 0 ? rib.u1 : 0;
      flat(rib.u0, rib.u1, 10 - depth(nearest) + rib.lower);
      from = rib.u1;
    }
    flat(from, 40, 30);
  }
  void flat(double u0, double u1, double y) {
    Plane& plane = planes.emplace_back();
    plane.width = u1 - u0;
    wood.take(sweep_of(plane, {{40 + (u0 + u1) / 2, y}, 0}, kFar));
  }
  Seating seating(double above = 0) const { return seat(wood, round, {{40, 10 - above}, 0}); }
};

/// A bed with the cove of the round itself, left from u0 to u1 alone.
Seating in_own_cove(double u0, double u1) {
  Standing wood(80, 40);
  Plane round = round_plane(), left, right;
  left.width = u0 + 40;
  right.width = 40 - u1;
  wood.take(sweep_of(round, {{40, 10}, 0}, kFar));
  wood.take(sweep_of(left, {{left.width / 2, 30}, 0}, kFar));
  wood.take(sweep_of(right, {{80 - right.width / 2, 30}, 0}, kFar));
  return seat(wood, round, {{40, 10}, 0});
}

}  // namespace

TEST_CASE("a sole touches ribs at the corners it comes to first", "[replay]") {
  for (const double above : {0.0, 1.5, -0.7}) {
    const Seating seating = Bed({{-6, -5}, {4, 4.5}}).seating(above);
    CHECK(seating.touches);
    CHECK(seating.stands_off == Approx(-above).margin(1e-6));
    REQUIRE(seating.contacts.size() == 2);
    CHECK(seating.contacts[0] == Approx(-5).margin(1e-6));
    CHECK(seating.contacts[1] == Approx(4).margin(1e-6));
    CHECK(seating.two_arrises);
    CHECK(seating.imbalance == Approx(1 / kSole).margin(1e-6));
  }
}

TEST_CASE("an arris that is undercut stops the sole as any other", "[replay]") {
  for (const double undercut : {30.0, 45.0, 70.0})
    for (const double sign : {1.0, -1.0}) {
      // Two ribs, and under the inner corner of the one a slot so far from upright, in from the gap between
      // them.
      Bed bed({{-5, -4}, {4, 5}});
      Plane& slot = bed.planes.emplace_back();
      slot.width = 0.5;
      const double tilt = sign * undercut;
      const Point corner{40 + sign * 4, 10 - depth(4)};
      bed.wood.take(sweep_of(slot, {corner - 0.8 * outward(tilt) - sign * 0.25 * across(tilt), tilt}, kFar));
      const Seating seating = bed.seating();
      INFO(tilt);
      CHECK(seating.stands_off == Approx(0).margin(1e-5));
      REQUIRE(seating.contacts.size() == 2);
      CHECK(seating.contacts[0] == Approx(-4).margin(2e-5));
      CHECK(seating.contacts[1] == Approx(4).margin(2e-5));
    }
}

TEST_CASE("where the sole passes the wood by, it touches nothing", "[replay]") {
  const Bed bed({{-6, -5}});
  const Seating beside = seat(bed.wood, bed.round, {{-30, 10}, 0});
  CHECK_FALSE(beside.touches);
  CHECK(beside.patches.empty());
  CHECK(beside.contacts.empty());
  CHECK_FALSE(beside.two_arrises);
  CHECK(beside.imbalance == 0);
}

TEST_CASE("wood within two hundredths of the sole is touched, and what is lower is not", "[replay]") {
  for (const double lower : {0.0, 0.018, 0.022, 0.1}) {
    INFO(lower);
    const std::size_t touched = lower < 0.02 ? 2 : 1;
    CHECK(Bed({{-6, -5}, {4, 4.5, lower}}).seating().contacts.size() == touched);
    CHECK(Bed({{-6, -5, lower}, {4, 4.5}}).seating().contacts.size() == touched);
  }
}

TEST_CASE("contacts nearer the middle than a fiftieth of the width are none to ride on", "[replay]") {
  const double off = 0.02 * kSole;
  for (const double sign : {1.0, -1.0})
    for (const double share : {0.97, 1.03}) {
      const Rib far = sign > 0 ? Rib{-6, -5} : Rib{5, 6};
      const double u = sign * share * off;
      const Rib near = sign > 0 ? Rib{u, u + 0.5, 0} : Rib{u - 0.5, u, 0};
      const Seating seating = Bed(sign > 0 ? std::vector{far, near} : std::vector{near, far}).seating();
      REQUIRE(seating.contacts.size() == 2);
      CHECK(seating.two_arrises == (share > 1));
      CHECK(seating.imbalance == Approx(share > 1 ? (5 - share * off) / kSole : 0).margin(1e-6));
    }
  CHECK_FALSE(Bed({{4, 4.5}, {6, 6.5}}).seating().two_arrises);
  CHECK_FALSE(Bed({{-6.5, -6}, {-4.5, -4}}).seating().two_arrises);
}

TEST_CASE("the imbalance is that of the outermost contacts", "[replay]") {
  const Seating seating = Bed({{-9, -8}, {-4, -3}, {2, 3}, {5, 5.5}}).seating();
  REQUIRE(seating.contacts.size() == 4);
  CHECK(seating.contacts[1] == Approx(-3).margin(1e-6));
  CHECK(seating.contacts[2] == Approx(2).margin(1e-6));
  CHECK(seating.imbalance == Approx(3 / kSole).margin(1e-6));
}

TEST_CASE("one patch steadies the plane from twenty degrees of its sole on", "[replay]") {
  for (const double middle : {0.0, 4.0, -6.0})
    for (const double degrees : {19.8, 20.2}) {
      const double half = to_radians(degrees / 2), at = to_radians(middle);
      const double u0 = kRadius * std::sin(at - half), u1 = kRadius * std::sin(at + half);
      const Seating seating = in_own_cove(u0, u1);
      INFO(degrees << " about " << middle);
      REQUIRE(seating.patches.size() == 1);
      const Patch& patch = seating.patches[0];
      CHECK(patch.u0 == Approx(u0).margin(1e-6));
      CHECK(patch.u1 == Approx(u1).margin(1e-6));
      CHECK(patch.peak == Approx((u0 + u1) / 2).margin(1e-6));
      CHECK(patch.span_degrees == Approx(degrees).margin(1e-4));
      CHECK(patch.guides);
      CHECK(seating.contacts.size() == (degrees < 20 ? 1 : 2));
      CHECK(seating.two_arrises == (degrees > 20));
      if (degrees > 20) CHECK(seating.imbalance == Approx(std::abs(u0 + u1) / kSole).margin(1e-6));
    }
}

TEST_CASE("a sole in its own arc touches from its one edge to the other", "[replay]") {
  const Seating seating = in_own_cove(-15, 15);
  REQUIRE(seating.patches.size() == 1);
  CHECK(seating.patches[0].u0 == Approx(-kSole / 2).margin(1e-6));
  CHECK(seating.patches[0].u1 == Approx(kSole / 2).margin(1e-6));
  CHECK(seating.patches[0].span_degrees == Approx(60).margin(1e-4));
  CHECK(seating.two_arrises);
  CHECK(seating.stands_off == Approx(0).margin(1e-9));
}

TEST_CASE("a patch ends where the sole is two hundredths over the wood", "[replay]") {
  const Bed plain({{-30, 30}});
  const Seating seating = plain.seating();
  REQUIRE(seating.patches.size() == 1);
  const double end = std::sqrt(kRadius * kRadius - (kRadius - 0.02) * (kRadius - 0.02));
  CHECK(seating.patches[0].u0 == Approx(-end).margin(1e-6));
  CHECK(seating.patches[0].u1 == Approx(end).margin(1e-6));
  CHECK(seating.patches[0].peak == Approx(0).margin(1e-6));
  CHECK(seating.contacts.size() == 1);
  // Or where the wood ends.
  for (const double sign : {1.0, -1.0}) {
    const Rib rib = sign > 0 ? Rib{-30, 0.3} : Rib{-0.3, 30};
    const Patch patch = Bed({rib}).seating().patches.at(0);
    CHECK((sign > 0 ? patch.u1 : -patch.u0) == Approx(0.3).margin(1e-6));
    CHECK((sign > 0 ? -patch.u0 : patch.u1) == Approx(end).margin(1e-6));
  }
}

TEST_CASE("an edge of the sole guides at an arris within two hundredths, and not on plain wood", "[replay]") {
  // A hollow on the face: both its edges bear. The face ends a little beyond the right one, or goes on.
  const Plane hollow = plans::curved(PlaneKind::hollow, 10);
  for (const auto& [beyond, guides] :
       {std::pair(0.015, true), std::pair(0.03, false), std::pair(3.0, false)}) {
    Standing wood(80, 40);
    Plane rest;
    rest.width = 30;
    wood.take(sweep_of(rest, {{45 + beyond + 15, 30}, 0}, kFar));
    const Seating right = seat(wood, hollow, {{40, 2}, 0});
    REQUIRE(right.patches.size() == 2);
    CHECK_FALSE(right.patches[0].guides);
    CHECK(right.patches[1].guides == guides);
    CHECK(right.contacts.size() == (guides ? 1 : 0));
    CHECK(right.stands_off == Approx(2 - sole_height(hollow, 5)).margin(1e-6));
    Standing other(80, 40);
    other.take(sweep_of(rest, {{35 - beyond - 15, 30}, 0}, kFar));
    CHECK(seat(other, hollow, {{40, 2}, 0}).contacts.size() == (guides ? 1 : 0));
  }
}

TEST_CASE("a bend of less than twenty degrees at the edge of the sole is plain wood", "[replay]") {
  const Plane hollow = plans::curved(PlaneKind::hollow, 10);
  for (const auto& [degrees, guides] : {std::pair(12.0, false), std::pair(30.0, true)}) {
    // From x 45.01 on the face falls away.
    Standing wood(80, 40);
    Plane rest;
    rest.width = 60;
    wood.take(sweep_of(rest, {Point{45.01, 0} + 30 * across(-degrees), -degrees}, kFar));
    INFO(degrees);
    CHECK(seat(wood, hollow, {{40, 2}, 0}).contacts.size() == (guides ? 1 : 0));
  }
}

TEST_CASE("an edge of the sole is against a wall where the wood rises by 0.4 within two hundredths of it",
          "[replay]") {
  // The face falls steeply from the right: over the 0.04 that are looked at it rises by so much. No corner is
  // near.
  for (const double width : {6.0, 1.5})
    for (const double sign : {1.0, -1.0})
      for (const auto& [rise, guides] : {std::pair(0.35, false), std::pair(0.45, true)}) {
        Plane hollow = plans::curved(PlaneKind::hollow, 10), slope;
        hollow.width = width;
        slope.width = 400;
        const double tilt = sign * to_degrees(std::atan(rise / 0.04));
        Standing wood(200, 200);
        wood.take(sweep_of(slope, {{100, 100}, tilt}, 900));
        const Seating seating = seat(wood, hollow, {{100, 100}, 0});
        INFO(width << " wide, to side " << sign << " rising " << rise);
        REQUIRE(seating.touches);
        REQUIRE(seating.patches.size() == 1);
        CHECK(seating.patches[0].peak == Approx(sign * width / 2).margin(1e-6));
        CHECK(seating.contacts.size() == (guides ? 1 : 0));
      }
}

TEST_CASE("the side of the sole along a wall has the wall beside it, not under it", "[replay]") {
  // In a slot of its own width the edges of a hollow come down on the floor, in the corners.
  const Plane hollow = plans::curved(PlaneKind::hollow, 10);
  Standing slot(80, 40);
  Plane plough;
  plough.width = hollow.width;
  slot.take(sweep_of(plough, {{40, 5}, 0}, kFar));
  const Seating seating = seat(slot, hollow, {{40, 6}, 0});
  CHECK(seating.stands_off == Approx(1 - sole_height(hollow, 5)).margin(1e-6));
  REQUIRE(seating.contacts.size() == 2);
  CHECK(seating.contacts[0] == Approx(-5).margin(1e-6));
  CHECK(seating.contacts[1] == Approx(5).margin(1e-6));
  CHECK(seating.two_arrises);
}
