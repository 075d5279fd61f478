// Lines that cross themselves.
#pragma once

#include <optional>

#include "arrisline/section.h"
#include "trace/chain.h"

namespace arrisline {

/// Where the line crosses itself and the samples do so with it, a loop between that is wider than they
/// scatter: a cleft that the fit has closed is none.
std::optional<Point> crossing_of(const Samples& samples, const Fitted& fitted, const Allowed& allowed);

/// Whether the section can be written as a profile: its outline lies on the stock and nowhere crosses itself,
/// nor leaves a piece of wood that hangs by a point.
bool is_sound(const Section& section);

}  // namespace arrisline
