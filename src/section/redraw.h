// A section drawn over with another radius, and how far two drawings lie apart.
#pragma once

#include <optional>
#include <vector>

#include "arrisline/section.h"

namespace arrisline {

/// The arcs of these elements (indices into Section::elements) drawn anew with `radius`, in mm, between the
/// same ends, on the same side of their chord; an arc over 180° stays one. Nothing where the radius does not
/// reach, where the line would leave the stock, or run into another part of the outline.
std::optional<Section> with_radius(const Section& section, const std::vector<int>& elements, double radius);

/// The least radius, in mm, that reaches between the ends of each of these elements' arcs; 0 without arcs.
double least_radius(const Section& section, const std::vector<int>& elements);

/// The largest distance, in mm, from a point of the one target's outline to the other's, either way round.
/// REQUIRES: outlines of the same number of edges, which differ only between the same ends.
double largest_departure(const Section& a, const Section& b);

/// The largest distance, in mm, from a point of the line worked on the one section to the outline of the
/// other, either way round; of any two.
double apart(const Section& a, const Section& b);

}  // namespace arrisline
