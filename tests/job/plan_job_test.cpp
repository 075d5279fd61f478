// A whole job: runs, strips, shortages and buying.
#include <algorithm>
#include <set>

#include "job/jobs.h"
#include "job/ripping.h"
#include "job/runs.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

int pieces_of(const JobPlan& plan, std::size_t piece) {
  int out = 0;
  for (const BlankWork& blank : plan.blanks)
    for (const RipStep& strip : blank.strips)
      out += static_cast<int>(std::count(strip.pieces.begin(), strip.pieces.end(), piece));
  return out;
}

}  // namespace

TEST_CASE("mouldings of one profile and width share a plan and their strips", "[plan_job]") {
  Job it = job(pair_of_sixes(), {stock(5.5, 96, 2)},
               {mould("edge", kRoundOver, 1, 40), mould("edge", kRoundOver, 1, 20, 2),
                mould("edge", kRoundOver, 2, 20)});
  const JobPlan plan = plan_job(it, {});
  REQUIRE(plan.runs.size() == 2);
  CHECK(plan.runs[0].moulds == std::vector<std::size_t>{0, 1});
  CHECK(plan.runs[1].moulds == std::vector<std::size_t>{2});
  CHECK(plan.shortages.empty());
  CHECK(plan.blanks.size() == 1);
  CHECK(plan.cutting.optimal);
  CHECK(pieces_of(plan, 0) == 1);
  CHECK(pieces_of(plan, 1) == 2);
  CHECK(pieces_of(plan, 2) == 1);
  // The same cuts on both widths: one after the other with nothing set anew.
  CHECK(plan.order.settings * 2 == plan.order.settings_one_by_one);
}

TEST_CASE("mouldings that differ in the wood asked for, or in how width and file are written, are one run",
          "[plan_job]") {
  Job it = job(pair_of_sixes(), {stock(1.5, 72)},
               {mould("edge", kRoundOver, 1.5, 30), mould("edge", kRoundOver, 1.5, 18, 2)});
  it.moulds[0].species = "poplar";
  it.moulds[1].width = 38.1 + 1e-14;
  it.moulds[1].profile = "./edge.profile";
  it.spare = Spare{4 * kMmPerInch, 1};
  const JobPlan plan = plan_job(it, {});
  REQUIRE(plan.runs.size() == 1);
  CHECK(plan.shortages.empty());
  CHECK(plan.blanks.size() == 1);
  CHECK(pieces_of(plan, kSparePiece) == 1);
  // What asks for a wood comes from that alone, the rest from either.
  it.stocks = {stock(1.5, 72), stock(1.5, 72)};
  it.stocks[0].species = "oak";
  const JobPlan of_two = plan_job(it, {});
  REQUIRE(of_two.blanks.size() == 1);
  CHECK(of_two.blanks[0].stock == 1);
}

TEST_CASE("the blank grows narrower by each strip, its kerf and what is trued off", "[plan_job]") {
  Job it = job(pair_of_sixes(), {stock(5.5, 30)}, {mould("edge", kRoundOver, 1, 29, 3)});
  it.ripping = {3, 0.5, 30};
  it.saw = {2, 0};
  const JobPlan plan = plan_job(it, {});
  REQUIRE(plan.blanks.size() == 1);
  const std::vector<RipStep>& strips = plan.blanks[0].strips;
  REQUIRE(strips.size() == 3);
  double width = 5.5 * kMmPerInch;
  for (const RipStep& strip : strips) {
    CHECK(strip.width_before == Approx(width));
    CHECK(strip.ripped);
    width -= 25.4 + 3 + 0.5;
    CHECK(strip.width_after == Approx(width));
    CHECK(strip.left_over == Approx(25.4));
    CHECK(strip.width_before >= it.ripping.hold);
  }
}

TEST_CASE("the last strip of a blank is not ripped where it is all that is left", "[plan_job]") {
  const JobPlan plan =
      plan_job(job(pair_of_sixes(), {stock(2, 30)}, {mould("edge", kRoundOver, 1, 29, 2)}), {});
  REQUIRE(plan.blanks.size() == 1);
  REQUIRE(plan.blanks[0].strips.size() == 2);
  CHECK(plan.blanks[0].strips[0].ripped);
  CHECK_FALSE(plan.blanks[0].strips[1].ripped);
  CHECK(plan.blanks[0].strips[1].width_after == 0);
}

TEST_CASE("spare lengths are cut for each profile, and counted among no moulding's pieces", "[plan_job]") {
  Job it =
      job(pair_of_sixes(), {stock(5.5, 96)}, {mould("a", kRoundOver, 1, 40), mould("b", kCavetto, 1, 40)});
  it.spare = Spare{12 * kMmPerInch, 2};
  const JobPlan plan = plan_job(it, {});
  CHECK(pieces_of(plan, kSparePiece) == 4);
  CHECK(pieces_of(plan, 0) == 1);
}

TEST_CASE("pieces that meet at their mitres come from one strip, as they stand", "[plan_job]") {
  Job it = job(pair_of_sixes(), {stock(1, 96, 4)},
               {mould("edge", kRoundOver, 1, 44), mould("edge", kRoundOver, 1, 14),
                mould("edge", kRoundOver, 1, 14), mould("edge", kRoundOver, 1, 20)});
  it.moulds[0].mitre = Ends::both;
  it.moulds[1].mitre = Ends::left;
  it.moulds[2].mitre = Ends::right;
  const JobPlan plan = plan_job(it, {});
  CHECK(plan.blanks.size() == 1);
  const std::vector<std::size_t>& pieces = plan.blanks[0].strips[0].pieces;
  REQUIRE(pieces.size() == 4);
  const auto at = std::find(pieces.begin(), pieces.end(), std::size_t{2});
  REQUIRE(pieces.end() - at >= 3);
  CHECK(*(at + 1) == 0);
  CHECK(*(at + 2) == 1);
}

TEST_CASE("blanks that do not suffice are counted, and the rest is there all the same", "[plan_job]") {
  const JobPlan plan =
      plan_job(job(pair_of_sixes(), {stock(1, 30, 1)}, {mould("edge", kRoundOver, 1, 29, 3)}), {});
  REQUIRE(plan.shortages.size() == 1);
  CHECK(plan.shortages[0].kind == Shortage::Kind::blanks);
  CHECK(plan.shortages[0].count == 2);
  CHECK(plan.blanks.size() == 3);
  CHECK(std::count_if(plan.blanks.begin(), plan.blanks.end(), [](const BlankWork& b) { return b.missing; }) ==
        2);
  CHECK_FALSE(plan.order.steps.empty());
}

TEST_CASE("blanks are bought only where those on hand do not do", "[plan_job]") {
  const JobPlan plan = plan_job(job(pair_of_sixes(), {stock(8, 96, std::nullopt), stock(1, 30, 2)},
                                    {mould("edge", kRoundOver, 1, 29, 2)}),
                                {});
  CHECK(plan.shortages.empty());
  REQUIRE(plan.blanks.size() == 2);
  CHECK(plan.blanks[0].stock == 1);
  CHECK(plan.blanks[1].stock == 1);
  const JobPlan more = plan_job(job(pair_of_sixes(), {stock(8, 96, std::nullopt), stock(1, 30, 2)},
                                    {mould("edge", kRoundOver, 1, 29, 3)}),
                                {});
  CHECK(std::count_if(more.blanks.begin(), more.blanks.end(),
                      [](const BlankWork& b) { return b.stock == 0; }) == 1);
}

TEST_CASE("the fewest planes to add, each with what it unlocks", "[plan_job][buying]") {
  // Two coves of 3/8 in and a round-over of 3/8 in with neither hollow nor round: one of each is enough.
  const Job it = job(kit("rebate 3/4\n"), {stock(5.5, 96, 3)},
                     {mould("a", kCavetto, 1, 20), mould("b", kCavetto, 2, 20), mould("c", kRoundOver, 1, 20),
                      mould("d", kRebate, 1, 20)});
  const JobPlan plan = plan_job(it, {});
  CHECK(std::count_if(plan.shortages.begin(), plan.shortages.end(),
                      [](const Shortage& s) { return s.kind == Shortage::Kind::planes; }) == 3);
  CHECK(plan.buying.complete);
  REQUIRE(plan.buying.planes.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    const bool round = plan.buying.planes[i].kind == PlaneKind::round;
    CHECK(plan.buying.planes[i].radius == Approx(0.375 * kMmPerInch));
    CHECK(plan.buying.unlocks[i] == (round ? std::vector<std::size_t>{0, 1} : std::vector<std::size_t>{2}));
  }
  CHECK_FALSE(plan.order.steps.empty());  // what can be cut is ordered all the same
}

TEST_CASE("a profile that works the back edge is ripped before it is stuck", "[plan_job]") {
  const std::string both =
      "start face 1/2\nstep down 1/4\nfillet out 1/2\nside back\nstart face 1/2\nstep down 1/4\nfillet out "
      "1/2";
  Job it =
      job(kit("rebate 3/4\n"), {stock(5.5, 40)}, {mould("rail", both, 2, 30), mould("edge", kRebate, 2, 30)});
  const JobPlan plan = plan_job(it, {});
  REQUIRE(plan.runs.size() == 2);
  CHECK(plan.runs[0].ripped_first);
  CHECK_FALSE(plan.runs[1].ripped_first);
  CHECK(plan.shortages.empty());
  // Then it must be held by its own width.
  it.ripping.hold = 2.5 * kMmPerInch;
  const JobPlan narrow = plan_job(it, {});
  REQUIRE(narrow.shortages.size() == 1);
  CHECK(narrow.shortages[0].kind == Shortage::Kind::too_narrow);
  CHECK(narrow.shortages[0].run == 0);
  // 2 in is 50.8 mm, however the sums of it come out.
  it.ripping.hold = 50.8 + 1e-13;
  CHECK(plan_job(it, {}).shortages.empty());
}

TEST_CASE("a strip that no stop holds at its own width may be held on the blank", "[plan_job]") {
  Kit held = kit("rebate 3/4\nhollow 6\nround 6\nscraper\nboard stops at 2 screw 8mm clear 1.5mm\n");
  const JobPlan wide = plan_job(job(held, {stock(4, 30)}, {mould("edge", kRoundOver, 1, 29)}), {});
  CHECK(wide.shortages.empty());
  const JobPlan narrow = plan_job(job(held, {stock(1, 30)}, {mould("edge", kRoundOver, 1, 29)}), {});
  REQUIRE(narrow.shortages.size() == 1);
  CHECK(narrow.shortages[0].kind == Shortage::Kind::holding);
}

TEST_CASE("strips come off in the order in which the stops hold them", "[plan_job]") {
  // The half-round takes the whole edge, and so is held only by the stop at 1 1/2 in under the far side of a
  // wide blank; the round-over by that stop on anything from 1 11/16 in.
  Kit held = kit("rebate 3/4\nhollow 6\nround 6\nscraper\nboard stops at 1 1/2, 3 screw 3/8 clear 1/16\n");
  Job it = job(held, {stock(3.1875, 30)},
               {mould("torus", "start face 3/8\ntorus 3/4", 1.25, 29), mould("edge", kRoundOver, 1, 29)});
  it.ripping.kerf = kMmPerInch / 8;
  const JobPlan plan = plan_job(it, {});
  REQUIRE(plan.blanks.size() == 1);
  const std::vector<RipStep>& strips = plan.blanks[0].strips;
  REQUIRE(strips.size() == 2);
  REQUIRE(plan.runs[0].narrowest);
  const double left_by_edge = (3.1875 - 1 - 0.125) * kMmPerInch;
  REQUIRE(*plan.runs[0].narrowest > left_by_edge);  // the narrower first, as they would be cut, does not do
  CHECK(strips[0].run == 0);
  CHECK(strips[1].width_before == Approx((3.1875 - 1.25 - 0.125) * kMmPerInch));
  CHECK(plan.shortages.empty());
}

TEST_CASE("strokes, metres and shavings add up strip by strip", "[plan_job]") {
  const JobPlan plan =
      plan_job(job(pair_of_sixes(), {stock(1, 50, 2)}, {mould("edge", kRoundOver, 1, 40, 2)}), {});
  double strokes = 0;
  for (const Cut& cut : plan.runs[0].plan.cuts) strokes += cut.strokes;
  CHECK(plan.estimate.strokes == Approx(2 * strokes));
  CHECK(plan.estimate.minutes == Approx(2 * strokes / 20));
  CHECK(plan.estimate.metres == Approx(2 * 50 * 0.0254));
  // A quadrant's waste is (1 − π/4) of its square.
  CHECK(plan.estimate.shavings_litres == Approx(2 * 1.270 * (1 - kPi / 4) * 9.525 * 9.525 / 1000));
}
