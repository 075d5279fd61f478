// How far a sole slides in until it comes to rest on the wood.
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "geometry/measured.h"
#include "plan/sweep.h"

namespace arrisline {

/// The height at which a sole rests where there is nothing under it.
inline constexpr double kNothing = -std::numeric_limits<double>::infinity();

/// mm along the plane by which a point stands above the sole, v − f(u).
double height_at(const Sweep& sweep, Point p);

/// Adds the places on the edge where v − f(u) may peak between its ends.
void peaks(const Measured& measured, const Sweep& sweep, std::vector<double>& ts);

/// Greatest v − f(u) of the edges under the sole, the height at which the sole comes to rest on them;
/// kNothing where there is nothing under it. A wall that runs up along the side of the plane does not count.
double rest_height(std::span<const Edge> edges, const Sweep& sweep);

/// The same on one part of the sole, u in [from, to].
double rest_height_between(std::span<const Edge> edges, const Sweep& sweep, double from, double to);

}  // namespace arrisline
