// Every plan is judged again before it is shown.
#pragma once

#include <string>
#include <vector>

#include "app/commands.h"
#include "arrisline/replay.h"

namespace arrisline {

/// The findings of the replay and of the second opinion on a plan. A plan without cuts to make has none.
std::vector<Finding> judge(const Plan& plan, const ReplayOptions& options);

/// "cut 3, rule 1: …", "plan: …": one line, without its end.
std::string show(const Finding& finding);

/// What is said instead of a plan that its own replay refuses: exit code 3, the findings on standard error,
/// and the plan in a new file in `folder`, or in $TMPDIR where that cannot be written.
Outcome refused(const Plan& plan, const std::vector<Finding>& findings, const std::string& folder);

}  // namespace arrisline
