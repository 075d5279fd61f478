// A profile of several parts planned part by part: what is worked on one edge, or on one side of a wide
// floor, has little to do with what is worked on another.
#pragma once

#include <vector>

#include "plan/compose.h"
#include "plan/problem.h"

namespace arrisline {

/// The parts of the work that the blank's own outline lies between, each as a section in which all else is
/// left as the blank has it, in the order of the profile. One or none where the work is of one piece.
std::vector<Section> parts_of(const Section& section);

/// What came of planning part by part.
struct Apart {
  /// The cuts of a plan for each part by itself, as drafts of the whole problem: for the parts of parts_of(),
  /// one part after another in the order of these plans; where the work is of one piece, for the two of
  /// sides_of_flat(), the floors that they share joined. Empty where there are no such parts, or where for
  /// some part no plan is found within its share of two thirds of the limit; a side of a flat has some tenths
  /// of a second at most. Of work that is soon planned as a whole, empty too.
  std::vector<Draft> cuts;
  /// Of the parts of parts_of(), those whose search went to its end and found none: nothing that is worked on
  /// another part makes up for that.
  std::vector<Unmade> unmade;
};
Apart planned_apart(const Problem& problem);

/// The same of work of one piece that is of few elements, for where the whole has no plan.
std::vector<Draft> planned_in_sides(const Problem& problem);

}  // namespace arrisline
