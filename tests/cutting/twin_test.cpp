// Boards cut for small random jobs against every way to cut them; and the judge of cutting plans against
// plans spoilt on purpose.
#include <algorithm>
#include <random>

#include "catch.h"
#include "cutting/whole_job.h"

using namespace arrisline;
using namespace arrisline::cutting_tests;

namespace {

constexpr unsigned kSeed = 11;   // ARRISLINE_SEED sets another
constexpr unsigned kJobs = 400;  // ARRISLINE_CUTTING_JOBS sets another

std::size_t most_strips(const CuttingPlan& plan) {
  std::size_t out = 0;
  for (const CutBoard& board : plan.boards) out = std::max(out, board.strips.size());
  return out;
}

}  // namespace

TEST_CASE("small jobs are cut as well as trying everything would", "[cutting][twin]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const unsigned jobs = number_from("ARRISLINE_CUTTING_JOBS", kJobs);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed);
  unsigned short_of_boards = 0, buying = 0, several_strips = 0, several_boards = 0, mixed_sizes = 0;
  for (unsigned n = 0; n < jobs; ++n) {
    Bounds bounds;
    bounds.sizes = 3;
    const WholeJob job = random_job(random, bounds);
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    const std::optional<Sums> least = try_everything(job);
    REQUIRE(least);
    CHECK(sums_of(job, plan) == *least);
    CHECK(plan.optimal);
    short_of_boards += least->missing > 0;
    buying += least->bought > 0;
    several_strips += most_strips(plan) > 1;
    several_boards += plan.boards.size() > 1;
    mixed_sizes += std::any_of(plan.boards.begin(), plan.boards.end(),
                               [&](const CutBoard& board) { return board.size != plan.boards[0].size; });
  }
  // The jobs are not all easy ones.
  CHECK(short_of_boards > jobs / 20);
  CHECK(buying > jobs / 20);
  CHECK(several_strips > jobs / 10);
  CHECK(several_boards > jobs / 4);
  CHECK(mixed_sizes > jobs / 20);
}

TEST_CASE("pieces that may come from some boards only share strips with those that may from any",
          "[cutting][twin]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const unsigned jobs = number_from("ARRISLINE_CUTTING_JOBS", kJobs);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed + 2);
  unsigned shared = 0;
  for (unsigned n = 0; n < jobs; ++n) {
    Bounds bounds;
    bounds.sizes = 3;
    bounds.choosy = true;
    bounds.runs = n % 2 == 0;
    const WholeJob job = random_job(random, bounds);
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    const std::optional<Sums> least = try_everything(job);
    REQUIRE(least);
    CHECK(sums_of(job, plan) == *least);
    CHECK(plan.optimal);
    for (const CutBoard& board : plan.boards) {
      shared += std::any_of(board.strips.begin(), board.strips.end(), [&](const CutStrip& strip) {
        const auto is_choosy = [&](std::size_t piece) { return job.pieces[piece].sizes.has_value(); };
        return std::any_of(strip.pieces.begin(), strip.pieces.end(), is_choosy) &&
               !std::all_of(strip.pieces.begin(), strip.pieces.end(), is_choosy);
      });
    }
  }
  CHECK(shared > jobs / 20);
}

TEST_CASE("runs are kept in one strip wherever all of them can be for nothing", "[cutting][twin]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const unsigned jobs = number_from("ARRISLINE_CUTTING_JOBS", kJobs);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed + 1);
  unsigned for_nothing = 0, at_a_price = 0;
  for (unsigned n = 0; n < jobs; ++n) {
    Bounds bounds;
    bounds.runs = true;
    bounds.pieces = 6;
    bounds.shortest = 20;
    if (n % 2 == 0) bounds.longest_piece = 30;  // so that many a run fits one strip
    const WholeJob job = random_job(random, bounds);
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    const std::optional<Sums> least = try_everything(job);
    REQUIRE(least);
    CHECK(sums_of(job, plan) == *least);
    CHECK(plan.optimal);
    if (runs_of_several(job) == 0) continue;
    if (try_everything(job, true) == least) {
      CHECK(runs_kept(job, plan) == runs_of_several(job));
      ++for_nothing;
    } else {
      ++at_a_price;
    }
  }
  CHECK(for_nothing > jobs / 10);
  CHECK(at_a_price > jobs / 20);
}

TEST_CASE("the judge of cutting plans finds fault with spoilt ones", "[cutting]") {
  // Two strips of 10 off a board of 23 with a rip kerf of 3, each of two pieces with a kerf of 2 between.
  const WholeJob job{1, {{23, 42, 1, false}}, {{10, {0}}}, {{0, 20, 4, -1}}, 2, 3, 0, 10};
  const CuttingPlan good{{{0, {{0, {0, 0}}, {0, {0, 0}}}}}, {0}, 1, true};
  CHECK(faults(job, good).empty());
  const auto spoilt = [&](auto&& spoil) {
    WholeJob other = job;
    CuttingPlan plan = good;
    spoil(other, plan);
    return !faults(other, plan).empty();
  };
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.boards[0].strips[0].pieces.pop_back(); }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.boards[0].strips[0].pieces = {0, 0, 0}; }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.boards[0].strips.push_back({0, {}}); }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.boards.push_back({0, {}}); }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.missing = {1}; }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.missing.clear(); }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.bound = 2; }));
  CHECK(spoilt([](WholeJob&, CuttingPlan& plan) { plan.bound = 0; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.kerf = 3; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.rip_kerf = 4; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.trued = 1; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.hold = 11; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.kinds[0].sizes.clear(); }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.pieces[0].sizes = std::vector<std::size_t>{}; }));
  CHECK(spoilt([](WholeJob& other, CuttingPlan&) { other.sizes[0].count = 0; }));
}
