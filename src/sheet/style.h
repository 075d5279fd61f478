// How each role looks, the same on every kind of sheet. Chosen to be told apart in black and white: wood is a
// light tint, what is taken is hatched, the finished line is the heaviest, the sole heavier than its sides.
#pragma once

#include "sheet/drawing.h"

namespace arrisline {

/// Colours are 0xRRGGBB; widths and dashes in mm of paper.
struct Style {
  std::optional<unsigned> fill;
  bool hatched = false;  // strokes of `stroke` at 45 degrees, kHatchGap apart, over the fill
  std::optional<unsigned> stroke;
  double width = 0;
  double dash = 0;  // 0: solid
  double gap = 0;
};

inline constexpr double kHatchGap = 1.1;     // mm, across the strokes
inline constexpr double kHatchWidth = 0.12;  // mm
inline constexpr unsigned kInk = 0x1a1a1a;

Style style_of(Role role);
/// The class of the role in SVG and CSS: "wood", "taken", …
const char* word(Role role);

}  // namespace arrisline
