// Shown by tests/plan/touch_test.cpp.
#include "plan/rest.h"

#include <algorithm>
#include <cmath>

#include "geometry/crossing.h"

namespace arrisline {

double height_at(const Sweep& sweep, Point p) {
  return sweep.v(p) - sole_height(sweep.plane(), sweep.u(p));
}

void peaks(const Measured& measured, const Sweep& sweep, std::vector<double>& ts) {
  const Edge& edge = measured.edge();
  const Plane& plane = sweep.plane();
  if (plane.kind == PlaneKind::shaped) {
    // No closed form over a chain: close enough steps for a peak that is then at an end of a step.
    for (int i = 1; i < 64; ++i) ts.push_back(i / 64.0);
    return;
  }
  extremes_along(measured, sweep.a(), ts);
  if (!plane.is_curved()) return;
  const bool round = plane.kind == PlaneKind::round;
  const Point centre = sweep.pose().at + (round ? plane.radius : -plane.radius) * sweep.a();
  if (!edge.is_arc()) {
    // A straight edge bears where the sole runs parallel to it, on the spoke square to the edge.
    const Point d = direction_at(edge, 0);
    const double len = length(edge);
    if (len == 0) return;
    const Point n = {-d.y, d.x};
    for (const double side : {1.0, -1.0}) {
      const Point p = centre + side * plane.radius * n;
      const double along = dot(sweep.a(), n);
      if (std::abs(along) < 1e-12) continue;
      // The point of the edge with the same u as p: travel from p along a until the edge's line is met.
      const Point q = p + (dot(edge.from - p, n) / along) * sweep.a();
      const double t = dot(q - edge.from, d) / len;
      if (t > 0 && t < 1) ts.push_back(t);
    }
    return;
  }
  // Two arcs bear where their spokes run parallel: at direction s from either centre, with u equal.
  const double r = measured.r();
  const double offset = sweep.u(edge.centre) - sweep.u(centre);
  for (const double same : {1.0, -1.0}) {
    const double denominator = same * plane.radius - r;
    if (std::abs(denominator) < 1e-12) continue;
    const double across_spoke = offset / denominator;  // sine of the spoke's lean from a
    if (std::abs(across_spoke) >= 1) continue;
    const double along_spoke = std::sqrt(1 - across_spoke * across_spoke);
    for (const double up : {1.0, -1.0})
      extremes_along(measured, across_spoke * sweep.e() + up * along_spoke * sweep.a(), ts);
  }
}

namespace {

/// The greatest v − f(u) found so far of wood under the stretch [from, to] of the sole, in its own frame.
class Highest {
 public:
  Highest(const Sweep& sweep, double from, double to)
      : sweep_(sweep), plane_(sweep.plane()), from_(from), to_(to) {
    if (plane_.kind == PlaneKind::round) bend_ = plane_.radius;
    if (plane_.kind == PlaneKind::hollow) {
      bend_ = -plane_.radius;
      lowest_ = sole_height(plane_, sweep.half());
    }
  }

  void edge(const Edge& edge) {
    const Point a = {sweep_.u(edge.from), sweep_.v(edge.from)};
    const Point b = {sweep_.u(edge.to), sweep_.v(edge.to)};
    if (!edge.is_arc()) {
      if (std::max(a.x, b.x) < from_ - kBeside || std::min(a.x, b.x) > to_ + kBeside) return;
      if (std::max(a.y, b.y) - lowest_ <= best) return;
      point(a);
      point(b);
      line(a, b);
      return;
    }
    const double r = radius(edge);
    const Point c = {sweep_.u(edge.centre), sweep_.v(edge.centre)};
    if (c.x + r < from_ || c.x - r > to_ || c.y + r - lowest_ <= best) return;
    point(a);
    point(b);
    arc(edge, c, r);
  }

  double best = kNothing;

 private:
  static constexpr double kBeside = 1e-9;  // mm by which an end may lie beside the stretch and count

  void point(Point uv) {
    if (uv.x < from_ - kBeside || uv.x > to_ + kBeside) return;
    best = std::max(best, uv.y - sole_height(plane_, uv.x));
  }

  /// Where the stretch ends, and where the sole runs parallel to the line.
  void line(Point a, Point b) {
    const double low = std::max(from_, std::min(a.x, b.x));
    const double high = std::min(to_, std::max(a.x, b.x));
    if (high - low < kBeside) return;
    const double slope = (b.y - a.y) / (b.x - a.x);
    auto at = [&](double u) { point({u, a.y + slope * (u - a.x)}); };
    at(low);
    at(high);
    if (bend_ == 0) return;
    const double u = bend_ * slope / std::sqrt(1 + slope * slope);
    if (u > low && u < high) at(u);
  }

  /// Where the stretch ends, and where the sole runs parallel to the arc: there the spokes of both do too.
  void arc(const Edge& edge, Point c, double r) {
    auto at = [&](double u) {
      if (u < from_ || u > to_ || std::abs(u - c.x) > r) return;
      const double rise = std::sqrt(std::max(0.0, r * r - (u - c.x) * (u - c.x)));
      for (const double up : {1.0, -1.0}) {
        if (spoke_meets(edge, (u - c.x) * sweep_.e() + up * rise * sweep_.a())) point({u, c.y + up * rise});
      }
    };
    at(from_);
    at(to_);
    if (bend_ == 0) {
      at(c.x);
      return;
    }
    for (const double same : {1.0, -1.0}) {
      const double gap = bend_ - same * r;
      if (std::abs(gap) > 1e-12) at(c.x * bend_ / gap);
    }
  }

  const Sweep& sweep_;
  const Plane& plane_;
  double from_, to_;
  double bend_ = 0;    // radius of the sole, of a hollow below 0; 0 of a flat
  double lowest_ = 0;  // no part of the sole is lower
};

/// As Highest, for a sole that is a chain: no closed form, so its peaks are looked for step by step.
double highest_on_chain(std::span<const Edge> edges, const Sweep& sweep, double from, double to) {
  double best = kNothing;
  std::vector<double> ts;
  for (const Edge& whole : edges) {
    const Measured edge(whole);
    ts = {0, 1};
    peaks(edge, sweep, ts);
    cross_line(edge, sweep.pose().at + from * sweep.e(), sweep.a(), ts);
    cross_line(edge, sweep.pose().at + to * sweep.e(), sweep.a(), ts);
    for (const double t : ts) {
      const Point p = edge.at(t);
      const double u = sweep.u(p);
      if (u >= from - 1e-9 && u <= to + 1e-9) best = std::max(best, height_at(sweep, p));
    }
  }
  return best;
}

}  // namespace

double rest_height_between(std::span<const Edge> edges, const Sweep& sweep, double from, double to) {
  if (sweep.plane().kind == PlaneKind::shaped) return highest_on_chain(edges, sweep, from, to);
  Highest highest(sweep, from, to);
  for (const Edge& edge : edges) highest.edge(edge);
  return highest.best;
}

double rest_height(std::span<const Edge> edges, const Sweep& sweep) {
  constexpr double kBeside = 1e-7;  // mm from the side within which a corner may belong to a wall
  constexpr double kNoWall =
      0.02;  // mm: the end of an arc that runs up tangent to the side rises no more there
  const double inner = sweep.half() - kBeside;
  double best = rest_height_between(edges, sweep, -inner, inner);
  for (const Edge& edge : edges) {
    for (const Point p : {edge.from, edge.to}) {
      if (std::abs(std::abs(sweep.u(p)) - sweep.half()) > kBeside) continue;
      const double h = height_at(sweep, p);
      if (h > best && h < best + kNoWall) best = h;
    }
  }
  return best;
}

}  // namespace arrisline
