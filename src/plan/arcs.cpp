// Curved cuts: the tilts at which a hollow or a round finishes an arc.
#include <algorithm>
#include <cmath>

#include "plan/problem.h"
#include "plan/touch.h"
#include "plan/wood.h"

namespace arrisline {

namespace {

/// Later poses of a cut must overlap an earlier one by 10° of arc; a little more keeps clear of the limit.
constexpr double kOverlap = 10.5;
/// With another radius the tilts of one cut lie within 30° of each other.
constexpr double kMostTurn = 29.5;
/// Nobody turns a plane by less, in degrees; half of it stays uncut at either end of the arc, a hair.
constexpr double kNoTurn = 0.6;
/// A sole this close to the arc's radius lies along it.
constexpr double kSameRadius = 0.04;

bool stands(const Problem& problem, const Surface& arc, const Plane& plane, double tilt) {
  const Pose pose = pose_on_arc(problem, arc, plane, tilt);
  if (gouges(problem.section.target, Sweep(plane, pose), kExact)) return false;
  return body_clears(problem.section.target, plane, pose);
}

struct Range {
  double from, to;
};

/// The tilts between lo and hi at which the plane stands on the arc clear of the rest of the target.
std::vector<Range> standing_ranges(const Problem& problem, const Surface& arc, const Plane& plane) {
  const double beta = to_degrees(plane.half_arc());
  std::vector<double> probes = {arc.lo, arc.hi, (arc.lo + arc.hi) / 2};
  for (const double t : {arc.lo + beta, arc.hi - beta}) {
    if (t > arc.lo && t < arc.hi) probes.push_back(t);
  }
  const int steps = std::max(2, static_cast<int>((arc.hi - arc.lo) / 2));
  for (int i = 1; i < steps; ++i) probes.push_back(arc.lo + (arc.hi - arc.lo) * i / steps);
  std::sort(probes.begin(), probes.end());
  std::vector<bool> good;
  for (const double t : probes) good.push_back(stands(problem, arc, plane, t));

  auto border = [&](double in, double out) {
    while (std::abs(out - in) > 1e-7) {
      const double mid = (in + out) / 2;
      (stands(problem, arc, plane, mid) ? in : out) = mid;
    }
    return in;
  };
  std::vector<Range> ranges;
  for (std::size_t i = 0; i < probes.size(); ++i) {
    if (!good[i]) continue;
    std::size_t j = i;
    while (j + 1 < probes.size() && good[j + 1]) ++j;
    Range range{probes[i], probes[j]};
    if (i > 0) range.from = border(probes[i], probes[i - 1]);
    if (j + 1 < probes.size()) range.to = border(probes[j], probes[j + 1]);
    ranges.push_back(range);
    i = j;
  }
  return ranges;
}

/// Height of the cusp between two tilts of another radius, phi degrees apart (docs/model.md).
double cusp(double arc_radius, double sole_radius, bool bead, double phi) {
  const double d = sole_radius - arc_radius;
  const double s = std::sin(to_radians(phi) / 2);
  const double c = std::cos(to_radians(phi) / 2);
  const double root = std::sqrt(std::max(0.0, sole_radius * sole_radius - d * d * s * s));
  return bead ? root - d * c - arc_radius : arc_radius - (-d * c + root);
}

double widest_turn(const Problem& problem, const Surface& arc, const Plane& plane) {
  // What the scraper may take is kept for what the planes cannot reach.
  const double allowed = 0.9 * problem.options.tolerance;
  const double r = radius(problem.edge(arc));
  double low = 0.5, high = kMostTurn;
  if (cusp(r, plane.radius, arc.bead, high) <= allowed) return high;
  while (high - low > 0.01) {
    const double mid = (low + high) / 2;
    (cusp(r, plane.radius, arc.bead, mid) <= allowed ? low : high) = mid;
  }
  return low;
}

void spread(double from, double to, double widest, std::vector<double>& tilts) {
  const int gaps = to - from < 0.05 ? 0 : static_cast<int>(std::ceil((to - from) / widest - 1e-9));
  for (int i = 0; i <= gaps; ++i) tilts.push_back(gaps == 0 ? from : from + (to - from) * i / gaps);
}

}  // namespace

namespace {

/// Splits the poses, in order of tilt, into as few cuts as the turning of the blank allows.
std::vector<Draft> split_by_turning(const Draft& whole) {
  std::vector<Draft> out;
  for (const Pose& pose : whole.poses) {
    if (!out.empty()) {
      std::vector<Pose> longer = out.back().poses;
      longer.push_back(pose);
      if (lies_for(longer)) {
        out.back().poses = std::move(longer);
        continue;
      }
    }
    Draft next = whole;
    next.poses = {pose};
    out.push_back(std::move(next));
  }
  for (Draft& draft : out) {
    draft.starts.clear();
    for (const double start : whole.starts) {
      std::vector<Pose> with = draft.poses;
      with.push_back({{}, start});
      if (out.size() == 1 || lies_for(with)) draft.starts.push_back(start);
    }
  }
  return out;
}

}  // namespace

std::vector<std::vector<Draft>> arc_drafts(const Problem& problem, int surface) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const double r = radius(problem.edge(arc));
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  std::vector<std::vector<Draft>> out;
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    const Plane& plane = problem.plane(p);
    if (plane.kind != kind) continue;
    const double beta = to_degrees(plane.half_arc());
    if (2 * beta < kOverlap + 0.5) continue;  // so short a sole could not be turned and still overlap
    const bool same = std::abs(plane.radius - r) <= kSameRadius;
    const bool edges_bear = arc.bead ? plane.radius < r : plane.radius > r;
    const bool lies_along = same || edges_bear;
    if (edges_bear && !same) {
      const double w = plane.width / 2;
      const double hollowness = (plane.radius - std::sqrt(plane.radius * plane.radius - w * w)) -
                                (r > w ? r - std::sqrt(r * r - w * w) : r);
      if (std::abs(hollowness) > 0.95 * problem.options.tolerance) continue;
    }
    for (const Range& range : standing_ranges(problem, arc, plane)) {
      Draft draft;
      draft.plane = p;
      draft.arc = surface;
      draft.miss = std::abs(plane.radius - r);
      std::vector<double> tilts;
      if (lies_along) {
        double first = std::max(range.from, std::min(arc.lo + beta, range.to));
        double last = std::min(range.to, std::max(arc.hi - beta, range.from));
        if (last > first && last - first < kNoTurn) first = last = (first + last) / 2;
        if (first > last) {
          // Any tilt from `last` to `first` covers the whole arc: its middle leans least on either side.
          const double middle = std::clamp((arc.lo + arc.hi) / 2, last, first);
          first = last = std::clamp(middle, range.from, range.to);
        }
        // A sole of another radius turns about the arc's centre, not its own, and then only so far at a time.
        spread(first, last,
               draft.miss <= kSameCircle ? 2 * beta - kOverlap : std::min(2 * beta - kOverlap, kMostTurn),
               tilts);
      } else {
        spread(range.from, range.to, widest_turn(problem, arc, plane), tilts);
      }
      for (const double tilt : tilts) draft.poses.push_back(pose_on_arc(problem, arc, plane, tilt));
      std::vector<double> starts = {(arc.lo + arc.hi) / 2, (range.from + range.to) / 2};
      if (arc.lo < 0 && arc.hi > 0) starts.push_back(0);  // upright, as a plough leaves its groove
      if (arc.hi - arc.lo > 100) starts.insert(starts.end(), {arc.lo + 45, arc.hi - 45});
      for (const double tilt : starts) {
        if (tilt >= range.from && tilt <= range.to) draft.starts.push_back(tilt);
      }
      std::vector<Draft> way = split_by_turning(draft);
      if (way.size() > 1) out.emplace_back(way.rbegin(), way.rend());
      out.push_back(std::move(way));
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const std::vector<Draft>& a, const std::vector<Draft>& b) {
    if (std::abs(a.front().miss - b.front().miss) > kSameRadius) return a.front().miss < b.front().miss;
    if (a.size() != b.size()) return a.size() < b.size();
    return a.front().poses.size() < b.front().poses.size();
  });
  // A matching plane that can stand there finishes the arc; others serve only where there is none.
  if (!out.empty() && out.front().front().miss <= kSameRadius) {
    out.erase(std::remove_if(out.begin(), out.end(),
                             [](const std::vector<Draft>& way) { return way.front().miss > kSameRadius; }),
              out.end());
  }
  return out;
}

}  // namespace arrisline
