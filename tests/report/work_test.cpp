// What a plan asks of the maker, added up, printed and written.
#include "report/work.h"

#include <nlohmann/json.hpp>

#include "arrisline/plan_json.h"
#include "arrisline/report.h"
#include "catch.h"
#include "replay/plans.h"

using namespace arrisline;

namespace {

using Json = nlohmann::json;

/// Two chamfers and a hollow, the rebate plane twice more after it, and the blank turned twice.
Plan four_cuts() {
  Plan plan = plans::round_over_two_chamfers();
  const double strokes[] = {20.25, 10.5, 7.5};
  for (std::size_t i = 0; i < 3; ++i) {
    plan.cuts[i].strokes = strokes[i];
    plan.cuts[i].settings = i < 2 ? 2 : 0;
  }
  plan.cuts[1].lies = Lies::underside_up;
  Cut more = plan.cuts[0];
  more.number = 4;
  more.removed = 1.25;
  more.strokes = 2;
  more.settings = 1;
  plan.cuts.push_back(more);
  return plan;
}

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("the cuts of a plan are added up", "[work]") {
  const Plan plan = four_cuts();
  Kit kit;
  kit.shop.strokes_per_minute = 8;
  const Work work = work_of(plan, kit);
  CHECK(work.cuts == 4);
  CHECK(work.plane_changes == 2);
  CHECK(work.turns == 2);
  CHECK(work.settings == 5);
  CHECK(work.strokes == Approx(40.25));
  CHECK(work.minutes == Approx(40.25 / 8));
  REQUIRE(work.shavings.size() == 2);
  CHECK(work.shavings[0].plane == "rebate 3/4");
  CHECK(work.shavings[0].area == Approx(plan.waste_by_flat + 1.25));
  CHECK(work.shavings[1].area == Approx(plan.cuts[2].removed));
}

TEST_CASE("the cut list prints them", "[work]") {
  Kit kit;
  kit.shop.strokes_per_minute = 8;
  const std::string page = cut_list(four_cuts(), kit, {});
  INFO(page);
  CHECK(has(page, "4 cuts, 2 changes of plane, 5 gauge settings, the blank turned twice."));
  CHECK(has(page, "41 strokes, each the length of the stick, about 5 minutes at 8 a minute."));
  CHECK(has(page, "Shavings by plane, in mm² of section:\n    rebate 3/4: "));
  CHECK(has(page, "\n    hollow 6: "));
}

TEST_CASE("the JSON carries them where the kit is given", "[work]") {
  Kit kit;
  kit.shop.strokes_per_minute = 8;
  const Plan plan = four_cuts();
  CHECK_FALSE(Json::parse(plan_to_json(plan)).contains("work"));
  const Json work = Json::parse(plan_to_json(plan, {&kit, nullptr})).at("work");
  CHECK(work.at("cuts") == 4);
  CHECK(work.at("plane_changes") == 2);
  CHECK(work.at("turns") == 2);
  CHECK(work.at("settings") == 5);
  CHECK(work.at("strokes").get<double>() == Approx(40.25));
  CHECK(work.at("strokes_per_minute").get<double>() == 8);
  CHECK(work.at("minutes").get<double>() == Approx(40.25 / 8));
  CHECK(work.at("shavings").size() == 2);
  double all = 0;
  for (const Json& one : work.at("shavings")) all += one.at("area").get<double>();
  CHECK(all == Approx(plan.waste_area + 1.25));
  // What was written besides is passed over when the plan is read.
  CHECK(plan_from_json(plan_to_json(plan, {&kit, nullptr})).faults.empty());
}
