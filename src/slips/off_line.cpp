// Branch and bound along the drawn line for what is lost, and along the surface of the wood for what is left.
// A stretch is bounded by its ends: the distance to a segment or a point grows outward from its least along a
// straight way, and the distance to a circle is bounded by the chord's own least. Shown by
// tests/slips/off_line_test.cpp.
#include "slips/off_line.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"
#include "plan/wood.h"

namespace arrisline {

namespace {

constexpr double kFound = 1e-3;       // mm, to which the worst is found
constexpr double kAsNear = 1e-6;      // mm: two elements as near as that are both the nearest
constexpr double kOnLine = 1e-4;      // mm from the line that is on it
constexpr double kNoStretch = 1e-5;   // mm of way that hides nothing worth looking for
constexpr double kEverything = 1e12;  // mm, beyond any distance

/// Angle of p about the arc's centre from the arc's start, in the arc's own sense, [0, 2π).
double turned_to(const Edge& arc, Point p) {
  const Point a = arc.from - arc.centre;
  const Point q = p - arc.centre;
  double angle = std::atan2(cross(a, q), dot(a, q));
  if (arc.turn == Turn::right) angle = -angle;
  return angle < 0 ? angle + 2 * kPi : angle;
}

/// No point of the straight way from p to q is farther from the edge than this.
double farthest(const Edge& edge, Point p, Point q) {
  if (!edge.is_arc()) return std::max(distance(p, edge), distance(q, edge));
  const double all = std::abs(sweep(edge));
  const double at_p = turned_to(edge, p);
  const double at_q = turned_to(edge, q);
  if (at_p <= all && at_q <= all && std::abs(at_p - at_q) < kPi) {
    const double r = radius(edge);
    const double nearest = distance(edge.centre, Edge{p, q, {}, Turn::straight});
    return std::max({distance(edge.centre, p) - r, distance(edge.centre, q) - r, r - nearest});
  }
  return std::min(std::max(distance(p, edge.from), distance(q, edge.from)),
                  std::max(distance(p, edge.to), distance(q, edge.to)));
}

double farthest(const std::vector<Edge>& edges, Point p, Point q) {
  double out = kEverything;
  for (const Edge& edge : edges) out = std::min(out, farthest(edge, p, q));
  return out;
}

double distance_to(const std::vector<Edge>& edges, Point p) {
  double out = kEverything;
  for (const Edge& edge : edges) out = std::min(out, distance(p, edge));
  return out;
}

/// How far the edge bulges from its chord between fractions t0 and t1.
double bulge(const Edge& edge, double t0, double t1) {
  if (!edge.is_arc()) return 0;
  const double half = std::abs(sweep(edge)) * (t1 - t0) / 2;
  return half < kPi / 2 ? radius(edge) * (1 - std::cos(half)) : 2 * radius(edge);
}

/// Raises `best` to the greatest distance from the edges of any point of `line` between t0 and t1.
void seek_lost(const Edge& line, double t0, double t1, double len, const std::vector<Edge>& edges,
               double& best) {
  const Point p = point_at(line, t0);
  const Point q = point_at(line, t1);
  if ((t1 - t0) * len < kNoStretch) return;
  if (farthest(edges, p, q) + bulge(line, t0, t1) <= best + kFound) return;
  const double t = (t0 + t1) / 2;
  best = std::max(best, distance_to(edges, point_at(line, t)));
  seek_lost(line, t0, t, len, edges, best);
  seek_lost(line, t, t1, len, edges, best);
}

class Leavings {
 public:
  Leavings(const Section& section, std::vector<OffLine>& out) : section_(section), out_(out) {}

  void seek(const Edge& piece) {
    const double len = length(piece);
    for (const double t : {0.0, 0.5, 1.0}) look(point_at(piece, t));
    seek(piece, 0, 1, len);
  }

 private:
  const Edge& edge(std::size_t i) const { return section_.target[i]; }

  void look(Point p) {
    const double d = distance(p, section_.target);
    if (d <= kOnLine || contains(section_.target, p)) return;
    for (std::size_t i = 0; i < section_.target.size(); ++i) {
      if (section_.source[i] < 0 || distance(p, edge(i)) > d + kAsNear) continue;
      double& left = out_[static_cast<std::size_t>(section_.source[i])].left;
      left = std::max(left, d);
    }
  }

  void seek(const Edge& piece, double t0, double t1, double len) {
    const double reach = (t1 - t0) * len / 2;
    if (2 * reach < kNoStretch) return;
    const double t = (t0 + t1) / 2;
    const Point m = point_at(piece, t);
    const double d = distance(m, section_.target);
    const bool inside = contains(section_.target, m);
    if (inside && d > reach) return;
    const double most =
        std::min(d + reach,
                 farthest(section_.target, point_at(piece, t0), point_at(piece, t1)) + bulge(piece, t0, t1));
    bool more = false;
    for (std::size_t i = 0; i < section_.target.size() && !more; ++i) {
      if (section_.source[i] < 0) continue;
      if (most <= out_[static_cast<std::size_t>(section_.source[i])].left + kFound) continue;
      more = distance(m, edge(i)) - d <= 2 * reach + kAsNear;
    }
    if (!more) return;
    look(m);
    seek(piece, t0, t, len);
    seek(piece, t, t1, len);
  }

  const Section& section_;
  std::vector<OffLine>& out_;
};

/// The piece lies along the target from end to end.
bool on_target(const Edge& piece, const Loop& target) {
  return std::any_of(target.begin(), target.end(), [&](const Edge& edge) {
    return farthest(edge, piece.from, piece.to) + bulge(piece, 0, 1) < kOnLine ||
           (edge.is_arc() == piece.is_arc() && distance(piece.from, edge) < kSame &&
            distance(piece.to, edge) < kSame && distance(point_at(piece, 0.5), edge) < kSame);
  });
}

}  // namespace

std::vector<OffLine> off_line(const Section& section, const std::vector<Sweep>& sweeps) {
  std::vector<OffLine> out(section.elements.size());
  Wood kept(section.target);
  Wood wood(blank_outline(section.width, section.thickness));
  for (const Sweep& sweep : sweeps) {
    kept.cut(sweep);
    wood.cut(sweep);
  }
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] < 0) continue;
    const Edge& line = section.target[i];
    double& lost = out[static_cast<std::size_t>(section.source[i])].lost;
    if (kept.edges().empty()) {
      lost = std::max(section.width, section.thickness);
      continue;
    }
    for (const double t : {0.0, 0.5, 1.0})
      lost = std::max(lost, distance_to(kept.edges(), point_at(line, t)));
    seek_lost(line, 0, 1, length(line), kept.edges(), lost);
  }
  Leavings leavings(section, out);
  for (const Edge& piece : wood.edges()) {
    if (!on_target(piece, section.target)) leavings.seek(piece);
  }
  return out;
}

}  // namespace arrisline
