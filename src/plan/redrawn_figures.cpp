// Shown by tests/plan/substitute_test.cpp.
#include "plan/redrawn_figures.h"

#include <algorithm>
#include <cmath>

#include "wording/figures.h"

namespace arrisline {

namespace {

constexpr std::size_t kChoices = 4;  // figures tried for one element

bool nearer(const OtherFigure& a, const OtherFigure& b) {
  return a.off < b.off;
}

std::vector<OtherFigure> cut_short(std::vector<OtherFigure> choices, double drawn) {
  std::sort(choices.begin(), choices.end(), nearer);
  choices.erase(std::unique(choices.begin(), choices.end(),
                            [](const OtherFigure& a, const OtherFigure& b) {
                              return std::abs(a.figure - b.figure) < kSameLength;
                            }),
                choices.end());
  if (choices.size() > kChoices) choices.resize(kChoices);
  choices.insert(choices.begin(), OtherFigure{drawn, 0});
  return choices;
}

PlaneKind kind_for(const Stroke& arc) {
  return arc.turn == Turn::right ? PlaneKind::hollow : PlaneKind::round;
}

/// For an arc that is too short for the sole of a plane: its radius, and the arc as long as the sole. A
/// sole that is longer by what both of its corners may sink into what stands beside may go in too.
std::vector<OtherFigure> grown(const Stroke& stroke, const Kit& kit, double tolerance, double allow) {
  std::vector<OtherFigure> out;
  const double drawn = norm(stroke.move);
  for (const Plane& plane : kit.planes) {
    if (plane.kind != kind_for(stroke) || stroke.large) continue;
    if (plane.width <= drawn + kSameLength) continue;
    const double chord = std::max(plane.width - 2 * tolerance, drawn);
    // Each end goes out by half, most of it along what it meets.
    const double off = (chord - drawn) / 2 + std::abs(plane.radius - stroke.radius) / 8;
    if (off <= 2 * allow) out.push_back({plane.radius, off, chord, plane.width});
  }
  std::stable_sort(out.begin(), out.end(), nearer);
  if (out.size() > kChoices) out.resize(kChoices);
  return out;
}

std::vector<OtherFigure> radii(const Stroke& stroke, const Kit& kit, double tolerance, double allow) {
  std::vector<OtherFigure> out;
  const double half = norm(stroke.move) / 2;
  const double rise = sagitta(stroke.radius, half);
  for (const Plane& plane : kit.planes) {
    if (plane.kind != kind_for(stroke) || std::abs(plane.radius - stroke.radius) < kSameLength) continue;
    // About half of how much the rise changes with the ends kept, or as with the arc made larger or
    // smaller.
    const double other = sagitta(std::max(plane.radius, half), half);
    const double off = std::min(std::abs(other - rise) / 2 + (plane.radius < half ? half - plane.radius : 0),
                                std::abs(plane.radius - stroke.radius));
    if (off <= 3 * allow) out.push_back({plane.radius, off});
  }
  out = cut_short(std::move(out), stroke.radius);
  for (const OtherFigure& choice : grown(stroke, kit, tolerance, allow)) out.push_back(choice);
  return out;
}

std::vector<OtherFigure> widths(const Stroke& stroke, const Kit& kit, double allow) {
  std::vector<OtherFigure> out;
  const double drawn = std::max(std::abs(stroke.move.x), std::abs(stroke.move.y));
  if (stroke.move.x != 0 && stroke.move.y != 0) return {};
  for (const Plane& plane : kit.planes) {
    if (!plane.is_flat() || plane.width <= drawn + kSameLength) continue;
    if (plane.width - drawn <= 2 * allow) out.push_back({plane.width, (plane.width - drawn) / 2});
  }
  return cut_short(std::move(out), drawn);
}

}  // namespace

std::vector<OtherFigure> figures_for(const Stroke& stroke, const Kit& kit, double tolerance, double allow) {
  return stroke.turn == Turn::straight ? widths(stroke, kit, allow) : radii(stroke, kit, tolerance, allow);
}

}  // namespace arrisline
