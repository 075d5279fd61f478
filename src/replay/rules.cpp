// Rules 1, 3 and 5 of docs/model.md one by one. Shown by tests/replay.
#include "replay/rules.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "wording/figures.h"

namespace arrisline::replaying {

// The outline of the target may stand out of the blank by its own rounding only.
static constexpr double kOutside = 1e-6;
// Areas of one outline, exact and flattened, differ by less than the chord error times its length.
static constexpr double kFlatShare = 0.0007;
// A body may come this near to the wood: what rule 1 allows the sole.
static constexpr double kBodySlack = 0.01;
// The share of an arc that must be finished by a sole with a curve. The rest may be reached by the flats
// beside it.
static constexpr double kArcShare = 0.5;
static constexpr int kArcLooks = 60;
// Square to a side, degrees: a plough's fence leans less than can be seen.
static constexpr double kSquare = 0.01;
// Lengths such as reach and depth, mm.
static constexpr double kReachSlack = 0.01;
// A wall is looked for this far to each side of the plane's own side, and has to stand this high, mm.
static constexpr double kBesideWall = 0.02;
static constexpr double kLeastWall = 0.02;
// A plane on its side is at 90°; a degree more cannot be seen.
static constexpr double kOnItsSide = 91;
// Figures that are meant to be the same.
static constexpr double kSameFigure = 1e-6;

std::string figure(double value) {
  return fixed(value, std::abs(value) >= 0.1 || value == 0 ? 2 : 4);
}

std::string near(Point p) {
  return "near x " + fixed(p.x, 2) + ", y " + fixed(p.y, 2);
}

static bool finite(Point p) {
  return std::isfinite(p.x) && std::isfinite(p.y);
}

static bool finite(const std::vector<Edge>& edges) {
  return std::all_of(edges.begin(), edges.end(), [](const Edge& edge) {
    return finite(edge.from) && finite(edge.to) &&
           (!edge.is_arc() || (finite(edge.centre) && radius(edge) > 0));
  });
}

static bool finite(const std::vector<Pose>& poses) {
  return std::all_of(poses.begin(), poses.end(),
                     [](const Pose& pose) { return finite(pose.at) && std::isfinite(pose.tilt); });
}

static bool usable(const Plane& plane) {
  if (plane.kind == PlaneKind::scraper) return true;
  if (!(plane.width > 0) || !std::isfinite(plane.width)) return false;
  if (plane.is_curved())
    return std::isfinite(plane.radius) && plane.radius > 0 && plane.width <= 2 * plane.radius * (1 + 1e-12);
  if (plane.kind == PlaneKind::shaped) return !plane.sole.empty() && finite(plane.sole);
  return true;
}

std::vector<Finding> unusable(const Plan& plan) {
  std::vector<Finding> out;
  const Section& section = plan.section;
  const auto find = [&](int cut, const char* text) { out.push_back({cut, 0, text}); };
  if (!(section.width > 0 && section.thickness > 0 && std::isfinite(section.width) &&
        std::isfinite(section.thickness)))
    find(0, "the stock has no size");
  if (section.target.size() < 2 || !finite(section.target)) find(0, "the target is not an outline");
  for (const double value :
       {plan.left.max_height, plan.left.area, plan.left.as_set_max_height, plan.left.as_set_deepest_gouge,
        plan.waste_area, plan.waste_by_flat, plan.effort, plan.bound})
    if (!std::isfinite(value)) find(0, "a stated figure is not a number");
  for (const Cut& cut : plan.cuts) {
    const bool scraper = cut.plane.kind == PlaneKind::scraper;
    if (!usable(cut.plane)) find(cut.number, "the plane has no usable sole");
    if (!finite(cut.poses) || !finite(cut.set)) find(cut.number, "a pose is not a number");
    if (cut.poses.empty() != scraper)
      find(cut.number, scraper ? "a scraper has no poses" : "no pose is given");
    if (!std::isfinite(cut.removed) || !std::isfinite(cut.imbalance))
      find(cut.number, "a stated figure is not a number");
  }
  return out;
}

Loop interior_to_the_left(const Loop& loop) {
  if (area(loop) >= 0) return loop;
  Loop out;
  for (auto it = loop.rbegin(); it != loop.rend(); ++it) out.push_back(reversed(*it));
  return out;
}

double far_beyond(const Plan& plan) {
  double farthest = 0, widest = 0;
  for (const Cut& cut : plan.cuts) {
    widest = std::max(widest, cut.plane.width);
    for (const std::vector<Pose>* poses : {&cut.poses, &cut.set})
      for (const Pose& pose : *poses) farthest = std::max(farthest, norm(pose.at));
  }
  return farthest + widest + norm({plan.section.width, plan.section.thickness});
}

std::vector<std::string> outline_faults(const Section& section, const Loop& target,
                                        const ClipperLib::Paths& flat_target) {
  std::vector<std::string> out;
  for (const ClipperLib::IntPoint p : flat_target.front()) {
    const Point q = unflatten(p);
    if (q.x >= -kOutside && q.x <= section.width + kOutside && q.y >= -kOutside &&
        q.y <= section.thickness + kOutside)
      continue;
    out.push_back("the target leaves the stock " + near(q));
    break;
  }
  double whole = 0;
  for (const Edge& edge : target) whole += length(edge);
  ClipperLib::Paths simple;
  ClipperLib::SimplifyPolygon(flat_target.front(), simple, ClipperLib::pftEvenOdd);
  if (std::abs(area_of(simple) - area(target)) > kFlatShare * whole)
    out.push_back("the outline of the target crosses itself");
  return out;
}

Depth gouge(const Swept& swept, const Loop& target, Depth floor) {
  floor = greatest_distance(
      swept.bounds, target, [&](Point p) { return contains(target, p); }, floor);
  return greatest_distance(
      target, swept.bounds, [&](Point p) { return takes(swept, p); }, floor);
}

std::string body_fault(const Plane& plane, const Pose& pose, double far, const ClipperLib::Paths& wood) {
  if (!plane.body || plane.body->overhang <= kBodySlack) return "";
  const double inner = plane.width / 2, outer = inner + plane.body->overhang - kBodySlack;
  const double low = plane.body->above + kBodySlack;
  for (const double side : {-1.0, 1.0}) {
    std::vector<Edge> edges;
    const std::array<Point, 4> corners{Point{side * inner, low}, Point{side * outer, low},
                                       Point{side * outer, far}, Point{side * inner, far}};
    Point last = corners.back();
    for (const Point corner : corners) {
      edges.push_back({from_sole_frame(pose, last), from_sole_frame(pose, corner), {}, Turn::straight});
      last = corner;
    }
    const ClipperLib::Paths meets = common(wood, {flatten(std::span<const Edge>(edges))});
    if (!meets.empty())
      return std::string("the body of the ") + word(plane.kind) + " meets wood that is still there " +
             near(unflatten(meets.front().front()));
  }
  return "";
}

// Where a sole with a curve of its own comes to the arc: a hollow to a bead, a round to a cove, a shaped
// plane to either.
static std::vector<Edge> curved_soles(const Plan& plan, const Edge& arc) {
  const PlaneKind fits = arc.turn == Turn::left ? PlaneKind::hollow : PlaneKind::round;
  std::vector<Edge> out;
  for (const Cut& cut : plan.cuts) {
    if (cut.plane.kind != fits && cut.plane.kind != PlaneKind::shaped) continue;
    for (const Pose& pose : cut.poses)
      for (const Edge& edge : sole_edges(cut.plane, pose)) out.push_back(edge);
  }
  return out;
}

// The flats that come to the arc: soles whose leaning is that of some place of it short of its ends, and that
// come there within the limit. Poses side by side are one.
static int facets_on(const Plan& plan, const Edge& arc, double limit) {
  constexpr double kEnd = 0.05;      // mm from an end of the arc: a flat there may be the one beside it
  constexpr double kSameTilt = 0.5;  // degrees
  std::vector<double> tilts;
  for (const Cut& cut : plan.cuts) {
    if (!cut.plane.is_flat()) continue;
    for (const Pose& pose : cut.poses) {
      const Point spoke = (arc.turn == Turn::left ? radius(arc) : -radius(arc)) * outward(pose.tilt);
      const Point at = arc.centre + spoke;
      if (!spoke_meets(arc, spoke) || distance(at, arc.from) < kEnd || distance(at, arc.to) < kEnd) continue;
      if (distance(at, sole_edges(cut.plane, pose)) > limit) continue;
      const bool known = std::any_of(tilts.begin(), tilts.end(), [&](double tilt) {
        return std::abs(wrap_degrees(tilt - pose.tilt)) < kSameTilt;
      });
      if (!known) tilts.push_back(pose.tilt);
    }
  }
  return static_cast<int>(tilts.size());
}

std::vector<std::string> facet_faults(const Loop& target, const Plan& plan, double limit) {
  std::vector<std::string> out;
  for (const Edge& arc : target) {
    if (!arc.is_arc()) continue;
    const std::vector<Edge> soles = curved_soles(plan, arc);
    int finished = 0;
    for (int i = 0; i < kArcLooks; ++i)
      if (distance(point_at(arc, (i + 0.5) / kArcLooks), soles) <= limit) ++finished;
    if (finished >= kArcShare * kArcLooks) continue;
    if (plan.facets > 0) {
      const int facets = facets_on(plan, arc, limit);
      if (facets <= plan.facets) continue;
      out.push_back(std::string("the ") + (arc.turn == Turn::left ? "bead" : "cove") + " of radius " +
                    figure(radius(arc)) + " " + near(point_at(arc, 0.5)) + " is left as " +
                    std::to_string(facets) + " facets, and the shop allows " + std::to_string(plan.facets));
      continue;
    }
    out.push_back(std::string("the ") + (arc.turn == Turn::left ? "bead" : "cove") + " of radius " +
                  figure(radius(arc)) + " " + near(point_at(arc, 0.5)) + " is not finished by a " +
                  (arc.turn == Turn::left ? "hollow" : "round"));
  }
  return out;
}

static void plough_faults(const Standing& wood, const Section& section, const Cut& cut,
                          std::vector<std::string>& out) {
  const Plane& plane = cut.plane;
  for (const Pose& pose : cut.poses) {
    if (std::abs(std::remainder(pose.tilt, 90)) > kSquare) {
      out.push_back("the plough does not stand square to a side");
      return;
    }
    // Across the blank from the nearer of the two sides that a fence can bear on.
    const bool upright = std::abs(outward(pose.tilt).y) > 0.5;
    const double from = upright ? pose.at.x : pose.at.y;
    const double whole = upright ? section.width : section.thickness;
    const double reach = std::min(from, whole - from) - plane.width / 2;
    if (reach > plane.reach + kReachSlack)
      out.push_back("the plough reaches " + figure(reach) + " mm from its fence, more than its " +
                    figure(plane.reach));
    double deepest = 0;
    for (const double u : {-0.499, -0.25, 0.0, 0.25, 0.499})
      deepest = std::max(deepest, wood.top(pose, u * plane.width).value_or(0));
    if (deepest > plane.deep + kReachSlack)
      out.push_back("the plough goes " + figure(deepest) + " mm deep, more than its " + figure(plane.deep));
  }
}

// How high the wood stands beyond a side of the sole with none within, so that the plane bears against it.
// Such a wall ends at corners of the surface.
static double wall_height(const Standing& wood, const Plane& plane, const Pose& pose, double side) {
  const double u = side * plane.width / 2;
  std::vector<double> ends{sole_height(plane, u)};
  for (const Point p : wood.corners()) {
    const double v = to_sole_frame(pose, p).y;
    if (v > ends.front()) ends.push_back(v);
  }
  std::sort(ends.begin(), ends.end());
  double height = 0;
  double low = ends.front();
  for (const double high : ends) {
    const double v = (low + high) / 2;
    if (wood.solid(from_sole_frame(pose, {u + side * kBesideWall, v})) &&
        !wood.solid(from_sole_frame(pose, {u - side * kBesideWall, v})))
      height += high - low;
    low = high;
  }
  return height;
}

static bool has_wall(const Standing& wood, const Cut& cut) {
  return std::any_of(cut.poses.begin(), cut.poses.end(), [&](const Pose& pose) {
    return std::max(wall_height(wood, cut.plane, pose, -1), wall_height(wood, cut.plane, pose, 1)) >=
           kLeastWall;
  });
}

std::vector<std::string> register_faults(const Standing& wood, const Section& section, const Cut& cut) {
  std::vector<std::string> out;
  if (cut.plane.kind == PlaneKind::plough) plough_faults(wood, section, cut, out);
  if (cut.plane.is_curved()) return out;
  if (cut.rides == Rides::two_arrises || cut.rides == Rides::own_arc || cut.rides == Rides::by_hand)
    out.push_back(std::string("the ") + word(cut.plane.kind) +
                  " is not said to start in a gauge line, against a wall or from a fence");
  if (cut.rides == Rides::wall && !has_wall(wood, cut))
    out.push_back(std::string("the ") + word(cut.plane.kind) +
                  " is said to start against a wall, but none stands beside it");
  return out;
}

std::vector<std::string> lying_faults(const Section& section, const Cut& cut) {
  std::vector<std::string> out;
  const std::string what = std::string("the ") + word(cut.plane.kind);
  bool below = false;
  for (const Pose& pose : cut.poses) {
    if (std::abs(wrap_degrees(pose.tilt - (is_underside_up(cut.lies) ? 180 : 0))) > kOnItsSide) {
      out.push_back("the blank is said to lie " + std::string(word(cut.lies)) + ", but " + what +
                    " comes from below");
      return out;
    }
    for (const Edge& edge : sole_edges(cut.plane, pose))
      below = below || std::max(edge.from.y, edge.to.y) > section.thickness + kReachSlack;
  }
  if (below && !cut.overhang && !is_underside_up(cut.lies))
    out.push_back(what + " passes below the underside, but the edge is not said to overhang the board");
  return out;
}

std::string set_fault(const Cut& cut) {
  if (!cut.plane.is_curved()) return "";
  for (std::size_t i = 0; i < std::min(cut.set.size(), cut.poses.size()); ++i) {
    const Pose &drawn = cut.poses[i], &set = cut.set[i];
    if (distance(drawn.at, set.at) > kSameFigure ||
        std::abs(wrap_degrees(drawn.tilt - set.tilt)) > kSameFigure)
      return std::string("the ") + word(cut.plane.kind) +
             " is not gauged, but is set elsewhere than it is drawn";
  }
  return "";
}

}  // namespace arrisline::replaying
