// Every moulding is planned; the planes of other numbers are tried one by one for what they would add. Shown
// by tests/reach/reach_test.cpp.
#include "arrisline/reach.h"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>
#include <mutex>
#include <optional>

#include "plan/candidates.h"

namespace arrisline {
namespace {

constexpr double kWellLaid = 0.15;  // imbalance, docs/model.md

bool cut_well(const Plan& plan) {
  if (!plan.feasible || plan.left.scrape) return false;
  return std::all_of(plan.cuts.begin(), plan.cuts.end(), [](const Cut& cut) {
    return cut.rides != Rides::two_arrises || cut.imbalance <= kWellLaid + 1e-9;
  });
}

PlanOptions planning(const Kit& kit, const ReachOptions& options, bool any) {
  PlanOptions out;
  out.unit = kit.unit;
  out.limit = options.limit;
  out.interrupt = options.interrupt;
  out.any = any;
  return out;
}

bool left_off(const ReachOptions& options) {
  return options.interrupt != nullptr && options.interrupt->load();
}

std::vector<Plane> usual_planes() {
  // The even numbers are a half set, the odd small ones are common beside it (common practice, no source).
  std::vector<Plane> out;
  for (const int number : {2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18}) {
    for (const PlaneKind kind : {PlaneKind::hollow, PlaneKind::round})
      out.push_back(numbered_plane(kind, number));
  }
  return out;
}

bool has(const Kit& kit, const Plane& plane) {
  return std::any_of(kit.planes.begin(), kit.planes.end(), [&](const Plane& own) {
    return own.kind == plane.kind && std::abs(own.radius - plane.radius) < 0.01;
  });
}

/// The planes to add together, and what the kit then makes that it did not.
struct Try {
  std::vector<Plane> planes;
  std::vector<Moulding> gained;

  double each() const { return static_cast<double>(gained.size()) / static_cast<double>(planes.size()); }
};

std::vector<Moulding> gained_by(const Kit& with, const std::vector<Moulding>& candidates,
                                const ReachOptions& options) {
  std::vector<char> well(candidates.size(), 0);
  tbb::parallel_for(std::size_t{0}, candidates.size(), [&](std::size_t i) {
    if (left_off(options)) return;
    well[i] = cut_well(make_plan(candidates[i].section, with, planning(with, options, true))) ? 1 : 0;
  });
  std::vector<Moulding> out;
  for (std::size_t i = 0; i < candidates.size(); ++i)
    if (well[i] != 0) out.push_back(candidates[i]);
  return out;
}

}  // namespace

std::vector<Made> within_reach(const Kit& kit, double width, double thickness, const ReachOptions& options) {
  const std::vector<Moulding> list = mouldings(kit.planes, kit.unit, width, thickness);
  std::vector<std::optional<Plan>> plans(list.size());
  std::mutex one_at_a_time;
  std::size_t done = 0;
  tbb::parallel_for(std::size_t{0}, list.size(), [&](std::size_t i) {
    if (left_off(options)) return;
    Plan plan = make_plan(list[i].section, kit, planning(kit, options, false));
    if (cut_well(plan)) plans[i] = std::move(plan);
    const std::lock_guard<std::mutex> lock(one_at_a_time);
    if (options.tried) options.tried(++done, list.size());
  });
  std::vector<Made> out;
  for (std::size_t i = 0; i < list.size(); ++i)
    if (plans[i]) out.push_back({list[i], std::move(*plans[i])});
  return out;
}

std::vector<Addition> additions(const Kit& kit, double width, double thickness, std::size_t count,
                                const ReachOptions& options) {
  Kit owned = kit;
  std::vector<Addition> out;
  while (out.size() < count && !left_off(options)) {
    std::vector<Moulding> known = mouldings(owned.planes, owned.unit, width, thickness);
    std::vector<Try> tries;
    const std::vector<Plane> usual = usual_planes();
    for (std::size_t i = 0; i < usual.size(); i += 2) {
      std::vector<Plane> lacking;
      for (const Plane& plane : {usual[i], usual[i + 1]})
        if (!has(owned, plane)) lacking.push_back(plane);
      for (const Plane& plane : lacking) tries.push_back({{plane}, {}});
      if (lacking.size() == 2 && out.size() + 2 <= count) tries.push_back({lacking, {}});
    }
    std::size_t done = 0;
    for (Try& one : tries) {
      if (left_off(options)) break;
      Kit with = owned;
      with.planes.insert(with.planes.end(), one.planes.begin(), one.planes.end());
      // What the kit has no radius for is not made of it; only what the plane brings is planned.
      std::vector<Moulding> fresh = mouldings(with.planes, with.unit, width, thickness);
      fresh.erase(std::remove_if(fresh.begin(), fresh.end(),
                                 [&](const Moulding& m) {
                                   return std::any_of(known.begin(), known.end(),
                                                      [&](const Moulding& k) { return k.name == m.name; });
                                 }),
                  fresh.end());
      one.gained = gained_by(with, fresh, options);
      if (options.tried) options.tried(++done, tries.size());
    }
    const auto best = std::max_element(tries.begin(), tries.end(),
                                       [](const Try& a, const Try& b) { return a.each() < b.each(); });
    if (best == tries.end() || best->gained.empty()) break;
    for (std::size_t i = 0; i < best->planes.size(); ++i) {
      owned.planes.push_back(best->planes[i]);
      const bool last = i + 1 == best->planes.size();
      out.push_back({best->planes[i], last ? best->gained : std::vector<Moulding>{}});
    }
  }
  return out;
}

}  // namespace arrisline
