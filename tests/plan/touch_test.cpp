// Where soles bear, and how thick what is left stands.
#include "plan/touch.h"

#include <cmath>

#include "arrisline/section.h"
#include "catch.h"
#include "plan/rest.h"
#include "plan/thickness.h"
#include "plan/wood.h"

using namespace arrisline;

namespace {

constexpr double kR = 9.525;  // a No. 6: number n is n/16 in, common practice, no source

Plane rebate(double width = 19.05) {
  Plane plane;
  plane.width = width;
  return plane;
}

Plane curved(PlaneKind kind, double radius = kR) {
  Plane plane;
  plane.kind = kind;
  plane.radius = plane.width = radius;  // a 60° sole: its chord equals its radius
  return plane;
}

/// The corner of a cavetto of radius kR, its centre at the origin, cut by steps with corners on the arc.
Wood stepped(const Plane& plane, const std::vector<double>& leans) {
  Wood wood(blank_outline(50, 19.05));
  for (const double lean : leans) {
    const Point k = -kR * outward(lean);
    wood.cut(Sweep(plane, {{k.x - plane.width / 2, k.y}, 0}));
  }
  return wood;
}

Touch round_in(const Wood& wood) {
  static const Plane round = curved(PlaneKind::round);
  return touch(wood.edges(), Sweep(round, {-kR * outward(45), 45}));
}

}  // namespace

TEST_CASE("a tangent chamfer leaves arrises 0.828 R apart under the hollow", "[touch]") {
  // Computed: 2 R tan 22.5°.
  Wood wood(blank_outline(50, 19.05));
  const Plane flat = rebate();
  const Plane hollow = curved(PlaneKind::hollow);
  const Point centre = {kR, kR};
  wood.cut(Sweep(flat, {centre + kR * outward(45), 45}));
  const Touch bears = touch(wood.edges(), Sweep(hollow, {centre + kR * outward(45), 45}));
  const Guidance guided = guidance(bears, hollow);
  REQUIRE(guided.two_arrises);
  CHECK(guided.right - guided.left == Approx(2 * kR * std::tan(kPi / 8)));
  CHECK(guided.imbalance == Approx(0).margin(1e-9));
}

TEST_CASE("steps in a cove: one leaves arrises at the edges of the sole, two rock, three balance",
          "[touch]") {
  // Computed: corners at 45°; at 30° and 60°; at 22.5°, 45° and 67.5°.
  const Plane flat = rebate();
  const Plane round = curved(PlaneKind::round);
  const Touch one = round_in(stepped(flat, {45}));
  REQUIRE(one.contacts.size() == 2);
  CHECK(one.contacts.front().from == Approx(-kR / 2));
  CHECK(one.contacts.back().to == Approx(kR / 2));
  const Touch two = round_in(stepped(flat, {30, 60}));
  CHECK_FALSE(guidance(two, round).two_arrises);
  REQUIRE(two.contacts.size() == 1);
  CHECK(two.contacts[0].peak == Approx(0).margin(1e-6));
  const Guidance three = guidance(round_in(stepped(flat, {22.5, 45, 67.5})), round);
  REQUIRE(three.two_arrises);
  CHECK(three.left == Approx(-0.229 * kR).epsilon(0.005));
  CHECK(three.right == Approx(0.229 * kR).epsilon(0.005));
}

TEST_CASE("a round on a plain face touches in its middle only", "[touch]") {
  const Wood wood(blank_outline(50, 19.05));
  const Plane round = curved(PlaneKind::round);
  const Touch bears = touch(wood.edges(), Sweep(round, {{25, 3}, 0}));
  CHECK(bears.height == Approx(3));
  REQUIRE(bears.contacts.size() == 1);
  CHECK(bears.contacts[0].peak == Approx(0).margin(1e-9));
  CHECK_FALSE(guidance(bears, round).two_arrises);
}

TEST_CASE("the edges of a hollow on a plain face guide nothing, but do on a strip as wide as the sole",
          "[touch]") {
  const Plane hollow = curved(PlaneKind::hollow);
  const Touch plain = touch(Wood(blank_outline(50, 19.05)).edges(), Sweep(hollow, {{25, 3}, 0}));
  REQUIRE(plain.contacts.size() == 2);
  CHECK(plain.contacts[0].plain_edge);
  CHECK_FALSE(guidance(plain, hollow).two_arrises);
  // A strip a little narrower than the sole: both its arrises are rails.
  const Touch strip = touch(Wood(blank_outline(8, 19.05)).edges(), Sweep(hollow, {{4, 3}, 0}));
  const Guidance guided = guidance(strip, hollow);
  REQUIRE(guided.two_arrises);
  CHECK(guided.left == Approx(-4));
  CHECK(guided.right == Approx(4));
}

TEST_CASE("one patch guides like two contacts when it spans 20 degrees of the sole", "[touch]") {
  // A round settled in its own trough bears all along it.
  Wood wood(blank_outline(50, 19.05));
  const Plane round = curved(PlaneKind::round);
  wood.cut(Sweep(round, {{25, 1}, 0}));
  const Touch bears = touch(wood.edges(), Sweep(round, {{25, 1}, 0}));
  CHECK(bears.height == Approx(0).margin(1e-9));
  CHECK(guidance(bears, round).two_arrises);
  // A trough that spans 10 degrees only.
  const double shallow = kR * (1 - std::cos(to_radians(5)));
  Wood little(blank_outline(50, 19.05));
  little.cut(Sweep(round, {{25, shallow}, 0}));
  const Plane wide = round;
  CHECK_FALSE(guidance(touch(little.edges(), Sweep(wide, {{25, shallow}, 0})), wide).two_arrises);
}

TEST_CASE("what is left is as thick as its farthest point from the target", "[thickness]") {
  // A rebate of 10 × 6 of which the outer 4 × 6 is cut: the middle of the top of the rest is 6 from the
  // floor, and its outer upper arris as well, measured straight down.
  const Loop target = {{{10, 0}, {50, 0}, {}, Turn::straight},  {{50, 0}, {50, 19}, {}, Turn::straight},
                       {{50, 19}, {0, 19}, {}, Turn::straight}, {{0, 19}, {0, 6}, {}, Turn::straight},
                       {{0, 6}, {10, 6}, {}, Turn::straight},   {{10, 6}, {10, 0}, {}, Turn::straight}};
  Wood wood(blank_outline(50, 19));
  const Plane flat = rebate();
  CHECK(thickest_left(wood, target).height == Approx(6).margin(1e-3));
  wood.cut(Sweep(flat, {{4 - 19.05 / 2, 6}, 0}));
  CHECK(thickest_left(wood, target).height == Approx(6).margin(1e-3));
  wood.cut(Sweep(flat, {{9 - 19.05 / 2, 6}, 0}));
  CHECK(thickest_left(wood, target).height == Approx(1).margin(1e-3));
  wood.cut(Sweep(flat, {{10 - 19.05 / 2, 6}, 0}));
  CHECK(thickest_left(wood, target).height == Approx(0).margin(1e-3));
}

TEST_CASE("a fin no wider than rounding is not what is left", "[thickness]") {
  const Loop target = {{{6, 0}, {50, 0}, {}, Turn::straight},   {{50, 0}, {50, 19}, {}, Turn::straight},
                       {{50, 19}, {0, 19}, {}, Turn::straight}, {{0, 19}, {0, 5}, {}, Turn::straight},
                       {{0, 5}, {6, 5}, {}, Turn::straight},    {{6, 5}, {6, 0}, {}, Turn::straight}};
  // Two rebates side by side, 0.05 short of the floor; between them nothing, a hair, and what could be felt.
  // The top of a fin is 3 from the wall.
  Plane flat = rebate();
  flat.width = 3;
  for (const auto& [apart, thick] : {std::pair{0.0, 0.05}, {1e-6, 0.05}, {3e-6, 0.05}, {1e-3, 3.0}}) {
    INFO(apart);
    Wood wood(blank_outline(50, 19));
    wood.cut(Sweep(flat, {{1.5 - apart / 2, 4.95}, 0}));
    wood.cut(Sweep(flat, {{4.5 + apart / 2, 4.95}, 0}));
    CHECK(thickest_left(wood, target).height == Approx(thick).margin(2e-3));
  }
}

TEST_CASE("an edge of the sole guides in a corner and against a wall", "[touch]") {
  const Plane hollow = curved(PlaneKind::hollow);
  // In a slot as wide as the sole, its floor plain wood: both edges stand in corners.
  Wood slot(blank_outline(50, 19.05));
  const Plane iron = rebate(kR);
  slot.cut(Sweep(iron, {{25, 5}, 0}));
  const Guidance cornered = guidance(touch(slot.edges(), Sweep(hollow, {{25, 6}, 0})), hollow);
  REQUIRE(cornered.two_arrises);
  CHECK(cornered.left == Approx(-kR / 2).margin(1e-6));
  CHECK(cornered.right == Approx(kR / 2).margin(1e-6));
  // In a wider slot, one edge in its corner and the other on its plain floor.
  Wood wide(blank_outline(50, 19.05));
  const Plane wider = rebate();
  wide.cut(Sweep(wider, {{25 + kR / 2 - 19.05 / 2, 5}, 0}));
  const Touch bears = touch(wide.edges(), Sweep(hollow, {{25, 6}, 0}));
  REQUIRE(bears.contacts.size() == 2);
  CHECK(bears.contacts.front().plain_edge);
  CHECK_FALSE(bears.contacts.back().plain_edge);
  CHECK_FALSE(guidance(bears, hollow).two_arrises);
}

TEST_CASE("a patch is two contacts from 20 degrees on", "[touch]") {
  // A trough of radius kR that spans a little less and a little more; the round lies in it all along.
  // Computed: a span of s degrees is kR(1 − cos s/2) deep. Wood within 0.02 mm of the sole beyond the
  // trough's arrises touches as well: from the arris the face falls away from the sole, sin(s/2) for each mm,
  // so the patch grows by 0.02/tan(s/2) mm a side at most, 0.7° for s near 20°.
  const Plane round = curved(PlaneKind::round);
  for (const double span : {17.0, 21.0}) {
    INFO(span << " degrees");
    const double deep = kR * (1 - std::cos(to_radians(span / 2)));
    Wood trough(blank_outline(50, 19.05));
    trough.cut(Sweep(round, {{25, deep}, 0}));
    const Guidance guided = guidance(touch(trough.edges(), Sweep(round, {{25, deep}, 0})), round);
    CHECK(guided.two_arrises == (span > 20));
  }
}

TEST_CASE("a patch that lies level under the sole bears in its middle", "[touch]") {
  // A round set again where it has cut, a slot taken out of its trough since: on either side of it the wood
  // lies level under the sole, from the slot to the edge of the sole (computed: 17.6° and 14.5° of arc).
  const Plane round = curved(PlaneKind::round);
  for (const double turn : {0.0, 37.0}) {
    INFO(turn);
    const Pose pose{{25, 9}, turn};
    Wood wood(blank_outline(50, 19.05));
    wood.cut(Sweep(round, pose));
    const Plane slot = rebate(4.5);
    const double from = -2, to = 2.5;
    wood.cut(Sweep(slot, {from_sole_frame(pose, {(from + to) / 2, -1}), turn}));
    const Guidance guided = guidance(touch(wood.edges(), Sweep(round, pose)), round);
    REQUIRE(guided.two_arrises);
    CHECK(guided.left == Approx((from - round.width / 2) / 2).margin(1e-4));
    CHECK(guided.right == Approx((to + round.width / 2) / 2).margin(1e-4));
  }
}

TEST_CASE("a patch that a nick breaks is not taken for a long one", "[touch]") {
  // A round set again where it has cut, over 30° of its own trough, which a nick parts in two stretches of
  // 12° and 18°: a shaving less would leave one patch of 30°, a shaving more two that bear in their middles.
  const Plane round = curved(PlaneKind::round);
  const Pose pose{{25, kR * (1 - std::cos(to_radians(15)))}, 0};
  for (const bool nicked : {false, true}) {
    INFO((nicked ? "nicked" : "whole"));
    Wood wood(blank_outline(50, 19.05));
    wood.cut(Sweep(round, pose));
    const double at = -kR * std::sin(to_radians(3));
    if (nicked) wood.cut(Sweep(rebate(0.004), {from_sole_frame(pose, {at, -0.1}), 0}));
    CHECK(guidance(touch(wood.edges(), Sweep(round, pose)), round).two_arrises == !nicked);
  }
}

TEST_CASE("a sole rests on the highest wood under it, not on a wall at its side", "[touch]") {
  // A step: the face up to x = 20 lowered by 4.
  Wood wood(blank_outline(50, 19.05));
  const Plane flat = rebate(20);
  wood.cut(Sweep(flat, {{10, 4}, 0}));
  const Plane sole = rebate(10);
  CHECK(rest_height(wood.edges(), Sweep(sole, {{10, 6}, 0})) == Approx(2));  // on the floor
  CHECK(rest_height(wood.edges(), Sweep(sole, {{15, 6}, 0})) == Approx(2));  // its side along the wall
  CHECK(rest_height(wood.edges(), Sweep(sole, {{16, 6}, 0})) == Approx(6));  // on the face
  // A round of radius kR over the arris, u from its middle: it rests where the arris meets its sole,
  // kR − √(kR² − u²) nearer than the face (computed).
  const Plane round = curved(PlaneKind::round);
  const double u = 3;
  CHECK(rest_height(wood.edges(), Sweep(round, {{20 - u, 6}, 0})) ==
        Approx(6 - (kR - std::sqrt(kR * kR - u * u))));
  CHECK(std::isinf(rest_height(wood.edges(), Sweep(round, {{70, 6}, 0}))));
}

TEST_CASE("wood left in a cleft is measured to its nearer wall", "[thickness]") {
  // A groove 2 wide and 8 deep, nothing cut: the middle of its mouth is 1 from either wall.
  const Loop target = {{{24, 0}, {50, 0}, {}, Turn::straight},  {{50, 0}, {50, 19}, {}, Turn::straight},
                       {{50, 19}, {0, 19}, {}, Turn::straight}, {{0, 19}, {0, 0}, {}, Turn::straight},
                       {{0, 0}, {22, 0}, {}, Turn::straight},   {{22, 0}, {22, 8}, {}, Turn::straight},
                       {{22, 8}, {24, 8}, {}, Turn::straight},  {{24, 8}, {24, 0}, {}, Turn::straight}};
  const Wood blank(blank_outline(50, 19));
  const Thickest left = thickest_left(blank, target);
  CHECK(left.height == Approx(1).margin(1e-3));
  CHECK(left.at.x == Approx(23).margin(2e-3));
  CHECK(left.at.y == Approx(0).margin(1e-6));
  // Over a cove the face itself: the middle of the chord of a 60° arc stands its rise above it (computed,
  // r(1 − √3/2)).
  const double half = kR / 2, rise = kR * (1 - std::sqrt(3.0) / 2);
  const Point centre = {25, -kR * std::sqrt(3.0) / 2};
  const Loop cove = {
      {{25 + half, 0}, {50, 0}, {}, Turn::straight}, {{50, 0}, {50, 19}, {}, Turn::straight},
      {{50, 19}, {0, 19}, {}, Turn::straight},       {{0, 19}, {0, 0}, {}, Turn::straight},
      {{0, 0}, {25 - half, 0}, {}, Turn::straight},  {{25 - half, 0}, {25 + half, 0}, centre, Turn::right}};
  CHECK(thickest_left(blank, cove).height == Approx(rise).margin(1e-3));
}
