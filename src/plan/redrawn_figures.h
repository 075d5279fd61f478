// The figures of the kit that an element of a drawing may have instead of its own.
#pragma once

#include <optional>
#include <vector>

#include "arrisline/kit.h"
#include "section/walk.h"

namespace arrisline {

/// A figure that an element may have instead of the drawn one.
struct OtherFigure {
  double figure = 0;  // mm: radius of an arc, width of a flat
  double off = 0;     // about how far it takes the line, mm: only the order of trying hangs on it
  // Of an arc that grows until the sole goes in, mm: from end to end at the least, and the sole's whole
  // width.
  std::optional<double> chord = std::nullopt;
  double whole = 0;
};

/// The drawn figure, then the nearest few of the kit's planes that keep the line within about `allow` mm: of
/// an arc radii of hollows or rounds, of a flat that lies square widths of flat soles. Of an arc too short
/// for a sole also that plane's radius with the arc as long as the sole, or less by what either of its
/// corners may sink into what stands beside, `tolerance`. None of a flat that slants.
std::vector<OtherFigure> figures_for(const Stroke& stroke, const Kit& kit, double tolerance, double allow);

}  // namespace arrisline
