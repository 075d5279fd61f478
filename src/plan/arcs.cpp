// Curved cuts: what a hollow or a round makes of an arc, and the ways to put stretches of one arc together.
// Shown by tests/plan/reach_test.cpp.
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "plan/facets.h"
#include "plan/gouge.h"
#include "plan/leaning.h"
#include "plan/problem.h"
#include "plan/rest.h"
#include "plan/tilts.h"

namespace arrisline {

namespace {

/// Splits the poses, in order of tilt, into as few cuts as the turning of the blank allows.
std::vector<Draft> split_by_turning(const Plane& plane, const Draft& whole) {
  std::vector<Draft> out;
  for (const Pose& pose : whole.poses) {
    if (!out.empty()) {
      std::vector<Pose> longer = out.back().poses;
      longer.push_back(pose);
      if (!all_ways_to_lie(plane, longer).empty()) {
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
      const bool near = std::any_of(draft.poses.begin(), draft.poses.end(), [&](const Pose& pose) {
        return std::abs(pose.tilt - start) <= kMostTurn;
      });
      if (out.size() == 1 || (near && !all_ways_to_lie(plane, with).empty())) draft.starts.push_back(start);
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

/// Where a sole of about the arc's radius is a hair too wide to lie on it between its neighbours: slid in at
/// the tilt at which they let it come nearest.
std::optional<Part> standing_off(const Problem& problem, int surface, int p) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const Plane& plane = problem.plane(p);
  // What the other radius alone leaves at the ends of half the arc, bearing in its middle.
  const double quarter = to_radians(arc.hi - arc.lo) / 4;
  const double miss = std::abs(plane.radius - radius(problem.edge(arc)));
  if (miss * (1 - std::cos(quarter)) > allowances(problem).front()) return std::nullopt;
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
  draft.miss = miss;
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

/// The ranges of tilts to be tried: those in which the plane stands, and as much of them as needs no turning
/// of the blank, where it bears at one place and can lean on to the ends of the arc, or where that is nearly
/// all.
std::vector<TiltRange> ranges_to_try(const Problem& problem, const Surface& arc, const Plane& plane) {
  std::vector<TiltRange> ranges = standing_ranges(problem, arc, plane);
  const bool leans_on = bearing_of(problem, arc, plane) == Bearing::in_middle;
  using Window = std::pair<double, double>;
  std::vector<Window> windows = {{-kOverFence, 90}};  // the blank face up
  if (leans_on) windows.emplace_back(-90, kOverFence);
  // Of planes that cannot lean on what lies beyond is missed, but for a little.
  constexpr double kNone = 0.01;  // degrees
  const double most = leans_on ? 180 : 3;
  const std::size_t n = ranges.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (const auto& [low, high] : windows) {
      const TiltRange part{std::max(ranges[i].from, low), std::min(ranges[i].to, high)};
      const double less = std::max(part.from - ranges[i].from, ranges[i].to - part.to);
      if (less > kNone && less < most && part.to - part.from > kOverlap) ranges.push_back(part);
    }
  }
  return ranges;
}

/// The tilts of the draft, in order, and where the arc is several of one circle, those at which its plane
/// comes nearest the middle of each that it leaves the half of undone: each is an element, and has to be
/// finished.
std::vector<double> tilts_for_each(const Problem& problem, const Surface& arc, Draft draft,
                                   const TiltRange& range, std::vector<double> tilts) {
  const std::vector<Surface> each = edges_of(problem, arc);
  if (each.size() == 1) return tilts;
  draft.poses = poses_at(problem, arc, problem.plane(draft.plane), tilts);
  for (const Surface& one : each) {
    if (curves_finish(problem, one, {draft}, allowances(problem).front())) continue;
    const double middle = (arc.lo + arc.hi) / 2;
    const double tilt =
        std::clamp(middle + wrap_degrees((one.lo + one.hi) / 2 - middle), range.from, range.to);
    const auto place = std::lower_bound(tilts.begin(), tilts.end(), tilt);
    if (place == tilts.end() || *place - tilt > 1e-6) tilts.insert(place, tilt);
  }
  return tilts;
}

std::vector<Part> parts_of(const Problem& problem, int surface, int p) {
  const Surface& arc = problem.surfaces[static_cast<std::size_t>(surface)];
  const Plane& plane = problem.plane(p);
  const std::vector<double> may_stay = allowances(problem);
  const bool too_far_off = stands_off(problem, arc, plane) > may_stay.front();
  std::vector<Part> out;
  for (const TiltRange& range : ranges_to_try(problem, arc, plane)) {
    Draft draft;
    draft.plane = p;
    draft.arc = surface;
    draft.miss = std::abs(plane.radius - radius(problem.edge(arc)));
    std::vector<double> tilts = finishing_tilts(problem, arc, plane, range);
    if (tilts.empty()) continue;
    tilts = tilts_for_each(problem, arc, draft, range, std::move(tilts));
    draft.poses = poses_at(problem, arc, plane, tilts);
    if (bearing_of(problem, arc, plane) == Bearing::in_middle) lean_on(problem, arc, plane, tilts, draft);
    std::vector<double> starts = {(arc.lo + arc.hi) / 2, (range.from + range.to) / 2};
    // One of another radius is guided at places of its own: by the ends of what it can turn through as well.
    if (draft.miss > kSameRadius) starts.insert(starts.end(), {range.from, range.to});
    if (arc.lo < 0 && arc.hi > 0) starts.push_back(0);  // upright, as a plough leaves its groove
    if (arc.hi - arc.lo > 100) starts.insert(starts.end(), {arc.lo + 45, arc.hi - 45});
    for (const double tilt : starts) {
      if (tilt >= range.from && tilt <= range.to) draft.starts.push_back(tilt);
    }
    Part part;
    part.cuts = split_by_turning(problem.plane(draft.plane), draft);
    // As much of a range as needs no turning may come to what the whole range came to.
    const auto same_poses = [](const Draft& a, const Draft& b) { return a.poses == b.poses; };
    const bool known = std::any_of(out.begin(), out.end(), [&](const Part& other) {
      return std::equal(part.cuts.begin(), part.cuts.end(), other.cuts.begin(), other.cuts.end(), same_poses);
    });
    if (known) continue;
    bool rough = too_far_off;
    for (const double at : arc_looks(arc)) {
      const double left = left_with_end_flats(problem, arc, plane, draft.poses, at);
      part.makes.push_back(left <= may_stay.back());
      rough = rough || (left > may_stay.front() && left <= may_stay.back());
    }
    for (Draft& cut : part.cuts) cut.rough = rough;
    out.push_back(std::move(part));
  }
  const bool in_one = std::any_of(out.begin(), out.end(),
                                  [](const Part& part) { return part.whole() && part.cuts.size() == 1; });
  // Nobody turns the blank where one setting of it does.
  if (in_one) std::erase_if(out, [](const Part& part) { return part.cuts.size() > 1; });
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
  const double r = radius(problem.edge(arc));
  std::vector<Part> parts;
  auto add_planes = [&](bool matching) {
    for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
      const Plane& plane = problem.plane(p);
      if (plane.kind != kind || (std::abs(plane.radius - r) <= kSameRadius) != matching) continue;
      std::vector<Part> found = parts_of(problem, surface, p);
      std::move(found.begin(), found.end(), std::back_inserter(parts));
    }
  };
  add_planes(true);
  // A matching plane that makes the whole arc is the one to use; others serve only where there is none, or
  // where it is guided badly or not at all.
  if (problem.other_radii ||
      std::none_of(parts.begin(), parts.end(), [](const Part& part) { return part.whole(); }))
    add_planes(false);
  if (parts.empty()) return facet_drafts(problem, surface);
  std::vector<std::vector<Draft>> out;
  if (problem.facets_too) out = facet_drafts(problem, surface);
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) {
    if (a.whole() != b.whole()) return a.whole();
    if (std::abs(a.cuts.front().miss - b.cuts.front().miss) > kSameRadius)
      return a.cuts.front().miss < b.cuts.front().miss;
    if (a.cuts.size() != b.cuts.size()) return a.cuts.size() < b.cuts.size();
    return a.cuts.front().poses.size() < b.cuts.front().poses.size();
  });
  auto add = [&](const Part& part) {
    if (part.cuts.size() > 1) out.emplace_back(part.cuts.rbegin(), part.cuts.rend());
    out.push_back(part.cuts);
  };
  for (const Part& part : parts) {
    if (part.whole()) add(part);
  }
  if (std::none_of(parts.begin(), parts.end(), [](const Part& part) { return part.whole(); })) {
    std::vector<std::vector<Draft>> pairs = pairs_of(parts);
    std::move(pairs.begin(), pairs.end(), std::back_inserter(out));
  }
  for (const Part& part : parts) {
    if (!part.whole()) add(part);
  }
  return out;
}

}  // namespace arrisline
