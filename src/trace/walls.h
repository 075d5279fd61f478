// Walls that the points of a tracing leave out.
#pragma once

#include "trace/chain.h"

namespace arrisline {

/// Puts a flat into every gap of the samples that stands upright, or level, where the line strays in it: a
/// profile gauge has no pins on a wall, and the arc beside it runs on past it as well as not. Of samples that
/// lie as pins do, one nearer to the working edge than the other, it does so too where an arc beside the gap
/// runs under what is over it, which pins cannot tell. The line lies straight already.
void put_in_walls(const Samples& samples, Fitted& fitted, const Allowed& allowed);

}  // namespace arrisline
