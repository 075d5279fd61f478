// A line drawn anew, moved until it departs from the drawn one as little as it can.
#pragma once

#include "plan/redrawn_line.h"

namespace arrisline {

/// `line` put to what is held, its joints moved for it by as little as it takes. Nothing where it does not
/// come to it. REQUIRES: every arc with a radius held.
std::optional<FlatsAndArcs> held_line(const ChainLine& chain, const FlatsAndArcs& line, const Held& held,
                                      double thickness, double allow);

/// `line` put to what is held and then its free joints moved to where no small move of them lessens the
/// greatest distance between it and the drawn line, either way round, by much. Arcs that run level into a
/// side of the stock keep doing so. Nothing where it does not come to what is held. REQUIRES: every arc with
/// a radius held.
std::optional<FlatsAndArcs> nearer_line(const ChainLine& chain, const FlatsAndArcs& line, const Held& held,
                                        double thickness, double allow);

}  // namespace arrisline
