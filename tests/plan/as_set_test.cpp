// Lines set finer than the gauge's division where that division would leave too much.
#include "plan/as_set.h"

#include <algorithm>

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

namespace {

const GaugeLine& line_from(const Plan& plan, Side side) {
  for (const Cut& cut : plan.cuts) {
    for (const GaugeLine& line : cut.lines)
      if (line.from == side) return line;
  }
  FAIL("no line from that side");
  return plan.cuts.front().lines.front();
}

Plan rebated(const std::string& in, const std::string& down, double tolerance) {
  PlanOptions options;
  options.tolerance = tolerance;
  const Plan plan = make_plan(
      profile("2 wide, 3/4 thick", "start face " + in + "\nstep down " + down + "\nfillet out " + in),
      kit("units inch\nrebate 3/4\n"), options);
  REQUIRE(plan.feasible);
  CHECK(faults(plan, options) == "");
  return plan;
}

}  // namespace

TEST_CASE("a line that would leave more than the tolerance is rounded to the finer division", "[as-set]") {
  // To 1/32 in the depth would leave .01 in, more than 0.2 mm, and the width .005 in.
  const Plan plan = rebated(".505", ".26", 0.2);
  const GaugeLine& depth = line_from(plan, Side::face);
  CHECK(depth.fine);
  CHECK(depth.close);
  CHECK_FALSE(depth.finer);
  CHECK(depth.set == Approx(33 * kMmPerInch / 128));
  const GaugeLine& width = line_from(plan, Side::edge);
  CHECK_FALSE(width.fine);
  CHECK(width.set == Approx(kMmPerInch / 2));
  CHECK(plan.left.as_set_max_height <= 0.2);
  CHECK(plan.left.as_set_deepest_gouge == 0);
}

TEST_CASE("what even the finer division leaves too much of is told, and stays rounded", "[as-set]") {
  // .26 in is .0022 in, or .056 mm, more than 33/128.
  const Plan plan = rebated("1/2", ".26", 0.05);
  const GaugeLine& depth = line_from(plan, Side::face);
  CHECK(depth.fine);
  CHECK(depth.finer);
  CHECK(depth.set == Approx(33 * kMmPerInch / 128));
  CHECK_FALSE(line_from(plan, Side::edge).fine);
  CHECK_FALSE(line_from(plan, Side::edge).finer);
  CHECK(plan.left.as_set_max_height == Approx(0.26 * kMmPerInch - depth.set).margin(1e-3));
}

TEST_CASE("a waste cut that comes near enough to a flat makes it", "[as-set]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  const Kit one = kit("units inch\nrebate 3/4\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, one, options);
  const double corner = kMmPerInch / 2, half = 0.375 * kMmPerInch, floor = kMmPerInch / 4;
  const auto made = [&](double left) {
    Sequence sequence;
    for (const double deep : {floor / 2, floor - left, floor - left}) {
      Step step;
      // The last of them has nothing to take.
      step.draft.poses = {{{corner - half, deep}, 0}};
      sequence.steps.push_back(step);
    }
    claim_flats(problem, 0.2, sequence);
    std::vector<std::vector<int>> surfaces;
    for (const Step& step : sequence.steps) {
      surfaces.emplace_back();
      for (const Stretch& stretch : step.draft.finishes) surfaces.back().push_back(stretch.surface);
      std::sort(surfaces.back().begin(), surfaces.back().end());
    }
    return surfaces;
  };
  REQUIRE(problem.surfaces.size() == 2);
  // What stays in the corner lies near enough to the floor.
  const std::vector<std::vector<int>> near = {{}, {0, 1}, {}};
  CHECK(made(0.15) == near);
  const std::vector<std::vector<int>> short_of_it = {{}, {}, {}};
  CHECK(made(1.0) == short_of_it);
}

TEST_CASE("the gauge's own division serves where its mark is the nearer one", "[as-set]") {
  // 5.26 mm lies .01 from a quarter of a millimetre, and .06 from a tenth; both are more than is asked for.
  PlanOptions options;
  options.tolerance = 0.005;
  options.unit = Unit::mm;
  const Plan plan =
      make_plan(profile("50mm wide, 20mm thick", "start face 12mm\nstep down 5.26mm\nfillet out 12mm"),
                kit("units mm\nrebate 19\nshop gauge .25\n"), options);
  REQUIRE(plan.feasible);
  const GaugeLine& depth = line_from(plan, Side::face);
  CHECK(depth.finer);
  CHECK_FALSE(depth.fine);
  CHECK(depth.set == Approx(5.25));
}
