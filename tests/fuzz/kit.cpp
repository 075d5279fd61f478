// Any bytes as a kit: read or refused with a reason, and planes that were read keep their promises and come
// back from the JSON of a plan as they were.
#include "arrisline/limits.h"
#include "arrisline/plan_json.h"
#include "fuzz/sections.h"

using namespace arrisline;

namespace {

/// A blank with one arris taken off, and a cut for each plane. That none of them is right is no matter of
/// reading.
Plan with_cuts(const Kit& kit) {
  Plan plan;
  plan.section.width = 50;
  plan.section.thickness = 20;
  plan.section.elements.push_back({1, 0, Chain::face, "chamfer", 1});
  const Point corners[] = {{6, 0}, {50, 0}, {50, 20}, {0, 20}, {0, 6}};
  for (std::size_t i = 0; i < 5; ++i) {
    plan.section.target.push_back({corners[i], corners[(i + 1) % 5], {}, Turn::straight});
    plan.section.source.push_back(i == 4 ? 0 : -1);
  }
  plan.feasible = true;
  for (const Plane& plane : kit.planes) {
    if (plan.cuts.size() == kMaxPlanCuts) break;
    Cut cut;
    cut.number = static_cast<int>(plan.cuts.size()) + 1;
    cut.plane = plane;
    cut.made_for = "waste";
    cut.poses.push_back({{3, 3}, 45});
    cut.set = cut.poses;
    plan.cuts.push_back(cut);
  }
  return plan;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const Reading<Kit> reading = read_kit(text, "fuzz.kit");
  fuzz::hold_diagnostics(reading, text);
  if (!reading.value) return 0;
  fuzz::hold_kit(*reading.value);

  const std::string json = plan_to_json(with_cuts(*reading.value));
  const StatedPlan back = plan_from_json(json);
  if (back.unread) return 0;  // soles of too many chords in all
  fuzz::hold(back.faults.empty(), "a plane that was read is one in JSON",
             back.faults.empty() ? "" : back.faults.front());
  fuzz::hold(plan_to_json(back.plan) == json, "a plane is the same in JSON", json);
  return 0;
}
