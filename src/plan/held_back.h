// Flats beside an arc that wait until its curve is cut, so that wood stands there meanwhile for rails.
#pragma once

#include <optional>
#include <vector>

#include "plan/problem.h"
#include "plan/wood.h"

namespace arrisline {

struct HeldBack {
  Draft flat;                      // that waits
  std::optional<Draft> meanwhile;  // cut in its place: the same, not so deep or not so far in
  Wood wood;                       // with all the other flats and this
};

/// The ways to hold one of the flats back that finish what lies beside the arc of this curved draft.
std::vector<HeldBack> held_back(const Problem& problem, const Draft& curve, const std::vector<Draft>& flats);

}  // namespace arrisline
