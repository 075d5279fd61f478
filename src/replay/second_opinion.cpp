// The areas of a plan once more, by the polygon clipper alone. Shown by tests/replay.
#include <cmath>

#include "arrisline/replay.h"
#include "replay/flattened.h"
#include "replay/rules.h"
#include "wording/figures.h"

namespace arrisline {

using namespace replaying;

// Flattening at 0.0005 mm puts an area off by two thirds of that times the length of the arcs at most on each
// side of a cut; the constant part covers the ends of arcs and the rounding of stated figures.
static constexpr double kOff = 0.02;
static constexpr double kOffPerArc = 0.0007;

static double arc_length(std::span<const Edge> edges) {
  double sum = 0;
  for (const Edge& edge : edges)
    if (edge.is_arc()) sum += length(edge);
  return sum;
}

std::vector<Finding> second_opinion(const Plan& plan) {
  if (plan.undecided || !plan.feasible) return {};
  std::vector<Finding> out = unusable(plan);
  if (!out.empty()) return out;
  const Section& section = plan.section;
  double arcs = arc_length(section.target);
  const auto compare = [&](int cut, const char* what, double stated, double found) {
    if (std::abs(stated - found) <= kOff + kOffPerArc * arcs) return;
    out.push_back({cut, 0,
                   std::string(what) + ": " + fixed(stated, 4) + " mm² by the plan, " + fixed(found, 4) +
                       " by the clipper"});
  };
  const Loop blank = blank_outline(section.width, section.thickness);
  ClipperLib::Paths wood{flatten(std::span<const Edge>(blank))};
  const ClipperLib::Paths target{flatten(std::span<const Edge>(section.target))};
  compare(0, "waste", plan.waste_area, area_of(less(wood, target)));
  const double far = far_beyond(plan);
  double by_flat = 0;
  for (const Cut& cut : plan.cuts) {
    const double before = area_of(wood);
    for (const Pose& pose : cut.poses) {
      const Swept swept = sweep_of(cut.plane, pose, far);
      arcs += arc_length(swept.bounds);
      wood = less(wood, {flatten(swept)});
    }
    const bool scraper = cut.plane.kind == PlaneKind::scraper;
    const double removed = scraper ? area_of(less(wood, target)) : before - area_of(wood);
    if (cut.plane.is_flat()) by_flat += removed;
    compare(cut.number, "removed", cut.removed, removed);
  }
  compare(0, "left", plan.left.area, area_of(less(wood, target)));
  compare(0, "taken by flat soles", plan.waste_by_flat, by_flat);
  return out;
}

}  // namespace arrisline
