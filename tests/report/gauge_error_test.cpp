// What is said of a gauge set wrong, in words and in JSON.
#include <nlohmann/json.hpp>

#include "arrisline/plan_json.h"
#include "arrisline/report.h"
#include "catch.h"
#include "replay/plans.h"
#include "report/pages.h"

using namespace arrisline;
using test::has;
using test::running;

namespace {

using Json = nlohmann::json;

Plan gauged() {
  Plan plan = plans::round_over();
  plan.cuts[0].lines = {{Side::edge, 5.58, 5.5, true}, {Side::face, 5.58, 5.5, true}};
  return plan;
}

GaugeError error_of() {
  GaugeError out;
  out.error = 0.5;
  out.elements = {{0, 0.35, 0}};
  out.settings = {{Side::face, 5.58, 5.5, {1}, 0.16, 0, true, {2}, 0},
                  {Side::edge, 5.58, 5.5, {1}, 0.12, 0, false, {}, 0.23}};
  out.rides = {{2, 0.24, 0.5, false}};
  out.every_sign = true;
  return out;
}

std::string page_of(const GaugeError& error) {
  ReportOptions options;
  options.unit = Unit::mm;
  return cut_list(gauged(), {}, options, &error);
}

}  // namespace

TEST_CASE("the cut list says what a gauge set wrong comes to", "[gauge_error]") {
  const std::string page = page_of(error_of());
  INFO(page);
  const std::string text = running(page);
  CHECK(
      has(text, "If each gauge setting is off by 0.5 mm Every setting too much or too little, as is worst"));
  CHECK(has(text, "Element 1 (bead): up to 0.35 mm lost below the line, nothing left above it."));
  CHECK(has(
      text,
      "1. Line B, 5.5 mm from the face, in cut 1: that alone takes 0.16 mm too much off element 1 (bead) and "
      "takes an arris from cut 2. 2. Line A, 5.5 mm from the edge, in cut 1: that alone leaves 0.12 mm more "
      "on "
      "element 1 (bead) and sets a plane down 0.23 mm beside its place."));
  CHECK(has(
      text,
      "Cut 2, hollow 6: still rides on both arrises, at worst 24 % of the sole's width off centre and set "
      "down 0.5 mm beside where it is drawn."));
  CHECK_FALSE(has(cut_list(gauged(), {}, {}), "If each gauge setting"));
  std::size_t start = 0;
  for (std::size_t end = page.find('\n'); end != std::string::npos; end = page.find('\n', start)) {
    CHECK(end - start <= kPageColumns + 1);  // "²" is two bytes
    start = end + 1;
  }
}

TEST_CASE("and what it does not know, or has nothing to say of", "[gauge_error]") {
  GaugeError error = error_of();
  error.every_sign = false;
  error.rides[0].rail_lost = true;
  error.settings[0] = {Side::face, 5.58, 5.5, {1}, 0, -1, false, {}, 0};
  const std::string text = running(page_of(error));
  CHECK(has(text, "too many combinations to try them all"));
  CHECK(has(text, "Cut 2, hollow 6: at worst one of its arrises stands too low to bear."));
  CHECK(has(text, "Line B, 5.5 mm from the face, in cut 1: that alone does nothing to speak of."));
  error.settings.clear();
  CHECK(has(running(page_of(error)), "Nothing: no cut is laid out with the gauge."));
}

TEST_CASE("the JSON carries it beside the plan", "[gauge_error]") {
  const GaugeError error = error_of();
  const std::string text = plan_to_json(gauged(), {nullptr, &error});
  CHECK(plan_from_json(text).faults.empty());
  const Json told = Json::parse(text).at("gauge_error");
  CHECK(told.at("error").get<double>() == 0.5);
  CHECK(told.at("every_sign").get<bool>());
  CHECK(told.at("elements").at(0) == Json({{"element", 1}, {"lost", 0.35}, {"left", 0}}));
  const Json& first = told.at("settings").at(0);
  CHECK(first.at("from") == "face");
  CHECK(first.at("set").get<double>() == 5.5);
  CHECK(first.at("cuts") == Json::array({1}));
  CHECK(first.at("moves") == Json({{"element", 1}, {"lost", 0.16}}));
  CHECK(first.at("loses") == Json::array({2}));
  CHECK(told.at("settings").at(1).at("moves") == Json({{"element", 1}, {"left", 0.12}}));
  CHECK(told.at("settings").at(1).at("aside").get<double>() == 0.23);
  CHECK(told.at("rides").at(0) ==
        Json({{"cut", 2}, {"imbalance", 0.24}, {"aside", 0.5}, {"rail_lost", false}}));
  CHECK_FALSE(Json::parse(plan_to_json(gauged())).contains("gauge_error"));
}
