// Flattening and clipping. Shown by tests/replay.
#include "replay/flattened.h"

#include <algorithm>
#include <cmath>

namespace arrisline::replaying {

// A chord error of half a thousandth of a millimetre: an arc of 15 mm then loses 0.005 mm², a tenth of what a
// stated area may be off.
static constexpr double kChordError = 0.0005;
// A millionth of a millimetre, a five-hundredth of the chord error; a metre still fits the clipper's fast
// range.
static constexpr double kUnitsPerMm = 1e6;

static ClipperLib::IntPoint grid_point(Point p) {
  return {static_cast<ClipperLib::cInt>(std::llround(p.x * kUnitsPerMm)),
          static_cast<ClipperLib::cInt>(std::llround(p.y * kUnitsPerMm))};
}

Point unflatten(ClipperLib::IntPoint p) {
  return {static_cast<double>(p.X) / kUnitsPerMm, static_cast<double>(p.Y) / kUnitsPerMm};
}

static void add_edge(ClipperLib::Path& path, const Edge& edge) {
  path.push_back(grid_point(edge.from));
  if (!edge.is_arc()) return;
  const double r = radius(edge);
  // The radius is rounded so that arcs of one circle agree on the number of steps.
  const double step = 2 * std::acos(1 - std::min(1.0, kChordError / (std::round(r * 1e5) / 1e5)));
  const double steps = std::ceil(2 * kPi / step);
  const double grid = 2 * kPi / steps;
  const Point spoke = edge.from - edge.centre;
  const double start = std::atan2(spoke.y, spoke.x);
  const double turned = sweep(edge);
  const double first = turned > 0 ? std::floor(start / grid) + 1 : std::ceil(start / grid) - 1;
  const double way = turned > 0 ? 1 : -1;
  for (double k = first; way * (k * grid - start) < std::abs(turned); k += way)
    path.push_back(grid_point(edge.centre + r * Point{std::cos(k * grid), std::sin(k * grid)}));
}

ClipperLib::Path flatten(std::span<const Edge> edges) {
  ClipperLib::Path path;
  for (const Edge& edge : edges) add_edge(path, edge);
  return path;
}

ClipperLib::Path flatten(const Swept& swept) {
  ClipperLib::Path path = flatten(std::span<const Edge>(swept.bounds));
  const std::size_t sole = swept.bounds.size() - 2;
  // The far end of the first side, which no later edge starts from.
  path.insert(path.end() - 1, grid_point(swept.bounds[sole].to));
  return path;
}

double area_of(const ClipperLib::Paths& paths) {
  double sum = 0;
  for (const ClipperLib::Path& path : paths) sum += ClipperLib::Area(path);
  return std::abs(sum) / (kUnitsPerMm * kUnitsPerMm);
}

static ClipperLib::Paths clip(const ClipperLib::Paths& a, const ClipperLib::Paths& b,
                              ClipperLib::ClipType type) {
  ClipperLib::Clipper clipper;
  clipper.AddPaths(a, ClipperLib::ptSubject, true);
  clipper.AddPaths(b, ClipperLib::ptClip, true);
  ClipperLib::Paths out;
  clipper.Execute(type, out, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
  return out;
}

ClipperLib::Paths less(const ClipperLib::Paths& from, const ClipperLib::Paths& what) {
  return clip(from, what, ClipperLib::ctDifference);
}

ClipperLib::Paths common(const ClipperLib::Paths& a, const ClipperLib::Paths& b) {
  return clip(a, b, ClipperLib::ctIntersection);
}

}  // namespace arrisline::replaying
