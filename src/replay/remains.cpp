// The thickest place lies on the surface of what is left, except where the target closes round it (a groove
// wider within than at its mouth); so the surface is searched first, and then the inside for anything
// thicker, square by square; both on the exact figures. Shown by tests/replay.
#include "replay/remains.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace arrisline::replaying {

// The inside need only be known to a fifth of what a stated height may be off.
static constexpr double kInsideError = 0.002;
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

static void explore(Inside& search, const Square& square, const std::vector<std::size_t>& edges,
                    const std::vector<std::size_t>& poses) {
  const Point c = square.centre;
  if (search.wood.off_blank(c) >= square.half) return;
  const double reach = square.half * std::sqrt(2.0);
  double nearest = std::numeric_limits<double>::infinity();
  std::vector<double> away(edges.size());
  for (std::size_t i = 0; i < edges.size(); ++i) {
    away[i] = distance(c, search.target[edges[i]]);
    nearest = std::min(nearest, away[i]);
  }
  if (nearest + reach <= search.best.mm + kInsideError) return;
  const bool in_target = contains(search.target, c);
  if (in_target && nearest > reach) return;
  std::vector<std::size_t> near_poses;
  bool taken = false;
  for (const std::size_t i : poses) {
    const Swept& swept = search.wood.taken()[i];
    const bool within = takes(swept, c);
    const double off = distance(c, std::span<const Edge>(swept.bounds));
    if (within && off >= reach) return;
    if (within || off <= reach) near_poses.push_back(i);
    taken = taken || within;
  }
  if (!in_target && !taken && nearest > search.best.mm && in_wood(search.wood, c, kBeside))
    search.best = {nearest, c};
  if (reach <= kInsideError / 4) return;
  std::vector<std::size_t> near_edges;
  for (std::size_t i = 0; i < edges.size(); ++i)
    if (away[i] <= nearest + 2 * reach) near_edges.push_back(edges[i]);
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
  double turned = std::atan2(cross(from, spoke), dot(from, spoke)) / sweep(edge);
  if (turned < 0) turned += 2 * kPi / std::abs(sweep(edge));
  return turned;
}

namespace {

// A rectangle that holds an edge with kOnEdge to spare: of an arc no point is farther from its middle than
// half its length.
struct Box {
  Point low, high;

  explicit Box(const Edge& edge) {
    Point a = edge.from, b = edge.to;
    if (edge.is_arc()) {
      const double reach = length(edge) / 2;
      a = point_at(edge, 0.5) - Point{reach, reach};
      b = a + Point{2 * reach, 2 * reach};
    }
    low = Point{std::min(a.x, b.x), std::min(a.y, b.y)} - Point{kOnEdge, kOnEdge};
    high = Point{std::max(a.x, b.x), std::max(a.y, b.y)} + Point{kOnEdge, kOnEdge};
  }
  bool meets(const Box& other) const {
    return low.x <= other.high.x && other.low.x <= high.x && low.y <= other.high.y && other.low.y <= high.y;
  }
};

}  // namespace

// The edges of the blank and of every pose, all with their wood to the left, parted where they meet, as far
// as they bound wood.
static std::vector<Edge> surface(const Standing& wood) {
  std::vector<Edge> out;
  std::vector<double> at;
  const auto gone = [&](Point p) {
    const auto takes_it = [&](const Swept& swept) { return takes(swept, p, kTaken); };
    return wood.off_blank(p) > kTaken || std::any_of(wood.taken().begin(), wood.taken().end(), takes_it);
  };
  std::vector<Box> boxes;
  for (const Edge& edge : wood.edges()) boxes.emplace_back(edge);
  for (std::size_t one = 0; one < boxes.size(); ++one) {
    const Edge& edge = wood.edges()[one];
    const double whole = length(edge);
    if (whole <= 0) continue;
    at.assign({0, 1});
    for (std::size_t two = 0; two < boxes.size(); ++two) {
      if (!boxes[one].meets(boxes[two])) continue;
      const Edge& other = wood.edges()[two];
      for (const Point p : crossings(edge, other)) at.push_back(fraction(edge, p));
      for (const Point p : {other.from, other.to})
        if (distance(p, edge) <= kOnEdge) at.push_back(fraction(edge, p));
    }
    std::sort(at.begin(), at.end());
    for (std::size_t i = 1; i < at.size(); ++i) {
      const double from = std::max(at[i - 1], 0.0), to = std::min(at[i], 1.0);
      if ((to - from) * whole <= kBeside) continue;
      // It may but touch what it parts from here or there.
      const double in = 0.02 * (to - from);
      const std::array<double, 3> looks{(from + to) / 2, from + in, to - in};
      const auto is_gone = [&](double t) { return gone(point_at(edge, t)); };
      const auto has_wood = [&](double t) {
        const Point along = direction_at(edge, t);
        return in_wood(wood, point_at(edge, t) + kBeside * Point{-along.y, along.x}, kBeside / 10);
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
  std::vector<std::size_t> edges(target.size()), poses(wood.taken().size());
  for (std::size_t i = 0; i < edges.size(); ++i) edges[i] = i;
  for (std::size_t i = 0; i < poses.size(); ++i) poses[i] = i;
  for (const ClipperLib::Path& path : left) {
    if (area_of({path}) <= kSmallPiece) continue;
    Point low = unflatten(path.front()), high = low;
    for (const ClipperLib::IntPoint p : path) {
      const Point q = unflatten(p);
      low = {std::min(low.x, q.x), std::min(low.y, q.y)};
      high = {std::max(high.x, q.x), std::max(high.y, q.y)};
    }
    const double half = std::max(high.x - low.x, high.y - low.y) / 2;
    explore(search, {0.5 * (low + high), half}, edges, poses);
  }
  return search.best;
}

}  // namespace arrisline::replaying
