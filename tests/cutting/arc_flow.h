// A cutting job as a flow along the width and along the length of its boards, for a solver that is no part of
// the program.
#pragma once

#include <ostream>

#include "cutting/whole_job.h"

namespace arrisline::cutting_tests {

/// More boards than this of all sizes together do not fit the weights of the objective.
inline constexpr int kMostBoards = 63;

/// What the objective counts: missing, then bought, then boards, then, of two sizes, the larger.
std::int64_t flow_objective(const WholeJob& job, const CuttingPlan& plan);

/// In CPLEX LP format. Every node of a flow is a place on the board, in whole units, that strips or pieces
/// can come to by the rules as the header words them.
/// REQUIRES: one size or two.
void write_flow(std::ostream& out, const WholeJob& job);

}  // namespace arrisline::cutting_tests
