// The thickest place lies on the surface of what is left, except where the target closes round it (a groove
// wider within than at its mouth); so the surface is searched first, and then the inside for anything
// thicker, square by square; both on the exact figures. Shown by tests/replay.
#include "replay/remains.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace arrisline::replaying {

// The inside need only be known to a fifth of what a stated height may be off.
static constexpr double kInsideError = 0.002;
// A square that reaches no farther than this is not halved again: wood in it lies as near to the surface.
static constexpr double kLeastSquare = 0.0005;
// A piece no larger than this holds no circle of 0.01 mm radius, so nothing thick hides in it.
static constexpr double kSmallPiece = 3e-4;
// A piece of surface has wood this far to one side of it, mm; a fin narrower than that is rounding and no
// wood.
static constexpr double kBeside = 1e-5;
// What lies this deep in a pose is taken, mm: far over the rounding of figures.
static constexpr double kTaken = 1e-8;
// An end this near to an edge parts it there, mm. A place too many changes nothing.
static constexpr double kOnEdge = 1e-6;

namespace {

struct Square {
  Point centre;
  double half;
};

struct Inside {
  const Standing& wood;
  const Loop& target;
  Depth best;
};

}  // namespace

// On the line between two poses side by side a point counts as wood, and none `off` to one side of it does.
static bool in_wood(const Standing& wood, Point p, double off) {
  return wood.solid(p) && wood.solid(p + Point{off, 0}) && wood.solid(p + Point{0, off});
}

// `edges` and `poses`: those that come near the square.
static void explore(Inside& search, const Square& square, const std::vector<const Edge*>& edges,
                    const std::vector<const Swept*>& poses) {
  const Point c = square.centre;
  if (search.wood.off_blank(c) >= square.half) return;
  const double reach = square.half * std::sqrt(2.0);
  const auto [nearest, near_edges] = nearest_about(edges, c, reach);
  if (nearest + reach <= search.best.mm + kInsideError) return;
  const bool in_target = contains(search.target, c);
  if (in_target && nearest > reach) return;
  std::vector<const Swept*> near_poses;
  for (const Swept* swept : poses) {
    const bool near = distance(c, std::span<const Edge>(swept->bounds)) < reach;
    if (near) near_poses.push_back(swept);
    if (!near && takes(*swept, c)) return;
  }
  if (!in_target && nearest > search.best.mm && in_wood(search.wood, c, kBeside)) search.best = {nearest, c};
  if (reach <= kLeastSquare) return;
  const double h = square.half / 2;
  for (const Point corner : {Point{-h, -h}, Point{h, -h}, Point{-h, h}, Point{h, h}})
    explore(search, {c + corner, h}, near_edges, near_poses);
}

// The fraction of the way along the edge that is nearest to p, a point on it.
static double fraction(const Edge& edge, Point p) {
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    return dot(p - edge.from, along) / dot(along, along);
  }
  const Point from = edge.from - edge.centre, spoke = p - edge.centre;
  // No sole turns by more than half a circle.
  return std::atan2(cross(from, spoke), dot(from, spoke)) / sweep(edge);
}

// The edges of the blank and of every pose, all with their wood to the left, parted where they meet, as far
// as they bound wood.
static std::vector<Edge> surface(const Standing& wood) {
  std::vector<Edge> out;
  std::vector<double> at;
  const auto gone = [&](Point p) {
    const auto takes_it = [&](const Swept& swept) { return takes(swept, p, kTaken); };
    return wood.off_blank(p) > kTaken || std::any_of(wood.taken().begin(), wood.taken().end(), takes_it);
  };
  for (const Edge& edge : wood.edges()) {
    const double whole = length(edge);
    at.assign({0, 1});
    const auto part = [&](Point p) {
      if (const double t = fraction(edge, p); t > 0 && t < 1) at.push_back(t);
    };
    for (const Edge& other : wood.edges()) {
      for (const Point p : crossings(edge, other)) part(p);
      for (const Point p : {other.from, other.to})
        if (distance(p, edge) <= kOnEdge) part(p);
    }
    std::sort(at.begin(), at.end());
    double last = 0;
    for (const double to : at) {
      const double from = std::exchange(last, to);
      if ((to - from) * whole <= kBeside) continue;
      // It may but touch what it parts from here or there.
      const double in = 0.02 * (to - from);
      const std::array<double, 3> looks{(from + to) / 2, from + in, to - in};
      const auto is_gone = [&](double t) { return gone(point_at(edge, t)); };
      const auto has_wood = [&](double t) {
        const Point along = direction_at(edge, t);
        return in_wood(wood, point_at(edge, t) + kBeside * Point{-along.y, along.x}, 0.1 * kBeside);
      };
      if (std::none_of(looks.begin(), looks.end(), is_gone) &&
          std::any_of(looks.begin(), looks.end(), has_wood))
        out.push_back(piece(edge, from, to));
    }
  }
  return out;
}

Depth thickest_left(const Standing& wood, const Loop& target, const ClipperLib::Paths& left) {
  const Depth best =
      greatest_distance(surface(wood), target, [&](Point p) { return !contains(target, p); }, {});
  Inside search{wood, target, best};
  std::vector<const Swept*> poses;
  for (const Swept& swept : wood.taken()) poses.push_back(&swept);
  for (const ClipperLib::Path& path : left) {
    if (area_of({path}) <= kSmallPiece) continue;
    Point low{kEndless, kEndless}, high{-kEndless, -kEndless};
    for (const ClipperLib::IntPoint p : path) {
      const Point q = unflatten(p);
      low = {std::min(low.x, q.x), std::min(low.y, q.y)};
      high = {std::max(high.x, q.x), std::max(high.y, q.y)};
    }
    const double half = std::max(high.x - low.x, high.y - low.y) / 2;
    explore(search, {0.5 * (low + high), half}, each_of(target), poses);
  }
  return search.best;
}

}  // namespace arrisline::replaying
