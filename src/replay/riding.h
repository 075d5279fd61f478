// Rule 4: what a hollow or round has to guide it.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"
#include "replay/standing.h"

namespace arrisline::replaying {

struct Riding {
  std::vector<std::string> faults;  // in trade words; empty where the cut rides as it says
  double imbalance = 0;             // found, where it rides on two arrises
};

/// Judges one cut with a hollow or a round on the wood as it stands before it. `target` has its interior to
/// the left. REQUIRES: the cut has poses.
Riding judge_riding(const Standing& wood, const Loop& target, const Cut& cut);

}  // namespace arrisline::replaying
