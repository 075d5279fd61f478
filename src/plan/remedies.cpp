// What would make a "no" a "yes", and what that says of its reasons. Shown by tests/plan/remedies_test.cpp.
#include <algorithm>

#include "arrisline/limits.h"
#include "arrisline/plan.h"
#include "plan/trials.h"

namespace arrisline {

namespace {

/// Takes away the reasons for flats that a verified plan leaves as they are: too little stays on them to
/// matter.
void drop_harmless(Trials& trials) {
  for (const Remedy& remedy : trials.plan.remedies) {
    if (remedy.add.empty()) continue;
    const Kit kit = trials.with(remedy.add);
    const Problem problem = make_problem(trials.plan.section, kit, trials.options);
    const std::vector<int> still = out_of_reach(problem, access(problem));
    auto harmless = [&](const Reason& reason) {
      return std::any_of(still.begin(), still.end(),
                         [&](int s) { return element_of(trials.problem, s) == reason.element; });
    };
    std::vector<Reason> kept;
    for (const Reason& reason : trials.plan.reasons) {
      if (!harmless(reason)) kept.push_back(reason);
    }
    if (!kept.empty()) trials.plan.reasons = std::move(kept);
  }
}

/// The plane of those added that gets at the element, else the first.
const Plane& for_element(const Trials& trials, const std::vector<Plane>& added, int element) {
  for (std::size_t i = 0; i < trials.failing.size() && added.size() > 1; ++i) {
    if (element_of(trials.problem, trials.failing[i]) != element) continue;
    for (const Plane& plane : added) {
      if ((trials.gets_at(plane) >> i & 1) != 0) return plane;
    }
  }
  return added.front();
}

/// Names beside each reason its share of the first remedy.
void name_nearest(Trials& trials) {
  for (Reason& reason : trials.plan.reasons) {
    reason.nearest.reset();
    for (const Remedy& remedy : trials.plan.remedies) {
      if (!remedy.add.empty()) {
        const Plane& plane = for_element(trials, remedy.add, reason.element);
        Reason::Nearest nearest;
        nearest.kind = plane.kind;
        nearest.radius = plane.radius;
        nearest.width = plane.width;
        nearest.number = plane.number;
        reason.nearest = nearest;
        break;
      }
      for (const Remedy::Redrawn& redrawn : remedy.redraw) {
        if (redrawn.element != reason.element) continue;
        Reason::Nearest nearest;
        nearest.radius = redrawn.radius;
        reason.nearest = nearest;
      }
      if (reason.nearest) break;
    }
  }
}

/// In the order in which they are told.
int kind_of(const Remedy& remedy) {
  return !remedy.add.empty() ? 0 : !remedy.redraw.empty() ? 1 : remedy.tolerance ? 2 : 3;
}

void find_allowances(Trials& trials) {
  find_allowance(trials, false);
  if (trials.kit.scraper) find_allowance(trials, true);
}

}  // namespace

void find_remedies(Plan& plan, const Kit& kit, const PlanOptions& options) {
  plan.remedies.clear();
  plan.remedies_left_off = false;
  if (plan.feasible || plan.undecided) return;
  Trials trials(plan, kit, options);
  if (trials.problem.surfaces.empty() || trials.problem.surfaces.size() > kMaxSurfaces) return;
  // First what is likeliest to serve, since the limit may end it.
  const bool too_much = std::any_of(plan.reasons.begin(), plan.reasons.end(),
                                    [](const Reason& reason) { return reason.leaves.has_value(); });
  if (too_much) find_allowances(trials);
  find_planes(trials);
  find_radius(trials);
  if (!too_much) find_allowances(trials);
  std::stable_sort(plan.remedies.begin(), plan.remedies.end(),
                   [](const Remedy& a, const Remedy& b) { return kind_of(a) < kind_of(b); });
  drop_harmless(trials);
  name_nearest(trials);
  plan.remedies_left_off = trials.left_off;
}

}  // namespace arrisline
