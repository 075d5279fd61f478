// What a plan says of a cut besides its poses: how it starts, how the blank lies, and how it is set.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "arrisline/plan_json.h"
#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

namespace {

std::string findings(const Plan& plan) {
  std::string out;
  for (const Finding& finding : replay(plan, {}).findings) out += finding.text + "\n";
  return out;
}

bool says(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

/// A step of 10 out and 6 down in the edge, made by two rebates, the second against the wall of the first.
Plan step_in_two() {
  Plan plan;
  plan.section = plans::step_section(10, 6);
  plan.feasible = true;
  plan.cuts = {plans::cut(1, plans::rebate(), {plans::rebate_pose(10, 4)}, 40, Rides::gauge_line),
               plans::cut(2, plans::rebate(), {plans::rebate_pose(10, 6)}, 20, Rides::wall)};
  plan.waste_area = plan.waste_by_flat = 60;
  return plan;
}

}  // namespace

TEST_CASE("a plane said to start against a wall has one beside it", "[replay][statement]") {
  Plan plan = step_in_two();
  CHECK(findings(plan) == "");
  plan.cuts[0].rides = Rides::wall;
  CHECK(findings(plan) == "the rebate is said to start against a wall, but none stands beside it\n");
  plan = plans::round_over();
  plan.cuts[0].rides = Rides::wall;
  CHECK(says(findings(plan), "none stands beside it"));
}

TEST_CASE("the side of the blank is no wall to a plane that passes over it", "[replay][statement]") {
  Plan plan = step_in_two();
  // From 10 in to the working edge, with the side of the sole on the line of the edge.
  Plane narrow = plans::rebate();
  narrow.width = 10;
  plan.cuts = {plans::cut(1, narrow, {{{5, 6}, 0}}, 60, Rides::wall)};
  CHECK(says(findings(plan), "none stands beside it"));
}

TEST_CASE("the plane comes from above as the blank is said to lie", "[replay][statement]") {
  Plan plan = plans::round_over();
  REQUIRE(findings(plan) == "");
  plan.cuts[1].lies = Lies::end_for_end;
  CHECK(findings(plan) == "");
  for (const Lies turned : {Lies::underside_up, Lies::rolled_over}) {
    plan.cuts[1].lies = turned;
    CHECK(findings(plan) == "the blank is said to lie underside up, but the hollow comes from below\n");
  }
}

TEST_CASE("where a plan does not say how the blank lies, it lies as the plane needs it",
          "[replay][statement]") {
  // The step of 10 by 6, cut from the underside.
  Plan plan = step_in_two();
  const double t = plan.section.thickness;
  for (Edge& edge : plan.section.target) {
    edge = reversed(edge);
    for (Point* p : {&edge.from, &edge.to}) p->y = t - p->y;
  }
  std::reverse(plan.section.target.begin(), plan.section.target.end());
  for (Cut& cut : plan.cuts) {
    cut.lies = Lies::underside_up;
    for (Pose& pose : cut.poses) pose = {{pose.at.x, t - pose.at.y}, 180};
    cut.set = cut.poses;
  }
  REQUIRE(findings(plan) == "");
  nlohmann::ordered_json json = nlohmann::ordered_json::parse(plan_to_json(plan));
  for (auto& cut : json["cuts"]) {
    cut.erase("lies");
    cut.erase("planed");
  }
  const StatedPlan stated = plan_from_json(json.dump());
  CHECK(stated.faults.empty());
  CHECK(findings(stated.plan) == "");
  for (Cut& cut : plan.cuts) cut.lies = Lies::face_up;
  CHECK(says(findings(plan), "the blank is said to lie face up, but the rebate comes from below"));
}

TEST_CASE("a plane that passes below the underside says that the edge overhangs the board",
          "[replay][statement]") {
  // A rebate plane on its side takes the whole edge back by 2 mm; its sole is wider than the stock is thick.
  Plan plan = step_in_two();
  Section& s = plan.section;
  s.target = {{{2, 0}, {s.width, 0}, {}, Turn::straight},
              {{s.width, 0}, {s.width, s.thickness}, {}, Turn::straight},
              {{s.width, s.thickness}, {2, s.thickness}, {}, Turn::straight},
              {{2, s.thickness}, {2, 0}, {}, Turn::straight}};
  s.source = {-1, -1, -1, -1};
  Plane wide = plans::rebate();
  wide.width = 30;
  plan.cuts = {plans::cut(1, wide, {{{2, 10}, 90}}, 2 * s.thickness, Rides::gauge_line)};
  plan.waste_area = plan.waste_by_flat = 2 * s.thickness;
  CHECK(findings(plan) ==
        "the rebate passes below the underside, but the edge is not said to overhang the board\n");
  plan.cuts[0].overhang = true;
  CHECK(findings(plan) == "");
}

TEST_CASE("a hollow is set where it is drawn", "[replay][statement]") {
  Plan plan = plans::round_over();
  plan.cuts[1].set[1].at.x -= 0.01;
  CHECK(says(findings(plan), "the hollow is not gauged, but is set elsewhere than it is drawn"));
  plan = plans::round_over();
  plan.cuts[1].set[1].tilt += 0.001;
  CHECK(says(findings(plan), "the hollow is not gauged, but is set elsewhere than it is drawn"));
}
