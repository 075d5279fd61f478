// A yes or no about one profile and one kit, as JSON.
#pragma once

#include <string>

#include "arrisline/plan.h"
#include "report/json_text.h"

namespace arrisline {

/// { "profile", "file", "kit", "cuts", "reasons" }, with "remedies" and "undecided" where there are some.
Json answer_as_json(const Plan& plan, const Kit& kit, const std::string& file);

}  // namespace arrisline
