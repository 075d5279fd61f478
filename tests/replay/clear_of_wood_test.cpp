// Rule 1: how far a sole reaches into the finished wood, and what the body of a plane must clear.
#include "catch.h"
#include "replay/plans.h"
#include "replay/rules.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

constexpr double kFar = 200;

Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}

Plane flat(PlaneKind kind, double width) {
  Plane plane;
  plane.kind = kind;
  plane.width = width;
  return plane;
}

}  // namespace

TEST_CASE("a sole is in the wood where it reaches in, or where a corner of the target reaches into it",
          "[replay]") {
  const Loop target = blank_outline(40, 20);
  const Plane wide = flat(PlaneKind::rebate, 60);
  CHECK(gouge(sweep_of(wide, {{20, 0.3}, 0}, kFar), target, {}).mm == Approx(0.3));
  CHECK(gouge(sweep_of(wide, {{20, -0.3}, 0}, kFar), target, {}).mm == 0);
  // A sole no wider than a groove's mouth reaches in by its own ends alone.
  const Plane narrow = flat(PlaneKind::rebate, 2);
  CHECK(gouge(sweep_of(narrow, {{20, 0.3}, 0}, kFar), target, {}).mm == Approx(0.3));
  // A hollow over the arris: its sole lies outside, and the arris in the region it sweeps.
  const Plane hollow = plans::curved(PlaneKind::hollow, 10);
  const Pose over{Point{0, 0} + 0.3 * outward(45), 45};
  CHECK(gouge(sweep_of(hollow, over, kFar), target, {}).mm < 0.4);
  const Pose into{Point{0, 0} - 0.3 * outward(45), 45};
  CHECK(gouge(sweep_of(hollow, into, kFar), target, {}).mm > 0.29);
  const Depth floor{0.5, {1, 2}};
  CHECK(gouge(sweep_of(wide, {{20, 0.3}, 0}, kFar), target, floor).at == Point{1, 2});
}

TEST_CASE("a body clears the wood beside and below it by a hundredth", "[replay]") {
  // A groove 6 wide and 8 deep, the plane in it; its body 5 wider on each side.
  const auto fault = [](double above, double overhang, double at, double wall) {
    Plane plane = flat(PlaneKind::plough, 6);
    plane.body = Body{overhang, above};
    const Loop wood{line({0, 0}, {wall, 0}), line({wall, 0}, {wall, 19}), line({wall, 19}, {0, 19}),
                    line({0, 19}, {0, 0})};
    return body_fault(plane, {{at, 8}, 0}, kFar, {flatten(std::span<const Edge>(wood))});
  };
  CHECK(fault(8.1, 5, 20, 40) == "");
  CHECK(fault(7.995, 5, 20, 40) == "");
  CHECK(fault(7.95, 5, 20, 40).find("the body of the plough meets wood that is still there near x ") == 0);
  CHECK(fault(2, 0.005, 20, 40) == "");
  CHECK(fault(2, 0.05, 20, 40) != "");
  // Wood on one side alone, up to 3 from the middle and beyond: the body is clear of it from 8 on.
  CHECK(fault(2, 5, 48.0, 40) == "");
  CHECK(fault(2, 5, 47.995, 40) == "");
  CHECK(fault(2, 5, 47.95, 40) != "");
  CHECK(fault(2, 5, -8.0, 40) == "");
  CHECK(fault(2, 5, -7.995, 40) == "");
  CHECK(fault(2, 5, -7.95, 40) != "");
  // Under the sole itself there may be wood.
  CHECK(fault(2, 5, 20, 23.0).find("near x") != std::string::npos);
  Plane bare = flat(PlaneKind::plough, 6);
  CHECK(body_fault(bare, {{20, 8}, 0}, kFar, {flatten(std::span<const Edge>(blank_outline(40, 19)))}) == "");
}

TEST_CASE("the body stands over the sole as the plane leans", "[replay]") {
  Plane plane = flat(PlaneKind::plough, 6);
  plane.body = Body{5, 2};
  const ClipperLib::Paths wood{flatten(std::span<const Edge>(blank_outline(40, 19)))};
  // On its side 8 in from the working edge: its body stands from 6 in, above and below.
  CHECK(body_fault(plane, {{8, 9}, 90}, kFar, wood) != "");
  plane.body->above = 8.1;
  CHECK(body_fault(plane, {{8, 9}, 90}, kFar, wood) == "");
  // Near the face all of the upper half is in the air.
  plane.body->above = 2;
  CHECK(body_fault(plane, {{8, -8.1}, 90}, kFar, wood) == "");
  CHECK(body_fault(plane, {{8, -7.9}, 90}, kFar, wood) != "");
}
