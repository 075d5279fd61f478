// The fewest planes that let a kit do the whole job.
#pragma once

#include "arrisline/job_plan.h"

namespace arrisline {

/// Of the remedies found for each run that has no plan (see find_remedies(), each verified by a plan), one
/// for each so that all together take the fewest planes, by exact search; where sets are as few, the ones
/// that stand nearest the front of the remedies. The choice is verified by planning every such run with all
/// of it.
Buying planes_to_buy(const Job& job, const std::vector<Run>& runs, const PlanOptions& options);

}  // namespace arrisline
