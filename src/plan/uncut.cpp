// Shown by tests/plan/remedies_test.cpp.
#include "plan/uncut.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {
namespace {

/// mm of wood under which a surface counts as bare. A sole on an arc bears along a line, which lies within
/// half the distance of two points looked at: on any arc worth a plane that is far less than this above it.
constexpr double kBare = 0.01;

double size_of(const Edge& edge) {
  const double chord = distance(edge.from, edge.to);
  if (edge.is_arc()) {
    const Point middle = 0.5 * (edge.from + edge.to);
    return distance(point_at(edge, 0.5), middle);
  }
  const double across = std::abs(edge.to.x - edge.from.x);
  const double down = std::abs(edge.to.y - edge.from.y);
  return std::min(across, down) > kSameCircle ? std::min(across, down) : chord;
}

bool is_bare(const Wood& wood, const Edge& edge) {
  constexpr int kPoints = 200;
  constexpr int kEnd = 10;  // of them, where what is beside it is laid bare
  for (int i = kEnd; i <= kPoints - kEnd; ++i) {
    if (distance(point_at(edge, static_cast<double>(i) / kPoints), wood.edges()) < kBare) return true;
  }
  return false;
}

/// Whether the piece of the wood's boundary is the blank's own.
bool is_of_blank(const Problem& problem, const Edge& piece) {
  return std::any_of(problem.blank.begin(), problem.blank.end(), [&](const Edge& side) {
    return distance(piece.from, side) < kBare && distance(piece.to, side) < kBare;
  });
}

/// Whether a cut runs along the flat over half of it at least, no farther off than `left`: a groove that is a
/// little narrow has its walls all the same.
bool is_followed(const Problem& problem, const Wood& wood, const Edge& flat, double left) {
  constexpr double kAlong = 0.02;  // sine of the angle between them
  const double len = length(flat);
  const Point along = (1 / len) * (flat.to - flat.from);
  double followed = 0;
  for (const Edge& piece : wood.edges()) {
    if (piece.is_arc() || is_of_blank(problem, piece)) continue;
    const Point from = piece.from - flat.from, to = piece.to - flat.from;
    if (std::abs(cross(along, to - from)) > kAlong * norm(to - from)) continue;
    if (std::max(std::abs(cross(along, from)), std::abs(cross(along, to))) > left + kBare) continue;
    const double a = std::clamp(dot(along, from), 0.0, len), b = std::clamp(dot(along, to), 0.0, len);
    followed += std::abs(b - a);
  }
  return followed >= len / 2;
}

}  // namespace

double least_size(const Problem& problem) {
  double least = std::numeric_limits<double>::infinity();
  for (const Surface& s : problem.surfaces) least = std::min(least, size_of(problem.edge(s)));
  return least;
}

bool leaves_uncut(const Problem& problem, const Plan& plan) {
  Wood wood(problem.blank);
  for (const Cut& cut : plan.cuts) {
    if (cut.plane.kind == PlaneKind::scraper) continue;
    for (const Pose& pose : cut.poses) wood.cut(Sweep(cut.plane, pose));
  }
  return std::any_of(problem.surfaces.begin(), problem.surfaces.end(), [&](const Surface& s) {
    const Edge& edge = problem.edge(s);
    if (is_bare(wood, edge)) return false;
    return s.arc || !is_followed(problem, wood, edge, plan.left.max_height);
  });
}

}  // namespace arrisline
