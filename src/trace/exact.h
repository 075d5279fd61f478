// The fitted line as its section has it: what is held exactly so, and no arc over a side of the blank.
#pragma once

#include "trace/chain.h"

namespace arrisline {

/// Link i as an edge of the section; the radius exactly the one that is held.
Edge exact_edge(const FlatsAndArcs& line, const Held& held, std::size_t i);

/// Gives what is held of levels its exact figures, which a fit has to a millionth or so.
void make_exact(FlatsAndArcs& line, const Held& held);

/// Puts the joints where what is written of them, six decimals, does: what is rounded away of one move after
/// the other would add up to a lean of a flat that has none.
/// REQUIRES: make_exact().
void make_as_written(FlatsAndArcs& line, const Held& held);

/// Arcs that are half-rounds but for a hair become just that: written down, their radius would not tell how
/// far they lie to either side of one. They stand square to the flat that they start on or run into.
void make_half_round(FlatsAndArcs& line, Held& held);

/// An arc that passes over the face or the working edge by no more than what is allowed and the scatter make
/// of it is brought back: one that meets the face all but level is put where it touches it, any other is
/// flattened between its ends. REQUIRES: the line lies in the frame of its section.
void keep_in_blank(FlatsAndArcs& line, Held& held, const Allowed& allowed);

}  // namespace arrisline
