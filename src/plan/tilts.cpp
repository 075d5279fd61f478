// Shown by tests/plan/reach_test.cpp.
#include "plan/tilts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "plan/facets.h"
#include "plan/gouge.h"

namespace arrisline {

namespace {

/// Nobody turns a plane by less, in degrees; half of it stays uncut at either end of the arc, a hair.
constexpr double kNoTurn = 0.6;
/// Tilts no farther apart than this are tried to find where a plane stands, in degrees.
constexpr double kProbes = 1;

bool stands(const Problem& problem, const Surface& arc, const Plane& plane, double tilt) {
  const Pose pose = pose_on_arc(problem, arc, plane, tilt);
  if (gouges(problem.section.target, Sweep(plane, pose), kExact)) return false;
  return body_clears(problem.section.target, plane, pose);
}

}  // namespace

std::vector<TiltRange> standing_ranges(const Problem& problem, const Surface& arc, const Plane& plane) {
  const double beta = to_degrees(plane.half_arc());
  std::vector<double> probes = {arc.lo, arc.hi, (arc.lo + arc.hi) / 2};
  for (const double t : {arc.lo + beta, arc.hi - beta}) {
    if (t > arc.lo && t < arc.hi) probes.push_back(t);
  }
  const int steps = std::max(2, static_cast<int>(std::ceil((arc.hi - arc.lo) / kProbes - 1e-6)));
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
  std::vector<TiltRange> ranges;
  for (std::size_t i = 0; i < probes.size(); ++i) {
    if (!good[i]) continue;
    std::size_t j = i;
    while (j + 1 < probes.size() && good[j + 1]) ++j;
    TiltRange range{probes[i], probes[j]};
    if (i > 0) range.from = border(probes[i], probes[i - 1]);
    if (j + 1 < probes.size()) range.to = border(probes[j], probes[j + 1]);
    ranges.push_back(range);
    i = j;
  }
  return ranges;
}

void spread(double from, double to, double widest, std::vector<double>& tilts) {
  const int gaps = to - from < 0.05 ? 0 : static_cast<int>(std::ceil((to - from) / widest - 1e-9));
  for (int i = 0; i <= gaps; ++i) tilts.push_back(gaps == 0 ? from : from + (to - from) * i / gaps);
}

std::vector<Pose> poses_at(const Problem& problem, const Surface& arc, const Plane& plane,
                           const std::vector<double>& tilts) {
  std::vector<Pose> poses;
  for (const double tilt : tilts) poses.push_back(pose_on_arc(problem, arc, plane, tilt));
  return poses;
}

double left_by_end_flats(const Problem& problem, const Surface& arc, double at) {
  if (!arc.bead) return std::numeric_limits<double>::infinity();
  const double turn = to_radians(std::min({at - arc.lo, arc.hi - at, 60.0}));
  return radius(problem.edge(arc)) * (1 / std::cos(turn) - 1);
}

double left_with_end_flats(const Problem& problem, const Surface& arc, const Plane& plane,
                           const std::vector<Pose>& poses, double at) {
  return std::min(left_at(problem, arc, plane, poses, at), left_by_end_flats(problem, arc, at));
}

double worst_between(const Problem& problem, const Surface& arc, const Plane& plane,
                     const std::vector<double>& tilts, double from, double to) {
  const std::vector<Pose> poses = poses_at(problem, arc, plane, tilts);
  double worst = 0;
  for (const double at : arc_looks(arc)) {
    if (at < from || at > to) continue;
    worst = std::max(worst, left_with_end_flats(problem, arc, plane, poses, at));
  }
  return worst;
}

std::vector<double> allowances(const Problem& problem) {
  constexpr double kShare = 0.95;
  std::vector<double> out = {kShare * problem.options.tolerance};
  if (problem.kit.scraper && problem.options.scrape > problem.options.tolerance)
    out.push_back(kShare * problem.options.scrape);
  return out;
}

namespace {

/// The fewest tilts, spread alike over the arc as far as the range lets them, at which a sole that bears at
/// one place leaves no more than `allowed` anywhere; nothing where that cannot be.
std::vector<double> fewest_tilts(const Problem& problem, const Surface& arc, const Plane& plane,
                                 const TiltRange& range, double allowed) {
  constexpr int kMost = 12;
  const double span = arc.hi - arc.lo;
  for (int n = 1; n <= kMost; ++n) {
    // Each to the middle of its share of the arc, or within the range spread alike.
    const double from = std::clamp(arc.lo + span / (2 * n), range.from, range.to);
    const double to = std::clamp(arc.hi - span / (2 * n), range.from, range.to);
    if (n > 1 && (to - from) / (n - 1) > kMostTurn) continue;
    if (n > 1 && to - from < 0.05) break;
    std::vector<double> tilts;
    for (int i = 0; i < n; ++i) tilts.push_back(n == 1 ? (from + to) / 2 : from + (to - from) * i / (n - 1));
    if (worst_between(problem, arc, plane, tilts, arc.lo, arc.hi) <= allowed) return tilts;
  }
  return {};
}

/// Tilts of a sole of another radius, as few as leave no more than `allowed` between them; nothing where even
/// close together they leave more. `whole`: the stretch of the arc that they have to leave finished.
std::vector<double> spaced(const Problem& problem, const Surface& arc, const Plane& plane,
                           const TiltRange& tilts, const TiltRange& whole, double allowed) {
  constexpr std::size_t kMostTilts = 20;  // nobody would turn a plane more often for one curve
  std::vector<double> out;
  for (double widest = kMostTurn; widest > 1 && out.size() <= kMostTilts; widest *= 0.85) {
    std::vector<double> trial;
    spread(tilts.from, tilts.to, widest, trial);
    if (trial.size() == out.size()) continue;
    out = std::move(trial);
    if (worst_between(problem, arc, plane, out, whole.from, whole.to) <= allowed) return out;
  }
  return {};
}

}  // namespace

Bearing bearing_of(const Problem& problem, const Surface& arc, const Plane& plane) {
  const double larger = plane.radius - radius(problem.edge(arc));
  if (std::abs(larger) <= kSameRadius) return Bearing::along;
  return (larger > 0) == arc.bead ? Bearing::in_middle : Bearing::at_edges;
}

double stands_off(const Problem& problem, const Surface& arc, const Plane& plane) {
  if (bearing_of(problem, arc, plane) != Bearing::at_edges) return 0;
  const double r = radius(problem.edge(arc)), half = plane.width / 2;
  if (half >= r) return std::numeric_limits<double>::infinity();
  return std::abs(sagitta(plane.radius, half) - sagitta(r, half));
}

std::vector<double> finishing_tilts(const Problem& problem, const Surface& arc, const Plane& plane,
                                    const TiltRange& range) {
  // Of what may be left, this project's own choice; a sole that bears at its edges seldom comes as near as
  // the first.
  constexpr std::array kCloser = {0.5, 0.75};
  const double r = radius(problem.edge(arc));
  const Bearing bearing = bearing_of(problem, arc, plane);
  const bool same = bearing == Bearing::along;
  const double w = plane.width;
  if (stands_off(problem, arc, plane) > allowances(problem).back()) return {};
  std::vector<double> kept_to = allowances(problem);
  if (problem.closer_tilts) {
    const double most = kept_to.front();
    kept_to.clear();
    for (const double share : kCloser) kept_to.push_back(share * most);
  }
  std::vector<double> tilts;
  if (bearing == Bearing::in_middle) {
    // What is left rises to either side.
    for (const double allowed : kept_to) {
      tilts = fewest_tilts(problem, arc, plane, range, allowed);
      if (tilts.empty()) tilts = spaced(problem, arc, plane, range, range, allowed);
      if (!tilts.empty()) break;
    }
    return tilts;
  }
  // Half of the arc that it lies along, or whose ends the edges of its sole rest on.
  const double half = to_degrees(std::asin(std::min(1.0, w / 2 / (same ? plane.radius : r))));
  double first = std::max(range.from, std::min(arc.lo + half, range.to));
  double last = std::min(range.to, std::max(arc.hi - half, range.from));
  if (last > first && last - first < kNoTurn) first = last = (first + last) / 2;
  if (first > last) {
    // Any tilt from `last` to `first` covers the whole arc: its middle leans least on either side.
    const double middle = std::clamp((arc.lo + arc.hi) / 2, last, first);
    first = last = std::clamp(middle, range.from, range.to);
  }
  if (same) {
    // A sole of another radius turns about the arc's centre, not its own, and then only so far at a time.
    const double widest = 2 * half - kOverlap;
    const bool own = std::abs(plane.radius - r) <= kSameCircle;
    spread(first, last, own ? widest : std::min(widest, kMostTurn), tilts);
    return tilts;
  }
  for (const double allowed : kept_to) {
    tilts = spaced(problem, arc, plane, {first, last}, {first - half, last + half}, allowed);
    if (!tilts.empty()) break;
  }
  return tilts;
}

}  // namespace arrisline
