// Shown by tests/plan/rails_test.cpp.
#include "plan/rail_cuts.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {

std::vector<Draft> flat_draft(int plane, std::vector<Pose> poses) {
  std::vector<Draft> out(1);
  out.front().plane = plane;
  out.front().poses = std::move(poses);
  return out;
}

std::vector<Draft> both(std::vector<Draft> a, std::vector<Draft> b) {
  if (a.empty() || b.empty()) return {};
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

RailCuts::RailCuts(const Problem& problem, const Surface& arc, std::vector<int> square)
    : problem_(problem),
      arc_(arc),
      centre_(problem.edge(arc).centre),
      radius_(radius(problem.edge(arc))),
      flats_(rebate_planes(problem)),
      square_(std::move(square)) {}

void RailCuts::turn_to(double tilt) {
  frame_ = std::abs(wrap_degrees(tilt)) <= 90 + 1e-9 ? 0 : 180;
  e_ = across(frame_);
  a_ = outward(frame_);
}

Point RailCuts::on_circle(double lean, double share) const {
  return centre_ + (arc_.bead ? 1.0 : -1.0) * share * radius_ * outward(lean);
}

std::vector<Draft> RailCuts::step(double wall_u, double floor_v) const {
  for (const int p : square_) {
    const Plane& plane = problem_.plane(p);
    if (trenches_ && plane.kind == PlaneKind::plough) {
      std::vector<Draft> trench;
      for (const Pose& pose : grooves(problem_, plane, frame_, wall_u, open_, floor_v))
        trench.push_back(flat_draft(p, {pose}).front());
      if (!trench.empty()) return trench;
      continue;
    }
    std::vector<Pose> poses = flat_cut(problem_, plane, frame_, wall_u, open_, floor_v);
    if (!poses.empty()) return flat_draft(p, std::move(poses));
  }
  return {};
}

std::vector<Draft> RailCuts::floor_step(double near_u, double floor_v) const {
  constexpr double kAbove = 1e-6;  // mm by which rounding may lift what stands level with the floor
  double reach = std::numeric_limits<double>::infinity();
  auto consider = [&](Point uv) {
    if (uv.y <= floor_v + kAbove) return;
    const double in = -open_ * (uv.x - near_u);
    if (in > -kAbove) reach = std::min(reach, in);
  };
  for (const Edge& edge : problem_.section.target) {
    const Point from = {u(edge.from), v(edge.from)};
    const Point to = {u(edge.to), v(edge.to)};
    consider(from);
    consider(to);
    if (!edge.is_arc()) {
      auto cross_at = [&](double share) {
        if (share > 0 && share < 1)
          consider({from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)});
      };
      // Just above the floor, and straight above the near end.
      if (from.y != to.y) cross_at((floor_v + 2 * kAbove - from.y) / (to.y - from.y));
      if (from.x != to.x) cross_at((near_u - from.x) / (to.x - from.x));
      continue;
    }
    const Point c = {u(edge.centre), v(edge.centre)};
    const double r = radius(edge);
    auto at_spoke = [&](double across_spoke, double up) {
      if (spoke_meets(edge, across_spoke * e_ + up * a_)) consider({c.x + across_spoke, c.y + up});
    };
    at_spoke(r, 0);
    at_spoke(-r, 0);
    const double up = floor_v + 2 * kAbove - c.y;
    const double along = near_u - c.x;
    for (const double side : {1.0, -1.0}) {
      if (std::abs(up) < r) at_spoke(side * std::sqrt(r * r - up * up), up);
      if (std::abs(along) < r) at_spoke(along, side * std::sqrt(r * r - along * along));
    }
  }
  if (!std::isfinite(reach)) return {};
  double wall = near_u - open_ * std::max(0.0, reach);
  for (const Edge& edge : problem_.section.target) {
    const double corner = u(edge.from);
    if (std::abs(corner - wall) < 1e-5) wall = corner;
  }
  return step(wall, floor_v);
}

std::vector<Draft> RailCuts::corner(double lean, double share) const {
  const Point k = on_circle(lean, share);
  return step(u(k), v(k));
}

std::vector<Draft> RailCuts::chamfer(double lean, double off) const {
  for (const int p : flats_) {
    std::vector<Pose> poses = chamfer_on_arc(problem_, arc_, problem_.plane(p), lean, off);
    if (!poses.empty()) return flat_draft(p, std::move(poses));
  }
  return {};
}

}  // namespace arrisline
