// Curved cuts: the tilts at which a hollow or a round finishes an arc, and the ways to put stretches of one
// arc together. Shown by tests/plan/reach_test.cpp.
#include <algorithm>
#include <cmath>
#include <optional>

#include "plan/facets.h"
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

/// What the poses leave of the arc at worst between the first and the last tilt.
double worst_between(const Problem& problem, const Surface& arc, const Plane& plane,
                     const std::vector<double>& tilts, double from, double to) {
  const std::vector<Pose> poses = poses_at(problem, arc, plane, tilts);
  double worst = 0;
  for (const double at : arc_looks(arc)) {
    if (at >= from && at <= to) worst = std::max(worst, left_at(problem, arc, plane, poses, at));
  }
  return worst;
}

/// Tilts of a sole of another radius, as few as leave no more than `allowed` between them; nothing where even
/// close together they leave more. `whole`: the stretch of the arc that they have to leave finished.
std::vector<double> spaced(const Problem& problem, const Surface& arc, const Plane& plane, const Range& tilts,
                           const Range& whole, double allowed) {
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

/// Thicknesses that the planes may leave: what may stay, and then what the scraper takes. A little is kept
/// for what is found only when the whole is judged.
std::vector<double> allowances(const Problem& problem) {
  constexpr double kShare = 0.95;
  std::vector<double> out = {kShare * problem.options.tolerance};
  if (problem.kit.scraper && problem.options.scrape > problem.options.tolerance)
    out.push_back(kShare * problem.options.scrape);
  return out;
}

/// How far the middle of a sole that bears at its edges stays off a circle of radius r.
double edges_stand_off(const Plane& plane, double r) {
  auto sagitta = [&](double of) { return of - std::sqrt(of * of - plane.width * plane.width / 4); };
  return std::abs(sagitta(plane.radius) - sagitta(r));
}

/// The tilts at which the plane finishes what it can of the arc within the range.
std::vector<double> finishing_tilts(const Problem& problem, const Surface& arc, const Plane& plane,
                                    const Range& range) {
  const double r = radius(problem.edge(arc));
  const bool same = std::abs(plane.radius - r) <= kSameRadius;
  const bool edges_bear = arc.bead ? plane.radius < r : plane.radius > r;
  const double w = plane.width;
  if (edges_bear && !same && (w >= 2 * r || edges_stand_off(plane, r) > allowances(problem).back()))
    return {};
  std::vector<double> tilts;
  if (!same && !edges_bear) {
    // It bears in its middle, and what is left rises to either side.
    for (const double allowed : allowances(problem)) {
      tilts = spaced(problem, arc, plane, range, range, allowed);
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
  for (const double allowed : allowances(problem)) {
    tilts = spaced(problem, arc, plane, {first, last}, {first - half, last + half}, allowed);
    if (!tilts.empty()) break;
  }
  return tilts;
}

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

/// What one plane does of the arc within one range of tilts, in one cut or, where the blank has to be turned,
/// in several.
struct Part {
  std::vector<Draft> cuts;
  std::vector<bool> makes;  // beside arc_looks(): the places it leaves finished

  double share() const {
    return static_cast<double>(std::count(makes.begin(), makes.end(), true)) /
           static_cast<double>(makes.size());
  }
  bool whole() const { return share() > kWhole; }

  static constexpr double kWhole = 0.97;  // of the looks: the ends are judged with the flats beside them
};

/// Where a matching sole is a hair too wide to lie on the arc between its neighbours: slid in at the tilt at
/// which they let it come nearest.
std::optional<Part> standing_off(const Problem& problem, int surface, int p) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const Plane& plane = problem.plane(p);
  if (std::abs(plane.radius - radius(problem.edge(arc))) > kSameRadius) return std::nullopt;
  auto off = [&](double tilt) {
    return std::max(
        0.0, rest_height(problem.section.target, Sweep(plane, pose_on_arc(problem, arc, plane, tilt))));
  };
  constexpr int kTries = 200;
  const double step = (arc.hi - arc.lo) / kTries;
  double best = arc.lo;
  for (int i = 0; i <= kTries; ++i) {
    if (off(arc.lo + i * step) < off(best)) best = arc.lo + i * step;
  }
  for (double by = step / 2; by > 1e-4; by /= 2) {
    for (const double tilt : {best - by, best + by}) {
      if (off(tilt) < off(best)) best = tilt;
    }
  }
  Draft draft;
  draft.plane = p;
  draft.arc = surface;
  draft.miss = std::abs(plane.radius - radius(problem.edge(arc)));
  Pose pose = pose_on_arc(problem, arc, plane, best);
  pose.at = pose.at + off(best) * outward(best);
  draft.poses = {pose};
  if (gouges(problem.section.target, Sweep(plane, pose), kExact) ||
      !body_clears(problem.section.target, plane, pose))
    return std::nullopt;
  Part part;
  part.cuts = {draft};
  for (const double at : arc_looks(arc))
    part.makes.push_back(left_at(problem, arc, plane, draft.poses, at) <= allowances(problem).front());
  if (part.share() < 0.5) return std::nullopt;
  return part;
}

std::vector<Part> parts_of(const Problem& problem, int surface, int p) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const Plane& plane = problem.plane(p);
  std::vector<Part> out;
  for (const Range& range : standing_ranges(problem, arc, plane)) {
    Draft draft;
    draft.plane = p;
    draft.arc = surface;
    draft.miss = std::abs(plane.radius - radius(problem.edge(arc)));
    const std::vector<double> tilts = finishing_tilts(problem, arc, plane, range);
    if (tilts.empty()) continue;
    draft.poses = poses_at(problem, arc, plane, tilts);
    std::vector<double> starts = {(arc.lo + arc.hi) / 2, (range.from + range.to) / 2};
    if (arc.lo < 0 && arc.hi > 0) starts.push_back(0);  // upright, as a plough leaves its groove
    if (arc.hi - arc.lo > 100) starts.insert(starts.end(), {arc.lo + 45, arc.hi - 45});
    for (const double tilt : starts) {
      if (tilt >= range.from && tilt <= range.to) draft.starts.push_back(tilt);
    }
    Part part;
    part.cuts = split_by_turning(draft);
    for (const double at : arc_looks(arc))
      part.makes.push_back(left_at(problem, arc, plane, draft.poses, at) <= allowances(problem).back());
    out.push_back(std::move(part));
  }
  if (out.empty()) {
    if (std::optional<Part> part = standing_off(problem, surface, p)) out.push_back(std::move(*part));
  }
  return out;
}

/// The one part and then the other, the larger first; it may guide the smaller in the arc that it leaves.
std::vector<Draft> put_together(const Part& a, const Part& b) {
  const bool in_order = a.share() >= b.share();
  std::vector<Draft> out = in_order ? a.cuts : b.cuts;
  const std::vector<Draft>& rest = in_order ? b.cuts : a.cuts;
  out.insert(out.end(), rest.begin(), rest.end());
  return out;
}

/// Pairs of parts that between them finish more of the arc than either does, those that finish most first.
std::vector<std::vector<Draft>> pairs_of(const std::vector<Part>& parts) {
  constexpr double kGain = 0.08;  // of the arc, that the second part must add
  constexpr std::size_t kPairs = 6;
  std::vector<std::pair<double, std::vector<Draft>>> found;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (std::size_t j = i + 1; j < parts.size(); ++j) {
      Part both;
      for (std::size_t k = 0; k < parts[i].makes.size(); ++k)
        both.makes.push_back(parts[i].makes[k] || parts[j].makes[k]);
      if (both.share() < std::max(parts[i].share(), parts[j].share()) + kGain) continue;
      const double miss = parts[i].cuts.front().miss + parts[j].cuts.front().miss;
      found.emplace_back(both.share() - 1e-3 * miss, put_together(parts[i], parts[j]));
    }
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first + 1e-9; });
  std::vector<std::vector<Draft>> out;
  for (auto& [rank, way] : found) {
    if (out.size() < kPairs) out.push_back(std::move(way));
  }
  return out;
}

}  // namespace

std::vector<std::vector<Draft>> arc_drafts(const Problem& problem, int surface) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const PlaneKind kind = arc.bead ? PlaneKind::hollow : PlaneKind::round;
  std::vector<Part> parts;
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    if (problem.plane(p).kind != kind) continue;
    std::vector<Part> found = parts_of(problem, surface, p);
    std::move(found.begin(), found.end(), std::back_inserter(parts));
  }
  if (parts.empty()) return facet_drafts(problem, surface);
  auto matches = [](const Part& part) { return part.cuts.front().miss <= kSameRadius; };
  // A matching plane that makes the whole arc is the one to use; others serve only where there is none.
  if (std::any_of(parts.begin(), parts.end(), [&](const Part& p) { return matches(p) && p.whole(); }))
    std::erase_if(parts, [&](const Part& p) { return !matches(p); });
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) {
    if (a.whole() != b.whole()) return a.whole();
    if (std::abs(a.cuts.front().miss - b.cuts.front().miss) > kSameRadius)
      return a.cuts.front().miss < b.cuts.front().miss;
    if (a.cuts.size() != b.cuts.size()) return a.cuts.size() < b.cuts.size();
    return a.cuts.front().poses.size() < b.cuts.front().poses.size();
  });
  std::vector<std::vector<Draft>> out;
  auto add = [&](const Part& part) {
    if (part.cuts.size() > 1) out.emplace_back(part.cuts.rbegin(), part.cuts.rend());
    out.push_back(part.cuts);
  };
  for (const Part& part : parts) {
    if (part.whole()) add(part);
  }
  if (out.empty()) out = pairs_of(parts);
  for (const Part& part : parts) {
    if (!part.whole()) add(part);
  }
  return out;
}

}  // namespace arrisline
