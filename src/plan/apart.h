// A profile of several parts planned part by part: what is worked on one edge has little to do with what is
// worked on another.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// The parts of the work that the blank's own outline lies between, each as a section in which all else is
/// left as the blank has it, in the order of the profile. One or none where the work is of one piece.
std::vector<Section> parts_of(const Section& section);

/// The cuts of a plan for each part by itself, as drafts of the whole problem. Empty where the work is of one
/// piece, or where for some part no plan is found within its share of two thirds of the limit. In the order
/// of these plans, one part after another.
std::vector<Draft> planned_apart(const Problem& problem);

}  // namespace arrisline
