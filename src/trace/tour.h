// The way through places that lie along an open line.
#pragma once

#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// The places, as indices, in the order of a way that passes each once and is short and turns little: a turn
/// costs as much as the shorter of the steps that it lies between, times one less its cosine. A near
/// neighbour across a cleft is no step of it, since from there the way would have to turn. Not always the
/// best way: the joins of least cost first, then bettered until no reversal of a stretch and no move of a
/// short one makes it better. `along` is the direction of the line at each place, longer the surer it is, at
/// most 1.
std::vector<std::size_t> shortest_way(const std::vector<Point>& places, const std::vector<Point>& along);

/// What such a way costs, mm.
double cost_of_way(const std::vector<Point>& places, const std::vector<std::size_t>& way);

}  // namespace arrisline
