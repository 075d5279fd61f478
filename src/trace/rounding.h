// Figures of few decimals: how far rounding has moved the points.
#pragma once

#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// The greatest step of which all figures are whole multiples, in their unit: 0.1, 0.005, 0.5; of many
/// figures also one by which they lie apart, as 0.003937 of tenths of a millimetre that were made inches. 0
/// where they have so many decimals that none is told.
double step_of(const std::vector<Point>& points);

/// Whether points in the order of their line lie beside it as rounded ones do. Those of flats drawn by whole
/// steps lie on straight runs between corners; on anything else rounding turns the way from point to point
/// again and again.
bool shows_rounding(const std::vector<Point>& line);

}  // namespace arrisline
