// The planner on the mouldings that a pair of sixes and a rebate plane make on 3/4 in stock.
#include "arrisline/plan.h"

#include <cstdio>

#include "catch.h"
#include "plan/sections.h"

using namespace arrisline;
using test::ChainBuilder;
using test::kInch;

namespace {
void show(const Section& section) {
  const Kit kit = test::pair_of_sixes();
  const Plan plan = make_plan(section, kit, {});
  std::printf("== %s feasible=%d effort=%.2f left=%.4f area=%.3f flat=%.1f%% set=%.3f/%.3f\n",
              section.name.c_str(), plan.feasible, plan.effort, plan.left.max_height, plan.left.area,
              100 * plan.waste_by_flat / plan.waste_area, plan.left.as_set_max_height,
              plan.left.as_set_deepest_gouge);
  for (const auto& r : plan.reasons) std::printf("   el %d: %s\n", r.element, r.why.c_str());
  for (const auto& c : plan.cuts) {
    std::printf("  %d %-12s %-14s rem %.2f str %.0f set %d %s imb %.3f/%.3f [%s] %s:", c.number,
                c.plane.label.c_str(), c.made_for.c_str(), c.removed, c.strokes, c.settings, word(c.rides),
                c.imbalance, c.imbalance_set, word(c.lies), c.reason.c_str());
    for (const auto& p : c.poses) std::printf(" (%.3f,%.3f @%.3f)", p.at.x, p.at.y, p.tilt);
    for (const auto& l : c.lines) std::printf(" line %d:%.3f->%.3f", static_cast<int>(l.from), l.at, l.set);
    std::printf("\n");
  }
}
}  // namespace

TEST_CASE("show", "[.show]") {
  const double T = 0.75 * kInch, W = 2 * kInch, R = 0.375 * kInch, f = kInch / 8;
  show(ChainBuilder(W, T, R).bead(R).section("round-over"));
  show(ChainBuilder(W, T, R + f).line(0, f).bead(R).line(f, 0).section("ovolo between fillets"));
  show(ChainBuilder(W, T, R).cove(R).section("cavetto"));
  show(ChainBuilder(W, T, R + f).line(0, f).cove(R).line(f, 0).section("cavetto between fillets"));
  show(ChainBuilder(W, T, 2 * R).bead(R).cove(R).section("ogee"));
  show(ChainBuilder(W, T, 2 * R).cove(R).bead(R).section("reverse ogee"));
  show(ChainBuilder(W, 1.2 * kInch, 2 * R + f)
           .bead(R)
           .line(f, 0)
           .line(0, f)
           .cove(R)
           .section("ogee with a fillet between"));
  show(ChainBuilder(W, 1.2 * kInch, 2 * R + f)
           .cove(R)
           .line(f, 0)
           .line(0, f)
           .bead(R)
           .section("reverse ogee with a fillet between"));
  show(ChainBuilder(W, T, 0.25 * kInch).line(0.25 * kInch, 0.25 * kInch).section("chamfer"));
  show(ChainBuilder(W, T, 0.5 * kInch).line(0, 0.25 * kInch).line(0.5 * kInch, 0).section("rebate"));
  show(ChainBuilder(W, T, 1.5 * kInch).line(0, 0.25 * kInch).line(1.5 * kInch, 0).section("wide rebate"));
  const double H = 0.45 * kInch, P = 0.6 * kInch;
  show(ChainBuilder(W, T, P).arc_of(P / 2, H / 2, R, true).arc_of(P / 2, H / 2, R, false).section("cyma"));
  show(ChainBuilder(W, T, R).arc(0, 2 * R, {R, R}, Turn::right).section("torus"));
  show(ChainBuilder(3 * kInch, T, 1.5 * kInch + R * 0.8)
           .arc_of(2 * R * 0.8, 0, R, false)
           .line(1.5 * kInch - R * 0.8, 0)
           .section("face cove"));
}
