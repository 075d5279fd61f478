// Rule 3 of arcs: which are finished by a curved sole, and how many flats lie on those that are not.
#include <algorithm>
#include <cmath>

#include "catch.h"
#include "replay/plans.h"
#include "replay/rules.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

constexpr double kLimit = 0.2;
const double kBead = plans::kSix;
const Point kCentre{kBead, kBead};

Plane flat(double width) {
  Plane plane = plans::rebate();
  plane.width = width;
  return plane;
}

Pose on(double tilt, double off = 0) {
  return {kCentre + (kBead + off) * outward(tilt), tilt};
}

Plan bead(std::vector<Cut> cuts, int facets = 0) {
  Plan plan;
  plan.section = plans::quarter_section("round-over", Turn::left, kBead);
  plan.cuts = std::move(cuts);
  plan.facets = facets;
  return plan;
}

Cut by(const Plane& plane, std::vector<Pose> poses) {
  return plans::cut(1, plane, std::move(poses), 1, Rides::gauge_line);
}

std::vector<std::string> faults(const Plan& plan) {
  return facet_faults(plan.section.target, plan, kLimit);
}

/// How many flats are found on the bead; none as none.
int facets(const std::vector<Cut>& cuts, double limit = kLimit) {
  Plan plan = bead(cuts);
  for (plan.facets = 1; !facet_faults(plan.section.target, plan, limit).empty(); ++plan.facets) {
    const std::string found = facet_faults(plan.section.target, plan, limit).front();
    REQUIRE(found.find("is left as ") != std::string::npos);
    REQUIRE(plan.facets < 20);
  }
  return plan.facets;  // one is allowed at least
}

}  // namespace

TEST_CASE("an arc is finished when a curved sole lies along half of it", "[replay]") {
  // A sole so wide, in degrees, in the middle of the bead; the limit adds 1.2 degrees at each end.
  for (const auto& [degrees, finished] :
       {std::pair(60.0, true), std::pair(44.0, true), std::pair(41.0, false), std::pair(6.0, false)}) {
    Plane hollow = plans::curved(PlaneKind::hollow);
    hollow.width = 2 * kBead * std::sin(to_radians(degrees / 2));
    INFO(degrees);
    CHECK(faults(bead({by(hollow, {on(45)})})).empty() == finished);
    // Two of half of that side by side, after another cut.
    hollow.width = 2 * kBead * std::sin(to_radians(degrees / 4));
    CHECK(faults(bead({by(flat(3), {on(45)}), by(hollow, {on(45 - degrees / 4), on(45 + degrees / 4)})}))
              .empty() == finished);
  }
}

TEST_CASE("either half of an arc is half of it", "[replay]") {
  const Plane hollow = plans::curved(PlaneKind::hollow);  // 30 degrees to either side; the limit adds 1.2
  for (const double tilt : {14.0, 76.0}) CHECK(faults(bead({by(hollow, {on(tilt)})})).empty());
  for (const double tilt : {12.0, 78.0}) CHECK(faults(bead({by(hollow, {on(tilt)})})).size() == 1);
}

TEST_CASE("a sole finishes an arc as near as the limit", "[replay]") {
  const Plane hollow = plans::curved(PlaneKind::hollow);
  CHECK(faults(bead({by(hollow, {on(45, 0.19)})})).empty());
  CHECK_FALSE(faults(bead({by(hollow, {on(45, 0.23)})})).empty());
}

TEST_CASE("a bead is finished by a hollow, a cove by a round, either by a shaped sole", "[replay]") {
  const Plane hollow = plans::curved(PlaneKind::hollow), round = plans::curved(PlaneKind::round);
  Plane shaped = hollow;
  shaped.kind = PlaneKind::shaped;
  shaped.sole = sole_edges(hollow, {});
  for (Edge& edge : shaped.sole) {  // from the section into the frame of the sole
    for (Point* p : {&edge.from, &edge.to, &edge.centre}) *p = to_sole_frame({}, *p);
    edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
  }
  CHECK(faults(bead({by(hollow, {on(45)})})).empty());
  CHECK(faults(bead({by(shaped, {on(45)})})).empty());
  using Faults = std::vector<std::string>;
  CHECK(faults(bead({by(flat(3), {on(45)}), by(flat(3), {on(20)}), by(flat(3), {on(70)})})) ==
        Faults{"the bead of radius 9.53 near x 2.79, y 2.79 is not finished by a hollow"});
  Plan cove = bead({by(round, {plans::round_in({0, 0}, kBead, 45)})});
  cove.section = plans::quarter_section("cavetto", Turn::right, kBead);
  CHECK(faults(cove).empty());
  cove.cuts[0].plane = hollow;
  CHECK(faults(cove) == Faults{"the cove of radius 9.53 near x 6.74, y 6.74 is not finished by a round"});
  // A round however near lies along no bead.
  Plan wrong = bead({by(round, {plans::round_in(kCentre - 2 * kBead * outward(-135), kBead, -135)})});
  CHECK(faults(wrong).size() == 1);
}

TEST_CASE("each arc is judged, also after one that is finished", "[replay]") {
  // The bead, and the same again at the other end of the face.
  Plan plan = bead({by(plans::curved(PlaneKind::hollow), {on(45)})});
  Loop& target = plan.section.target;
  const double w = plans::kWidth;
  target[0].to = {w - kBead, 0};
  target[1].from = {w, kBead};
  const Edge second{{w - kBead, 0}, {w, kBead}, {w - kBead, kBead}, Turn::left};
  target.insert(target.begin() + 1, second);
  for (const int allowed : {0, 1}) {
    plan.facets = allowed;
    std::rotate(target.begin(), target.begin() + 1, target.end());
    const std::vector<std::string> found = faults(plan);
    REQUIRE(found.size() == (allowed == 0 ? 1U : 0U));
    if (allowed == 0) CHECK(found[0].find("near x 48.01, y 2.79") != std::string::npos);
  }
  plan.cuts.clear();
  plan.facets = 0;
  CHECK(faults(plan).size() == 2);
  plan.cuts = {by(flat(3), {on(30), on(60)})};  // two on the first, none on the second
  plan.facets = 1;
  CHECK(faults(plan) ==
        std::vector<std::string>{
            "the bead of radius 9.53 near x 2.79, y 2.79 is left as 2 facets, and the shop allows 1"});
}

TEST_CASE("flats on an arc are counted by their leaning", "[replay]") {
  CHECK(facets({by(flat(3), {on(30), on(60)})}) == 2);
  CHECK(facets({by(flat(3), {on(30)}), by(flat(3), {on(45)}), by(flat(3), {on(60)})}) == 3);
  // Poses side by side, and of the same leaning within half a degree, are one.
  CHECK(facets({by(flat(3), {on(30), on(60), {on(60).at + across(60), 60}})}) == 2);
  CHECK(facets({by(flat(3), {on(30), on(60), on(60.45), on(29.55)})}) == 2);
  CHECK(facets({by(flat(3), {on(30), on(60), on(60.55)})}) == 3);
  CHECK(facets({by(flat(3), {on(30), on(60), on(29.45)})}) == 3);
  // A curved sole is no flat, and flats before and after it are counted.
  Plane hollow = plans::curved(PlaneKind::hollow);
  hollow.width = 1;
  CHECK(facets({by(flat(3), {on(30)}), by(hollow, {on(45)}), by(flat(3), {on(60)})}) == 2);
}

TEST_CASE("a flat is on the arc that it touches within the limit, short of its ends", "[replay]") {
  const auto two = [](const Pose& second) { return facets({by(flat(3), {on(45), second})}) == 2; };
  REQUIRE(two(on(60)));
  CHECK(two(on(60, 0.19)));
  CHECK_FALSE(two(on(60, 0.21)));
  CHECK(two(on(60, -0.19)));
  CHECK_FALSE(two(on(60, -0.21)));
  // Beside the sole, where its line touches.
  CHECK(two({on(60).at + 1.6 * across(60), 60}));
  CHECK_FALSE(two({on(60).at + 1.8 * across(60), 60}));
  // Leaning as nothing on the arc does.
  CHECK_FALSE(two(on(-5)));
  CHECK_FALSE(two(on(95)));
  CHECK_FALSE(two(on(180)));
  // 0.05 from either end of it.
  const double degree = to_radians(1) * kBead;
  for (const auto& [off, counts] : {std::pair(0.045, false), std::pair(0.055, true), std::pair(0.2, true)}) {
    INFO(off);
    CHECK(two(on(off / degree)) == counts);
    CHECK(two(on(90 - off / degree)) == counts);
  }
}

TEST_CASE("flats in a cove lie along it as on a bead", "[replay]") {
  Plan plan = bead({});
  plan.section = plans::quarter_section("cavetto", Turn::right, kBead);
  const auto in = [](double tilt) { return plans::round_in({0, 0}, kBead, tilt - 180); };
  for (const double tilt : {-150.0, -120.0}) {
    const Pose pose = in(tilt);
    REQUIRE(distance(pose.at, plan.section.target[4]) < 1e-9);
    plan.cuts.push_back(by(flat(1), {pose}));
  }
  plan.facets = 1;
  CHECK(faults(plan) ==
        std::vector<std::string>{
            "the cove of radius 9.53 near x 6.74, y 6.74 is left as 2 facets, and the shop allows 1"});
  plan.facets = 2;
  CHECK(faults(plan).empty());
}
