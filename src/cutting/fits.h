// What fits on a board and in a strip.
#pragma once

#include <algorithm>

#include "arrisline/cutting.h"

namespace arrisline::cutting {

/// Lengths that are sums of inches are not exact in millimetres; what overshoots by less than this fits. Far
/// below what a saw can be set to.
inline constexpr double kFit = 1e-6;

/// Room in a strip when a piece with its kerf takes its length and one kerf: the last piece's kerf may fall
/// past the end.
inline double room_of(double length, const CuttingRules& rules) {
  return length + rules.kerf + kFit;
}
inline double takes(double piece, const CuttingRules& rules) {
  return piece + rules.kerf;
}

/// What a strip takes off the board before the next one is stuck.
inline double strip_takes(double width, const CuttingRules& rules) {
  return width + rules.rip_kerf + rules.trued;
}
/// What the last strip needs; the widest comes last, for it needs no kerf.
inline double last_takes(double width, const CuttingRules& rules) {
  return std::max(width, rules.hold);
}

}  // namespace arrisline::cutting
