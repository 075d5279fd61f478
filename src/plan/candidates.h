// Planes that a maker might add to a kit.
#pragma once

#include <vector>

#include "plan/problem.h"

namespace arrisline {

/// A hollow or round of the usual table: a radius of so many sixteenths of an inch, a sole of 60 degrees.
Plane numbered_plane(PlaneKind kind, int number);

/// Planes of the usual sizes, and of the sizes drawn, that may get at these surfaces where nothing of the kit
/// does; none that the kit has. Likeliest first: what fits exactly, then the neighbouring sizes, then
/// narrower soles. Whether they can stand there is not looked at.
std::vector<Plane> fitting_planes(const Problem& problem, const std::vector<int>& surfaces);

/// Planes that may help where each surface by itself is got at with `kit` and there is no plan all the same:
/// matching planes for these surfaces, a scraper, flat soles for rails and waste.
std::vector<Plane> helping_planes(const Problem& problem, const Kit& kit, const std::vector<int>& surfaces);

}  // namespace arrisline
