// Gauge lines on a picture, each with its letter and figure, no figure on another.
#pragma once

#include <vector>

#include "arrisline/kit.h"
#include "sheet/drawing.h"
#include "sheet/steps.h"

namespace arrisline {

/// Room that the figures of these lines take, mm of paper: at the left those gauged from the face or the
/// underside, at the top those gauged from an edge, in as many rows as they need side by side.
double side_room(const std::vector<GaugeMark>& marks, Unit unit);
double top_room(const std::vector<GaugeMark>& marks, Unit unit, double width);

/// Draws the lines across the blank (in mm of wood) and `past` mm of paper beyond it, with their figures in
/// the room that side_room() and top_room() keep.
void add_gauge_lines(Picture& picture, const std::vector<GaugeMark>& marks, Unit unit, const Placing& placing,
                     const Box& blank, double past);

}  // namespace arrisline
