// The order of work over several profiles, against every interleaving of small ones.
#include <algorithm>
#include <array>
#include <functional>
#include <random>
#include <string>

#include "arrisline/job_plan.h"
#include "catch.h"

using namespace arrisline;

namespace {

/// A plan whose cuts are made with these planes, each set to the figures after it (mm from the edge).
struct Said {
  char plane;
  std::vector<double> figures;
};

Plan plan_of(const std::vector<Said>& cuts) {
  Plan plan;
  for (const Said& said : cuts) {
    Cut cut;
    cut.plane.label = std::string(1, said.plane);
    for (const double figure : said.figures) cut.lines.push_back({Side::edge, figure, figure, false});
    plan.cuts.push_back(cut);
  }
  return plan;
}

Plan plan_of(const std::string& planes) {
  std::vector<Said> cuts;
  for (const char plane : planes) cuts.push_back({plane, {}});
  return plan_of(cuts);
}

WorkOrder order(const std::vector<Plan>& plans) {
  std::vector<const Plan*> pointers;
  for (const Plan& plan : plans) pointers.push_back(&plan);
  return order_work(pointers);
}

int changes_of(const std::vector<Plan>& plans, const std::vector<WorkStep>& steps) {
  int out = 0;
  for (std::size_t i = 1; i < steps.size(); ++i) {
    const auto label = [&](WorkStep step) { return plans[step.run].cuts[step.cut].plane.label; };
    out += label(steps[i]) != label(steps[i - 1]) ? 1 : 0;
  }
  return out;
}

int settings_of(const std::vector<Plan>& plans, const std::vector<WorkStep>& steps) {
  int out = 0;
  const std::vector<GaugeLine>* before = nullptr;
  for (const WorkStep step : steps) {
    const std::vector<GaugeLine>& lines = plans[step.run].cuts[step.cut].lines;
    for (const GaugeLine& line : lines)
      out += before == nullptr || std::find(before->begin(), before->end(), line) == before->end() ? 1 : 0;
    before = &lines;
  }
  return out;
}

/// Every cut once, those of one plan in its order.
void check_whole(const std::vector<Plan>& plans, const std::vector<WorkStep>& steps) {
  std::vector<std::size_t> next(plans.size());
  for (const WorkStep step : steps) {
    REQUIRE(step.run < plans.size());
    REQUIRE(step.cut == next[step.run]);
    ++next[step.run];
  }
  for (std::size_t k = 0; k < plans.size(); ++k) REQUIRE(next[k] == plans[k].cuts.size());
}

/// Fewest changes of any order, by trying all; and fewest settings among the orders with so few changes.
std::pair<int, int> by_trying_all(const std::vector<Plan>& plans) {
  std::pair<int, int> best{1000, 1000};
  std::vector<std::size_t> next(plans.size());
  std::vector<WorkStep> steps;
  const std::function<void()> go = [&] {
    bool done = true;
    for (std::size_t k = 0; k < plans.size(); ++k) {
      if (next[k] == plans[k].cuts.size()) continue;
      done = false;
      steps.push_back({k, next[k]++});
      go();
      --next[k];
      steps.pop_back();
    }
    if (done) best = std::min(best, {changes_of(plans, steps), settings_of(plans, steps)});
  };
  go();
  return best;
}

}  // namespace

TEST_CASE("profiles that need the same planes in the same order cost no more changes than one", "[order]") {
  const std::vector<Plan> plans = {plan_of("rrh"), plan_of("rh"), plan_of("rrrh")};
  const WorkOrder work = order(plans);
  check_whole(plans, work.steps);
  CHECK(work.plane_changes == 1);
  CHECK(work.plane_changes_one_by_one == 5);
  CHECK(work.fewest);
}

TEST_CASE("a plane waits until every profile that needs it has come so far", "[order]") {
  // Taking up h as soon as it can be used would take r up again for the second profile.
  const std::vector<Plan> plans = {plan_of("rh"), plan_of("prh")};
  const WorkOrder work = order(plans);
  CHECK(work.plane_changes == 2);
  check_whole(plans, work.steps);
}

TEST_CASE("sticks that share a setting are run together", "[order]") {
  const std::vector<Plan> plans = {plan_of({{'r', {3, 9}}, {'r', {5, 7}}}),
                                   plan_of({{'r', {5, 7}}, {'r', {1, 2}}}), plan_of({{'r', {3, 9}}})};
  const WorkOrder work = order(plans);
  check_whole(plans, work.steps);
  CHECK(work.settings == 6);
  CHECK(work.settings_one_by_one == 8);  // 3 9, 5 7 kept for the second profile, 1 2, 3 9 again
}

TEST_CASE("no plans and plans without cuts give an empty order", "[order]") {
  CHECK(order({}).steps.empty());
  CHECK(order({Plan{}, Plan{}}).steps.empty());
  CHECK(order({Plan{}, plan_of("rr")}).steps.size() == 2);
}

TEST_CASE("no order has fewer changes of plane than the one given", "[order]") {
  std::mt19937 random(20261126);
  const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  int saved = 0;
  constexpr int kJobs = 300;
  for (int job = 0; job < kJobs; ++job) {
    std::vector<Plan> plans;
    std::size_t cuts = 0;
    for (int k = 2 + below(2); k > 0; --k) {
      std::vector<Said> said;
      for (int i = 1 + below(4); i > 0 && cuts < 9; --i, ++cuts) {
        std::vector<double> figures;
        for (int f = below(3); f > 0; --f) figures.push_back(1 + below(3));
        std::sort(figures.begin(), figures.end());
        figures.erase(std::unique(figures.begin(), figures.end()), figures.end());
        said.push_back({static_cast<char>('a' + below(4)), figures});
      }
      plans.push_back(plan_of(said));
    }
    const WorkOrder work = order(plans);
    INFO("job " << job << " of seed 20261126");
    check_whole(plans, work.steps);
    const auto [changes, settings] = by_trying_all(plans);
    REQUIRE(work.plane_changes == changes_of(plans, work.steps));
    REQUIRE(work.settings == settings_of(plans, work.steps));
    REQUIRE(work.plane_changes == changes);
    REQUIRE(work.settings == settings);
    saved += work.plane_changes_one_by_one - work.plane_changes;
  }
  CHECK(saved > kJobs);
}

TEST_CASE("with more cuts than all orders can be looked at, no other has fewer changes of plane",
          "[order][campaign]") {
  // Two halves that need nothing of one another: what one costs by trying all, both cost together.
  std::mt19937 random(3);
  for (int job = 0; job < 20; ++job) {
    std::vector<Plan> half, both;
    for (int k = 0; k < 3; ++k) {
      std::string planes, others;
      for (int i = 0; i < 3; ++i) {
        const int plane = static_cast<int>(random() % 3);
        planes += static_cast<char>('a' + plane);
        others += static_cast<char>('k' + plane);
      }
      half.push_back(plan_of(planes));
      both.push_back(plan_of(planes));
      both.push_back(plan_of(others));
    }
    for (int i = 0; i < 6; ++i) both.push_back(plan_of("zzzzzzzz"));  // makes the states many, and one change
    const WorkOrder work = order(both);
    check_whole(both, work.steps);
    CHECK(work.fewest);
    CHECK(work.plane_changes == 2 * by_trying_all(half).first + 2);
  }
}

TEST_CASE("many long profiles are ordered within the memory the search may take", "[order]") {
  std::mt19937 random(7);
  std::vector<Plan> plans;
  for (int k = 0; k < 30; ++k) {
    std::string planes;
    for (int i = 0; i < 12; ++i) planes += static_cast<char>('a' + random() % 12);
    plans.push_back(plan_of(planes));
  }
  const WorkOrder work = order(plans);
  check_whole(plans, work.steps);
  CHECK(work.plane_changes < work.plane_changes_one_by_one);
  CHECK_FALSE(work.fewest);  // said, not claimed
}
