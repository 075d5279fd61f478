// Adds up the cuts of a plan. Shown by tests/report/work_test.cpp.
#include "report/work.h"

#include <algorithm>

namespace arrisline {

Work work_of(const Plan& plan, const Kit& kit) {
  Work out;
  out.cuts = plan.cuts.size();
  std::vector<const Plane*> planes;
  Lies lies = Lies::face_up;
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    const Cut& cut = plan.cuts[i];
    out.settings += std::max(cut.settings, 0);
    out.strokes += cut.strokes;
    if (i > 0 && !same_plane(cut.plane, plan.cuts[i - 1].plane)) ++out.plane_changes;
    if (cut.lies != lies) ++out.turns;
    lies = cut.lies;
    const auto known = std::find_if(planes.begin(), planes.end(),
                                    [&](const Plane* plane) { return same_plane(*plane, cut.plane); });
    const auto index = static_cast<std::size_t>(known - planes.begin());
    if (known == planes.end()) {
      planes.push_back(&cut.plane);
      out.shavings.push_back({cut.plane.label, 0});
    }
    out.shavings[index].area += cut.removed;
  }
  if (kit.shop.strokes_per_minute > 0) out.minutes = out.strokes / kit.shop.strokes_per_minute;
  return out;
}

}  // namespace arrisline
