// Boards cut where a fit is exact, a kerf falls past the end, boards are held or trued, some are missing or
// to buy; and runs. Answers are worked out by hand beside each.
#include <algorithm>
#include <set>

#include "catch.h"
#include "cutting/whole_job.h"

using namespace arrisline;
using namespace arrisline::cutting_tests;

namespace {

CuttingPlan cut(const WholeJob& job) {
  CuttingPlan plan = cut_boards(in_mm(job));
  CHECK(faults(job, plan) == std::vector<std::string>{});
  CHECK(plan.optimal);
  return plan;
}

std::size_t boards(const WholeJob& job) {
  return cut(job).boards.size();
}

/// One size and one kind.
WholeJob plain(WholeSize size, int strip, std::vector<WholePiece> pieces) {
  WholeJob out;
  out.sizes = {size};
  out.kinds = {{strip, {0}}};
  out.pieces = std::move(pieces);
  return out;
}

std::vector<int> of_size(const CuttingPlan& plan, std::size_t sizes) {
  std::vector<int> out(sizes);
  for (const CutBoard& board : plan.boards) ++out[board.size];
  return out;
}

}  // namespace

TEST_CASE("nothing wanted takes no boards", "[cutting]") {
  WholeJob job = plain({100, 1000, 3, false}, 20, {});
  CuttingPlan plan = cut(job);
  CHECK(plan.boards.empty());
  CHECK(plan.bound == 0);
  CHECK(plan.missing == std::vector<int>{0});
  job.pieces = {{0, 500, 0, -1}, {0, 5000, 0, 2}};  // a list of noughts
  plan = cut(job);
  CHECK(plan.boards.empty());
  CHECK(plan.missing == std::vector<int>{0});
  plan = cut_boards({});
  CHECK(plan.boards.empty());
  CHECK(plan.missing.empty());
  CHECK(plan.optimal);
}

TEST_CASE("a piece as long and as wide as its board fits it, in any unit", "[cutting]") {
  for (const double unit : {1.0, 0.1, 1.0 / 3, 25.4 / 64, 304.8}) {
    WholeJob job = plain({7, 961, std::nullopt, false}, 7, {{0, 961, 2, -1}});
    job.unit = unit;
    job.kerf = 3;
    job.rip_kerf = 3;
    CHECK(boards(job) == 2);
    // Seven of 131 and six kerfs of 3 are 935; seven of 134, 956; seven of 135, 963.
    job.pieces = {{0, 134, 7, -1}};
    CHECK(boards(job) == 1);
    job.sizes[0].length = 956;
    CHECK(boards(job) == 1);
    job.sizes[0].length = 955;
    CHECK(boards(job) == 2);
  }
}

TEST_CASE("of a cut within a kerf of the end only what is left is lost", "[cutting]") {
  WholeJob job = plain({10, 100, std::nullopt, false}, 10, {{0, 49, 2, -1}});
  for (job.kerf = 0; job.kerf <= 4; ++job.kerf) CHECK(boards(job) == (job.kerf <= 2 ? 1 : 2));
  job.pieces = {{0, 98, 1, -1}};
  job.kerf = 5;
  CHECK(boards(job) == 1);
}

TEST_CASE("strips take their width, the rip kerf and the truing, the last its width alone", "[cutting]") {
  // Three strips of 30 with two rips of 3 and two truings of 1 are 98.
  WholeJob job = plain({98, 100, std::nullopt, false}, 30, {{0, 100, 3, -1}});
  job.rip_kerf = 3;
  job.trued = 1;
  CHECK(boards(job) == 1);
  job.sizes[0].width = 97;
  CHECK(boards(job) == 2);
  job.sizes[0].width = 98;
  job.trued = 2;
  CHECK(boards(job) == 2);
  // The last must leave enough to hold: of 98 there are 30 left at its turn.
  job.trued = 1;
  job.hold = 30;
  CHECK(boards(job) == 1);
  job.hold = 31;
  CHECK(boards(job) == 2);
  job.hold = 98;
  CHECK(boards(job) == 3);
}

TEST_CASE("the widest strip comes last, where it is what is held", "[cutting]") {
  // Hold 40: with 10 and 40 off 53, 40 are left after the 10 and its rip; the 40 first would leave 10.
  WholeJob job;
  job.sizes = {{53, 100, std::nullopt, false}};
  job.kinds = {{40, {0}}, {10, {0}}};
  job.pieces = {{0, 100, 1, -1}, {1, 100, 1, -1}};
  job.rip_kerf = 3;
  job.hold = 40;
  const CuttingPlan plan = cut(job);
  REQUIRE(plan.boards.size() == 1);
  REQUIRE(plan.boards[0].strips.size() == 2);
  CHECK(plan.boards[0].strips[0].kind == 1);
  CHECK(plan.boards[0].strips[1].kind == 0);
}

TEST_CASE("a board too narrow to hold or for its strip is not used, however long", "[cutting]") {
  WholeJob job;
  job.sizes = {{20, 1000, std::nullopt, false}, {50, 100, std::nullopt, false}};
  job.kinds = {{10, {0, 1}}};
  job.pieces = {{0, 100, 3, -1}};
  job.hold = 30;
  CHECK(of_size(cut(job), 2) == std::vector<int>{0, 1});
  job.hold = 0;
  job.kinds[0].width = 25;
  CHECK(of_size(cut(job), 2) == std::vector<int>{0, 2});
}

TEST_CASE("boards over the count are missing, and as few as can be", "[cutting]") {
  WholeJob job = plain({10, 100, 2, false}, 10, {{0, 60, 5, -1}});
  CuttingPlan plan = cut(job);
  CHECK(plan.boards.size() == 5);
  CHECK(plan.missing == std::vector<int>{3});
  job.sizes[0].count = 0;
  CHECK(cut(job).missing == std::vector<int>{5});
  // One more size that may be used: three more boards there rather than one missing here.
  job.sizes = {{10, 180, 1, false}, {10, 60, 3, false}};
  job.kinds[0].sizes = {0, 1};
  job.pieces = {{0, 60, 6, -1}};
  plan = cut(job);
  CHECK(plan.missing == std::vector<int>{0, 0});
  CHECK(of_size(plan, 2) == std::vector<int>{1, 3});
}

TEST_CASE("what is on hand goes before what is to buy, and that before what is missing", "[cutting]") {
  // Three short boards on hand rather than one long one bought.
  WholeJob job;
  job.sizes = {{10, 300, std::nullopt, true}, {10, 100, 3, false}};
  job.kinds = {{10, {0, 1}}};
  job.pieces = {{0, 100, 3, -1}};
  CHECK(of_size(cut(job), 2) == std::vector<int>{0, 3});
  // With two on hand one has to be bought, and then the other two are not needed.
  job.sizes[1].count = 2;
  CHECK(of_size(cut(job), 2) == std::vector<int>{1, 0});
  // The one that can be bought gives three pieces and the two on hand one each; a sixth piece has no board.
  job.sizes[0].count = 1;
  job.pieces[0].count = 5;
  CuttingPlan plan = cut(job);
  CHECK(plan.missing == std::vector<int>{0, 0});
  CHECK(of_size(plan, 2) == std::vector<int>{1, 2});
  job.pieces[0].count = 6;
  plan = cut(job);
  CHECK(plan.missing[0] + plan.missing[1] == 1);
}

TEST_CASE("of as few boards those of least area, then those with the fewest strips", "[cutting]") {
  WholeJob job;
  job.sizes = {
      {30, 100, std::nullopt, false}, {20, 100, std::nullopt, false}, {25, 120, std::nullopt, false}};
  job.kinds = {{20, {0, 1, 2}}};
  job.pieces = {{0, 90, 3, -1}};
  CHECK(of_size(cut(job), 3) == std::vector<int>{0, 3, 0});
  // Four pieces of 25 fill one strip of 100; two strips would do as well for the board.
  job = plain({50, 100, std::nullopt, false}, 20, {{0, 25, 4, -1}});
  const CuttingPlan plan = cut(job);
  REQUIRE(plan.boards.size() == 1);
  CHECK(plan.boards[0].strips.size() == 1);
}

TEST_CASE("runs are cut from one strip each, where it costs nothing", "[cutting]") {
  // Two frames of the same four lengths, one strip each: 2·(30 + 20) = 100.
  WholeJob job =
      plain({10, 100, std::nullopt, false}, 10, {{0, 30, 2, 0}, {0, 30, 2, 1}, {0, 20, 2, 0}, {0, 20, 2, 1}});
  CuttingPlan plan = cut(job);
  CHECK(plan.boards.size() == 2);
  CHECK(runs_kept(job, plan) == 2);

  // The same from strips side by side, and others that are no run.
  job.sizes[0].width = 20;
  job.pieces.push_back({0, 50, 4, -1});
  plan = cut(job);
  CHECK(plan.boards.size() == 2);
  CHECK(runs_kept(job, plan) == 2);

  // 60 and 60 are no strip of 100, so the run is broken rather than the job refused.
  job = plain({10, 100, std::nullopt, false}, 10, {{0, 60, 2, 0}, {0, 40, 2, 1}});
  plan = cut(job);
  CHECK(plan.boards.size() == 2);
  CHECK(runs_kept(job, plan) == 0);

  // 40 + 40 as a run would leave the two of 60 a board each, 3 boards in all; so it is broken, the other
  // kept.
  job.pieces = {{0, 60, 2, -1}, {0, 40, 2, 1}, {0, 50, 2, 2}};
  plan = cut(job);
  CHECK(plan.boards.size() == 3);
  CHECK(runs_kept(job, plan) == 1);
}

TEST_CASE("a run is not cut from a board that is long enough but too narrow", "[cutting]") {
  WholeJob job;
  job.sizes = {{7, 48, std::nullopt, false}, {12, 20, std::nullopt, false}};
  job.kinds = {{12, {0, 1}}};
  job.pieces = {{0, 19, 2, 0}};
  CuttingPlan plan = cut(job);
  CHECK(of_size(plan, 2) == std::vector<int>{0, 2});
  job.kinds[0].width = 5;
  job.hold = 8;
  plan = cut(job);
  CHECK(of_size(plan, 2) == std::vector<int>{0, 2});
}

TEST_CASE("no board is bought to keep a run, though it be smaller", "[cutting]") {
  // Two strips of 50 off the board on hand, or the run in one strip off a narrower board that is to buy.
  WholeJob job;
  job.sizes = {{30, 60, 1, false}, {10, 110, std::nullopt, true}};
  job.kinds = {{10, {0, 1}}};
  job.pieces = {{0, 50, 2, 0}};
  const CuttingPlan plan = cut(job);
  CHECK(of_size(plan, 2) == std::vector<int>{1, 0});
  CHECK(runs_kept(job, plan) == 0);
}

TEST_CASE("the pieces of a run lie side by side, the kerfs between them counted", "[cutting]") {
  WholeJob job = plain({10, 106, std::nullopt, false}, 10, {{0, 20, 2, 3}, {0, 25, 1, -1}, {0, 35, 1, 3}});
  job.kerf = 2;  // 20 + 20 + 25 + 35 and three kerfs are 106
  const CuttingPlan plan = cut(job);
  REQUIRE(plan.boards.size() == 1);
  REQUIRE(plan.boards[0].strips.size() == 1);
  const std::vector<std::size_t>& pieces = plan.boards[0].strips[0].pieces;
  REQUIRE(pieces.size() == 4);
  CHECK((pieces.front() == 1 || pieces.back() == 1));
}

TEST_CASE("pieces that are alike are dealt to the lines that ask for them", "[cutting]") {
  WholeJob job = plain({10, 100, std::nullopt, false}, 10,
                       {{0, 25, 3, -1}, {0, 50, 2, -1}, {0, 25, 5, -1}, {0, 50, 1, -1}});
  CHECK(boards(job) == 4);  // 8 · 25 + 3 · 50 = 350
}
