// How a job's parts are called, on the sheet and in JSON.
#pragma once

#include <string>
#include <vector>

#include "arrisline/job_plan.h"
#include "report/page.h"

namespace arrisline {

/// "poplar, 3/4 in thick, 5 1/2 in wide, 96 in long".
std::string stock_words(const Stock& stock, Unit unit);
/// The names of a run's mouldings: "cornice and returns".
std::string run_words(const Job& job, const Run& run);

/// What job_sheet() says, for pages of any kind. Texts are visible() and may be of any width.
std::vector<Block> job_blocks(const Job& job, const JobPlan& plan, const ReportOptions& options);

/// The sections of the sheet, in its order.
void write_mouldings(Page& page, const Job& job, const JobPlan& plan);
void write_blanks(Page& page, const Job& job, const JobPlan& plan);
void write_order(Page& page, const Job& job, const JobPlan& plan, Unit unit);
void write_stops(Page& page, const Job& job, const JobPlan& plan);
void write_mitres(Page& page, const Job& job, const JobPlan& plan);
void write_estimate(Page& page, const Job& job, const JobPlan& plan);
void write_movements(Page& page, const Job& job, const JobPlan& plan);
void write_shortages(Page& page, const Job& job, const JobPlan& plan, const ReportOptions& options);

}  // namespace arrisline
