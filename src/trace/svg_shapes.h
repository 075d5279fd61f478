// The shapes of SVG besides paths.
#pragma once

#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "trace/curves.h"
#include "trace/faults.h"
#include "trace/svg_values.h"

namespace arrisline {

/// The attributes of one element: the value by name, or nothing.
using Attributes = std::function<std::optional<Passage>(const char* name)>;

/// Whether shape_strokes() draws an element of this name: path, line, polyline, polygon, rect, circle,
/// ellipse.
bool is_shape(std::string_view name);

/// Appends the strokes of a shape, whose element begins at a byte. REQUIRES: is_shape(name).
void shape_strokes(std::string_view name, const Attributes& attributes, const Affine& map, std::size_t at,
                   std::vector<DrawnPath>& strokes, Faults& faults);

}  // namespace arrisline
