// The planner's search: covers of the flats, planes and rails for the arcs, then cuts left out, put in and
// changed for others while that lowers the effort. Shown by tests/plan/plan_test.cpp.
#include "plan/compose.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "plan/chooser.h"
#include "plan/covers.h"

namespace arrisline {

namespace {

/// Flat cuts that may take waste from before the curved planes: chamfers on beads, corners in coves, and the
/// flats that stand against corners of the target.
std::vector<Draft> roughing_pool(const Problem& problem, const std::vector<Draft>& flats) {
  std::vector<Draft> pool;
  int widest = -1;
  for (int p = 0; p < static_cast<int>(problem.kit.planes.size()); ++p) {
    if (problem.plane(p).kind == PlaneKind::rebate &&
        (widest < 0 || problem.plane(p).width > problem.plane(widest).width))
      widest = p;
  }
  auto add = [&](std::vector<Pose> poses) {
    if (poses.empty()) return;
    Draft draft;
    draft.plane = widest;
    draft.poses = std::move(poses);
    pool.push_back(std::move(draft));
  };
  for (const Surface& s : problem.surfaces) {
    if (!s.arc || widest < 0) continue;
    for (const double share : {0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875}) {
      const double lean = s.lo + share * (s.hi - s.lo);
      if (s.bead) {
        add(chamfer_on_arc(problem, s, problem.plane(widest), lean, 0));
        continue;
      }
      const Point k = problem.edge(s).centre - radius(problem.edge(s)) * outward(lean);
      const double frame = std::abs(wrap_degrees(lean)) <= 90 ? 0 : 180;
      const int open = wrap_degrees(lean - frame) > 0 ? -1 : 1;
      add(flat_cut(problem, problem.plane(widest), frame, dot(k, across(frame)), open,
                   dot(k, outward(frame))));
    }
  }
  for (const Draft& draft : flats) {
    if (problem.plane(draft.plane).kind == PlaneKind::rebate) pool.push_back(draft);
  }
  return pool;
}

std::vector<Draft> drafts_of(const Sequence& sequence) {
  std::vector<Draft> out;
  for (const Step& step : sequence.steps) out.push_back(step.draft);
  return out;
}

/// Leaves out each flat that the plan is better without, and puts in each of the pool that it is better with,
/// until neither helps.
void improve(const Problem& problem, const std::vector<Draft>& pool, Chooser& chooser,
             const Composition& out) {
  constexpr double kWorthwhile = 0.01;  // of the waste, that a cut from the pool must save the curved planes
  constexpr int kRounds = 8;
  double before = std::numeric_limits<double>::infinity();
  for (int round = 0; round < kRounds && out.best->effort < before - 1e-6; ++round) {
    before = out.best->effort;
    const std::vector<Draft> drafts = drafts_of(*out.best);
    Wood flat_wood(problem.blank);
    for (std::size_t i = 0; i < drafts.size(); ++i) {
      if (problem.plane(drafts[i].plane).is_curved()) continue;
      cut_all(problem, {drafts[i]}, flat_wood);
      if (!drafts[i].finishes.empty()) continue;
      std::vector<Draft> fewer = drafts;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      if (!fewer.empty()) chooser.judge(fewer, false);
    }
    const double waste = area(problem.blank) - area(problem.section.target);
    for (const Draft& extra : pool) {
      Wood wood = flat_wood;
      cut_all(problem, {extra}, wood);
      if (flat_wood.area() - wood.area() < kWorthwhile * waste) continue;
      std::vector<Draft> more = drafts;
      more.push_back(extra);
      chooser.judge(more, false);
      // In the place of one that is there.
      for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (!problem.plane(drafts[i].plane).is_flat() || !drafts[i].finishes.empty()) continue;
        std::vector<Draft> swapped = drafts;
        swapped[i] = extra;
        chooser.judge(swapped, false);
      }
    }
  }
}

Composition compose_with(const Problem& problem, const std::vector<Draft>& flats, const Draft* shaped) {
  Composition out;
  std::vector<Draft> given;
  std::vector<int> done;
  if (shaped != nullptr) {
    given.push_back(*shaped);
    for (const Stretch& s : shaped->finishes) done.push_back(s.surface);
  }
  const CoverSet covers = cheapest_covers(problem, flats, given);
  out.no_flat = covers.uncoverable;
  Chooser chooser(problem, done, out);
  if (!out.no_plane.empty()) return out;
  for (const std::vector<int>& cover : covers.covers) {
    std::vector<Draft> drafts = given;
    for (const int d : cover) drafts.push_back(flats[static_cast<std::size_t>(d)]);
    chooser.run(std::move(drafts));
    if (out.best && problem.options.any) break;
  }
  out.no_rails = chooser.unguided();
  if (!out.best && !out.too_thick) return out;
  const std::vector<Draft> pool = roughing_pool(problem, flats);
  // Waste that no finishing cut passes through: put in whatever thins the thickest of what is left.
  constexpr int kMostExtra = 3;
  for (int i = 0; i < kMostExtra && !out.best && out.too_thick; ++i) {
    const std::vector<Draft> drafts = drafts_of(*out.too_thick);
    const double before = out.too_thick->left.height;
    for (const Draft& extra : pool) {
      std::vector<Draft> more = drafts;
      more.push_back(extra);
      chooser.judge(more, false);
    }
    if (out.too_thick->left.height > before - 1e-6) break;
  }
  if (out.best && !problem.options.any) {
    improve(problem, pool, chooser, out);
    chooser.judge(drafts_of(*out.best), true);
  }
  return out;
}

}  // namespace

double most_left(const Problem& problem) {
  return problem.kit.scraper ? std::max(problem.options.tolerance, problem.options.scrape)
                             : problem.options.tolerance;
}

Composition compose(const Problem& problem) {
  const std::vector<Draft> flats = flat_drafts(problem);
  Composition out = compose_with(problem, flats, nullptr);
  for (const Draft& shaped : shaped_drafts(problem)) {
    // The rest of the profile with this part of it done by the shaped plane in one setting.
    Composition with = compose_with(problem, flats, &shaped);
    if (with.best && (!out.best || with.best->effort < out.best->effort)) out = std::move(with);
  }
  return out;
}

}  // namespace arrisline
