// What the maker takes to the bench for a whole job.
#pragma once

#include <string>

#include "arrisline/job_plan.h"
#include "arrisline/report.h"

namespace arrisline {

/// Blanks and what comes out of them, the order of work with every cut's figures, stops, mitres, estimate,
/// what falls short and what to buy. At most 80 columns wide, ends with a newline.
std::string job_sheet(const Job& job, const JobPlan& plan, const ReportOptions& options);

/// One JSON object as docs/job-json.md describes it, lengths in mm; ends with a newline.
std::string job_to_json(const Job& job, const JobPlan& plan);

}  // namespace arrisline
