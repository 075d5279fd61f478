// Plans made by hand are accepted; each rule of docs/model.md refuses what breaks it.
#include "arrisline/replay.h"

#include <algorithm>
#include <limits>

#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

static std::string listed(const ReplayResult& result) {
  std::string out;
  for (const Finding& finding : result.findings)
    out += "cut " + std::to_string(finding.cut) + ", rule " + std::to_string(finding.rule) + ": " +
           finding.text + "\n";
  return out;
}

static bool refused(const Plan& plan, int cut, int rule) {
  const ReplayResult result = replay(plan, {});
  INFO(listed(result));
  const bool found = std::any_of(result.findings.begin(), result.findings.end(),
                                 [&](const Finding& f) { return f.cut == cut && f.rule == rule; });
  CHECK(found);
  return found;
}

static ReplayResult accepted(const Plan& plan) {
  const ReplayResult result = replay(plan, {});
  CHECK(listed(result) == "");
  CHECK(second_opinion(plan).empty());
  return result;
}

TEST_CASE("a round-over by one chamfer and three tilts of the hollow holds", "[replay]") {
  const ReplayResult result = accepted(plans::round_over());
  CHECK(result.max_height < 0.001);
  CHECK(result.left_area < 0.01);
  CHECK(result.deepest_gouge < 0.001);
}

TEST_CASE("a cavetto by three rebates, and by one, and the round holds", "[replay]") {
  accepted(plans::cavetto_three());
  accepted(plans::cavetto_one());
}

TEST_CASE("on two equal rebates the round rocks", "[replay]") {
  refused(plans::cavetto_two(), 3, 4);
}

TEST_CASE("the outline may run either way round", "[replay]") {
  Plan plan = plans::round_over();
  std::reverse(plan.section.target.begin(), plan.section.target.end());
  for (Edge& edge : plan.section.target) edge = reversed(edge);
  std::reverse(plan.section.source.begin(), plan.section.source.end());
  accepted(plan);
}

TEST_CASE("rule 1: a pose in the finished wood is refused", "[replay]") {
  for (std::size_t k = 0; k < 3; ++k) {
    Plan plan = plans::round_over();
    Pose& pose = plan.cuts[1].poses[k];
    pose.at = pose.at - 0.05 * outward(pose.tilt);
    plan.cuts[1].set[k] = pose;
    refused(plan, 2, 1);
  }
  Plan plan = plans::round_over();
  Pose& pose = plan.cuts[0].poses[0];
  pose.at = pose.at - 0.05 * outward(pose.tilt);
  plan.cuts[0].set[0] = pose;
  refused(plan, 1, 1);
  const ReplayResult result = replay(plan, {});
  CHECK(result.deepest_gouge == Approx(0.05).margin(2e-4));
}

TEST_CASE("rule 1: a hair within the play of the figures passes, and just beyond it does not", "[replay]") {
  for (const auto& [deep, holds] : {std::pair(0.0098, true), std::pair(0.0103, false)}) {
    Plan plan = plans::cavetto_one();
    // The floor is lowered; the corner then stands below the arc by the same times the sine of 45°.
    Pose& pose = plan.cuts[0].poses[0];
    pose.at.y += deep / std::sin(to_radians(45));
    plan.cuts[0].set[0] = pose;
    const ReplayResult result = replay(plan, {});
    INFO(listed(result));
    CHECK(result.deepest_gouge == Approx(deep).margin(3e-4));
    const bool gouges = std::any_of(result.findings.begin(), result.findings.end(),
                                    [](const Finding& f) { return f.rule == 1; });
    CHECK(gouges != holds);
  }
}

TEST_CASE("rule 1: the sides of a plane count as its sole does", "[replay]") {
  Plan plan = plans::cavetto_one();
  plan.cuts[0].poses[0].at.x += 3;
  plan.cuts[0].set[0] = plan.cuts[0].poses[0];
  refused(plan, 1, 1);
}

TEST_CASE("rule 1: a body that overhangs must clear the wood", "[replay]") {
  Plan plan = plans::cavetto_one();
  plan.cuts[0].plane.body = Body{5, plan.cuts[0].poses[0].at.y - 1};
  refused(plan, 1, 1);
  plan.cuts[0].plane.body->above += 1.5;
  accepted(plan);
}

TEST_CASE("rule 2: a cut that takes nothing is refused", "[replay]") {
  Plan plan = plans::round_over();
  Cut again = plan.cuts[1];
  again.number = 3;
  again.removed = 0;
  again.rides = Rides::own_arc;
  plan.cuts.push_back(again);
  refused(plan, 3, 2);
}

TEST_CASE("rule 3: wood left standing is refused", "[replay]") {
  Plan plan = plans::round_over();
  plan.cuts[1].poses.pop_back();
  plan.cuts[1].set.pop_back();
  const ReplayResult result = replay(plan, {});
  refused(plan, 0, 3);
  // At 45° the sole ends 75° round the bead. Its side goes up from there at 45° and meets the working edge as
  // far above as it lies in from it, R(1 − sin 75°); that arris is the thickest.
  const double r = plans::kSix, in = r * (1 - std::sin(to_radians(75)));
  CHECK(result.max_height == Approx(std::hypot(r, r * std::cos(to_radians(75)) + in) - r).margin(2e-4));
}

TEST_CASE("rule 3: an arc left as facets is refused even within the tolerance", "[replay]") {
  // A bead of 1 mm and its tangent chamfer: sec 22.5° − 1 leaves 0.082 mm.
  const double r = 1;
  Plan plan = plans::round_over();
  plan.section = plans::quarter_section("small", Turn::left, r);
  plan.cuts.resize(1);
  const Point centre{r, r};
  const double leg = r * (2 - std::sqrt(2.0));
  plan.cuts[0].poses = plan.cuts[0].set = {{centre + r * outward(45), 45}};
  plan.cuts[0].removed = plan.waste_by_flat = leg * leg / 2;
  plan.waste_area = r * r * (1 - kPi / 4);
  plan.left.area = plan.waste_area - plan.waste_by_flat;
  plan.left.max_height = plan.left.as_set_max_height = r * (1 / std::cos(to_radians(22.5)) - 1);
  const ReplayResult result = replay(plan, {});
  REQUIRE(result.findings.size() == 1);
  CHECK(result.findings[0].rule == 3);
  CHECK(result.findings[0].text == "the bead of radius 1.00 near x 0.29, y 0.29 is not finished by a hollow");
}

TEST_CASE("rule 3: the limit is the scraper's where one ends the plan", "[replay]") {
  // A 45° chamfer planed 0.3 mm short of its line.
  const double leg = 6, thick = 0.3;
  Plan plan = plans::round_over();
  plan.section.target = {{{leg, 0}, {plans::kWidth, 0}, {}, Turn::straight},
                         {{plans::kWidth, 0}, {plans::kWidth, plans::kThickness}, {}, Turn::straight},
                         {{plans::kWidth, plans::kThickness}, {0, plans::kThickness}, {}, Turn::straight},
                         {{0, plans::kThickness}, {0, leg}, {}, Turn::straight},
                         {{0, leg}, {leg, 0}, {}, Turn::straight}};
  const double planed = leg - thick * std::sqrt(2.0);
  plan.cuts.resize(1);
  plan.cuts[0].poses = plan.cuts[0].set = {{{planed / 2, planed / 2}, 45}};
  plan.cuts[0].removed = plan.waste_by_flat = planed * planed / 2;
  plan.waste_area = leg * leg / 2;
  plan.left.area = plan.waste_area - plan.waste_by_flat;
  plan.left.max_height = plan.left.as_set_max_height = thick;
  refused(plan, 0, 3);
  plans::scrape_the_rest(plan);
  accepted(plan);
  plan.left.scrape = false;
  refused(plan, 2, 5);
  plan.left.scrape = true;
  std::swap(plan.cuts[0], plan.cuts[1]);
  plan.cuts[0].number = 1;
  plan.cuts[1].number = 2;
  refused(plan, 1, 5);
}

TEST_CASE("rule 3: wood inside a groove that narrows at its mouth is measured where it is thickest",
          "[replay]") {
  // A round hole of radius 5, open at the top by a mouth 6 wide, not cut at all: from its centre it is 5 to
  // the target, while on the face the farthest point is 3 from it.
  const double r = 5;
  const Point centre{25, 4};
  Plan plan;
  plan.feasible = true;
  plan.section.width = plans::kWidth;
  plan.section.thickness = plans::kThickness;
  plan.section.target = {{{0, 0}, {22, 0}, {}, Turn::straight},
                         {{22, 0}, {28, 0}, centre, Turn::right},
                         {{28, 0}, {plans::kWidth, 0}, {}, Turn::straight},
                         {{plans::kWidth, 0}, {plans::kWidth, plans::kThickness}, {}, Turn::straight},
                         {{plans::kWidth, plans::kThickness}, {0, plans::kThickness}, {}, Turn::straight},
                         {{0, plans::kThickness}, {0, 0}, {}, Turn::straight}};
  const ReplayResult result = replay(plan, {});
  CHECK(result.max_height == Approx(r).margin(0.003));
}

TEST_CASE("rule 4: a tilt three degrees off is refused", "[replay]") {
  for (std::size_t k = 0; k < 3; ++k) {
    for (const double off : {-3.0, 3.0}) {
      Plan plan = plans::round_over();
      plan.cuts[1].poses[k].tilt += off;
      plan.cuts[1].set[k].tilt += off;
      INFO("pose " << k + 1 << " by " << off);
      CHECK_FALSE(replay(plan, {}).findings.empty());
    }
  }
  Plan plan = plans::round_over();
  plan.cuts[0].poses[0].tilt += 3;
  plan.cuts[0].set[0].tilt += 3;
  refused(plan, 1, 1);
}

TEST_CASE("rule 4: a hollow set down on plain wood is refused", "[replay]") {
  Plan plan = plans::round_over();
  plan.cuts.erase(plan.cuts.begin());
  plan.cuts[0].number = 1;
  // The square arris of the stock alone: one contact, in the middle.
  refused(plan, 1, 4);
}

TEST_CASE("rule 4: the first tilt off the middle of one chamfer has one arris only", "[replay]") {
  Plan plan = plans::round_over();
  std::swap(plan.cuts[1].poses[0], plan.cuts[1].poses[1]);
  std::swap(plan.cuts[1].set[0], plan.cuts[1].set[1]);
  refused(plan, 2, 4);
}

TEST_CASE("rule 4: on two chamfers the hollow rides balanced at 30 degrees already", "[replay]") {
  const Plan plan = plans::round_over_two_chamfers();
  accepted(plan);
  Plan third = plan;
  third.cuts[2].poses = third.cuts[2].set = {plan.cuts[2].poses[1], plan.cuts[2].poses[0]};
  accepted(third);
}

TEST_CASE("rule 4: a sole rides in its own arc once that is cut", "[replay]") {
  const Plan plan = plans::round_over_in_two_cuts();
  accepted(plan);
  Plan otherwise = plan;
  otherwise.cuts[2].rides = Rides::two_arrises;
  refused(otherwise, 3, 4);
  otherwise = plan;
  otherwise.cuts[1].rides = Rides::own_arc;
  refused(otherwise, 2, 4);
  otherwise = plan;
  otherwise.cuts[1].rides = Rides::gauge_line;
  refused(otherwise, 2, 4);
}

TEST_CASE("rule 4: a pose that does not turn on from another is refused", "[replay]") {
  Plan plan = plans::round_over();
  // From 45 to 60 is a step of 15; straight from 20 to 75 would be 55, which leaves only 5 of the sole's 60.
  const Point centre{plans::kSix, plans::kSix};
  plan.cuts[1].poses = plan.cuts[1].set = {plans::hollow_on(centre, plans::kSix, 45),
                                           plans::hollow_on(centre, plans::kSix, 75 + 22)};
  refused(plan, 2, 4);
}

TEST_CASE("rule 4: a narrow sole of the arc's own radius overlaps, however short the step", "[replay]") {
  // Soles of 36 degrees: steps of 26 leave 10 of overlap, steps of 27 leave 9.
  const Point centre{plans::kSix, plans::kSix};
  for (const double step : {26.0, 27.0}) {
    Plan plan = plans::round_over();
    Cut& cut = plan.cuts[1];
    cut.plane.width = 2 * plans::kSix * std::sin(to_radians(18));
    cut.poses = {plans::hollow_on(centre, plans::kSix, 45)};
    for (const double away : {-step, step})
      cut.poses.push_back(plans::hollow_on(centre, plans::kSix, 45 + away));
    cut.set = cut.poses;
    CAPTURE(step);
    const std::vector<Finding> found = replay(plan, {}).findings;
    const bool turns = std::none_of(found.begin(), found.end(), [](const Finding& finding) {
      return finding.rule == 4 && finding.text.find("turn on") != std::string::npos;
    });
    CHECK(turns == (step == 26.0));
  }
}

TEST_CASE("rule 5: a plough stands square, and no farther than it reaches", "[replay]") {
  // A groove 6 wide and 8 deep, 10 from the edge.
  Plan plan;
  plan.feasible = true;
  plan.section.width = plans::kWidth;
  plan.section.thickness = plans::kThickness;
  plan.section.target = {{{0, 0}, {10, 0}, {}, Turn::straight},
                         {{10, 0}, {10, 8}, {}, Turn::straight},
                         {{10, 8}, {16, 8}, {}, Turn::straight},
                         {{16, 8}, {16, 0}, {}, Turn::straight},
                         {{16, 0}, {plans::kWidth, 0}, {}, Turn::straight},
                         {{plans::kWidth, 0}, {plans::kWidth, plans::kThickness}, {}, Turn::straight},
                         {{plans::kWidth, plans::kThickness}, {0, plans::kThickness}, {}, Turn::straight},
                         {{0, plans::kThickness}, {0, 0}, {}, Turn::straight}};
  Plane plough;
  plough.kind = PlaneKind::plough;
  plough.width = 6;
  plan.cuts = {plans::cut(1, plough, {{{13, 8}, 0}}, 48, Rides::fence)};
  plan.waste_area = plan.waste_by_flat = 48;
  accepted(plan);
  Plan short_reach = plan;
  short_reach.cuts[0].plane.reach = 9;
  refused(short_reach, 1, 5);
  Plan shallow = plan;
  shallow.cuts[0].plane.deep = 7.5;
  refused(shallow, 1, 5);
  Plan leaning = plan;
  leaning.cuts[0].poses[0].tilt = leaning.cuts[0].set[0].tilt = 1;
  refused(leaning, 1, 5);
  Plan loose = plan;
  loose.cuts[0].rides = Rides::by_hand;
  refused(loose, 1, 5);
}

TEST_CASE("a plan with a cut dropped, or two swapped, is refused", "[replay]") {
  for (std::size_t drop = 0; drop < 4; ++drop) {
    Plan plan = plans::cavetto_three();
    plan.cuts.erase(plan.cuts.begin() + static_cast<std::ptrdiff_t>(drop));
    for (std::size_t i = 0; i < plan.cuts.size(); ++i) plan.cuts[i].number = static_cast<int>(i + 1);
    INFO("without cut " << drop + 1);
    CHECK_FALSE(replay(plan, {}).findings.empty());
  }
  for (std::size_t i = 0; i < 3; ++i) {
    Plan plan = plans::cavetto_three();
    std::swap(plan.cuts[i], plan.cuts[i + 1]);
    for (std::size_t k = 0; k < plan.cuts.size(); ++k) plan.cuts[k].number = static_cast<int>(k + 1);
    INFO("cuts " << i + 1 << " and " << i + 2 << " swapped");
    CHECK_FALSE(replay(plan, {}).findings.empty());
  }
}

TEST_CASE("another plane in the same place is refused", "[replay]") {
  Plan plan = plans::round_over();
  plan.cuts[1].plane = plans::curved(PlaneKind::hollow, plans::kSix * 8 / 6);
  CHECK_FALSE(replay(plan, {}).findings.empty());
  plan.cuts[1].plane = plans::curved(PlaneKind::hollow, plans::kSix * 4 / 6);
  CHECK_FALSE(replay(plan, {}).findings.empty());
  plan.cuts[1].plane = plans::curved(PlaneKind::round);
  CHECK_FALSE(replay(plan, {}).findings.empty());
  plan.cuts[1].plane = plans::rebate();
  CHECK_FALSE(replay(plan, {}).findings.empty());
}

TEST_CASE("stated figures are compared with what is found", "[replay]") {
  const Plan good = plans::round_over();
  Plan plan = good;
  plan.cuts[0].removed *= 1.02;
  plan.cuts[0].removed += 0.06;
  refused(plan, 1, 0);
  plan = good;
  plan.cuts[1].imbalance = 0.04;
  refused(plan, 2, 0);
  plan = good;
  plan.left.max_height = 0.02;
  refused(plan, 0, 0);
  plan = good;
  plan.left.area = 0.1;
  refused(plan, 0, 0);
  plan = good;
  plan.waste_area *= 1.05;
  refused(plan, 0, 0);
  plan = good;
  plan.waste_by_flat *= 0.9;
  refused(plan, 0, 0);
  plan = good;
  plan.left.as_set_max_height = 0.1;
  refused(plan, 0, 0);
  plan = good;
  plan.left.as_set_deepest_gouge = 0.1;
  refused(plan, 0, 0);
  plan = good;
  plan.cuts[1].number = 3;
  refused(plan, 0, 0);
  plan = good;
  plan.bound = 1;
  refused(plan, 0, 0);
  plan = good;
  plan.left.scrape = true;
  refused(plan, 0, 5);
}

TEST_CASE("figures that are not numbers are refused, not computed with", "[replay]") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  Plan plan = plans::round_over();
  plan.cuts[1].poses[1].tilt = nan;
  refused(plan, 2, 0);
  plan = plans::round_over();
  plan.cuts[0].removed = nan;
  refused(plan, 1, 0);
  plan = plans::round_over();
  plan.left.max_height = nan;
  refused(plan, 0, 0);
  plan = plans::round_over();
  plan.cuts[1].plane.radius = nan;
  refused(plan, 2, 0);
  plan = plans::round_over();
  plan.section.target[4].centre.x = nan;
  refused(plan, 0, 0);
  plan = plans::round_over();
  plan.section.width = std::numeric_limits<double>::infinity();
  refused(plan, 0, 0);
}

TEST_CASE("an outline that crosses itself or leaves the stock is refused", "[replay]") {
  Plan plan = plans::round_over();
  plan.section.target[1].to.x += 1;
  plan.section.target[2].from.x += 1;
  refused(plan, 0, 0);
  plan = plans::round_over();
  std::swap(plan.section.target[1].to, plan.section.target[2].to);
  plan.section.target[2].from = plan.section.target[1].to;
  plan.section.target[3].from = plan.section.target[2].to;
  refused(plan, 0, 0);
}

TEST_CASE("a plan that cannot be made has nothing to replay", "[replay]") {
  Plan plan = plans::round_over();
  plan.feasible = false;
  refused(plan, 0, 0);
}

TEST_CASE("the second opinion catches an area that the replay's wider limits let pass", "[replay]") {
  Plan plan = plans::round_over();
  plan.cuts[0].removed += 0.06;
  CHECK(second_opinion(plan).size() == 1);
  CHECK(replay(plan, {}).findings.empty());
}
