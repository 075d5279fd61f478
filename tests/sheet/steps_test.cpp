// What there is to see of each cut agrees with what the plan says of it.
#include "sheet/steps.h"

#include <cmath>

#include "catch.h"
#include "report/gauge_lines.h"
#include "sheet/plans.h"

using namespace arrisline;

namespace {

double distance_to(const Region& region, Point p) {
  double out = 1e9;
  for (const Loop& loop : region) out = std::min(out, distance(p, std::span<const Edge>(loop)));
  return out;
}

}  // namespace

TEST_CASE("each step takes what the plan says, and the last leaves what it says", "[sheet]") {
  for (const std::vector<test::Drawable>* drawables : {&test::drawn_examples(), &test::drawn_extremes()}) {
    for (const test::Drawable& one : *drawables) {
      INFO(one.name);
      const Plan& plan = one.plan;
      REQUIRE(plan.feasible);
      const std::vector<StepView> steps = steps_of(plan);
      REQUIRE(steps.size() == plan.cuts.size());
      double left = plan.section.width * plan.section.thickness;
      for (std::size_t i = 0; i < steps.size(); ++i) {
        const Cut& cut = plan.cuts[i];
        INFO("cut " << cut.number);
        CHECK(std::fabs(area(steps[i].before) - left) < 1e-4);
        left = area(steps[i].after);
        CHECK(std::fabs(area(steps[i].before) - left - cut.removed) < 1e-3);
        CHECK(steps[i].soles.size() == cut.poses.size());
        CHECK(steps[i].marks.size() == cut.lines.size());
      }
      CHECK(std::fabs(left - area(std::span<const Edge>(plan.section.target)) -
                      (plan.left.scrape ? 0 : plan.left.area)) < 1e-3);
    }
  }
}

TEST_CASE("a sole on two arrises is shown to bear on the wood as it stands, one on either side", "[sheet]") {
  int shown = 0;
  for (const test::Drawable& one : test::drawn_examples()) {
    const std::vector<StepView> steps = steps_of(one.plan);
    for (std::size_t i = 0; i < steps.size(); ++i) {
      const Cut& cut = one.plan.cuts[i];
      if (cut.rides != Rides::two_arrises) {
        CHECK(steps[i].rails.empty());
        continue;
      }
      INFO(one.name << ", cut " << cut.number);
      REQUIRE(steps[i].rails.size() == 2);
      ++shown;
      const double left = to_sole_frame(cut.poses.front(), steps[i].rails[0]).x;
      const double right = to_sole_frame(cut.poses.front(), steps[i].rails[1]).x;
      CHECK(left < 0);
      CHECK(right > 0);
      // Within what counts as touching, along the plane (rule 4); across the slope it is less.
      for (const Point rail : steps[i].rails) CHECK(distance_to(steps[i].before, rail) < 0.0201);
      CHECK(std::fabs(std::fabs(left + right) / cut.plane.width - cut.imbalance) < 1e-6);
    }
  }
  CHECK(shown >= 8);
}

TEST_CASE("gauge lines stand where they are gauged from", "[sheet]") {
  Plan plan;
  plan.section.width = 50;
  plan.section.thickness = 20;
  plan.section.target = blank_outline(50, 20);
  plan.section.source = {-1, -1, -1, -1};
  Cut cut;
  cut.number = 1;
  cut.plane.width = 10;
  cut.poses = cut.set = {{{5, 4}, 0}};
  cut.lines = {{Side::edge, 10, 10, false},
               {Side::back, 12, 12, false},
               {Side::face, 4, 4, false},
               {Side::underside, 3, 3, false}};
  plan.cuts = {cut};
  const std::vector<StepView> steps = steps_of(plan);
  const std::vector<GaugeMark>& marks = steps.at(0).marks;
  REQUIRE(marks.size() == 4);
  CHECK((marks[0].upright && marks[0].at == 10 && marks[0].set == 10 && marks[0].letter == "A"));
  CHECK((marks[1].upright && marks[1].at == 38 && marks[1].set == 12 && marks[1].letter == "B"));
  CHECK((!marks[2].upright && marks[2].at == 4 && marks[2].letter == "C"));
  CHECK((!marks[3].upright && marks[3].at == 17 && marks[3].set == 3 && marks[3].letter == "D"));
}
