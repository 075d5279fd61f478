// A line of fewer figures that follows the samples about as nearly.
#pragma once

#include "trace/chain.h"

namespace arrisline {

/// Makes one link of two neighbours, and flats of arcs, where the samples do not plainly show otherwise.
void simplify(const Samples& samples, Fitted& fitted, const Allowed& allowed);

/// Arcs all but flat alone, and what can be made one beside them: where more than that was looked at before.
void simplify_arcs(const Samples& samples, Fitted& fitted, const Allowed& allowed);

}  // namespace arrisline
