// Every weight of effort and every figure of the shop is set by its `shop` line, and changes what is printed.
#include <algorithm>
#include <cmath>
#include <set>

#include "arrisline/report.h"
#include "plan/planning.h"
#include "plan/sequence.h"

using namespace arrisline;
using test::kit;
using test::profile;

namespace {

const std::string kPlanes = "units inch\nhollow 6\nround 6\nrebate 3/4\nscraper\n";

// With `deep 0` every stroke of a hollow or round is a slow one, so that effort follows from what a plan
// shows.
const std::string kAllSlow = kPlanes + "shop deep 0mm\n";

Section ovolo() {
  return profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8");
}

Section ogee() {
  return profile("2 wide, 3/4 thick", "start face .6\nogee out .6 down .45");
}

/// The sum that docs/how-it-plans.md describes, from the cuts. REQUIRES: no ride that is not well laid out,
/// and `deep 0`.
double effort_of(const Plan& plan, const Shop& shop) {
  double effort = 0;
  std::string plane;
  Lies lies = Lies::face_up;
  for (const Cut& cut : plan.cuts) {
    effort += shop.weight_cut + shop.weight_setting * cut.settings;
    if (cut.plane.label != plane) effort += shop.weight_change;
    if (cut.lies != lies) effort += shop.weight_change;
    plane = cut.plane.label;
    lies = cut.lies;
    const bool slanted = cut.plane.is_flat() && std::fabs(std::remainder(cut.poses.front().tilt, 90)) > 1e-6;
    const double times = cut.plane.is_curved() ? shop.weight_slow : slanted ? shop.weight_slant : 1;
    effort += shop.weight_stroke * times * cut.strokes;
    if (cut.plane.is_curved()) effort += shop.weight_wear * cut.removed / (cut.plane.width * cut.plane.width);
  }
  return effort;
}

std::string line_with(const std::string& page, const std::string& part) {
  const std::size_t at = page.find(part);
  if (at == std::string::npos) return "";
  const std::size_t start = page.rfind('\n', at) + 1;
  return page.substr(start, page.find('\n', at) - start);
}

}  // namespace

TEST_CASE("effort is the sum of the weights, each set by its shop line", "[weights]") {
  for (const Section& section : {ovolo(), ogee()}) {
    const Kit usual = kit(kAllSlow);
    const std::string before = cut_list(make_plan(section, usual, {}), usual, {});
    std::set<std::string> printed = {line_with(before, "Effort ")};
    for (const char* line : {"weight change 9", "weight cut 4", "weight setting 3.5", "weight stroke .3",
                             "weight wear 90", "weight slow 11", "weight slant 7"}) {
      INFO(line);
      const Kit changed = kit(kAllSlow + "shop " + line + "\n");
      const Plan plan = make_plan(section, changed, {});
      REQUIRE(plan.feasible);
      CHECK(plan.effort == Approx(effort_of(plan, changed.shop)).epsilon(1e-6));
      // Printed, and with each weight another figure.
      CHECK(printed.insert(line_with(cut_list(plan, changed, {}), "Effort ")).second);
    }
  }
}

TEST_CASE("how deep a hollow may take before it is slow is set by a shop line", "[weights]") {
  // A cavetto left to the round and one step: it takes more than a millimetre, less than 300.
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\ncavetto 3/8");
  const Kit never = kit(kPlanes + "shop deep 300mm\n");
  const Kit always = kit(kAllSlow);
  const Plan spared = make_plan(section, never, {});
  const Plan slow = make_plan(section, always, {});
  double strokes = 0;
  for (const Cut& cut : slow.cuts)
    if (cut.plane.is_curved()) strokes += cut.strokes;
  REQUIRE(strokes > 0);
  CHECK(spared.effort < slow.effort - 1e-3);
  CHECK(slow.effort == Approx(effort_of(slow, always.shop)).epsilon(1e-6));
  CHECK(line_with(cut_list(spared, never, {}), "Effort ") !=
        line_with(cut_list(slow, always, {}), "Effort "));
}

TEST_CASE("an uneven ride costs what its shop line says", "[weights]") {
  // A trapezium of wood under a hollow, its corners on the sole at −0.2 and +0.45 of the width: imbalance
  // 0.25.
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const PlanOptions options;
  const auto effort_with = [&](const std::string& line, double left) {
    const Kit planes = kit("units inch\nhollow 6\n" + line);
    const Problem problem = make_problem(section, planes, options);
    const Plane& hollow = planes.planes[0];
    Draft draft;
    draft.plane = 0;
    draft.arc = 0;
    draft.poses = {pose_on_arc(problem, problem.surfaces[0], hollow, 45)};
    std::vector<Point> corners;
    const auto add = [&](double u, double v) { corners.push_back(from_sole_frame(draft.poses[0], {u, v})); };
    const double w = hollow.width, u0 = left * w, u1 = 0.45 * w;
    add(u0, -3);
    add(u0, sole_height(hollow, u0) + 1);
    add(u1, sole_height(hollow, u1) + 1);
    add(u1, -3);
    Loop base;
    for (std::size_t i = 0; i < 4; ++i)
      base.push_back({corners[i], corners[(i + 1) % 4], {}, Turn::straight});
    if (area(base) < 0) {
      std::reverse(base.begin(), base.end());
      for (Edge& edge : base) std::swap(edge.from, edge.to);
    }
    Wood wood(base);
    const std::optional<Step> step = take(problem, draft, {}, nullptr, wood);
    REQUIRE(step);
    REQUIRE(step->rides == Rides::two_arrises);
    CHECK(step->guidance.imbalance == Approx(0.45 + left).margin(1e-3));
    return step->effort;
  };
  CHECK(effort_with("shop weight uneven 10\n", -0.2) - effort_with("shop weight uneven 0\n", -0.2) ==
        Approx(10));
  CHECK(effort_with("", -0.2) - effort_with("shop weight uneven 0\n", -0.2) == Approx(Shop{}.weight_uneven));
  // An even one costs nothing more.
  CHECK(effort_with("shop weight uneven 10\n", -0.44) ==
        Approx(effort_with("shop weight uneven 0\n", -0.44)));
}

TEST_CASE("shavings, stroke rate and gauge change what is printed", "[weights]") {
  const Section section = ogee();
  const Kit usual = kit(kPlanes);
  const std::string before = cut_list(make_plan(section, usual, {}), usual, {});
  struct Case {
    const char* line;
    const char* part;
  };
  for (const Case& one :
       {Case{"shaving rebate .012", "strokes, each"}, Case{"shaving curved .001", "strokes, each"},
        Case{"strokes 7", " a minute"}, Case{"gauge 1/16", "A. "}}) {
    INFO(one.line);
    const Kit changed = kit(kPlanes + "shop " + one.line + "\n");
    const std::string after = cut_list(make_plan(section, changed, {}), changed, {});
    CHECK(line_with(after, one.part) != "");
    if (std::string(one.part) != "A. ") CHECK(line_with(after, one.part) != line_with(before, one.part));
    CHECK(after != before);
  }
}
