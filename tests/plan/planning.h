// Profiles and kits from text, as a maker writes them, and plans held against the replay.
#pragma once

#include <string>

#include "arrisline/plan.h"
#include "arrisline/plan_json.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"
#include "catch.h"

namespace arrisline::test {

template <class T>
T need(Reading<T> reading) {
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    INFO(format(diagnostic));
    REQUIRE(diagnostic.severity == Severity::warning);
  }
  REQUIRE(reading.value.has_value());
  return std::move(*reading.value);
}

/// A moulding by name: the figures of its stock, and its statements.
struct Moulding {
  const char* name;
  const char* stock;
  const char* chain;
};

inline Section profile(const std::string& stock, const std::string& chain) {
  return need(read_profile("units inch\nstock " + stock + "\n" + chain + "\n", "test.profile"));
}

inline Kit kit(const std::string& text) {
  return need(read_kit(text, "test.kit"));
}

/// A pair of sixes, a 3/4 in rebate plane and a scraper.
inline Kit pair_of_sixes() {
  return kit("units inch\nhollow 6\nround 6\nrebate 3/4\nscraper\n");
}

/// Everything that is wrong with the plan: as written and read back, by the replay and by the clipper.
inline std::string faults(const Plan& plan, const PlanOptions& options = {}) {
  std::string out;
  const StatedPlan stated = plan_from_json(plan_to_json(plan));
  for (const std::string& fault : stated.faults) out += fault + "\n";
  for (const Finding& finding : replay(stated.plan, {options.tolerance, options.scrape}).findings)
    out += "cut " + std::to_string(finding.cut) + ": " + finding.text + "\n";
  for (const Finding& finding : second_opinion(stated.plan))
    out += "cut " + std::to_string(finding.cut) + ": " + finding.text + "\n";
  return out;
}

inline double flat_share(const Plan& plan) {
  return plan.waste_by_flat / plan.waste_area;
}

}  // namespace arrisline::test
