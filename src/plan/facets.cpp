// Facets. Shown by tests/plan/facets_test.cpp.
#include "plan/facets.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/gouge.h"

namespace arrisline {

namespace {

constexpr double kShare = 0.95;  // of what may be left: the rest is for what shows when the whole is judged

/// Widest turn between two tangents of a bead that leaves no more than `allowed` in the arris between them.
double tangents_apart(double r, double allowed) {
  return 2 * to_degrees(std::acos(r / (r + allowed)));
}

/// The cuts of a way whose flats lean so; nothing where one of them cannot stand.
std::vector<Draft> facets_at(const Problem& problem, int surface, const std::vector<double>& leans) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const std::vector<int> planes = rebate_planes(problem);
  std::vector<Draft> out;
  for (const double lean : leans) {
    Draft draft;
    draft.arc = surface;
    for (const int p : planes) {
      draft.plane = p;
      draft.poses = chamfer_on_arc(problem, arc, problem.plane(p), lean, 0);
      if (!draft.poses.empty() && body_clears(problem.section.target, problem.plane(p), draft.poses.front()))
        break;
      draft.poses.clear();
    }
    if (draft.poses.empty()) return {};
    out.push_back(std::move(draft));
  }
  return out;
}

std::vector<double> equal_leans(double from, double to, int n) {
  std::vector<double> out;
  for (int i = 0; i < n; ++i) out.push_back(n == 1 ? (from + to) / 2 : from + (to - from) * i / (n - 1));
  return out;
}

/// On a bead: n tangents, each as far from the next as the first and the last from the ends of the arc, where
/// flats run on tangent to it, or half as far, where none do.
void add_tangents(const Problem& problem, int surface, double allowed, std::vector<std::vector<Draft>>& out) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const double apart = tangents_apart(radius(problem.edge(arc)), allowed);
  const double span = arc.hi - arc.lo;
  constexpr double kTight = 1 - 1e-9;
  // Gaps beside the first and the last tangent, in gaps between tangents.
  for (const auto& [before, after] : {std::pair{1.0, 1.0}, {1.0, 0.5}, {0.5, 1.0}, {0.5, 0.5}}) {
    const double gaps =
        std::max(before + after, std::ceil(span / apart * kTight - before - after) + before + after);
    const int n = static_cast<int>(std::lround(gaps - before - after)) + 1;
    if (n > problem.kit.shop.facets) continue;
    const double gap = span / gaps;
    std::vector<Draft> way =
        facets_at(problem, surface, equal_leans(arc.lo + before * gap, arc.hi - after * gap, n));
    if (!way.empty()) out.push_back(std::move(way));
  }
}

/// In a cove: soles whose corners rest on the arc, side by side.
void add_chords(const Problem& problem, int surface, double allowed, std::vector<std::vector<Draft>>& out) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const double r = radius(problem.edge(arc));
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    const Plane& plane = problem.plane(p);
    if (plane.kind != PlaneKind::rebate || !problem.uses(p) || plane.width >= 2 * r) continue;
    const double half = to_degrees(std::asin(plane.width / 2 / r));
    if (r - std::sqrt(r * r - plane.width * plane.width / 4) > allowed) continue;
    const double from = std::min(arc.lo + half, (arc.lo + arc.hi) / 2);
    const double to = std::max(arc.hi - half, (arc.lo + arc.hi) / 2);
    const int n = 1 + static_cast<int>(std::ceil((to - from) / (2 * half) - 1e-6));
    if (n > problem.kit.shop.facets) continue;
    std::vector<Draft> way;
    for (const double lean : equal_leans(from, to, n)) {
      Draft draft;
      draft.arc = surface;
      draft.plane = p;
      draft.poses = {pose_on_arc(problem, arc, plane, lean)};
      if (gouges(problem.section.target, Sweep(plane, draft.poses.front()), kExact) ||
          !body_clears(problem.section.target, plane, draft.poses.front()))
        break;
      way.push_back(std::move(draft));
    }
    if (way.size() == static_cast<std::size_t>(n)) out.push_back(std::move(way));
  }
}

}  // namespace

std::vector<double> arc_looks(const Surface& arc) {
  constexpr double kApart = 0.75;  // degrees
  const int n = std::max(20, static_cast<int>((arc.hi - arc.lo) / kApart));
  std::vector<double> out;
  for (int i = 0; i < n; ++i) out.push_back(arc.lo + (arc.hi - arc.lo) * (i + 0.5) / n);
  return out;
}

double left_at(const Problem& problem, const Surface& arc, const Plane& plane, const std::vector<Pose>& poses,
               double at) {
  const Edge& edge = problem.edge(arc);
  const double r = radius(edge);
  const Point ray = (arc.bead ? 1.0 : -1.0) * outward(at);
  double least = std::numeric_limits<double>::infinity();
  for (const Pose& pose : poses) {
    const Point up = outward(pose.tilt);
    if (std::abs(dot(ray, up)) < 1e-3) continue;
    // From the centre of the arc toward the place, to where the sole is met.
    double out = dot(pose.at - edge.centre, up) / dot(ray, up);
    if (plane.is_curved()) {
      const double side = plane.kind == PlaneKind::round ? plane.radius : -plane.radius;
      const Point centre = pose.at + side * up - edge.centre;
      const double along = dot(centre, ray);
      const double root = plane.radius * plane.radius - dot(centre, centre) + along * along;
      if (root < 0) continue;
      out = along + std::sqrt(root);
    }
    const Point uv = to_sole_frame(pose, edge.centre + out * ray);
    constexpr double kEdge = 1e-6;  // mm: the edges of the sole count, what lies behind it does not
    if (std::abs(uv.x) > plane.width / 2 + kEdge || std::abs(uv.y - sole_height(plane, uv.x)) > kEdge)
      continue;
    least = std::min(least, std::max(0.0, arc.bead ? out - r : r - out));
  }
  return least;
}

bool curves_finish(const Problem& problem, const Surface& arc, const std::vector<Draft>& drafts,
                   double limit) {
  const PlaneKind fits = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  const std::vector<double> looks = arc_looks(arc);
  const auto curved = std::count_if(looks.begin(), looks.end(), [&](double at) {
    return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
      const Plane& plane = problem.plane(draft.plane);
      return plane.kind == fits && left_at(problem, arc, plane, draft.poses, at) <= limit;
    });
  });
  return 2 * curved >= static_cast<std::ptrdiff_t>(looks.size());
}

/// The flats on the arc, whatever they are made for: leaning as some place of it short of its ends does, and
/// within `limit` there. Poses side by side are one.
static int flats_on(const Problem& problem, const Surface& arc, const std::vector<Draft>& drafts,
                    double limit) {
  constexpr double kEnd = 0.05;      // mm from an end of the arc: a flat there may be the one beside it
  constexpr double kSameTilt = 0.5;  // degrees
  const Edge& edge = problem.edge(arc);
  const double end = to_degrees(kEnd / radius(edge));
  std::vector<double> tilts;
  for (const Draft& draft : drafts) {
    const Plane& plane = problem.plane(draft.plane);
    if (!plane.is_flat()) continue;
    for (const Pose& pose : draft.poses) {
      const double along = wrap_degrees(pose.tilt - (arc.lo + arc.hi) / 2);
      if (std::abs(along) > (arc.hi - arc.lo) / 2 - end) continue;
      const Point at = edge.centre + (arc.bead ? radius(edge) : -radius(edge)) * outward(pose.tilt);
      if (distance(at, sole_edges(plane, pose)) > limit) continue;
      const bool known = std::any_of(tilts.begin(), tilts.end(), [&](double tilt) {
        return std::abs(wrap_degrees(tilt - pose.tilt)) < kSameTilt;
      });
      if (!known) tilts.push_back(pose.tilt);
    }
  }
  return static_cast<int>(tilts.size());
}

bool arcs_are_finished(const Problem& problem, const std::vector<Draft>& drafts, double limit) {
  const auto has_own_curve = [&](const Draft& draft) {
    return problem.plane(draft.plane).kind == PlaneKind::shaped;
  };
  if (std::any_of(drafts.begin(), drafts.end(), has_own_curve)) return true;
  const int facets = problem.kit.shop.facets;
  // Of arcs that make one circle each is an element of its own.
  const auto is_finished = [&](const Surface& arc) {
    return curves_finish(problem, arc, drafts, limit) ||
           (facets > 0 && flats_on(problem, arc, drafts, limit) <= facets);
  };
  return std::all_of(problem.surfaces.begin(), problem.surfaces.end(), [&](const Surface& surface) {
    if (!surface.arc) return true;
    const std::vector<Surface> arcs = edges_of(problem, surface);
    return std::all_of(arcs.begin(), arcs.end(), is_finished);
  });
}

std::vector<std::vector<Draft>> facet_drafts(const Problem& problem, int surface) {
  std::vector<std::vector<Draft>> out;
  if (problem.kit.shop.facets <= 0) return out;
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  std::vector<double> allowances = {problem.options.tolerance};
  if (problem.kit.scraper) allowances.push_back(problem.options.scrape);
  for (const double allowed : allowances) {
    arc.bead ? add_tangents(problem, surface, kShare * allowed, out)
             : add_chords(problem, surface, kShare * allowed, out);
  }
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.size() < b.size(); });
  return out;
}

}  // namespace arrisline
