// One profile and one kit taken the whole way: text, section, plan, JSON, replay. What does not hold is said.
#pragma once

#include <array>
#include <string>

#include "arrisline/plan_json.h"
#include "arrisline/read.h"
#include "arrisline/replay.h"

namespace arrisline::test {

struct WholeWay {
  std::string broken;    // what did not hold; empty where all did
  bool drawn = false;    // the chains make a section
  bool planned = false;  // there is a plan
  bool refused = false;  // there is none, with reasons
  bool curved = false;   // some cut of the plan rides on two arrises
};

/// Whether a mistake is of the drawing, not of the words: sound statements may still make no section.
inline bool is_of_the_drawing(const std::string& message) {
  constexpr std::array kSaid = {"leaves the stock",
                                "starts off the stock",
                                "too short to be drawn",
                                "ends inside the stock",
                                "along the outside",
                                "on the wrong side",
                                "overlap",
                                "crosses itself",
                                "chains cross",
                                "left unattached",
                                "too intricate"};
  for (const char* said : kSaid)
    if (message.find(said) != std::string::npos) return true;
  return false;
}

/// The first finding of the replay or of the clipper.
inline std::string first_finding(const Plan& plan, const ReplayOptions& options) {
  std::vector<Finding> findings = replay(plan, options).findings;
  const std::vector<Finding> more = second_opinion(plan);
  findings.insert(findings.end(), more.begin(), more.end());
  if (findings.empty()) return "";
  const Finding& first = findings.front();
  return "cut " + std::to_string(first.cut) + ", rule " + std::to_string(first.rule) + ": " + first.text;
}

inline WholeWay whole_way(const std::string& profile_text, const std::string& kit_text,
                          const PlanOptions& options) {
  WholeWay way;
  const Reading<Section> profile = read_profile(profile_text, "any.profile");
  const Reading<Kit> kit = read_kit(kit_text, "any.kit");
  for (const Diagnostic& one : profile.diagnostics)
    if (one.severity == Severity::error && !is_of_the_drawing(one.message)) way.broken = format(one);
  for (const Diagnostic& one : kit.diagnostics)
    if (one.severity == Severity::error) way.broken = format(one);
  if (profile.value.has_value() && !profile.value->target.empty()) way.drawn = true;
  if (!way.broken.empty() || !way.drawn) return way;

  const Plan plan = make_plan(*profile.value, *kit.value, options);
  way.planned = plan.feasible;
  way.refused = !plan.feasible && !plan.undecided;
  for (const Cut& cut : plan.cuts) way.curved = way.curved || cut.rides == Rides::two_arrises;

  const std::string json = plan_to_json(plan);
  const StatedPlan back = plan_from_json(json);
  if (!back.faults.empty()) {
    way.broken = "read back: " + back.faults.front();
  } else if (back.plan.feasible != plan.feasible || back.plan.undecided != plan.undecided) {
    way.broken = "the answer is another one when it is read back";
  } else if (plan_to_json(back.plan) != json) {
    way.broken = "written again, the JSON is another one";
  } else if (plan.feasible) {
    way.broken = first_finding(back.plan, {options.tolerance, options.scrape});
  } else if (!plan.cuts.empty()) {
    way.broken = "no plan, and yet there are cuts";
  } else if (way.refused) {
    if (plan.reasons.empty()) way.broken = "a no without reasons";
    for (const Reason& reason : plan.reasons)
      if (reason.why.empty()) way.broken = "a reason that says nothing";
  }
  return way;
}

}  // namespace arrisline::test
