// The plan cut through once more, for its pictures. Shown by tests/sheet/steps_test.cpp.
#include "sheet/steps.h"

#include "plan/touch.h"
#include "plan/wood.h"
#include "report/gauge_lines.h"

namespace arrisline {
namespace {

GaugeMark mark_of(const Section& section, const GaugeLine& line, const std::string& letter) {
  switch (line.from) {
    case Side::edge:
      return {true, line.set, letter, line.set};
    case Side::back:
      return {true, section.width - line.set, letter, line.set};
    case Side::face:
      return {false, line.set, letter, line.set};
    case Side::underside:
      return {false, section.thickness - line.set, letter, line.set};
  }
  return {};
}

/// The outermost points where the sole bears once it is slid in until it touches.
std::vector<Point> rails_of(const Wood& wood, const Cut& cut) {
  if (cut.rides != Rides::two_arrises || cut.poses.empty()) return {};
  const Sweep sole(cut.plane, cut.poses.front());
  const Touch bears = touch(wood.edges(), sole);
  const Guidance guide = guidance(bears, cut.plane);
  if (!guide.two_arrises) return {};
  std::vector<Point> out;
  for (const double u : {guide.left, guide.right})
    out.push_back(from_sole_frame(cut.poses.front(), {u, sole_height(cut.plane, u) + bears.height}));
  return out;
}

}  // namespace

std::vector<StepView> steps_of(const Plan& plan) {
  std::vector<StepView> out;
  const std::vector<StruckLine> lines = struck_lines(plan);
  Wood wood(blank_outline(plan.section.width, plan.section.thickness));
  Region now = linked(wood.edges());
  for (std::size_t i = 0; i < plan.cuts.size(); ++i) {
    const Cut& cut = plan.cuts[i];
    StepView step;
    step.cut = i;
    step.before = now;
    step.rails = rails_of(wood, cut);
    for (const Pose& pose : cut.poses) {
      step.soles.push_back(sole_edges(cut.plane, pose));
      wood.cut(Sweep(cut.plane, pose));
    }
    now = cut.plane.kind == PlaneKind::scraper ? Region{plan.section.target} : linked(wood.edges());
    step.after = now;
    for (const GaugeLine& line : cut.lines)
      step.marks.push_back(mark_of(plan.section, line, line_letter(find_line(lines, cut, line))));
    out.push_back(std::move(step));
  }
  return out;
}

}  // namespace arrisline
