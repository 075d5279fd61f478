// The cuts that no order lets in, where every surface by itself can be got at.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

struct Stuck {
  enum class Cause {
    rides,    // no two arrises and no arc of its own to guide the plane
    body,     // the plane's body meets wood that is still there
    turning,  // the blank would have to be turned within one cut
    held,     // no stop screw can hold the blank
    other
  };
  int plane = 0;              // index into Kit::planes
  std::vector<int> surfaces;  // that the cut would finish
  Cause cause = Cause::other;
};

/// Cuts one after the other whatever can be cut, arcs with rails laid for them, and gives what then remains
/// undone and why; of several choices of flats the one that gets farthest. Empty where all of it can be cut.
std::vector<Stuck> stuck_cuts(const Problem& problem);

}  // namespace arrisline
