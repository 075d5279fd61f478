// What segments that were found one by one overlooked, seen once they are one line.
#pragma once

#include "trace/chain.h"
#include "trace/samples.h"
#include "trace/segments.h"

namespace arrisline {

/// Short arcs among scattered samples, where another radius follows them better than the one that the fit
/// came to rest at. `start` is the line that it began from, link for link. Does nothing where nothing
/// scatters.
void round_out(const Samples& samples, const Fitted& start, Fitted& fitted, const Allowed& allowed);

/// Two flats for an arc of somewhat over a quarter turn and more that few samples tell, where they are the
/// better line for its figures: a small step and fillet. Does nothing where nothing scatters.
void make_corners(const Samples& samples, Fitted& fitted, const Allowed& allowed);

/// Short flats at the joints, where the samples stray from both links by more than chance; or where an arc
/// runs on past its end over a flat that takes no more figures to say. Does nothing where nothing scatters.
void put_in(const Samples& samples, Fitted& fitted, const Allowed& allowed);

}  // namespace arrisline
