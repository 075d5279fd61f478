// The swept region of a pose, and where edges cross. Shown by tests/replay.
#include "replay/swept.h"

#include <cmath>

namespace arrisline::replaying {

// Points are taken to lie on an edge within this: above the rounding of coordinates of a few hundred mm
// (1e-13 each, a few operations), below anything a cut could leave.
static constexpr double kOnEdge = 1e-9;

Swept sweep_of(const Plane& plane, const Pose& pose, double far) {
  Swept out;
  out.plane = &plane;
  out.pose = pose;
  out.bounds = sole_edges(plane, pose);
  out.e = across(pose.tilt);
  out.a = outward(pose.tilt);
  for (Edge edge : out.bounds) {
    edge.from = out.local(edge.from);
    edge.to = out.local(edge.to);
    edge.centre = out.local(edge.centre);
    out.sole.push_back(edge);
  }
  const Point left = out.bounds.front().from;
  const Point right = out.bounds.back().to;
  const Point up = far * outward(pose.tilt);
  out.bounds.push_back({right, right + up, {}, Turn::straight});
  out.bounds.push_back({left + up, left, {}, Turn::straight});
  return out;
}

bool takes(const Swept& swept, Point p, double slack) {
  const Point uv = swept.local(p);
  return std::abs(uv.x) < swept.plane->width / 2 - slack && uv.y > sole_height(*swept.plane, uv.x) + slack;
}

static bool lies_on(const Edge& edge, Point p) {
  return distance(p, edge) <= kOnEdge;
}

// What comes nearest where two edges do not meet lies on neither.
static void keep(std::vector<Point>& out, const Edge& a, const Edge& b, Point p) {
  if (lies_on(a, p) && lies_on(b, p)) out.push_back(p);
}

static void line_and_line(const Edge& a, const Edge& b, std::vector<Point>& out) {
  const Point da = a.to - a.from, db = b.to - b.from;
  // Side by side they meet nowhere: what is endless or no number lies on neither.
  keep(out, a, b, a.from + (cross(b.from - a.from, db) / cross(da, db)) * da);
}

static void line_and_arc(const Edge& line, const Edge& arc, std::vector<Point>& out) {
  const Point d = direction_at(line, 0);
  const double along = dot(arc.centre - line.from, d);
  const double off = cross(d, arc.centre - line.from);
  const double r = radius(arc);
  const double half = std::sqrt(std::max(0.0, r * r - off * off));
  keep(out, line, arc, line.from + (along - half) * d);
  keep(out, line, arc, line.from + (along + half) * d);
}

static void arc_and_arc(const Edge& a, const Edge& b, std::vector<Point>& out) {
  const Point d = b.centre - a.centre;
  const double apart = norm(d), ra = radius(a), rb = radius(b);
  if (apart <= kOnEdge) return;
  const double along = (apart * apart + ra * ra - rb * rb) / (2 * apart);
  const double half = std::sqrt(std::max(0.0, ra * ra - along * along));
  const Point axis = (1 / apart) * d, side{-axis.y, axis.x};
  keep(out, a, b, a.centre + along * axis + half * side);
  keep(out, a, b, a.centre + along * axis - half * side);
}

std::vector<Point> crossings(const Edge& a, const Edge& b) {
  std::vector<Point> out;
  if (a.is_arc() && b.is_arc()) {
    arc_and_arc(a, b, out);
  } else if (a.is_arc()) {
    line_and_arc(b, a, out);
  } else if (b.is_arc()) {
    line_and_arc(a, b, out);
  } else {
    line_and_line(a, b, out);
  }
  return out;
}

}  // namespace arrisline::replaying
