// The path data of SVG.
#pragma once

#include <vector>

#include "trace/curves.h"
#include "trace/faults.h"
#include "trace/svg_values.h"

namespace arrisline {

/// Appends the strokes of path data, each as the map sends it. What cannot be read is a mistake, and reading
/// goes on with the next command.
void read_path(const Passage& data, const Affine& map, std::vector<DrawnPath>& strokes, Faults& faults);

}  // namespace arrisline
