// The plan as JSON, in the form docs/plan-json.md describes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/slips.h"
#include "arrisline/substitute.h"

namespace arrisline {

/// What a plan's JSON tells besides the plan; each left out where it is null.
struct JsonBesides {
  const Kit* kit = nullptr;                 // what the plan asks of the maker, in this shop
  const GaugeError* gauge_error = nullptr;  // what a gauge set wrong does
  const Section* drawn = nullptr;        // with `redrawing`: the profile as it was drawn, which cannot be cut
  const Redrawing* redrawing = nullptr;  // with `drawn`: what was found for it; a plan for that is written
};

/// One JSON object, numbers to 17 significant digits, lengths in mm; ends with a newline.
std::string plan_to_json(const Plan& plan, const JsonBesides& besides = {});

/// A plan as somebody wrote it: what is stated, kept apart from whether it is true.
struct StatedPlan {
  Plan plan;
  std::vector<std::string> faults;  // what is missing, of a wrong type, not finite, or out of order
  bool unread = false;  // it is not JSON, or past a limit (arrisline/limits.h), and was not read whole
};

/// Reads a plan. `faults` lists everything that keeps it from being read as docs/plan-json.md says, each with
/// the place ("cuts[3].plane.radius"); where it is not empty, `plan` holds what could be read. Text that is
/// not JSON gives one fault with line and column.
StatedPlan plan_from_json(std::string_view text);

}  // namespace arrisline
