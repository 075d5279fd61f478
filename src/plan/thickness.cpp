// Branch and bound on the pieces of the wood's boundary: distance changes by no more than the way gone.
// Shown by tests/plan/touch_test.cpp.
#include "plan/thickness.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"

namespace arrisline {

namespace {

constexpr double kFound = 1e-4;  // mm, to which the thickest is found
/// Wood narrower than this is rounding, mm: what stands between two cuts meant to meet is none.
constexpr double kNarrow = 1e-5;

bool same_carrier(const Edge& a, const Edge& b) {
  if (a.is_arc() != b.is_arc()) return false;
  if (a.is_arc()) return distance(a.centre, b.centre) < 1e-6 && std::abs(radius(a) - radius(b)) < 1e-6;
  return distance(a.from, b) < 1e-6 && distance(a.to, b) < 1e-6;
}

/// The pieces of the edge between the corners of the target that lie on it.
std::vector<Edge> split_at_corners(const Edge& edge, const Loop& target) {
  const Measured measured(edge);
  std::vector<double> ts = {0, 1};
  for (const Edge& other : target) {
    if (distance(other.from, edge) > 1e-6) continue;
    if (!edge.is_arc()) {
      const double len = length(edge);
      if (len > 0) ts.push_back(distance(edge.from, other.from) / len);
    } else {
      extremes_along(measured, other.from - edge.centre, ts);
    }
  }
  std::sort(ts.begin(), ts.end());
  std::vector<Edge> out;
  for (std::size_t i = 1; i < ts.size(); ++i) {
    if (ts[i] - ts[i - 1] > 1e-9) out.push_back(measured.piece(ts[i - 1], ts[i]));
  }
  return out;
}

/// The piece runs along the target from end to end.
bool lies_on(const Edge& edge, const Loop& target) {
  for (const Edge& other : target) {
    if (!same_carrier(edge, other)) continue;
    if (distance(edge.from, other) < 1e-6 && distance(edge.to, other) < 1e-6 &&
        distance(point_at(edge, 0.5), other) < 1e-6)
      return true;
  }
  return false;
}

/// The piece is the side or the end of a fin no wider than rounding.
bool bounds_a_fin(const Edge& edge, const Wood& wood) {
  if (length(edge) < kNarrow) return true;
  for (const double t : {0.5, 0.02, 0.98}) {
    const Point along = direction_at(edge, t);
    if (wood.contains(point_at(edge, t) + kNarrow * Point{-along.y, along.x})) return false;
  }
  return true;
}

/// A place on an edge of the wood, and how far it is from the target.
struct Place {
  double t = 0;
  Point at;
  double distance = std::numeric_limits<double>::infinity();
  const Edge* nearest = nullptr;
};

Place place(const Edge& edge, double t, const Loop& target) {
  Place out;
  out.t = t;
  out.at = point_at(edge, t);
  for (const Edge& other : target) {
    const double d = distance(out.at, other);
    if (d < out.distance) {
      out.distance = d;
      out.nearest = &other;
    }
  }
  return out;
}

/// The most that the straight way between the places can be from the edge: from what is convex, no more than
/// the farther of its ends.
double farthest_between(const Place& a, const Place& b, const Edge& from) {
  if (from.is_arc()) {
    const bool outside = from.turn == Turn::left && std::abs(sweep(from)) < kPi &&
                         spoke_meets(from, a.at - from.centre) && spoke_meets(from, b.at - from.centre);
    if (!outside) return std::numeric_limits<double>::infinity();
  }
  return std::max(distance(a.at, from), distance(b.at, from));
}

void search(const Edge& edge, const Place& a, const Place& b, double len, const Loop& target,
            Thickest& best) {
  const double reach = (b.t - a.t) * len;
  if ((a.distance + b.distance + reach) / 2 <= best.height + kFound) return;
  if (reach < kFound) return;
  if (!edge.is_arc()) {
    const double most = std::min(farthest_between(a, b, *a.nearest), farthest_between(a, b, *b.nearest));
    if (most <= best.height + kFound) return;
  }
  const Place middle = place(edge, (a.t + b.t) / 2, target);
  if (middle.distance > best.height && !contains(target, middle.at)) best = {middle.distance, middle.at};
  search(edge, a, middle, len, target, best);
  search(edge, middle, b, len, target, best);
}

}  // namespace

Thickest thickest_left(const Wood& wood, const Loop& target) {
  Thickest best;
  std::vector<Edge> pieces;
  for (const Edge& whole : wood.edges()) {
    for (const Edge& edge : split_at_corners(whole, target)) {
      if (lies_on(edge, target) || bounds_a_fin(edge, wood)) continue;
      pieces.push_back(edge);
      for (const double t : {0.0, 0.5, 1.0}) {
        const Point p = point_at(edge, t);
        const double d = distance(p, target);
        if (d > best.height && d > kSame && !contains(target, p)) best = {d, p};
      }
    }
  }
  for (const Edge& edge : pieces) {
    search(edge, place(edge, 0, target), place(edge, 1, target), length(edge), target, best);
  }
  return best;
}

}  // namespace arrisline
