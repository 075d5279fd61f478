// What guides a hollow or a round, either side of each limit of rule 4.
#include "replay/riding.h"

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

constexpr double kFar = 200;
const double kBead = plans::kSix;
const Point kCentre{kBead, kBead};

/// Judged after `before` by `earlier`, on the round-over of a No. 6, or on the cavetto.
struct Stick {
  Loop target = plans::quarter_section("round-over", Turn::left, kBead).target;
  Standing wood{plans::kWidth, plans::kThickness};
  std::vector<Plane> planes;

  Stick() { planes.reserve(16); }
  Stick& take(const Plane& plane, const Pose& pose) {
    planes.push_back(plane);
    wood.take(sweep_of(planes.back(), pose, kFar));
    return *this;
  }
  std::vector<std::string> faults(const Plane& plane, const std::vector<Pose>& poses, Rides rides) const {
    return judge_riding(wood, target, plans::cut(2, plane, poses, 1, rides)).faults;
  }
  bool in_own_arc(const Plane& plane, const Pose& pose) const {
    return faults(plane, {pose}, Rides::own_arc).empty();
  }
};

Plane hollow(double radius = kBead) {
  return plans::curved(PlaneKind::hollow, radius);
}

Pose on(double tilt, double radius = kBead) {
  return plans::hollow_on(kCentre, radius, tilt);
}

Pose moved(Pose pose, Point by) {
  return {pose.at + by, pose.tilt};
}

/// The pose turned about a point.
Pose turned(const Pose& pose, Point about, double degrees) {
  const Point uv = to_sole_frame(pose, about);
  Pose out{{}, pose.tilt + degrees};
  out.at = about - from_sole_frame(out, uv);
  return out;
}

bool turns_on(const Stick& stick, const Plane& plane, const Pose& first, const std::vector<Pose>& later) {
  std::vector<Pose> poses{first};
  poses.insert(poses.end(), later.begin(), later.end());
  const std::vector<std::string> faults = stick.faults(plane, poses, Rides::own_arc);
  return std::none_of(faults.begin(), faults.end(), [](const std::string& fault) {
    return fault.find("does not turn on") != std::string::npos;
  });
}

}  // namespace

TEST_CASE("a sole rides in its arc when ten degrees of it lie where an earlier cut has been", "[replay]") {
  // Cut from 15 degrees short of the bead's beginning to 45.
  for (const auto& [shared, rides] : {std::pair(10.5, true), std::pair(9.2, false), std::pair(7.5, false)}) {
    Stick stick;
    stick.take(hollow(), on(15));
    INFO(shared);
    CHECK(stick.in_own_arc(hollow(), on(75 - shared)) == rides);
  }
  CHECK_FALSE(Stick().in_own_arc(hollow(), on(45)));
}

TEST_CASE("a sole rides in its arc when ten degrees of it lie along the bead that is to be", "[replay]") {
  // The earlier cut goes on beyond the end of the bead at 90 degrees.
  for (const auto& [shared, rides] : {std::pair(10.5, true), std::pair(9.5, false)}) {
    Stick stick;
    stick.take(hollow(), on(75));
    INFO(shared);
    CHECK(stick.in_own_arc(hollow(), on(120 - shared)) == rides);
  }
}

TEST_CASE("centre and radius of sole, arc and earlier cut are one within a hundredth", "[replay]") {
  for (const Point aside : {across(45), -1 * across(45), outward(45)}) {
    // The sole off the arc, both cuts alike; and the earlier cut off the sole.
    for (const auto& [off, one] : {std::pair(0.008, true), std::pair(0.015, false)}) {
      Stick both;
      both.take(hollow(), moved(on(45), off * aside));
      CHECK(both.in_own_arc(hollow(), moved(on(45), off * aside)) == one);
      Stick earlier;
      earlier.take(hollow(), moved(on(45), off * aside));
      CHECK(earlier.in_own_arc(hollow(), on(45)) == one);
    }
  }
  for (const double off : {0.008, -0.008, 0.015, -0.015}) {
    const double r = kBead + off;
    Stick both;
    both.take(hollow(r), on(45, r));
    INFO(off);
    CHECK(both.in_own_arc(hollow(r), on(45, r)) == (std::abs(off) < 0.01));
    Stick earlier;
    earlier.take(hollow(r), on(45, r));
    CHECK(earlier.in_own_arc(hollow(), on(45)) == (std::abs(off) < 0.01));
  }
}

TEST_CASE("only an earlier cut by such a sole about that centre counts", "[replay]") {
  // A larger hollow that all but touches the bead, and a rebate tangent to it.
  Stick larger;
  larger.take(hollow(1.25 * kBead), on(45));
  CHECK_FALSE(larger.in_own_arc(hollow(), on(45)));
  Stick chamfered;
  chamfered.take(plans::rebate(), on(45));
  CHECK_FALSE(chamfered.in_own_arc(hollow(), on(45)));
  CHECK(chamfered.faults(hollow(), {on(45)}, Rides::two_arrises).empty());
  Stick elsewhere;
  elsewhere.take(hollow(), {{40, 3}, 0});
  CHECK_FALSE(elsewhere.in_own_arc(hollow(), on(45)));
}

TEST_CASE("a round rides in a cove that a round has cut", "[replay]") {
  const Plane round = plans::curved(PlaneKind::round);
  Stick stick;
  stick.target = plans::quarter_section("cavetto", Turn::right, kBead).target;
  stick.take(round, plans::round_in({0, 0}, kBead, 45));
  CHECK(stick.in_own_arc(round, plans::round_in({0, 0}, kBead, 30)));
  CHECK(stick.in_own_arc(round, plans::round_in({0, 0}, kBead, 60)));
  Plane narrow = round;  // all of it is less than ten degrees
  narrow.width = 2 * kBead * std::sin(to_radians(4.9));
  CHECK_FALSE(stick.in_own_arc(narrow, plans::round_in({0, 0}, kBead, 45)));
  narrow.width = 2 * kBead * std::sin(to_radians(5.1));
  CHECK(stick.in_own_arc(narrow, plans::round_in({0, 0}, kBead, 45)));
}

TEST_CASE("what a cut is said to ride on is what it rides on", "[replay]") {
  Stick chamfered, cut;
  chamfered.take(plans::rebate(), on(45));
  cut.take(hollow(), on(20));
  using Faults = std::vector<std::string>;
  CHECK(chamfered.faults(hollow(), {on(45)}, Rides::own_arc) ==
        Faults{"the hollow is said to ride in its own arc, but rides only on two arrises"});
  CHECK(chamfered.faults(hollow(), {on(45)}, Rides::gauge_line) ==
        Faults{"the hollow is not said to ride on two arrises or in its own arc"});
  CHECK(cut.faults(hollow(), {on(62)}, Rides::two_arrises) ==
        Faults{"the hollow is said to ride on two arrises, but rides only in its own arc"});
  CHECK(cut.faults(hollow(), {on(62)}, Rides::wall) ==
        Faults{"the hollow is not said to ride on two arrises or in its own arc"});
  const Riding riding =
      judge_riding(chamfered.wood, chamfered.target,
                   plans::cut(2, hollow(), {moved(on(45), 0.02 * across(45))}, 1, Rides::two_arrises));
  CHECK(riding.imbalance == Approx(2 * 0.02 / kBead).margin(1e-5));
}

TEST_CASE("why a sole is not guided is said with what it touches", "[replay]") {
  using Faults = std::vector<std::string>;
  const Plane round = plans::curved(PlaneKind::round);
  const auto faults = [](const Stick& stick, const Plane& plane, const Pose& pose) {
    return stick.faults(plane, {pose}, Rides::two_arrises);
  };
  CHECK(faults(Stick(), round, {{-20, 5}, 0}) == Faults{"the round touches no wood"});
  CHECK(
      faults(Stick(), round, {{20, 5}, 0}) ==
      Faults{
          "the round has not two arrises to ride on: it touches only at +0.00 of its width from the middle"});
  CHECK(
      faults(Stick(), hollow(), {{20, 5}, 0}) ==
      Faults{"the hollow has not two arrises to ride on: it bears on plain wood with the edge of its sole"});
  // A gap under the middle, nearer to one side; and one so narrow that both its arrises are at the middle.
  Plane gap;
  gap.width = 3;
  Stick one;
  one.take(gap, {{20, 6}, 0});
  for (const auto& [x, share] : {std::pair(21.0, "+0.05"), std::pair(19.0, "-0.05")})
    CHECK(faults(one, round, {{x, 5}, 0}) ==
          Faults{std::string("the round has not two arrises to ride on: it touches only at ") + share +
                 " of its width from the middle"});
  Stick two;
  gap.width = 0.2;
  two.take(gap, {{20, 6}, 0});
  CHECK(faults(two, round, {{20, 5}, 0}) == Faults{"the round has not two arrises to ride on: it touches at "
                                                   "-0.01 and +0.01 of its width from the middle"});
  // A hollow with one edge over an arris and the other on plain wood.
  Stick arris;
  gap.width = 10;
  arris.take(gap, {{20 + kBead / 2 + 0.01 + 5, 6}, 0});
  CHECK(
      faults(arris, hollow(), {{20, 5}, 0}) ==
      Faults{
          "the hollow has not two arrises to ride on: it touches only at +0.50 of its width from the middle, "
          "beside an edge on plain wood"});
}

TEST_CASE("a pose turns on about the centre of its sole while ten degrees overlap", "[replay]") {
  Stick stick;
  stick.take(hollow(), on(45));
  for (const double sign : {1.0, -1.0}) {
    CHECK(turns_on(stick, hollow(), on(45), {on(45 + sign * 50)}));
    CHECK_FALSE(turns_on(stick, hollow(), on(45), {on(45 + sign * 50.001)}));
    CHECK_FALSE(turns_on(stick, hollow(), on(45), {on(45 + sign * (50 + 5e-6))}));
  }
  // From any earlier pose, not only the last.
  CHECK(turns_on(stick, hollow(), on(45), {on(15), on(80)}));
  CHECK(turns_on(stick, hollow(), on(45), {on(15), on(-20)}));
  CHECK_FALSE(turns_on(stick, hollow(), on(45), {on(15), on(100)}));
  // About another centre by a hundredth.
  for (const Point aside : {across(45), -1 * outward(30)}) {
    CHECK(turns_on(stick, hollow(), on(45), {moved(on(60), 0.008 * aside)}));
    CHECK_FALSE(turns_on(stick, hollow(), on(45), {moved(on(60), 0.015 * aside)}));
  }
  const std::vector<std::string> faults = stick.faults(hollow(), {on(45), on(30), on(100)}, Rides::own_arc);
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] == "pose 3 does not turn on from an earlier one about the centre of its sole or of an arc");
  // The angle is that between the two, also across the half turn.
  CHECK(turns_on(stick, hollow(), on(45), {{on(45).at, 45 - 360.0}}));
}

TEST_CASE("a sole of another radius turns about the centre of the arc by thirty degrees at most",
          "[replay]") {
  Stick cove;
  cove.target = plans::quarter_section("cavetto", Turn::right, kBead).target;
  const double r = 0.8 * kBead;
  Plane round = plans::curved(PlaneKind::round, r);
  round.width = 2 * r * std::sin(to_radians(15));  // 30 degrees of it, so that nothing overlaps
  const auto in = [](double tilt) { return plans::round_in({0, 0}, kBead, tilt); };
  for (const double sign : {1.0, -1.0}) {
    CHECK(turns_on(cove, round, in(45), {in(45 + sign * 30)}));
    CHECK_FALSE(turns_on(cove, round, in(45), {in(45 + sign * (30 + 5e-6))}));
    CHECK_FALSE(turns_on(cove, round, in(45), {in(45 + sign * 31)}));
  }
  // Of the arc's own radius it would have to overlap.
  Plane own = plans::curved(PlaneKind::round);
  own.width = 2 * kBead * std::sin(to_radians(15));
  CHECK(turns_on(cove, own, in(45), {in(45 + 20)}));
  CHECK_FALSE(turns_on(cove, own, in(45), {in(45 + 21)}));
  for (const double off : {0.008, -0.008, 0.015, -0.015}) {
    own.radius = kBead + off;
    INFO(off);
    CHECK(turns_on(cove, own, in(45), {in(45 + 25)}) == (std::abs(off) > 0.01));
  }
}

TEST_CASE("a pose does not turn on about a point that is the centre of nothing", "[replay]") {
  // The corner of the stock, the centre of no arc of the round-over.
  Stick stick;
  const Plane other = hollow(1.2 * kBead);
  CHECK(turns_on(stick, other, on(45), {turned(on(45), kCentre, 20)}));
  CHECK_FALSE(turns_on(stick, other, on(45), {turned(on(45), {0, 0}, 20)}));
  CHECK(turns_on(stick, other, on(45), {turned(on(45), on(45).at - 1.2 * kBead * outward(45), 20)}));
}
