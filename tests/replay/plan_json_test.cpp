// The plan's JSON: written and read back to the same bytes, and every fault of form named with its place.
#include "arrisline/plan_json.h"

#include <cmath>
#include <limits>

#include "arrisline/limits.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

static std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const std::size_t at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), with);
}

static std::vector<std::string> faults_after(const std::string& what, const std::string& with) {
  return plan_from_json(replaced(plan_to_json(plans::round_over()), what, with)).faults;
}

static void check_same_bytes(const Plan& plan) {
  const std::string text = plan_to_json(plan);
  const StatedPlan back = plan_from_json(text);
  CHECK(back.faults == std::vector<std::string>{});
  CHECK(plan_to_json(back.plan) == text);
}

TEST_CASE("a plan is written, read and written to the same bytes", "[plan_json]") {
  check_same_bytes(plans::round_over());
  check_same_bytes(plans::cavetto_three());
  Plan awkward = plans::round_over();
  awkward.section.name = "\"odd\" \\ \x01 \xE2\x82\xAC";
  awkward.cuts[0].plane.body = Body{1.0 / 3, 12};
  awkward.cuts[0].lines.push_back({Side::underside, 0.1, 0.25, true});
  awkward.cuts[1].plane.number = 6;
  awkward.section.elements[0].part = 2;
  awkward.section.elements[0].chain = Chain::back;
  Cut shaped = awkward.cuts[0];
  shaped.number = 3;
  shaped.plane.kind = PlaneKind::shaped;
  shaped.plane.width = 4;
  shaped.plane.sole = {{{-2, 1}, {-1, 0}, {-1, 1}, Turn::left}, {{-1, 0}, {2, 0.5}, {}, Turn::straight}};
  awkward.cuts.push_back(shaped);
  check_same_bytes(awkward);
  Cut scraper;
  scraper.number = 4;
  scraper.plane.kind = PlaneKind::scraper;
  awkward.cuts.push_back(scraper);
  check_same_bytes(awkward);
}

TEST_CASE("plans without cuts come back as they were", "[plan_json]") {
  Plan none = plans::round_over();
  none.feasible = false;
  Reason reason;
  reason.element = 0;
  reason.why = "no hollow of this radius";
  reason.nearest = Reason::Nearest{PlaneKind::hollow, 9.525, 9.525, 6};
  none.reasons.push_back(reason);
  reason.nearest = Reason::Nearest{std::nullopt, 12.7, 0, std::nullopt};
  none.reasons.push_back(reason);
  check_same_bytes(none);
  const StatedPlan back = plan_from_json(plan_to_json(none));
  CHECK_FALSE(back.plan.feasible);
  REQUIRE(back.plan.reasons.size() == 2);
  CHECK(back.plan.reasons[0].nearest->number == 6);
  CHECK_FALSE(back.plan.reasons[1].nearest->kind);
  Plan open = none;
  open.undecided = true;
  check_same_bytes(open);
  CHECK(plan_to_json(open).find("\"feasible\"") == std::string::npos);
}

TEST_CASE("numbers carry 17 significant digits", "[plan_json]") {
  Plan plan = plans::round_over();
  plan.waste_area = 0.1;
  CHECK(plan_to_json(plan).find("\"area\": 0.10000000000000001") != std::string::npos);
  plan.waste_area = -0.0;
  CHECK(plan_to_json(plan).find("\"area\": 0,") != std::string::npos);
}

TEST_CASE("bytes that are not UTF-8 do not stop the writer", "[plan_json]") {
  Plan plan = plans::round_over();
  plan.section.name = "bad \xFF\xC3 name";
  plan.cuts[0].plane.label = "\x80";
  check_same_bytes(plan);
}

TEST_CASE("a figure that is not a number is written as null and refused", "[plan_json]") {
  Plan plan = plans::round_over();
  plan.cuts[1].plane.radius = std::nan("");
  CHECK(plan_from_json(plan_to_json(plan)).faults ==
        std::vector<std::string>{"cuts[1].plane.radius: expected a number, found null"});
}

TEST_CASE("faults of form name their place", "[plan_json]") {
  using Faults = std::vector<std::string>;
  CHECK(faults_after("\"number\": 1", "\"number\": 7") == Faults{"cuts[0].number: expected 1, found 7"});
  CHECK(faults_after("\"kind\": \"hollow\"", "\"kind\": \"holow\"") ==
        Faults{"cuts[1].plane.kind: unknown word \"holow\"; known are rebate, plough, bench, hollow, round, "
               "shaped, "
               "scraper"});
  CHECK(faults_after("\"turn\"", "\"turned\"") ==
        Faults{"target.edges[4].turn: missing: an arc must say which way it goes"});
  CHECK(faults_after("\"tilt\": 45", "\"tilt\": 4500") ==
        Faults{"cuts[0].poses[0].tilt: out of range: 4500"});
  CHECK(faults_after("\"removed\"", "\"remove\"") == Faults{"cuts[0].removed: missing"});
  CHECK(faults_after("\"imbalance\"", "\"balance\"") == Faults{"cuts[1].imbalance: missing"});
  CHECK(faults_after("\"set\"", "\"sat\"") == Faults{"cuts[0].set: missing"});
  CHECK(faults_after("\"max_height\"", "\"height\"") == Faults{"left.max_height: missing"});
  CHECK(faults_after("\"by_flat\"", "\"flat\"") == Faults{"waste.by_flat: missing"});
  CHECK(faults_after("\"feasible\": true", "\"feasible\": 1") ==
        Faults{"feasible: expected true or false, found number"});
  CHECK(faults_after("\"version\": 1", "\"version\": 2") == Faults{"version: expected 1"});
  CHECK(faults_after("\"units\": \"mm\"", "\"units\": \"inch\"") == Faults{"units: expected \"mm\""});
  CHECK(faults_after("\"thickness\": 19.0", "\"thickness\": -19.0").size() == 1);
}

TEST_CASE("an outline that is no outline is refused", "[plan_json]") {
  Plan plan = plans::round_over();
  plan.section.target.back().to.x += 1e-3;
  CHECK(plan_from_json(plan_to_json(plan)).faults.size() >= 1);
  plan = plans::round_over();
  plan.section.target[4].centre.x += 1e-3;
  CHECK(plan_from_json(plan_to_json(plan)).faults ==
        std::vector<std::string>{
            "target.edges[4]: the two ends of the arc are not at one distance from its centre"});
  plan = plans::round_over();
  Edge dot = plan.section.target[0];
  dot.to = dot.from + Point{1e-8, 0};
  plan.section.target[0].from = dot.to;
  plan.section.target.insert(plan.section.target.begin(), dot);
  plan.section.source.insert(plan.section.source.begin(), -1);
  CHECK(plan_from_json(plan_to_json(plan)).faults ==
        std::vector<std::string>{"target.edges[0]: the edge is shorter than 1e-6 mm"});
}

TEST_CASE("all faults come in one reading", "[plan_json]") {
  std::string text = plan_to_json(plans::round_over());
  text = replaced(text, "\"number\": 2", "\"number\": \"two\"");
  text = replaced(text, "\"removed\"", "\"gone\"");
  text = replaced(text, "\"waste\":", "\"wasted\":");
  CHECK(plan_from_json(text).faults ==
        std::vector<std::string>{"cuts[0].removed: missing",
                                 "cuts[1].number: expected a whole number, found string", "waste: missing"});
}

TEST_CASE("text that is not JSON gives one fault with line and column", "[plan_json]") {
  using Faults = std::vector<std::string>;
  CHECK(plan_from_json("{\n  \"a\": NaN }").faults ==
        Faults{"line 2, column 8: this is not JSON, near '\"a\": N'"});
  CHECK(plan_from_json("").faults == Faults{"line 1, column 1: this is not JSON"});
  CHECK(plan_from_json("{ \"a\": 1e999 }").faults.size() == 1);
  CHECK(plan_from_json("[1] x").faults.size() == 1);
  CHECK(plan_from_json("{\"a\": \"\xFF\"}").faults.size() == 1);
  CHECK(plan_from_json("[]").faults == Faults{"the plan: expected an object, found array"});
  CHECK(plan_from_json("{\"units\": 1, \"units\": 2}").faults ==
        Faults{"\"units\" is given twice in one place; leave one of them out"});
}

TEST_CASE("deep nesting is refused, not followed", "[plan_json]") {
  const std::string bomb(1'000'000, '[');
  CHECK(plan_from_json(bomb).faults ==
        std::vector<std::string>{"nested deeper than 32 levels" + to_raise("kMaxJsonDepth")});
}

TEST_CASE("numbers past all measure are refused", "[plan_json]") {
  CHECK(faults_after("\"tilt\": 45", "\"tilt\": 1e300").size() == 1);
  CHECK(faults_after("\"number\": 1,", "\"number\": 18446744073709551615,").size() == 1);
  CHECK(faults_after("\"number\": 1,", "\"number\": 1.5,").size() == 1);
}

TEST_CASE("a plan past the limits is refused with the limit named", "[plan_json]") {
  const auto refusal = [](const std::string& text) {
    const StatedPlan stated = plan_from_json(text);
    CHECK(stated.unread);
    CHECK(stated.faults.size() == 1);
    return stated.faults.front();
  };
  Plan plan = plans::round_over();
  const auto resize = [&](std::size_t cut, std::size_t poses) {
    plan.cuts[cut].poses.resize(poses, plan.cuts[cut].poses[0]);
    plan.cuts[cut].set = plan.cuts[cut].poses;
  };
  resize(0, kMaxPlanPoses - 3);
  CHECK(plan_from_json(plan_to_json(plan)).faults.empty());
  resize(0, kMaxPlanPoses - 2);
  CHECK(refusal(plan_to_json(plan)) == "cuts: more than 500 poses in all" + to_raise("kMaxPlanPoses"));

  plan = plans::round_over();
  while (plan.cuts.size() < kMaxPlanCuts + 1) {
    plan.cuts.push_back(plan.cuts[0]);
    plan.cuts.back().number = static_cast<int>(plan.cuts.size());
  }
  CHECK(refusal(plan_to_json(plan)) == "cuts: more than 500" + to_raise("kMaxPlanCuts"));

  // A corner goes in a straight line that is cut up: of so many edges are 400 poses too many.
  plan = plans::round_over();
  const auto cut_up = [&](std::size_t edges) {
    const Edge first = plan.section.target.front();
    for (std::size_t i = edges; i > 1; --i) {
      const double t = static_cast<double>(i - 1) / static_cast<double>(edges);
      Edge rest = plan.section.target.front();
      rest.from = first.from + t * (first.to - first.from);
      plan.section.target.front().to = rest.from;
      plan.section.target.insert(plan.section.target.begin() + 1, rest);
      plan.section.source.insert(plan.section.source.begin() + 1, -1);
    }
  };
  cut_up(250);
  resize(0, 390);
  CHECK(plan_from_json(plan_to_json(plan)).faults.empty());
  resize(0, 400);
  CHECK(refusal(plan_to_json(plan)) == "cuts: more than 100000 poses times edges" + to_raise("kMaxPlanWork"));
  cut_up(kMaxPlanEdges);
  CHECK(refusal(plan_to_json(plan)) == "target.edges: more than 5000 edges" + to_raise("kMaxPlanEdges"));

  plan = plans::round_over();
  plan.cuts[1].plane.radius = 1000;
  plan.cuts[1].plane.width = 1999;  // some 1500 chords
  resize(1, 40);
  CHECK(refusal(plan_to_json(plan)) ==
        "cuts: the arcs of the target and of the soles come to more than 50000 chords" +
            to_raise("kMaxPlanChords"));

  plan = plans::round_over();
  Plane& shaped = plan.cuts[0].plane;
  shaped.kind = PlaneKind::shaped;
  shaped.width = static_cast<double>(kMaxSole + 1);
  for (double u = -shaped.width / 2; u < shaped.width / 2 - 0.5; u += 1)
    shaped.sole.push_back({{u, 0}, {u + 1, 0}, {}, Turn::straight});
  CHECK(refusal(plan_to_json(plan)) == "cuts[0].plane.sole: more than 1000 edges" + to_raise("kMaxSole"));
}

TEST_CASE("JSON past the limits is refused before anything is built of it", "[plan_json]") {
  CHECK(plan_from_json(std::string(kMaxPlanBytes + 1, ' ')).faults ==
        std::vector<std::string>{"larger than 16 MiB" + to_raise("kMaxPlanBytes")});
  std::string values = "[1";
  for (std::size_t i = 1; i < kMaxJsonValues; ++i) values += ",1";
  CHECK(plan_from_json(values + "]").faults ==
        std::vector<std::string>{"more than 500000 values" + to_raise("kMaxJsonValues")});
  CHECK(plan_from_json(values + "]").unread);
  CHECK_FALSE(plan_from_json("{\"units\": 1, \"units\": 2}").unread);
  CHECK(plan_from_json("{").unread);
}

TEST_CASE("any cut-off text is refused and nothing is thrown", "[plan_json]") {
  const std::string text = plan_to_json(plans::round_over());
  for (std::size_t n = 0; n + 2 < text.size(); n += 7) {
    INFO("first " << n << " bytes");
    CHECK_FALSE(plan_from_json(std::string_view(text).substr(0, n)).faults.empty());
  }
}

TEST_CASE("how a blank lies and which way it is planed go together", "[plan_json]") {
  for (const Lies lies : {Lies::face_up, Lies::end_for_end, Lies::underside_up, Lies::rolled_over}) {
    Plan plan = plans::round_over();
    plan.cuts[1].lies = lies;
    check_same_bytes(plan);
    CHECK(plan_from_json(plan_to_json(plan)).plan.cuts[1].lies == lies);
  }
  // Of the way alone that the blank is turned over it may be left out.
  Plan over = plans::round_over();
  over.cuts[0].lies = Lies::underside_up;
  const std::string text = replaced(plan_to_json(over), ",\n      \"planed\": \"against the arrow\"", "");
  CHECK(plan_from_json(text).plan.cuts[0].lies == Lies::underside_up);
  CHECK(faults_after("\"planed\": \"along the arrow\"", "\"planed\": \"against the arrow\"") ==
        std::vector<std::string>{"cuts[0].planed: face up the blank is planed along the arrow"});
  CHECK_FALSE(faults_after("\"along the arrow\"", "\"sideways\"").empty());
}

TEST_CASE("a plan that does not say how the tools are set is written without it", "[plan_json]") {
  Plan plan = plans::round_over();
  for (Cut& cut : plan.cuts) cut.set.clear();
  Cut scraper;
  scraper.number = 3;
  scraper.plane.kind = PlaneKind::scraper;
  scraper.made_for = "facets";
  scraper.rides = Rides::by_hand;
  plan.cuts.push_back(scraper);
  check_same_bytes(plan);
}
