// Plans made by hand on 3/4 in stock, and the parts they are made of. Every figure in them is computed from
// the drawing by the formulas beside it, not by the program under test.
#pragma once

#include <cmath>

#include "arrisline/plan.h"

namespace arrisline::plans {

inline constexpr double kSix = 9.525;        // radius and width of a No. 6, 3/8 in
inline constexpr double kThickness = 19.05;  // 3/4 in
inline constexpr double kWidth = 50.8;       // 2 in
inline constexpr double kRebateWidth = 19.05;

inline Plane rebate() {
  Plane plane;
  plane.kind = PlaneKind::rebate;
  plane.label = "rebate 3/4";
  plane.width = kRebateWidth;
  return plane;
}

inline Plane curved(PlaneKind kind, double radius = kSix) {
  Plane plane;
  plane.kind = kind;
  plane.label = std::string(word(kind)) + " 6";
  plane.number = 6;
  plane.radius = radius;
  plane.width = radius;
  return plane;
}

/// The pose at which the sole of a hollow lies on the circle about `centre`, its middle at `tilt`.
inline Pose hollow_on(Point centre, double radius, double tilt) {
  return {centre + radius * outward(tilt), tilt};
}
/// The same for a round in a cove.
inline Pose round_in(Point centre, double radius, double tilt) {
  return {centre - radius * outward(tilt), tilt};
}

/// A rebate with its corner at (x, y): the plane upright, its wall at x, its floor at y.
inline Pose rebate_pose(double x, double y) {
  return {{x - kRebateWidth / 2, y}, 0};
}

inline Cut cut(int number, Plane plane, std::vector<Pose> poses, double removed, Rides rides) {
  Cut out;
  out.number = number;
  out.plane = std::move(plane);
  out.poses = poses;
  out.set = std::move(poses);
  out.removed = removed;
  out.rides = rides;
  out.made_for = out.plane.is_flat() ? "waste" : "element 1";
  if (!out.plane.is_flat()) out.elements = {0};
  out.reason = "by hand";
  return out;
}

inline Section quarter_section(const char* name, Turn turn, double r) {
  Section section;
  section.name = name;
  section.width = kWidth;
  section.thickness = kThickness;
  const Point centre = turn == Turn::left ? Point{r, r} : Point{0, 0};
  section.target = {{{r, 0}, {kWidth, 0}, {}, Turn::straight},
                    {{kWidth, 0}, {kWidth, kThickness}, {}, Turn::straight},
                    {{kWidth, kThickness}, {0, kThickness}, {}, Turn::straight},
                    {{0, kThickness}, {0, r}, {}, Turn::straight},
                    {{0, r}, {r, 0}, centre, turn}};
  section.source = {-1, -1, -1, -1, 0};
  Element element;
  element.number = 1;
  element.name = turn == Turn::left ? "bead" : "cavetto";
  section.elements = {element};
  return section;
}

/// A step in the edge, `out` wide from it and `down` deep.
inline Section step_section(double out, double down) {
  Section s;
  s.width = kWidth;
  s.thickness = kThickness;
  s.target = {{{out, 0}, {s.width, 0}, {}, Turn::straight},
              {{s.width, 0}, {s.width, s.thickness}, {}, Turn::straight},
              {{s.width, s.thickness}, {0, s.thickness}, {}, Turn::straight},
              {{0, s.thickness}, {0, down}, {}, Turn::straight},
              {{0, down}, {out, down}, {}, Turn::straight},
              {{out, down}, {out, 0}, {}, Turn::straight}};
  s.source = {-1, -1, -1, -1, -1, -1};
  return s;
}

/// Adds a scraper that takes what the plan says is left.
inline void scrape_the_rest(Plan& plan) {
  Plane scraper;
  scraper.kind = PlaneKind::scraper;
  plan.cuts.push_back(
      cut(static_cast<int>(plan.cuts.size()) + 1, scraper, {}, plan.left.area, Rides::by_hand));
  plan.left.scrape = true;
}

/// Round-over of r, half the thickness unless given: one chamfer at 45° tangent to the bead, then the hollow
/// at 45, 30, 60. The waste of a 90° bead is R²(1 − π/4); the tangent chamfer takes the triangle of legs R(2
/// − √2).
inline Plan round_over(double r = kSix) {
  const Point centre{r, r};
  const double waste = r * r * (1 - kPi / 4);
  const double leg = r * (2 - std::sqrt(2.0));
  const double chamfer = leg * leg / 2;
  Plan plan;
  plan.section = quarter_section("round-over", Turn::left, r);
  plan.feasible = true;
  plan.cuts = {cut(1, rebate(), {{centre + r * outward(45), 45}}, chamfer, Rides::gauge_line),
               cut(2, curved(PlaneKind::hollow, r),
                   {hollow_on(centre, r, 45), hollow_on(centre, r, 30), hollow_on(centre, r, 60)},
                   waste - chamfer, Rides::two_arrises)};
  plan.waste_area = waste;
  plan.waste_by_flat = chamfer;
  return plan;
}

/// The same with two chamfers, tangent at 30 and 60 degrees. Each takes a triangle with legs r(√3 − 1) and
/// r(√3 − 1)/√3 off the square arris; their lines meet at r(√3 − 1)/(√3 + 1) from both sides.
inline Plan round_over_two_chamfers(double r = kSix) {
  const double root = std::sqrt(3.0);
  const Point centre{r, r};
  const double leg = r * (root - 1), meet = r * (root - 1) / (root + 1);
  const double first = leg * leg / root / 2, shared = meet * leg / root;
  Plan plan = round_over(r);
  plan.waste_by_flat = 2 * first - shared;
  plan.cuts = {cut(1, rebate(), {{centre + r * outward(30), 30}}, first, Rides::gauge_line),
               cut(2, rebate(), {{centre + r * outward(60), 60}}, first - shared, Rides::gauge_line),
               cut(3, curved(PlaneKind::hollow, r), {hollow_on(centre, r, 30), hollow_on(centre, r, 60)},
                   plan.waste_area - plan.waste_by_flat, Rides::two_arrises)};
  return plan;
}

/// The hollow turned one way in one cut and the other way in the next, which rides in the arc of the first.
inline Plan round_over_in_two_cuts() {
  const double r = kSix;
  Plan plan = round_over();
  Cut& first = plan.cuts[1];
  Cut second = first;
  second.number = 3;
  second.poses = second.set = {first.poses[2]};
  second.rides = Rides::own_arc;
  first.poses.pop_back();
  first.set.pop_back();
  // At 45 degrees the sole ends 75 degrees round, and its side rises to the working edge at 45 degrees. What
  // is left for the second cut lies between that side, the edge and the last 15 degrees of the arc.
  const double in = r * (1 - std::sin(to_radians(75))), down = r * (1 - std::cos(to_radians(75)));
  const double above = down - in;  // depth at which the side meets the working edge
  const double trapezium = (r - above + r - down) / 2 * in;
  const double segment = r * r * (to_radians(15) - std::sin(to_radians(15))) / 2;
  const double chord = (r - down) * in / 2;
  second.removed = trapezium - chord - segment;
  first.removed -= second.removed;
  plan.cuts.push_back(second);
  return plan;
}

/// The corner of a rebate whose corner lies on the arc of the cavetto of R about the outer corner of the
/// stock, `angle` up from the face.
inline Point on_cavetto(double r, double angle) {
  return {r * std::cos(to_radians(angle)), r * std::sin(to_radians(angle))};
}

/// A cavetto from `rebates` with corners on its arc, shallowest first, then the round at 45, 30, 60.
inline Plan cavetto(const std::vector<double>& angles, double r = kSix) {
  Plan plan;
  plan.section = quarter_section("cavetto", Turn::right, r);
  plan.feasible = true;
  double taken = 0, depth = 0;
  int number = 0;
  for (const double angle : angles) {
    const Point corner = on_cavetto(r, angle);
    const double removed = corner.x * (corner.y - depth);
    depth = corner.y;
    taken += removed;
    plan.cuts.push_back(
        cut(++number, rebate(), {rebate_pose(corner.x, corner.y)}, removed, Rides::gauge_line));
  }
  const double waste = kPi * r * r / 4;
  plan.cuts.push_back(cut(++number, curved(PlaneKind::round, r),
                          {round_in({0, 0}, r, 45), round_in({0, 0}, r, 30), round_in({0, 0}, r, 60)},
                          waste - taken, Rides::two_arrises));
  plan.waste_area = waste;
  plan.waste_by_flat = taken;
  return plan;
}

inline Plan cavetto_one(double r = kSix) {
  return cavetto({45}, r);
}
inline Plan cavetto_two(double r = kSix) {
  // Equal rebates: of one width and one depth each, so that the first corner mirrors the second.
  return cavetto({30, 60}, r);
}
inline Plan cavetto_three(double r = kSix) {
  return cavetto({22.5, 45, 67.5}, r);
}

}  // namespace arrisline::plans
