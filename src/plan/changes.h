// Changes of plane and turns of the blank that some cuts need in any order.
#pragma once

#include <cstddef>
#include <span>

#include "plan/lie_set.h"

namespace arrisline {

/// What cuts still to come need: a plane taken up while the blank lies in one of some ways.
struct Need {
  int plane = 0;  // Problem::taken_up()
  LieSet may_lie;
  bool first = false;  // cuts that wait come after it
  bool waits = false;  // for all that come first

  friend bool operator==(const Need&, const Need&) = default;
};

/// The fewest changes of plane and turns of the blank, together, that serve these needs, no two of which are
/// the same: the plane `held` (−1 for none) is in hand and the blank lies so to begin with.
std::size_t fewest_changes(std::span<const Need> needs, int held, Lies lies);

}  // namespace arrisline
