// Soles and poses. Shown by tests/geometry.
#include "arrisline/plane.h"

#include <algorithm>
#include <cmath>

namespace arrisline {

const char* word(PlaneKind kind) {
  switch (kind) {
    case PlaneKind::rebate:
      return "rebate";
    case PlaneKind::plough:
      return "plough";
    case PlaneKind::bench:
      return "bench";
    case PlaneKind::hollow:
      return "hollow";
    case PlaneKind::round:
      return "round";
    case PlaneKind::shaped:
      return "shaped";
    case PlaneKind::scraper:
      return "scraper";
  }
  return "";
}

double Plane::half_arc() const {
  return std::asin(std::min(1.0, width / (2 * radius)));
}

double sagitta(double r, double u) {
  return r - std::sqrt(std::max(0.0, r * r - u * u));
}

static double chain_height(const std::vector<Edge>& chain, double u) {
  for (const Edge& edge : chain) {
    if (u > edge.to.x) continue;
    if (!edge.is_arc()) {
      const double run = edge.to.x - edge.from.x;
      const double t = run > 0 ? std::max(0.0, (u - edge.from.x) / run) : 0;
      return edge.from.y + t * (edge.to.y - edge.from.y);
    }
    const double r = radius(edge);
    const double rise = std::sqrt(std::max(0.0, r * r - (u - edge.centre.x) * (u - edge.centre.x)));
    // With u rising, an arc that turns left is the lower half of its circle.
    return edge.turn == Turn::left ? edge.centre.y - rise : edge.centre.y + rise;
  }
  return chain.empty() ? 0 : chain.back().to.y;
}

bool same_plane(const Plane& a, const Plane& b) {
  return a.kind == b.kind && a.label == b.label && a.width == b.width && a.radius == b.radius;
}

std::optional<Plane> turned(const Plane& plane) {
  constexpr double kAlike = 1e-6;  // mm
  Plane out = plane;
  out.turned = !plane.turned;
  out.sole.assign(plane.sole.rbegin(), plane.sole.rend());
  const auto mirrored = [](Point p) { return Point{-p.x, p.y}; };
  // Mirrored, an arc turns the other way, and run through from its other end the same way again.
  for (Edge& edge : out.sole)
    edge = {mirrored(edge.to), mirrored(edge.from), mirrored(edge.centre), edge.turn};
  const bool alike =
      std::equal(out.sole.begin(), out.sole.end(), plane.sole.begin(), [](const Edge& a, const Edge& b) {
        return a.turn == b.turn && distance(a.from, b.from) < kAlike && distance(a.to, b.to) < kAlike &&
               (!a.is_arc() || distance(a.centre, b.centre) < kAlike);
      });
  if (alike) return std::nullopt;
  return out;
}

double sole_height(const Plane& plane, double u) {
  u = std::clamp(u, -plane.width / 2, plane.width / 2);
  switch (plane.kind) {
    case PlaneKind::round:
      return sagitta(plane.radius, u);
    case PlaneKind::hollow:
      return -sagitta(plane.radius, u);
    case PlaneKind::shaped:
      return chain_height(plane.sole, u);
    default:
      return 0;
  }
}

Point across(double tilt) {
  const double t = to_radians(tilt);
  return {std::cos(t), -std::sin(t)};
}

Point outward(double tilt) {
  return outward_of(across(tilt));
}

double tilt_of(Point n) {
  return wrap_degrees(to_degrees(std::atan2(-n.x, -n.y)));
}

Point to_sole_frame(const Pose& pose, Point p) {
  const Point d = p - pose.at, e = across(pose.tilt);
  return {dot(d, e), dot(d, outward_of(e))};
}

Point from_sole_frame(const Pose& pose, Point uv) {
  const Point e = across(pose.tilt);
  return pose.at + uv.x * e + uv.y * outward_of(e);
}

std::vector<Edge> sole_edges(const Plane& plane, const Pose& pose) {
  const double half = plane.width / 2;
  std::vector<Edge> edges;
  if (plane.kind == PlaneKind::shaped) {
    edges = plane.sole;
  } else {
    Edge edge;
    edge.from = {-half, sole_height(plane, -half)};
    edge.to = {half, sole_height(plane, half)};
    if (plane.kind == PlaneKind::round) {
      edge.centre = {0, plane.radius};
      edge.turn = Turn::left;
    } else if (plane.kind == PlaneKind::hollow) {
      edge.centre = {0, -plane.radius};
      edge.turn = Turn::right;
    }
    edges.push_back(edge);
  }
  const Point e = across(pose.tilt), a = outward_of(e);
  const auto placed = [&](Point uv) { return pose.at + uv.x * e + uv.y * a; };
  for (Edge& edge : edges) {
    edge.from = placed(edge.from);
    edge.to = placed(edge.to);
    edge.centre = placed(edge.centre);
    // The frame (across, outward) is left-handed in plain numbers, so the sense of turn changes.
    if (edge.is_arc()) edge.turn = edge.turn == Turn::left ? Turn::right : Turn::left;
  }
  return edges;
}

}  // namespace arrisline
