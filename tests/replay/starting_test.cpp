// How flat planes start: a plough from its fence, a rebate against a wall, either side of each limit.
#include <algorithm>

#include "catch.h"
#include "replay/plans.h"
#include "replay/rules.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

constexpr double kFar = 200;

Plane flat(PlaneKind kind, double width) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  return plane;
}

Section stock() {
  Section section;
  section.width = plans::kWidth;
  section.thickness = plans::kThickness;
  return section;
}

Standing blank() {
  return Standing(plans::kWidth, plans::kThickness);
}

std::string faults(const Standing& wood, const Plane& plane, const std::vector<Pose>& poses, Rides rides) {
  std::string out;
  for (const std::string& fault : register_faults(wood, stock(), plans::cut(1, plane, poses, 1, rides)))
    out += fault + "\n";
  return out;
}

std::string plough_faults(const Plane& plane, const Pose& pose) {
  return faults(blank(), plane, {pose}, Rides::fence);
}

bool walled(const Standing& wood, const Plane& plane, const std::vector<Pose>& poses) {
  return faults(wood, plane, poses, Rides::wall) == "";
}

}  // namespace

TEST_CASE("a plough stands square to a side within a hundredth of a degree", "[replay]") {
  Plane plough = flat(PlaneKind::plough, 6);
  plough.deep = 60;
  for (const double side : {0.0, 90.0, -90.0, 180.0})
    for (const double off : {0.0, 0.008, -0.008, 0.015, -0.015}) {
      INFO(side << " off by " << off);
      CHECK((plough_faults(plough, {{13, 8}, side + off}) == "") == (std::abs(off) < 0.01));
    }
  CHECK(plough_faults(plough, {{13, 8}, 45}) == "the plough does not stand square to a side\n");
}

TEST_CASE("a plough's fence bears on the nearer side that it can", "[replay]") {
  Plane plough = flat(PlaneKind::plough, 6);
  plough.reach = 7;
  plough.deep = 60;
  const double w = plans::kWidth, t = plans::kThickness;
  for (const auto& [off, reaches] : {std::pair(0.0, true), std::pair(0.008, true), std::pair(0.015, false)}) {
    // Upright the iron starts 3 short of the middle of the sole, from either edge of the face.
    for (const double tilt : {0.0, 180.0}) {
      CHECK((plough_faults(plough, {{10 + off, 9}, tilt}) == "") == reaches);
      CHECK((plough_faults(plough, {{w - 10 - off, 9}, tilt}) == "") == reaches);
    }
  }
  // On its side, from the face or the underside; the stock is too thin for the fence to be beyond its reach.
  for (const double tilt : {90.0, -90.0}) {
    plough.reach = 4;
    CHECK(plough_faults(plough, {{25, 6.9}, tilt}) == "");
    CHECK(plough_faults(plough, {{25, t - 6.9}, tilt}) == "");
    CHECK(plough_faults(plough, {{25, t / 2}, tilt})
              .find("the plough reaches 6.53 mm from its fence, more than its 4.00") != std::string::npos);
  }
}

TEST_CASE("a plough goes as deep as its stop, measured from the wood that stands", "[replay]") {
  Plane plough = flat(PlaneKind::plough, 6);
  plough.deep = 8;
  CHECK(plough_faults(plough, {{13, 8}, 0}) == "");
  CHECK(plough_faults(plough, {{13, 8.008}, 0}) == "");
  CHECK(plough_faults(plough, {{13, 8.015}, 0}) == "the plough goes 8.02 mm deep, more than its 8.00\n");
  CHECK(plough_faults(plough, {{13, plans::kThickness - 8.1}, 180}) != "");
  plough.deep = 0.4;  // less than a millimetre, and none where there is no wood
  CHECK(plough_faults(plough, {{13, 0.3}, 0}) == "");
  CHECK(plough_faults(plough, {{13, -3}, 0}) == "");
  // A rib under any part of the sole counts: on the left, in the middle, on the right.
  plough.deep = 8;
  for (const double rib : {10.1, 11.5, 13.0, 14.5, 15.9}) {
    Standing wood = blank();
    const Plane wide = flat(PlaneKind::rebate, 30);
    wood.take(sweep_of(wide, {{rib - 0.2 - 15, 4}, 0}, kFar));
    wood.take(sweep_of(wide, {{rib + 0.2 + 15, 4}, 0}, kFar));
    INFO(rib);
    CHECK(faults(wood, plough, {{{13, 8.5}, 0}}, Rides::fence) != "");
    wood.take(sweep_of(wide, {{rib, 4}, 0}, kFar));
    CHECK(faults(wood, plough, {{{13, 8.5}, 0}}, Rides::fence) == "");
  }
}

TEST_CASE("a flat plane is said to start in a gauge line, against a wall or from a fence", "[replay]") {
  const Plane rebate = flat(PlaneKind::rebate, 10);
  const std::vector<Pose> edge{{{5, 4}, 0}};
  for (const Rides rides : {Rides::two_arrises, Rides::own_arc, Rides::by_hand})
    CHECK(faults(blank(), rebate, edge, rides) ==
          "the rebate is not said to start in a gauge line, against a wall or from a fence\n");
  for (const Rides rides : {Rides::gauge_line, Rides::fence})
    CHECK(faults(blank(), rebate, edge, rides) == "");
  CHECK(faults(blank(), rebate, edge, Rides::wall) ==
        "the rebate is said to start against a wall, but none stands beside it\n");
  // A curved sole has rule 4.
  CHECK(faults(blank(), plans::curved(PlaneKind::round), edge, Rides::by_hand) == "");
}

TEST_CASE("a wall stands within two hundredths of the side of the plane", "[replay]") {
  // A rebate 10 out and 4 down, and a groove from 20 to 30 as deep: walls to the right and to the left.
  const Plane wide = flat(PlaneKind::rebate, 10), narrow = flat(PlaneKind::rebate, 3);
  Standing wood = blank();
  wood.take(sweep_of(wide, {{5, 4}, 0}, kFar));
  wood.take(sweep_of(wide, {{25, 4}, 0}, kFar));
  for (const double depth : {4.0, 5.0}) {
    for (const double off : {0.0, 0.015, -0.015}) {
      CHECK(walled(wood, narrow, {{{8.5 + off, depth}, 0}}));
      CHECK(walled(wood, narrow, {{{21.5 + off, depth}, 0}}));
    }
    for (const double off : {0.1, -0.1}) {
      CHECK_FALSE(walled(wood, narrow, {{{8.5 + off, depth}, 0}}));
      CHECK_FALSE(walled(wood, narrow, {{{21.5 + off, depth}, 0}}));
    }
    // Any of its poses may have the wall.
    CHECK(walled(wood, narrow, {{{5, depth}, 0}, {{8.5, depth}, 0}, {{5, depth}, 0}}));
    CHECK_FALSE(walled(wood, narrow, {{{5, depth}, 0}, {{4, depth}, 0}}));
  }
  // Across the wall, and beside wood that reaches under the sole, there is none.
  CHECK_FALSE(walled(wood, narrow, {{{11.5, 4}, 0}}));
  CHECK_FALSE(walled(wood, narrow, {{{40, 1}, 0}}));
}

TEST_CASE("a wall is two hundredths high at least, above the sole", "[replay]") {
  const Plane wide = flat(PlaneKind::rebate, 10), narrow = flat(PlaneKind::rebate, 3);
  for (const auto& [deep, stands] :
       {std::pair(0.015, false), std::pair(0.025, true), std::pair(0.15, true)}) {
    Standing wood = blank();
    wood.take(sweep_of(wide, {{5, deep}, 0}, kFar));
    INFO(deep);
    CHECK(walled(wood, narrow, {{{8.5, deep}, 0}}) == stands);
    CHECK_FALSE(walled(wood, narrow, {{{8.5, -0.01}, 0}}));  // passes over it
  }
  // Of two parts with a groove between, as high together.
  Standing wood = blank();
  wood.take(sweep_of(wide, {{5, 4}, 0}, kFar));
  const Plane side = flat(PlaneKind::rebate, 3.97);
  wood.take(sweep_of(side, {{20, 2}, 90}, kFar));  // from the edge, all but the uppermost and lowest 0.015
  CHECK(walled(wood, narrow, {{{8.5, 4}, 0}}));
  const Plane more = flat(PlaneKind::rebate, 3.99);
  wood.take(sweep_of(more, {{20, 2}, 90}, kFar));
  CHECK_FALSE(walled(wood, narrow, {{{8.5, 4}, 0}}));
}
