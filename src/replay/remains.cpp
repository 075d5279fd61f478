// The thickest place lies on the surface of what is left, except where the target closes round it (a groove
// wider within than at its mouth); so the surface is searched first, and then the inside for anything
// thicker, square by square on the exact figures. Shown by tests/replay.
#include "replay/remains.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline::replaying {

// The inside need only be known to a fifth of what a stated height may be off.
static constexpr double kInsideError = 0.002;
// A piece no larger than this holds no circle of 0.01 mm radius, so nothing thick hides in it.
static constexpr double kSmallPiece = 3e-4;
// Where two outlines flattened apart meet, or two sides on one line, the clipper leaves slivers and fins a
// grid unit or two wide: no wood.
static constexpr double kSliver = 1e-5;

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
  if (!in_target && !taken && nearest > search.best.mm && search.wood.solid(c)) search.best = {nearest, c};
  if (reach <= kInsideError / 4) return;
  std::vector<std::size_t> near_edges;
  for (std::size_t i = 0; i < edges.size(); ++i)
    if (away[i] <= nearest + 2 * reach) near_edges.push_back(edges[i]);
  const double h = square.half / 2;
  for (const Point corner : {Point{-h, -h}, Point{h, -h}, Point{-h, h}, Point{h, h}})
    explore(search, {c + corner, h}, near_edges, near_poses);
}

Depth thickest_left(const Standing& wood, const Loop& target, const ClipperLib::Paths& all_left) {
  const ClipperLib::Paths left = without_fins(all_left, kSliver);
  const auto anywhere = [](Point) { return true; };
  Depth best;
  for (const ClipperLib::Path& path : left) {
    std::vector<Edge> edges;
    for (std::size_t i = 0; i < path.size(); ++i)
      edges.push_back({unflatten(path[i]), unflatten(path[(i + 1) % path.size()]), {}, Turn::straight});
    best = greatest_distance(edges, target, anywhere, best);
  }
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
