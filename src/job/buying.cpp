// Shown by tests/job/plan_job_test.cpp.
#include "job/buying.h"

#include <algorithm>

namespace arrisline {
namespace {

/// A run's ways out: each a set of planes, as numbers.
struct Lacking {
  std::size_t run = 0;
  std::vector<std::vector<std::size_t>> ways;
};

bool alike(const Plane& a, const Plane& b) {
  return a.kind == b.kind && a.width == b.width && a.radius == b.radius;
}

/// Depth first over the runs, a way of each; what is taken already costs nothing.
class FewestPlanes {
 public:
  explicit FewestPlanes(const std::vector<Lacking>& all) : all_(all) {}

  std::vector<std::size_t> best() {
    search(0, {});
    return best_;
  }

 private:
  void search(std::size_t at, const std::vector<std::size_t>& taken) {
    if (found_ && taken.size() >= best_.size()) return;
    if (at == all_.size()) {
      best_ = taken;
      found_ = true;
      return;
    }
    for (const std::vector<std::size_t>& way : all_[at].ways) {
      std::vector<std::size_t> with = taken;
      for (const std::size_t plane : way)
        if (std::find(with.begin(), with.end(), plane) == with.end()) with.push_back(plane);
      search(at + 1, with);
    }
  }

  const std::vector<Lacking>& all_;
  std::vector<std::size_t> best_;
  bool found_ = false;
};

}  // namespace

Buying planes_to_buy(const Job& job, const std::vector<Run>& runs, const PlanOptions& options) {
  Buying out;
  std::vector<Plane> planes;
  std::vector<Lacking> all;
  for (std::size_t r = 0; r < runs.size(); ++r) {
    const Plan& plan = runs[r].plan;
    if (plan.feasible) continue;
    Lacking lacking{r, {}};
    for (const Remedy& remedy : plan.remedies) {
      if (remedy.add.empty()) continue;
      std::vector<std::size_t> way;
      for (const Plane& plane : remedy.add) {
        const auto known =
            std::find_if(planes.begin(), planes.end(), [&](const Plane& p) { return alike(p, plane); });
        way.push_back(static_cast<std::size_t>(known - planes.begin()));
        if (known == planes.end()) planes.push_back(plane);
      }
      lacking.ways.push_back(std::move(way));
    }
    if (lacking.ways.empty()) {
      out.complete = false;
    } else {
      all.push_back(std::move(lacking));
    }
  }
  if (all.empty()) return out;

  const std::vector<std::size_t> chosen = FewestPlanes(all).best();
  Kit kit = job.kit;
  for (const std::size_t index : chosen) {
    out.planes.push_back(planes[index]);
    out.unlocks.emplace_back();
    if (planes[index].kind == PlaneKind::scraper) {
      kit.scraper = true;
    } else {
      kit.planes.push_back(planes[index]);
    }
  }
  PlanOptions any = options;
  any.any = true;
  for (const Lacking& lacking : all) {
    if (!make_plan(runs[lacking.run].plan.section, kit, any).feasible) {
      out.complete = false;
      continue;
    }
    // Of its ways those that are all among the chosen: the planes that it needs.
    for (const std::vector<std::size_t>& way : lacking.ways) {
      const bool had = std::all_of(way.begin(), way.end(), [&](std::size_t plane) {
        return std::find(chosen.begin(), chosen.end(), plane) != chosen.end();
      });
      if (!had) continue;
      for (const std::size_t plane : way) {
        const auto place = std::find(chosen.begin(), chosen.end(), plane) - chosen.begin();
        out.unlocks[static_cast<std::size_t>(place)].push_back(lacking.run);
      }
      break;
    }
  }
  return out;
}

}  // namespace arrisline
