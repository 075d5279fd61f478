// The worked part of a traced section as chains of elements.
#pragma once

#include "arrisline/section.h"

namespace arrisline {

/// Names the worked edges, and numbers them: each run of work between pieces of the stock's outline is a
/// chain, of the side it can be read from. REQUIRES: a closed target; `source` is −1 for what lies on the
/// outline of the stock, and 0 for what does not.
void number_elements(Section& section);

}  // namespace arrisline
