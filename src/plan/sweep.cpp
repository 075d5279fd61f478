// The region of a pose. Shown by tests/plan/wood_test.cpp.
#include "plan/sweep.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/crossing.h"

namespace arrisline {

bool lies_beside(const Measured& measured, Point at, Point e, double reach) {
  const Edge& edge = measured.edge();
  double low, high;
  if (edge.is_arc()) {
    const double middle = dot(edge.centre - at, e);
    low = middle - measured.r();
    high = middle + measured.r();
  } else {
    low = dot(edge.from - at, e);
    high = dot(edge.to - at, e);
    if (low > high) std::swap(low, high);
  }
  return low > reach || high < -reach;
}

Sweep::Sweep(const Plane& plane, const Pose& pose)
    : plane_(&plane), pose_(pose), half_(plane.width / 2), e_(across(pose.tilt)), a_(outward_of(e_)) {
  if (plane.kind == PlaneKind::round) centre_ = pose.at + plane.radius * a_;
  if (plane.kind == PlaneKind::hollow) centre_ = pose.at - plane.radius * a_;
  if (plane.kind == PlaneKind::shaped) sole_ = sole_edges(plane, pose);
}

/// Its sole may be steep: the height over it tells the side, and not how far off it is.
double Sweep::depth_over_shape(Point p) const {
  return std::copysign(distance(p, sole_), v(p) - sole_height(*plane_, u(p)));
}

bool Sweep::clear_of(const Measured& measured, double by) const {
  if (lies_beside(measured, pose_.at, e_, half_ + by)) return true;
  const double lowest = plane_->kind == PlaneKind::hollow ? sole_height(*plane_, half_) : 0;
  const Edge& edge = measured.edge();
  const double top = edge.is_arc() ? v(edge.centre) + measured.r() : std::max(v(edge.from), v(edge.to));
  return top < lowest - by;
}

std::vector<Edge> Sweep::boundary(double far) const {
  std::vector<Edge> chain;
  add_boundary(far, chain);
  return chain;
}

void Sweep::add_boundary(double far, std::vector<Edge>& chain) const {
  const std::size_t first = chain.size();
  chain.push_back({pose_.at - half_ * e_ + far * a_, {}, {}, Turn::straight});
  if (plane_->kind == PlaneKind::shaped) {
    chain.insert(chain.end(), sole_.begin(), sole_.end());
  } else {
    chain.push_back(own_sole());
  }
  chain[first].to = chain[first + 1].from;
  chain.push_back({chain.back().to, pose_.at + half_ * e_ + far * a_, {}, Turn::straight});
}

/// sole_edges() of a sole that is not shaped, told from what is worked out already.
Edge Sweep::own_sole() const {
  const Point up = sole_height(*plane_, half_) * a_;
  Edge sole = {pose_.at - half_ * e_ + up, pose_.at + half_ * e_ + up, centre_, Turn::straight};
  if (plane_->kind == PlaneKind::round) sole.turn = Turn::right;
  if (plane_->kind == PlaneKind::hollow) sole.turn = Turn::left;
  return sole;
}

void Sweep::crossings(const Measured& edge, double inset, std::vector<double>& ts) const {
  cross_line(edge, pose_.at + (half_ - inset) * e_, a_, ts);
  cross_line(edge, pose_.at - (half_ - inset) * e_, a_, ts);
  switch (plane_->kind) {
    case PlaneKind::round:
      cross_circle(edge, centre_, plane_->radius - inset, ts);
      break;
    case PlaneKind::hollow:
      cross_circle(edge, centre_, plane_->radius + inset, ts);
      break;
    case PlaneKind::shaped:
      // The region is to the right of its sole.
      for (const Edge& part : sole_) {
        if (part.is_arc()) {
          const double r = radius(part) + (part.turn == Turn::left ? inset : -inset);
          if (r > 0) cross_circle(edge, part.centre, r, ts);
        } else if (!(part.from == part.to)) {
          const Point along = direction_at(part, 0);
          cross_line(edge, part.from + inset * Point{along.y, -along.x}, along, ts);
        }
        if (inset > 0) cross_circle(edge, part.from, inset, ts);
      }
      break;
    default:
      cross_line(edge, pose_.at + inset * a_, e_, ts);
  }
}

void Sweep::partings(const Measured& edge, std::vector<double>& ts) const {
  part_line(edge, pose_.at + half_ * e_, a_, ts);
  part_line(edge, pose_.at - half_ * e_, a_, ts);
  if (plane_->is_curved()) {
    part_circle(edge, centre_, plane_->radius, ts);
  } else if (plane_->kind == PlaneKind::shaped) {
    for (const Edge& part : sole_) part_carrier(edge, part, ts);
  } else {
    part_line(edge, pose_.at, e_, ts);
  }
}

Sweep Sweep::lifted(double height) const {
  return Sweep(*plane_, {pose_.at + height * a_, pose_.tilt});
}

}  // namespace arrisline
