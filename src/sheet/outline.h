// The pieces of a boundary linked into closed outlines, as pictures want them.
#pragma once

#include <span>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// A region of a section: outlines with the wood to the left of every edge, so that a hole runs the other
/// way.
using Region = std::vector<Loop>;

/// Links pieces whose ends meet, wherever they are in the order. Pieces that run on along the same line or
/// arc become one. Ends that do not meet (a hair apart, where a boundary crossed itself) are joined by a
/// straight edge to the nearest, so every outline closes; outlines that enclose less than 1e-6 mm² are
/// dropped.
Region linked(std::span<const Edge> pieces);

double area(const Region& region);
/// Within an odd number of its outlines, so that a hole is no part of it.
bool contains(const Region& region, Point p);

}  // namespace arrisline
