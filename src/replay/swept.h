// What one pose takes: the sole and all that it passed through on its way in.
#pragma once

#include <vector>

#include "arrisline/plane.h"

namespace arrisline::replaying {

/// The region { at + u·across + v·outward : |u| ≤ width/2, v ≥ f(u) }. `plane` is borrowed.
struct Swept {
  const Plane* plane = nullptr;
  Pose pose;
  std::vector<Edge> bounds;  // the sole, u rising, then the two sides, each `far` mm long
  std::vector<Edge> sole;    // in the plane's own frame (u, v); turns are as in `bounds`
  Point e, a;                // across and outward

  Point local(Point p) const { return {dot(p - pose.at, e), dot(p - pose.at, a)}; }
};

/// REQUIRES: not a scraper; `far` reaches beyond the blank.
Swept sweep_of(const Plane& plane, const Pose& pose, double far);

/// Strictly inside the region by more than `slack` mm, measured across and along the plane.
bool takes(const Swept& swept, Point p, double slack = 0);

/// Points common to two edges, ends included. Edges that lie along one another share none, or by rounding
/// one.
std::vector<Point> crossings(const Edge& a, const Edge& b);

}  // namespace arrisline::replaying
