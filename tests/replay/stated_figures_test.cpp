// How far what a plan states may be off what is found, either side of each limit.
#include <algorithm>
#include <cmath>

#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

namespace {

std::string findings(const Plan& plan, const ReplayOptions& options = {}) {
  std::string out;
  for (const Finding& finding : replay(plan, options).findings)
    out += std::to_string(finding.cut) + "/" + std::to_string(finding.rule) + ": " + finding.text + "\n";
  return out;
}

/// A step 10 out, in the edge, of depth `deep`: one rebate takes it but for `left` at its floor.
Plan step(double deep = 4, double left = 0) {
  Plan plan;
  plan.section = plans::step_section(10, deep);
  plan.feasible = true;
  const double taken = 10 * (deep - left);
  plan.cuts = {
      plans::cut(1, plans::rebate(), {plans::rebate_pose(10, deep - left)}, taken, Rides::gauge_line)};
  plan.waste_area = 10 * deep;
  plan.waste_by_flat = taken;
  plan.left.area = 10 * left;
  plan.left.max_height = plan.left.as_set_max_height = left;
  return plan;
}

/// The same, and a scraper to take what is left.
Plan scraped(double left) {
  Plan plan = step(4, left);
  plans::scrape_the_rest(plan);
  return plan;
}

}  // namespace

TEST_CASE("an area may be off by one in a hundred and a twentieth", "[replay]") {
  // Of 40 found: 0.45 either way.
  for (const double sign : {1.0, -1.0})
    for (const auto& [off, holds] : {std::pair(0.0, true), std::pair(0.44, true), std::pair(0.46, false)}) {
      Plan plan = step();
      INFO(sign * off);
      plan.cuts[0].removed += sign * off;
      CHECK((findings(plan) == "") == holds);
      plan = step();
      plan.waste_area += sign * off;
      CHECK((findings(plan) == "") == holds);
      plan = step();
      plan.waste_by_flat += sign * off;
      CHECK((findings(plan) == "") == holds);
    }
  Plan plan = step();
  plan.cuts[0].removed = 45;
  CHECK(findings(plan) == "1/0: what it takes is stated as 45.00 mm², found 40.00\n");
  plan = step();
  plan.waste_area = 35;
  plan.waste_by_flat = 36;
  CHECK(findings(plan) ==
        "0/0: the waste is stated as 35.00 mm², found 40.00\n"
        "0/0: the waste taken by flat soles is stated as 36.00 mm², found 40.00\n");
  plan = step();
  plan.left.area = 0.06;
  CHECK(findings(plan) == "0/0: what is left is stated as 0.0600 mm², found 0.00\n");
  plan.left.area = 0.04;
  CHECK(findings(plan) == "");
}

TEST_CASE("what takes more than a hundredth of a square millimetre is a cut", "[replay]") {
  // Of a step 10 out.
  CHECK(findings(step(0.0012)) == "");
  CHECK(findings(step(0.004)) == "");
  CHECK(findings(step(0.0008)) == "1/2: takes nothing\n");
  Plan scraper = scraped(0.0012);
  CHECK(findings(scraper) == "");
  scraper = scraped(0.0008);
  CHECK(findings(scraper) == "2/2: takes nothing\n");
}

TEST_CASE("a thickness may be stated off by a hundredth", "[replay]") {
  for (const auto& [off, holds] :
       {std::pair(0.009, true), std::pair(-0.009, true), std::pair(0.012, false), std::pair(-0.012, false)}) {
    Plan plan = step(4, 0.1);
    INFO(off);
    plan.left.max_height += off;
    CHECK((findings(plan) == "") == holds);
    plan = step(4, 0.1);
    plan.left.as_set_max_height += off;
    CHECK((findings(plan) == "") == holds);
    // As set it goes 0.05 into the finished wood.
    plan = step(4, 0);
    plan.cuts[0].set[0].at.y += 0.05;
    plan.left.as_set_deepest_gouge = 0.05 + off;
    CHECK((findings(plan) == "") == holds);
  }
  Plan plan = step(4, 0.1);
  plan.left.max_height = 0.05;
  plan.left.as_set_max_height = 0.15;
  plan.left.as_set_deepest_gouge = 0.02;
  CHECK(findings(plan) ==
        "0/0: the thickest wood left is stated as 0.0500 mm, found 0.10\n"
        "0/0: the thickest wood left as set is stated as 0.15 mm, found 0.10\n"
        "0/0: the deepest gouge as set is stated as 0.0200 mm, found 0.00\n");
  plan.left.max_height = 0.1;
  plan.cuts[0].set.clear();  // a plan that says nothing of how it is set
  CHECK(findings(plan) == "");
}

TEST_CASE("wood may be left as thick as the tolerance, by a thousandth over", "[replay]") {
  CHECK(findings(step(4, 0.1995)) == "");
  CHECK(findings(step(4, 0.2005)) == "");
  CHECK(findings(step(4, 0.203)).find("0/3: wood is left 0.20 mm thick near x ") == 0);
  ReplayOptions options;
  options.tolerance = 0.1;
  CHECK(findings(step(4, 0.103), options).find("more than the 0.10 mm allowed") != std::string::npos);
  CHECK(findings(step(4, 0.1005), options) == "");
  // Stated as thicker than is allowed, though less is found.
  Plan plan = step(4, 0.1995);
  plan.left.max_height = 0.2005;
  CHECK(findings(plan) == "");
  plan.left.max_height = 0.205;
  CHECK(findings(plan) == "0/3: the wood left is stated as 0.20 mm thick, more than the 0.20 mm allowed\n");
}

TEST_CASE("a scraper may be left as much as it scrapes, or as the tolerance where that is more", "[replay]") {
  CHECK(findings(scraped(0.4005)) == "");
  CHECK(findings(scraped(0.403)).find("more than the 0.40 mm allowed") != std::string::npos);
  ReplayOptions options;
  options.tolerance = 0.6;
  CHECK(findings(scraped(0.55), options) == "");
  options.scrape = 0.7;
  CHECK(findings(scraped(0.65), options) == "");
  CHECK(findings(scraped(0.75), options) != "");
}

TEST_CASE("a scraper ends the plan, takes what is left, and is said to", "[replay]") {
  Plan plan = scraped(0.3);
  plan.cuts[1].removed = 4;
  CHECK(findings(plan) == "2/0: what it takes is stated as 4.00 mm², found 3.00\n");
  plan = scraped(0.3);
  plan.left.scrape = false;
  CHECK(findings(plan) == "2/5: a scraper is used, but what is left is not said to be scraped\n");
  plan = step(4, 0.1);
  plan.left.scrape = true;
  CHECK(findings(plan) == "0/5: what is left is said to be scraped, but no scraper ends the plan\n");
  plan = scraped(0.3);
  std::swap(plan.cuts[0], plan.cuts[1]);
  plan.cuts[0].number = 1;
  plan.cuts[1].number = 2;
  CHECK(findings(plan).find("1/5: the scraper comes before a plane\n") != std::string::npos);
  plan = scraped(0.3);
  plan.cuts[1].number = 3;
  CHECK(findings(plan) == "0/0: the cuts are not numbered from 1 upward\n");
  plan.cuts.clear();
  plan.left.scrape = true;
  CHECK(findings(plan).find("0/5: what is left is said to be scraped") != std::string::npos);
}

TEST_CASE("the least effort proved is no more than the plan's own, but for rounding", "[replay]") {
  Plan plan = step();
  plan.effort = 8;
  for (const auto& [bound, holds] : {std::pair(3.0, true), std::pair(8.0, true), std::pair(8 + 5e-7, true),
                                     std::pair(8 + 5e-6, false), std::pair(9.0, false)}) {
    plan.bound = bound;
    CHECK(findings(plan) == (holds ? "" : "0/0: the least effort proved is more than the plan's own\n"));
  }
}

TEST_CASE("an imbalance may be stated off by three hundredths of the width", "[replay]") {
  for (const double off : {0.0, 0.028, -0.028, 0.033, -0.033}) {
    Plan plan = plans::round_over();
    plan.cuts[1].imbalance = off;
    INFO(off);
    if (std::abs(off) < 0.03)
      CHECK(findings(plan) == "");
    else
      CHECK(findings(plan).find("2/0: the imbalance is stated as ") == 0);
  }
  // Only where it is said to ride on two arrises has it an imbalance.
  Plan plan = plans::round_over_in_two_cuts();
  plan.cuts[2].imbalance = 0.4;
  CHECK(findings(plan) == "");
}

TEST_CASE("the flats' share of the waste is that of rebates, ploughs and bench planes", "[replay]") {
  const Plan plan = plans::round_over();
  CHECK(findings(plan) == "");
  Plan all = plan;
  all.waste_by_flat = plan.waste_area;
  CHECK(findings(all).find("0/0: the waste taken by flat soles") == 0);
  Plan bench = step();
  bench.cuts[0].plane.kind = PlaneKind::bench;
  CHECK(findings(bench) == "");
}

TEST_CASE("a plan without cuts of its own is not judged", "[replay]") {
  Plan plan = step();
  plan.waste_area = 1;
  for (const bool undecided : {true, false}) {
    plan.undecided = undecided;
    plan.feasible = undecided;
    CHECK(findings(plan) == "0/0: the plan has no cuts to replay\n");
    CHECK(second_opinion(plan).empty());
    plan.section.width = -1;  // nor is it computed with
    CHECK(second_opinion(plan).empty());
    plan.section.width = plans::kWidth;
  }
  plan = step();
  plan.section.width = -1;
  CHECK(findings(plan) == "0/0: the stock has no size\n");
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].text == "the stock has no size");
  plan = step();
  plan.section.target[1].from.x = plan.section.target[0].to.x = plans::kWidth + 1;  // no more is said of it
  CHECK(findings(plan).find("0/0: the target leaves the stock near x 51.80, y 0.00\n") == 0);
  CHECK(findings(plan).find("takes") == std::string::npos);
}

TEST_CASE("what is found is given with the findings", "[replay]") {
  const ReplayResult left = replay(step(4, 0.15), {});
  CHECK(left.max_height == Approx(0.15).margin(1e-4));
  CHECK(left.left_area == Approx(1.5).margin(1e-3));
  CHECK(left.deepest_gouge == 0);
  Plan plan = step();
  plan.cuts[0].poses[0].at.y += 0.05;
  CHECK(replay(plan, {}).deepest_gouge == Approx(0.05));
  CHECK(findings(plan).find("1/1: the rebate reaches 0.0500 mm into the finished wood near x ") == 0);
  plan = step();
  plan.cuts[0].plane.body = Body{5, 1};
  CHECK(findings(plan).find("1/1: the body of the rebate meets wood that is still there near x ") == 0);
  // Also where a later pose of the cut is clear of it.
  plan.cuts[0].poses.push_back({{-40, 3}, 0});
  CHECK(findings(plan).find("1/1: the body of the rebate meets wood that is still there near x ") == 0);
}

TEST_CASE("a finding says which cut and which rule it is of", "[replay]") {
  const auto has = [](const Plan& plan, const char* finding) {
    return findings(plan).find(finding) != std::string::npos;
  };
  Plan plan = step();
  plan.cuts[0].rides = Rides::by_hand;
  CHECK(has(plan, "1/5: the rebate is not said to start in"));
  plan = step();
  plan.cuts[0].lies = Lies::underside_up;
  CHECK(has(plan, "1/5: the blank is said to lie underside up"));
  plan = plans::round_over();
  plan.cuts[1].set[1].at.x += 0.01;
  CHECK(has(plan, "2/0: the hollow is not gauged"));
  plan = plans::round_over();
  plan.cuts[1].rides = Rides::own_arc;
  CHECK(has(plan, "2/4: the hollow is said to ride in its own arc"));
  CHECK_FALSE(has(plan, "imbalance"));
  plan = plans::round_over();
  plan.cuts.pop_back();
  CHECK(has(plan, "0/3: the bead of radius 9.53"));
}

TEST_CASE("the second opinion lets an area be off by a fiftieth, and by its arcs", "[replay]") {
  for (const double sign : {1.0, -1.0})
    for (const auto& [off, holds] : {std::pair(0.018, true), std::pair(0.022, false)}) {
      Plan plan = step();
      plan.cuts[0].removed += sign * off;
      INFO(sign * off);
      CHECK(second_opinion(plan).empty() == holds);
      plan = step();
      plan.waste_area += sign * off;
      CHECK(second_opinion(plan).empty() == holds);
      plan = step();
      plan.waste_by_flat += sign * off;
      CHECK(second_opinion(plan).empty() == holds);
      plan = step();
      plan.left.area += sign * off;
      CHECK(second_opinion(plan).empty() == holds);
    }
  // Of arcs there are a quarter of the bead and three soles of 60 degrees, 4.7 radii: 0.031 more.
  const double arcs = (kPi / 2 + kPi) * plans::kSix;
  for (const auto& [off, holds] :
       {std::pair(0.02 + 0.0006 * arcs, true), std::pair(0.02 + 0.0009 * arcs, false)}) {
    Plan plan = plans::round_over();
    plan.left.area += off;
    CHECK(second_opinion(plan).empty() == holds);
  }
  Plan plan = step();
  plan.cuts[0].removed = 41;
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].text == "removed: 41.0000 mm² by the plan, 40.0000 by the clipper");
  CHECK(second_opinion(plan)[0].rule == 0);
  plan = scraped(0.3);
  CHECK(second_opinion(plan).empty());
  plan.cuts[1].removed = 2;
  REQUIRE(second_opinion(plan).size() == 1);
  CHECK(second_opinion(plan)[0].cut == 2);
}
