// Cutting plans for larger random jobs: the properties of the header by a judge apart, and what must stay the
// same when a job is written another way.
#include <algorithm>
#include <random>

#include "catch.h"
#include "cutting/whole_job.h"

using namespace arrisline;
using namespace arrisline::cutting_tests;

namespace {

constexpr unsigned kSeed = 5;    // ARRISLINE_SEED sets another
constexpr unsigned kJobs = 150;  // ARRISLINE_CUTTING_LARGER sets another

Bounds larger() {
  Bounds out;
  out.sizes = 3;
  out.kinds = 4;
  out.entries = 9;
  out.pieces = 60;
  out.shortest = 20;
  out.longest = 100;
  return out;
}

template <class T>
std::vector<std::size_t> shuffle(std::vector<T>& list, std::mt19937& random) {
  std::vector<std::size_t> now_at(list.size());
  std::vector<std::size_t> from(list.size());
  for (std::size_t i = 0; i < from.size(); ++i) from[i] = i;
  for (std::size_t i = from.size(); i > 1; --i) std::swap(from[i - 1], from[random() % i]);
  std::vector<T> out;
  for (std::size_t i = 0; i < from.size(); ++i) {
    out.push_back(list[from[i]]);
    now_at[from[i]] = i;
  }
  list = out;
  return now_at;
}

/// Sizes, kinds and pieces in another order, and lines of several pieces taken apart.
WholeJob written_otherwise(WholeJob job, std::mt19937& random) {
  std::vector<WholePiece> apart;
  for (const WholePiece& piece : job.pieces) {
    WholePiece one = piece;
    one.count = 1;
    for (int i = 0; i < piece.count; ++i) apart.push_back(one);
  }
  job.pieces = apart;
  const std::vector<std::size_t> size_at = shuffle(job.sizes, random);
  for (WholeKind& kind : job.kinds)
    for (std::size_t& size : kind.sizes) size = size_at[size];
  const std::vector<std::size_t> kind_at = shuffle(job.kinds, random);
  for (WholePiece& piece : job.pieces) piece.kind = kind_at[piece.kind];
  shuffle(job.pieces, random);
  return job;
}

bool same(const CuttingPlan& a, const CuttingPlan& b) {
  if (a.missing != b.missing || a.bound != b.bound || a.optimal != b.optimal) return false;
  return std::equal(a.boards.begin(), a.boards.end(), b.boards.begin(), b.boards.end(),
                    [](const CutBoard& one, const CutBoard& other) {
                      return one.size == other.size &&
                             std::equal(one.strips.begin(), one.strips.end(), other.strips.begin(),
                                        other.strips.end(), [](const CutStrip& s, const CutStrip& t) {
                                          return s.kind == t.kind && s.pieces == t.pieces;
                                        });
                    });
}

}  // namespace

TEST_CASE("larger jobs are cut by the rules, alike however they are written", "[cutting][properties]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const unsigned jobs = number_from("ARRISLINE_CUTTING_LARGER", kJobs);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed);
  unsigned proved = 0, many = 0, short_of_boards = 0;
  for (unsigned n = 0; n < jobs; ++n) {
    const WholeJob job = random_job(random, larger());
    const WholeJob other = written_otherwise(job, random);
    WholeJob tenfold = job;
    tenfold.unit *= 10;
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    CHECK(same(plan, cut_boards(in_mm(job))));
    const CuttingPlan plan_of_other = cut_boards(in_mm(other));
    CHECK(faults(other, plan_of_other) == std::vector<std::string>{});
    const CuttingPlan plan_of_tenfold = cut_boards(in_mm(tenfold));
    CHECK(faults(tenfold, plan_of_tenfold) == std::vector<std::string>{});
    many += plan.boards.size() >= 10;
    const Sums sums = sums_of(job, plan);
    short_of_boards += sums.missing > 0;
    if (!plan.optimal || !plan_of_other.optimal || !plan_of_tenfold.optimal) continue;
    ++proved;
    const auto counts = [](const Sums& of) { return std::tuple(of.missing, of.bought, of.boards, of.area); };
    CHECK(counts(sums_of(other, plan_of_other)) == counts(sums));
    CHECK(counts(sums_of(tenfold, plan_of_tenfold)) == counts(sums));
  }
  CHECK(proved > jobs * 9 / 10);
  CHECK(many > jobs / 5);
  CHECK(short_of_boards > jobs / 10);
}

TEST_CASE("runs in larger jobs cost no board", "[cutting][properties]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed + 1);
  int kept = 0, broken = 0;
  for (unsigned n = 0; n < 60; ++n) {
    Bounds bounds = larger();
    bounds.runs = true;
    bounds.pieces = n % 2 == 0 ? 12 : 25;
    if (n % 2 == 0) bounds.longest_piece = 20;  // so that many a run fits one strip
    const WholeJob job = random_job(random, bounds);
    WholeJob without = job;
    for (WholePiece& piece : without.pieces) piece.run = -1;
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    const CuttingPlan freely = cut_boards(in_mm(without));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    REQUIRE(plan.optimal);
    REQUIRE(freely.optimal);
    CHECK(sums_of(job, plan) <= sums_of(without, freely));
    kept += runs_kept(job, plan);
    broken += runs_of_several(job) - runs_kept(job, plan);
  }
  CHECK(kept > 5);
  CHECK(broken > 5);
}
