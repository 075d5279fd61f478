// No search for the best: a cut that can be taken is taken, so that what is named is what no rule lets in.
// Shown by tests/plan/reasons_test.cpp.
#include "plan/stuck.h"

#include <algorithm>
#include <set>

#include "plan/covers.h"
#include "plan/gauge.h"
#include "plan/gouge.h"
#include "plan/holding.h"
#include "plan/rails.h"
#include "plan/sequence.h"

namespace arrisline {

namespace {

constexpr std::size_t kSetupsTried = 6;  // of the rails for one plane

class Work {
 public:
  explicit Work(const Problem& problem) : problem_(problem), wood_(problem.blank) {}

  bool cut(const Draft& draft) {
    Wood after = wood_;
    std::vector<const Draft*> done;
    for (const Draft& d : done_) done.push_back(&d);
    const std::optional<Step> step = take(problem_, draft, done, nullptr, after);
    if (!step) return false;
    wood_ = std::move(after);
    done_.push_back(step->draft);
    return true;
  }

  bool cut_all(const std::vector<Draft>& drafts) {
    const Work before = *this;
    for (const Draft& draft : drafts) {
      if (cut(draft)) continue;
      wood_ = before.wood_;
      done_ = before.done_;
      return false;
    }
    return true;
  }

  /// The arc, on the arrises that stand there or on rails laid for it.
  bool cut_arc(const std::vector<Draft>& way) {
    if (cut_all(way)) return true;
    std::vector<Setup> setups = lay_rails(problem_, way.front(), wood_);
    if (setups.size() > kSetupsTried) setups.resize(kSetupsTried);
    for (const Setup& setup : setups) {
      std::vector<Draft> drafts = setup.cuts;
      const std::size_t first = drafts.size();
      drafts.insert(drafts.end(), way.begin(), way.end());
      drafts[first].starts.push_back(setup.start);
      if (cut_all(drafts)) return true;
    }
    return false;
  }

  Stuck::Cause why(const Draft& draft) const {
    const Plane& plane = problem_.plane(draft.plane);
    const LieSet lies = ways_to_lie(problem_, plane, draft.poses);
    if (lies.empty()) return Stuck::Cause::turning;
    if (plane.is_curved() && !best_start(problem_, draft, wood_)) return Stuck::Cause::rides;
    Wood after = wood_;
    for (const Pose& pose : draft.poses) after.cut(Sweep(plane, pose));
    for (const Pose& pose : draft.poses) {
      if (!body_clears(after.edges(), plane, pose)) return Stuck::Cause::body;
    }
    if (held(problem_, plane, draft.poses, after, lies).empty()) return Stuck::Cause::held;
    return Stuck::Cause::other;
  }

 private:
  const Problem& problem_;
  Wood wood_;
  std::vector<Draft> done_;
};

Stuck stuck_at(const Work& work, const Draft& draft) {
  Stuck out;
  out.plane = draft.plane;
  if (draft.arc >= 0) out.surfaces.push_back(draft.arc);
  for (const Stretch& s : draft.finishes) out.surfaces.push_back(s.surface);
  std::sort(out.surfaces.begin(), out.surfaces.end());
  out.surfaces.erase(std::unique(out.surfaces.begin(), out.surfaces.end()), out.surfaces.end());
  out.cause = work.why(draft);
  return out;
}

std::vector<Stuck> stuck_with(const Problem& problem, std::vector<Draft> flats,
                              const std::vector<std::vector<std::vector<Draft>>>& arcs) {
  Work work(problem);
  std::set<std::size_t> cut_arcs;
  for (bool progress = true; progress;) {
    progress = false;
    for (std::size_t i = 0; i < flats.size();) {
      if (work.cut(flats[i])) {
        flats.erase(flats.begin() + static_cast<std::ptrdiff_t>(i));
        progress = true;
      } else {
        ++i;
      }
    }
    for (std::size_t i = 0; i < arcs.size(); ++i) {
      if (cut_arcs.count(i) > 0) continue;
      const bool cut = std::any_of(arcs[i].begin(), arcs[i].end(),
                                   [&](const std::vector<Draft>& way) { return work.cut_arc(way); });
      if (!cut) continue;
      cut_arcs.insert(i);
      progress = true;
    }
  }
  std::vector<Stuck> out;
  for (const Draft& draft : flats) {
    out.push_back(stuck_at(work, draft));
    // A flat that finds nothing left to take holds nothing up.
    if (out.back().cause == Stuck::Cause::other) out.pop_back();
  }
  for (std::size_t i = 0; i < arcs.size(); ++i) {
    if (cut_arcs.count(i) == 0 && !arcs[i].empty()) out.push_back(stuck_at(work, arcs[i].front().front()));
  }
  return out;
}

}  // namespace

std::vector<Stuck> stuck_cuts(const Problem& problem) {
  std::vector<std::vector<std::vector<Draft>>> arcs;
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    if (problem.surfaces[i].arc) arcs.push_back(arc_drafts(problem, static_cast<int>(i)));
  }
  const std::vector<Draft> flats = flat_drafts(problem);
  constexpr int kCovers = 4;  // the cheapest ones; what none of them can begin with is stuck
  const std::vector<Draft> none;
  Covers covers(problem, flats, none, 0);
  Patience patience(problem.options);
  std::optional<std::vector<Stuck>> fewest;
  for (int i = 0; i < kCovers; ++i) {
    const std::optional<Covers::Cover> cover = covers.next(patience);
    if (!cover && i > 0) break;
    std::vector<Draft> drafts;
    if (cover) {
      for (const int d : cover->drafts) drafts.push_back(flats[static_cast<std::size_t>(d)]);
    }
    std::vector<Stuck> stuck = stuck_with(problem, std::move(drafts), arcs);
    if (!fewest || stuck.size() < fewest->size()) fewest = std::move(stuck);
  }
  return *fewest;
}

}  // namespace arrisline
