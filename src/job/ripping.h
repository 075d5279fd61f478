// What the job asks of its blanks, and each blank's strips once they are laid out.
#pragma once

#include <vector>

#include "arrisline/job_plan.h"

namespace arrisline {

/// The sizes are the job's stocks, the kinds its runs. Pieces stand in the order of the moulds, copies that
/// meet at their mitres as a run of their own; the spare lengths of each run after those.
struct BlankLayout {
  CuttingProblem problem;
  std::vector<std::size_t> mould_of;  // beside problem.pieces; kSparePiece for a spare length
};
BlankLayout lay_out_blanks(const Job& job, const std::vector<Run>& runs);

/// The strips of each blank with the widths and the stops as they are stuck one after the other.
std::vector<BlankWork> work_blanks(const Job& job, const std::vector<Run>& runs, const BlankLayout& layout,
                                   const CuttingPlan& cutting);

}  // namespace arrisline
