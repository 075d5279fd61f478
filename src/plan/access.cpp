// Shown by tests/plan/reasons_test.cpp.
#include "plan/access.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/compose.h"
#include "plan/gouge.h"
#include "plan/takes.h"
#include "plan/thickness.h"

namespace arrisline {

namespace {

constexpr double kDeep = 1e-3;  // mm inside the outline; depths are found to 1e-4

/// The point of the edge deepest in the sweep, near enough to tell the sole from a side.
Point deepest(const Edge& edge, const Sweep& sweep) {
  constexpr int kPoints = 64;
  Point best = edge.from;
  for (int i = 1; i <= kPoints; ++i) {
    const Point p = point_at(edge, static_cast<double>(i) / kPoints);
    if (sweep.depth(p) > sweep.depth(best)) best = p;
  }
  return best;
}

/// The edge deepest in the sweep; of those as deep, the one whose element comes first, so that a mirrored
/// drawing names the same.
int deepest_edge(const Section& section, const Sweep& sweep) {
  std::vector<double> deep;
  for (const Edge& edge : section.target) deep.push_back(gouge_depth({edge}, sweep));
  const double most = *std::max_element(deep.begin(), deep.end());
  int out = -1;
  for (std::size_t i = 0; i < deep.size(); ++i) {
    if (deep[i] > most - kDeep && (out < 0 || comes_before(section, static_cast<int>(i), out)))
      out = static_cast<int>(i);
  }
  return out;
}

/// What the drafts finish.
void claim(const Problem& problem, const std::vector<Draft>& drafts, Access& out) {
  for (const Draft& draft : drafts) {
    for (const Stretch& s : draft.finishes) {
      const auto i = static_cast<std::size_t>(s.surface);
      if (problem.surfaces[i].arc) {
        out.arcs[i] = true;
      } else {
        out.flats[i].emplace_back(s.from, s.to);
      }
    }
  }
}

}  // namespace

Access access(const Problem& problem) {
  Access out;
  out.arcs.resize(problem.surfaces.size());
  out.flats.resize(problem.surfaces.size());
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    if (problem.surfaces[i].arc) out.arcs[i] = !arc_drafts(problem, static_cast<int>(i)).empty();
  }
  claim(problem, flat_drafts(problem), out);
  claim(problem, shaped_drafts(problem), out);
  return out;
}

Access both(Access a, const Access& b) {
  for (std::size_t i = 0; i < a.arcs.size(); ++i) {
    a.arcs[i] = a.arcs[i] || b.arcs[i];
    a.flats[i].insert(a.flats[i].end(), b.flats[i].begin(), b.flats[i].end());
  }
  return a;
}

std::vector<int> out_of_reach(const Problem& problem, const Access& access) {
  std::vector<int> out;
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    const Surface& s = problem.surfaces[i];
    const bool reached =
        s.arc ? access.arcs[i] : bare_of(access.flats[i], length(problem.edge(s))).length <= kUnclaimed;
    if (!reached) out.push_back(static_cast<int>(i));
  }
  return out;
}

namespace {

/// All that any choice of cuts could take.
std::vector<Sweep> all_sweeps(const Problem& problem, const std::vector<Draft>& flats,
                              const std::vector<Draft>& shaped) {
  constexpr double kApart = 1;  // degrees
  std::vector<Sweep> out;
  const std::vector<int> rebates = rebate_planes(problem);
  const auto add = [&](const std::vector<Draft>& drafts) {
    for (const Draft& draft : drafts) {
      for (const Pose& pose : draft.poses) out.emplace_back(problem.plane(draft.plane), pose);
      for (const double start : draft.starts)
        out.emplace_back(problem.plane(draft.plane), start_pose(problem, draft, start));
    }
  };
  add(flats);
  add(shaped);
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    const Surface& arc = problem.surfaces[i];
    if (!arc.arc) continue;
    for (const std::vector<Draft>& way : arc_drafts(problem, static_cast<int>(i))) add(way);
    for (double lean = arc.lo; lean < arc.hi + kApart; lean += kApart) {
      // With the widest that has room, as rails are laid.
      for (const int p : rebates) {
        const std::vector<Pose> poses = waste_on_arc(problem, arc, problem.plane(p), std::min(lean, arc.hi));
        for (const Pose& pose : poses) out.emplace_back(problem.plane(p), pose);
        if (!poses.empty()) break;
      }
    }
  }
  return out;
}

Point nearest_on(const Edge& edge, Point p) {
  constexpr int kPoints = 400;
  Point out = edge.from;
  for (int i = 1; i <= kPoints; ++i) {
    const Point q = point_at(edge, static_cast<double>(i) / kPoints);
    if (distance(p, q) < distance(p, out)) out = q;
  }
  return out;
}

/// From p on between the edge and the rest of the target, where they come nearer and nearer to each other, as
/// long as that is farther than `height` from either.
Point into_cleft(const Loop& target, const Edge& edge, Point p, double height) {
  constexpr double kStep = 0.02;  // mm
  constexpr int kSteps = 500;
  for (int i = 0; i < kSteps; ++i) {
    Point other = edge.from;
    double least = std::numeric_limits<double>::infinity();
    for (const Edge& beside : target) {
      if (&beside == &edge || distance(p, beside) >= least) continue;
      least = distance(p, beside);
      other = nearest_on(beside, p);
    }
    const Point one = nearest_on(edge, p);
    const Point way = (1 / distance(p, one)) * (one - p) + (1 / distance(p, other)) * (other - p);
    const Point next = p + (kStep / norm(way)) * way;
    if (norm(way) < 1e-3 || distance(next, target) <= height) break;
    p = next;
  }
  return p;
}

}  // namespace

bool is_hopeless(const Problem& problem, const std::vector<Draft>& flats) {
  constexpr double kMore = 0.01;     // mm
  constexpr double kBetween = 0.35;  // mm that a sole may take more which leans between those looked at
  const std::vector<Draft> shaped = shaped_drafts(problem);
  // Flats alone are asked for.
  Access got_at;
  got_at.arcs.assign(problem.surfaces.size(), true);
  got_at.flats.resize(problem.surfaces.size());
  claim(problem, flats, got_at);
  claim(problem, shaped, got_at);
  std::vector<Sweep> sweeps;
  for (const int s : out_of_reach(problem, got_at)) {
    const Surface& surface = problem.surfaces[static_cast<std::size_t>(s)];
    if (sweeps.empty()) sweeps = all_sweeps(problem, flats, shaped);
    Plane over;
    over.width = length(problem.edge(surface));
    Wood wood = Wood(problem.blank).strip({over, {point_at(problem.edge(surface), 0.5), surface.tilt}});
    for (const Sweep& sweep : sweeps) wood.cut(sweep);
    const Thickest left = thickest_left(wood, problem.section.target);
    const double most = most_left(problem);
    if (left.height > most + kBetween) return true;
    if (left.height <= most + kMore) continue;
    const Point deep = into_cleft(problem.section.target, problem.edge(surface), left.at, most + kMore);
    if (!something_takes(problem, deep)) return true;
  }
  return false;
}

std::optional<Obstacle> obstacle(const Section& section, const Plane& plane, const std::vector<Pose>& poses) {
  std::vector<double> deep;
  for (const Pose& pose : poses) deep.push_back(gouge_depth(section.target, Sweep(plane, pose)));
  if (deep.empty()) return std::nullopt;
  const double least = *std::min_element(deep.begin(), deep.end());
  std::optional<Obstacle> out;
  for (std::size_t i = 0; i < poses.size(); ++i) {
    if (deep[i] > least + kDeep) continue;
    Obstacle one;
    if (least > kDeep) {
      const Sweep sweep(plane, poses[i]);
      one.edge = deepest_edge(section, sweep);
      const Point p = deepest(section.target[static_cast<std::size_t>(one.edge)], sweep);
      const double from_side = sweep.half() - std::abs(sweep.u(p));
      const double from_sole = sweep.v(p) - sole_height(plane, sweep.u(p));
      one.part = from_side < from_sole ? Obstacle::Part::side : Obstacle::Part::sole;
    } else {
      if (body_clears(section.target, plane, poses[i])) return std::nullopt;
      const PlacedBody body = body_at(plane, poses[i]);
      one.part = Obstacle::Part::body;
      one.edge = deepest_edge(section, Sweep(body.sole, body.pose));
    }
    if (!out || comes_before(section, one.edge, out->edge)) out = one;
  }
  return out;
}

bool comes_before(const Section& section, int edge, int other) {
  const int a = section.source[static_cast<std::size_t>(edge)];
  const int b = section.source[static_cast<std::size_t>(other)];
  return a >= 0 && (b < 0 || a < b);
}

std::string named(const Section& section, int edge) {
  const int source = section.source[static_cast<std::size_t>(edge)];
  if (source >= 0) return describe(section.elements[static_cast<std::size_t>(source)]);
  const Edge& side = section.target[static_cast<std::size_t>(edge)];
  std::string out = "the wood left at the ";
  if (side.from.y == 0 && side.to.y == 0) return out + "face";
  if (side.from.y == section.thickness && side.to.y == section.thickness) return out + "underside";
  return out + (side.from.x == 0 ? "working edge" : "back edge");
}

}  // namespace arrisline
