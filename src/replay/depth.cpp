// Branch and bound along the exact edges. The distance from an outline changes by no more than the way
// travelled, and near one smooth edge by no more than its curvature allows; stretches that cannot hold a
// greater depth than the one in hand are dropped, the rest are halved. Shown by tests/replay.
#include "replay/depth.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace arrisline::replaying {

// Half a hundredth of the least depth that is ever judged (0.01 mm).
static constexpr double kDepthError = 1e-4;

namespace {

struct Search {
  const Edge& edge;
  std::span<const Edge> outline;
  const std::function<bool(Point)>& counts;
  double curvature;  // of `edge`
  double whole;      // length of `edge`
  Depth best;
};

struct Stretch {
  double t0, t1;
  Point p0, p1;
};

}  // namespace

std::vector<const Edge*> each_of(std::span<const Edge> edges) {
  std::vector<const Edge*> out;
  for (const Edge& edge : edges) out.push_back(&edge);
  return out;
}

Nearest nearest_about(const std::vector<const Edge*>& edges, Point p, double reach) {
  Nearest out;
  std::vector<double> away;
  for (const Edge* edge : edges) away.push_back(distance(p, *edge));
  for (const double one : away) out.mm = std::min(out.mm, one);
  for (std::size_t i = 0; i < edges.size(); ++i)
    if (away[i] <= out.mm + 2 * reach) out.edges.push_back(edges[i]);
  return out;
}

// Distance to the line or circle that carries the edge, or infinity where the foot is not on the edge.
static double from_carrier(Point p, const Edge& edge) {
  if (!edge.is_arc()) {
    const Point d = direction_at(edge, 0), q = p - edge.from;
    const double along = dot(q, d);
    return along < 0 || along >= length(edge) ? kEndless : std::abs(cross(d, q));
  }
  const Point spoke = p - edge.centre;
  return spoke_meets(edge, spoke) ? std::abs(norm(spoke) - radius(edge)) : kEndless;
}

// No point of the stretch is farther from this one edge than what is returned.
static double smooth_bound(const Search& search, const Stretch& s, Point middle, double half,
                           const Edge& edge) {
  double bend = search.curvature;
  if (edge.is_arc()) {
    const double nearest = distance(middle, edge.centre) - half;
    if (nearest <= 0) return kEndless;
    bend += 1 / nearest;
  }
  const double ends = std::max(from_carrier(s.p0, edge), from_carrier(s.p1, edge));
  return ends + bend * half * half / 2;
}

// `near`: the edges of the outline that may be nearest to a point of the stretch.
static void explore(Search& search, const Stretch& s, const std::vector<const Edge*>& near) {
  const double middle_t = (s.t0 + s.t1) / 2;
  const Point middle = point_at(search.edge, middle_t);
  const double half = search.whole * (s.t1 - s.t0) / 2;
  const auto [nearest, still] = nearest_about(near, middle, half);
  if (nearest > search.best.mm) {
    if (search.counts(middle)) {
      search.best = {nearest, middle};
    } else if (nearest > half) {
      return;  // no edge crosses the outline so near
    }
  }
  const double enough = search.best.mm + kDepthError;
  if (nearest + half <= enough) return;
  for (const Edge* edge : still)
    if (smooth_bound(search, s, middle, half, *edge) <= enough) return;
  explore(search, {s.t0, middle_t, s.p0, middle}, still);
  explore(search, {middle_t, s.t1, middle, s.p1}, still);
}

Depth greatest_distance(std::span<const Edge> edges, std::span<const Edge> outline,
                        const std::function<bool(Point)>& counts, Depth floor) {
  const std::vector<const Edge*> all = each_of(outline);
  for (const Edge& edge : edges) {
    for (const Point end : {edge.from, edge.to})
      if (const double away = distance(end, outline); away > floor.mm && counts(end)) floor = {away, end};
    Search search{edge, outline, counts, edge.is_arc() ? 1 / radius(edge) : 0, length(edge), floor};
    explore(search, {0, 1, edge.from, edge.to}, all);
    floor = search.best;
  }
  return floor;
}

}  // namespace arrisline::replaying
