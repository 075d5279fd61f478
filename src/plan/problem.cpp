// What has to be cut, and at which tilts.
#include "plan/problem.h"

#include <algorithm>
#include <cmath>

namespace arrisline {

namespace {

/// Outward normal of the target at fraction t: the target lies to the left.
Point normal_at(const Edge& edge, double t) {
  const Point d = direction_at(edge, t);
  return {d.y, -d.x};
}

/// The arcs as one, where the second goes on from the first on the same circle. Where the circles differ by a
/// little, as figures rounded in a drawing make them, one that keeps out of the wood of both.
std::optional<Edge> joined(const Edge& a, const Edge& b) {
  constexpr double kOneCircle = 0.001;  // mm
  const double apart = distance(a.centre, b.centre);
  const double turn = std::abs(sweep(a)) + std::abs(sweep(b));
  if (!a.is_arc() || a.turn != b.turn || a.to != b.from || turn > 2 * kPi - 0.01) return std::nullopt;
  if (apart > kOneCircle || std::abs(radius(a) - radius(b)) > kOneCircle) return std::nullopt;
  Edge out = a;
  out.to = b.to;
  if (apart == 0 && radius(a) == radius(b)) return out;
  out.centre = a.centre + std::abs(sweep(b)) / turn * (b.centre - a.centre);
  const bool bead = a.turn == Turn::left;
  const double r_a = radius(a), r_b = radius(b);
  const double off_a = distance(a.centre, out.centre), off_b = distance(b.centre, out.centre);
  const double r = bead ? std::max(r_a + off_a, r_b + off_b) : std::min(r_a - off_a, r_b - off_b);
  out.from = out.centre + r / distance(out.centre, out.from) * (out.from - out.centre);
  out.to = out.centre + r / distance(out.centre, out.to) * (out.to - out.centre);
  return out;
}

Surface surface_on(const Edge& line, int first, int last) {
  Surface s;
  s.edge = first;
  s.last = last;
  s.line = line;
  s.arc = line.is_arc();
  s.bead = line.turn == Turn::left;
  s.tilt = tilt_of(normal_at(line, 0.5));
  if (s.arc) {
    const double half = to_degrees(std::abs(sweep(line))) / 2;
    s.lo = s.tilt - half;
    s.hi = s.tilt + half;
  }
  return s;
}

}  // namespace

Problem make_problem(const Section& section, const Kit& kit, const PlanOptions& options) {
  Problem problem{section,
                  kit,
                  options,
                  weights_for(kit.shop, options.prefer),
                  blank_outline(section.width, section.thickness),
                  {},
                  {}};
  for (std::size_t p = 0; p < kit.planes.size(); ++p) {
    if (kit.planes[p].kind != PlaneKind::shaped) continue;
    if (std::optional<Plane> other = turned(kit.planes[p]))
      problem.turned.emplace_back(static_cast<int>(p), *std::move(other));
  }
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] < 0) continue;
    const int at = static_cast<int>(i);
    const Edge& edge = section.target[i];
    std::vector<Surface>& all = problem.surfaces;
    if (!all.empty() && all.back().last == at - 1) {
      if (const std::optional<Edge> whole = joined(all.back().line, edge)) {
        all.back() = surface_on(*whole, all.back().edge, at);
        continue;
      }
    }
    all.push_back(surface_on(edge, at, at));
  }
  return problem;
}

std::vector<Surface> edges_of(const Problem& problem, const Surface& surface) {
  if (surface.edge == surface.last) return {surface};
  std::vector<Surface> out;
  for (int i = surface.edge; i <= surface.last; ++i)
    out.push_back(surface_on(problem.section.target[static_cast<std::size_t>(i)], i, i));
  return out;
}

std::vector<int> elements_of(const Problem& problem, const Surface& surface) {
  std::vector<int> out;
  for (int i = surface.edge; i <= surface.last; ++i) {
    const int element = problem.section.source[static_cast<std::size_t>(i)];
    if (out.empty() || out.back() != element) out.push_back(element);
  }
  return out;
}

int element_of(const Problem& problem, const Surface& surface) {
  return problem.section.source[static_cast<std::size_t>(surface.edge)];
}

int element_of(const Problem& problem, int surface) {
  return element_of(problem, surface_of(problem, surface));
}

std::vector<int> rebate_planes(const Problem& problem) {
  std::vector<int> out;
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    if (problem.plane(p).kind == PlaneKind::rebate && problem.uses(p)) out.push_back(p);
  }
  std::stable_sort(out.begin(), out.end(),
                   [&](int a, int b) { return problem.plane(a).width > problem.plane(b).width; });
  return out;
}

Bare bare_of(std::vector<std::pair<double, double>> spans, double length) {
  constexpr double kCrumb = 1e-6;  // mm
  std::sort(spans.begin(), spans.end());
  spans.emplace_back(1, 1);
  Bare out;
  double reached = 0;
  for (const auto& [from, to] : spans) {
    if (from > reached + 1e-9) {
      const double gap = (from - reached) * length;
      out.length += gap;
      if (!out.at && gap > kCrumb) out.at = (from + reached) / 2;
    }
    reached = std::max(reached, to);
  }
  return out;
}

bool same_pose(const Pose& a, const Pose& b) {
  return std::abs(a.tilt - b.tilt) < 1e-6 && distance(a.at, b.at) < 1e-6;
}

void cut_all(const Problem& problem, const std::vector<Draft>& drafts, Wood& wood) {
  for (const Draft& draft : drafts) {
    for (const Pose& pose : draft.poses) wood.cut(Sweep(problem.plane(draft.plane), pose));
  }
}

bool is_square(double tilt) {
  return std::abs(wrap_degrees(4 * tilt)) < 4e-6;
}

/// Whether the plane can stand at all these tilts with the blank lying so, if it may lean so far over the
/// fence.
static bool can_stand(Lies lies, std::span<const Pose> poses, double over_fence) {
  constexpr double kSlack = 0.5;  // degrees: keeps a plane on its side counted as that
  return std::all_of(poses.begin(), poses.end(), [&](const Pose& pose) {
    // The lean toward the working edge, as the blank lies.
    const double lean = is_underside_up(lies) ? wrap_degrees(180 - pose.tilt) : wrap_degrees(pose.tilt);
    const double out = back_edge_free(lies) ? -lean : lean;
    return out >= -over_fence - kSlack && out <= 90 + kSlack;
  });
}

/// Whether the plane can be run so: a shaped one goes in one direction only.
static bool runs(const Plane& plane, Lies lies) {
  if (plane.kind != PlaneKind::shaped || !turned(plane)) return true;
  // With its other end foremost the section is seen mirrored by who stands at the plane.
  return plane.turned == (planed(lies) == Planed::against);
}

LieSet all_ways_to_lie(const Plane& plane, std::span<const Pose> poses) {
  LieSet out;
  for (const Lies lies : kWaysToLie) {
    if (can_stand(lies, poses, kOverFence) && runs(plane, lies)) out.add(lies);
  }
  return out;
}

/// Whether every sole at these poses stays clear of the fence, which stands at the edge that is not free.
static bool clear_of_fence(const Problem& problem, const Plane& plane, std::span<const Pose> poses,
                           Lies lies) {
  constexpr double kSlack = 1e-6;  // mm: what ends at that edge is not clear of it
  return std::all_of(poses.begin(), poses.end(), [&](const Pose& pose) {
    const std::vector<Edge> sole = sole_edges(plane, pose);
    return std::all_of(sole.begin(), sole.end(), [&](const Edge& edge) {
      return back_edge_free(lies) ? std::min(edge.from.x, edge.to.x) > kSlack
                                  : std::max(edge.from.x, edge.to.x) < problem.section.width - kSlack;
    });
  });
}

LieSet ways_to_lie(const Problem& problem, const Plane& plane, std::span<const Pose> poses) {
  const LieSet all = all_ways_to_lie(plane, poses);
  LieSet out;
  if (!all.empty()) out.add(all.first());
  for (const Lies lies : kWaysToLie) {
    if (all.has(lies) && can_stand(lies, poses, 0) && clear_of_fence(problem, plane, poses, lies))
      out.add(lies);
  }
  return out;
}

LieSet ways_to_lie(const Problem& problem, const Draft& draft) {
  const Plane& plane = problem.plane(draft.plane);
  LieSet out = ways_to_lie(problem, plane, draft.poses);
  if (draft.otherwise.empty()) return out;
  const LieSet other = ways_to_lie(problem, plane, draft.otherwise);
  for (const Lies lies : kWaysToLie) {
    if (other.has(lies)) out.add(lies);
  }
  return out;
}

LieSet ways_by_poses(const Problem& problem, const Draft& draft) {
  return draft.starts.empty() ? ways_to_lie(problem, draft)
                              : all_ways_to_lie(problem.plane(draft.plane), draft.poses);
}

bool may_come_late(const Problem& problem, const Draft& draft, LieSet may_lie) {
  return draft.late ||
         (problem.plane(draft.plane).is_flat() && !draft.finishes.empty() && !may_lie.has(Lies::face_up));
}

Pose pose_on_arc(const Problem& problem, const Surface& arc, const Plane& plane, double tilt) {
  const Edge& edge = problem.edge(arc);
  const double r = radius(edge);
  Pose pose{edge.centre + (arc.bead ? r : -r) * outward(tilt), tilt};
  const bool too_flat = plane.kind == PlaneKind::round && plane.radius > r;
  const bool too_tight = plane.kind == PlaneKind::hollow && plane.radius < r;
  const bool chord = plane.is_flat() && !arc.bead;
  if (too_flat || too_tight || chord) {
    // Such a sole bears at its edges and stays off the arc in its middle by the difference of the two
    // sagittas, of which a flat sole's is nothing.
    const double half = plane.width / 2;
    const double own = chord ? 0 : sagitta(plane.radius, half);
    pose.at = pose.at + std::abs(own - sagitta(r, half)) * outward(tilt);
  }
  return pose;
}

namespace {

/// It bears on the arc with one place of its sole, not along it and not with its edges.
bool bears_at_one_place(const Plane& plane, double r) {
  if (plane.kind == PlaneKind::round) return plane.radius < r - kSameCircle;
  return plane.kind == PlaneKind::hollow && plane.radius > r + kSameCircle;
}

}  // namespace

Pose leaning_pose(const Problem& problem, const Surface& arc, const Plane& plane, double contact,
                  double tilt) {
  const Edge& edge = problem.edge(arc);
  const Point centre = edge.centre - std::abs(plane.radius - radius(edge)) * outward(contact);
  return {centre + (plane.kind == PlaneKind::round ? -plane.radius : plane.radius) * outward(tilt), tilt};
}

double contact_of(const Problem& problem, const Surface& arc, const Plane& plane, const Pose& pose) {
  const Edge& edge = problem.edge(arc);
  if (!bears_at_one_place(plane, radius(edge))) return pose.tilt;
  const double side = plane.kind == PlaneKind::round ? plane.radius : -plane.radius;
  const Point centre = pose.at + side * outward(pose.tilt);
  return pose.tilt + wrap_degrees(tilt_of(edge.centre - centre) - pose.tilt);
}

Pose start_pose(const Problem& problem, const Draft& draft, double tilt) {
  const Pose on_arc = pose_on_arc(problem, problem.surfaces[static_cast<std::size_t>(draft.arc)],
                                  problem.plane(draft.plane), tilt);
  const Pose* leaning = nullptr;
  for (const Pose& pose : draft.poses) {
    if (std::abs(pose.tilt - tilt) >= 1e-6) continue;
    // One that stands off the arc along the plane before one that bears beside the middle of its sole.
    if (std::abs(dot(pose.at - on_arc.at, across(tilt))) < 1e-6) return pose;
    leaning = &pose;
  }
  return leaning != nullptr ? *leaning : on_arc;
}

}  // namespace arrisline
