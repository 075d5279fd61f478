// Branch and bound along the exact edges. The distance from an outline changes by no more than the way
// travelled, and near one smooth edge by no more than its curvature allows; stretches that cannot hold a
// greater depth than the one in hand are dropped, the rest are halved. Shown by tests/replay.
#include "replay/depth.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace arrisline::replaying {

// Half a hundredth of the least depth that is ever judged (0.01 mm).
static constexpr double kDepthError = 1e-4;
// A stretch as short as this is not halved again: it cannot hide more than its length.
static constexpr double kShortest = 1e-7;
// The foot of a perpendicular may fall this far beyond the end of an edge and still count as on it: the
// distance to the edge is then longer than the perpendicular by less than 1e-7 mm.
static constexpr double kFootSlack = 1e-7;

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

// Distance to the line or circle that carries the edge, or infinity where the foot is not on the edge.
static double from_carrier(Point p, const Edge& edge) {
  constexpr double kNowhere = std::numeric_limits<double>::infinity();
  if (!edge.is_arc()) {
    const Point d = edge.to - edge.from;
    const double n = norm(d);
    const double along = dot(p - edge.from, d) / n;
    if (along < -kFootSlack || along > n + kFootSlack) return kNowhere;
    return std::abs(cross(d, p - edge.from)) / n;
  }
  const double off = std::abs(distance(p, edge.centre) - radius(edge));
  return distance(p, edge) <= off + kFootSlack ? off : kNowhere;
}

// No point of the stretch is farther from this one edge than what is returned.
static double smooth_bound(const Search& search, const Stretch& s, Point middle, double half,
                           const Edge& edge) {
  double bend = search.curvature;
  if (edge.is_arc()) {
    const double nearest = distance(middle, edge.centre) - half;
    if (nearest <= half) return std::numeric_limits<double>::infinity();
    bend += 1 / nearest;
  }
  const double ends = std::max(from_carrier(s.p0, edge), from_carrier(s.p1, edge));
  return ends + bend * half * half / 2;
}

static void explore(Search& search, const Stretch& s, const std::vector<std::size_t>& near) {
  const double middle_t = (s.t0 + s.t1) / 2;
  const Point middle = point_at(search.edge, middle_t);
  const double half = search.whole * (s.t1 - s.t0) / 2;
  std::vector<double> away(near.size());
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < near.size(); ++i) {
    away[i] = distance(middle, search.outline[near[i]]);
    nearest = std::min(nearest, away[i]);
  }
  const double enough = search.best.mm + kDepthError;
  if (nearest + half <= enough) {
    if (nearest > search.best.mm && search.counts(middle)) search.best = {nearest, middle};
    return;
  }
  const bool inside = nearest > search.best.mm && search.counts(middle);
  if (inside) search.best = {nearest, middle};
  if (nearest > half && nearest > search.best.mm && !inside) return;
  if (half <= kShortest) return;
  for (std::size_t i = 0; i < near.size(); ++i)
    if (away[i] <= enough &&
        smooth_bound(search, s, middle, half, search.outline[near[i]]) <= search.best.mm + kDepthError)
      return;
  std::vector<std::size_t> still;
  for (std::size_t i = 0; i < near.size(); ++i)
    if (away[i] <= nearest + 2 * half) still.push_back(near[i]);
  explore(search, {s.t0, middle_t, s.p0, middle}, still);
  explore(search, {middle_t, s.t1, middle, s.p1}, still);
}

namespace {

// A circle that holds an edge: no point of it is farther from its middle than half its length.
struct Round {
  Point middle;
  double reach;
};

}  // namespace

// The edges of the outline that may be nearest to some point within `half` of p.
static std::vector<std::size_t> nearest_of(const std::vector<Round>& rounds, Point p, double half) {
  double surely = std::numeric_limits<double>::infinity();
  for (const Round& round : rounds) surely = std::min(surely, distance(p, round.middle));
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < rounds.size(); ++i)
    if (distance(p, rounds[i].middle) - rounds[i].reach <= surely + 2 * half + kFootSlack) out.push_back(i);
  return out;
}

Depth greatest_distance(std::span<const Edge> edges, std::span<const Edge> outline,
                        const std::function<bool(Point)>& counts, Depth floor) {
  std::vector<Round> rounds;
  for (const Edge& edge : outline) rounds.push_back({point_at(edge, 0.5), length(edge) / 2});
  Depth best = floor;
  Point last;
  double last_at_most = std::numeric_limits<double>::infinity();  // how far `last` may be from the outline
  for (const Edge& edge : edges) {
    const double whole = length(edge);
    if (whole <= 0) continue;
    if (edge.from == last && last_at_most + whole <= best.mm + kDepthError) {
      last = edge.to;
      last_at_most += whole;
      continue;
    }
    Search search{edge, outline, counts, edge.is_arc() ? 1 / radius(edge) : 0, whole, best};
    const std::vector<std::size_t> near = nearest_of(rounds, point_at(edge, 0.5), whole / 2);
    for (const Point end : {edge.from, edge.to}) {
      double here = std::numeric_limits<double>::infinity();
      for (const std::size_t i : near) here = std::min(here, distance(end, outline[i]));
      if (here > search.best.mm && counts(end)) search.best = {here, end};
      last_at_most = here;
    }
    last = edge.to;
    explore(search, {0, 1, edge.from, edge.to}, near);
    best = search.best;
  }
  return best;
}

}  // namespace arrisline::replaying
