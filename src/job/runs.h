// The mouldings of a job by profile and width, and the blanks that will do for them.
#pragma once

#include <string>
#include <vector>

#include "arrisline/job_plan.h"

namespace arrisline {

/// The runs of a job in its own order, their plans not made yet.
std::vector<Run> runs_of(const Job& job);

/// The stocks that serve a mould (see serves()), as indices.
std::vector<std::size_t> stocks_for(const Job& job, const Mould& mould);
/// The species that a mould may come out in: its own, or those of the stocks that serve it, each once.
std::vector<std::string> species_for(const Job& job, const Mould& mould);

/// The plan uses the back edge: it is gauged from there, or bears there, or it is worked. On a wide blank
/// there is none until the strip is ripped off.
bool needs_back_edge(const Plan& plan);

}  // namespace arrisline
