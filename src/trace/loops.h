// Lines that cross themselves.
#pragma once

#include <optional>

#include "trace/chain.h"

namespace arrisline {

/// Where the line crosses itself and the samples do so with it, a loop between that is wider than they
/// scatter: a cleft that the fit has closed is none.
std::optional<Point> crossing_of(const Samples& samples, const Fitted& fitted, const Allowed& allowed);

}  // namespace arrisline
