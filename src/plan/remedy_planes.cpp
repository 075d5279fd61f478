// Planes to add: one, then two and more. Cheap tests (which surfaces each candidate gets at) say what is
// worth trying; only a plan made with them counts. Shown by tests/plan/remedies_test.cpp.
#include <algorithm>
#include <functional>

#include "plan/candidates.h"
#include "plan/trials.h"

namespace arrisline {

namespace {

constexpr std::size_t kMostAdded = 4;  // planes; who lacks more lacks a kit
constexpr int kMostVisits = 200000;    // sets of candidates looked at

/// Plans with the planes added. True, and the remedy kept, where that serves; else why not, in `reasons`.
bool try_planes(Trials& trials, const std::vector<Plane>& added, Budget& budget,
                std::vector<Reason>& reasons) {
  const std::optional<Plan> plan =
      trials.plan_with(trials.plan.section, trials.with(added), trials.options, budget);
  if (!plan) return false;
  reasons = plan->reasons;
  if (!plan->feasible) return false;
  Remedy remedy;
  remedy.add = added;
  trials.plan.remedies.push_back(std::move(remedy));
  return true;
}

/// Sets of the candidates, of one size, that between them get at all that any of them does, likeliest
/// first.
std::vector<std::vector<std::size_t>> covers(const std::vector<std::uint64_t>& gets, std::size_t size) {
  // A corner that no plane gets into may yet be left within the tolerance.
  std::uint64_t all = 0;
  for (const std::uint64_t one : gets) all |= one;
  std::vector<std::vector<std::size_t>> out;
  std::vector<std::size_t> chosen;
  int visits = 0;
  const std::function<void(std::size_t, std::uint64_t)> choose = [&](std::size_t from, std::uint64_t got) {
    if (++visits > kMostVisits) return;
    if (chosen.size() == size) {
      if (got == all) out.push_back(chosen);
      return;
    }
    for (std::size_t i = from; i < gets.size(); ++i) {
      if ((gets[i] & ~got) == 0) continue;
      chosen.push_back(i);
      choose(i + 1, got | gets[i]);
      chosen.pop_back();
    }
  };
  choose(0, 0);
  // Candidates come likeliest first, so a low sum of their places is a likely set.
  auto sum = [](const std::vector<std::size_t>& set) {
    std::size_t total = 0;
    for (const std::size_t i : set) total += i;
    return total;
  };
  std::stable_sort(out.begin(), out.end(), [&](const auto& a, const auto& b) { return sum(a) < sum(b); });
  return out;
}

/// What may help where everything is got at and the plan fails all the same. A reason for the whole may lie
/// in any arc that is cut with a plane of another radius.
std::vector<Plane> helpers(const Trials& trials, const std::vector<Reason>& reasons,
                           const std::vector<Plane>& added) {
  const Kit kit = trials.with(added);
  std::vector<int> surfaces;
  for (const Reason& reason : reasons) {
    for (int i = 0; i < static_cast<int>(trials.problem.surfaces.size()); ++i) {
      if (reason.element < 0 || element_of(trials.problem, i) == reason.element) surfaces.push_back(i);
    }
  }
  return helping_planes(trials.problem, kit, surfaces);
}

}  // namespace

void find_planes(Trials& trials) {
  Budget left{20, 1, kRemedyWork, 4};
  // Sets that get at everything and still make no plan, with the reasons that then remain.
  struct Short {
    std::vector<Plane> added;
    std::vector<Reason> reasons;
  };
  std::vector<Short> short_of;
  std::vector<Plane> candidates;
  std::vector<std::uint64_t> gets;
  if (trials.failing.empty()) {
    short_of.push_back({{}, trials.plan.reasons});
  } else {
    for (const Plane& plane : fitting_planes(trials.problem, trials.failing)) {
      const std::uint64_t got = trials.gets_at(plane);
      if (got == 0) continue;
      candidates.push_back(plane);
      gets.push_back(got);
    }
  }
  if (candidates.empty() && !trials.failing.empty()) short_of.push_back({{}, trials.plan.reasons});
  constexpr std::size_t kSetsOfOneSize = 6;
  constexpr std::size_t kCarriedOn = 2;
  for (std::size_t size = 1; size <= kMostAdded && !left.spent(); ++size) {
    std::vector<Short> next;
    if (!trials.failing.empty()) {
      std::size_t tried = 0;
      for (const std::vector<std::size_t>& set : covers(gets, size)) {
        if (++tried > kSetsOfOneSize) break;
        Short one;
        for (const std::size_t i : set) one.added.push_back(candidates[i]);
        if (try_planes(trials, one.added, left, one.reasons)) return;
        if (left.spent()) return;
        next.push_back(std::move(one));
      }
    }
    for (const Short& before : short_of) {
      for (const Plane& plane : helpers(trials, before.reasons, before.added)) {
        Short one;
        one.added = before.added;
        one.added.push_back(plane);
        if (try_planes(trials, one.added, left, one.reasons)) return;
        if (left.spent()) return;
        next.push_back(std::move(one));
      }
    }
    if (next.size() > kCarriedOn) next.resize(kCarriedOn);
    short_of = std::move(next);
  }
}

}  // namespace arrisline
