// What a kit makes on a stock, and what would add to it.
#include "arrisline/reach.h"

#include <algorithm>

#include "plan/planning.h"

namespace arrisline::test {
namespace {

constexpr double kInch = kMmPerInch;
const ReachOptions kPatient = {3600, nullptr, nullptr};  // no answer hangs on how fast the machine is

bool has(const std::vector<Made>& made, const std::string& name) {
  return std::any_of(made.begin(), made.end(), [&](const Made& one) { return one.moulding.name == name; });
}

TEST_CASE("a pair of sixes and a rebate plane make the working set's shapes on 3/4 in stock", "[reach]") {
  // Common practice, no source: the round-over, ovolo, cavetto, ogee and reverse ogee.
  const Kit sixes = kit("units inch\nhollow 6\nround 6\nrebate 3/4\n");
  const std::vector<Made> made = within_reach(sixes, 2 * kInch, 0.75 * kInch, kPatient);
  CHECK(has(made, "ovolo 3/8"));
  CHECK(has(made, "ovolo 3/8 between fillets"));
  CHECK(has(made, "cavetto 3/8"));
  CHECK(has(made, "cavetto 3/8 between fillets"));
  CHECK(has(made, "ogee 0.45 by 0.6"));
  CHECK(has(made, "reverse-ogee 0.45 by 0.6"));
  CHECK(has(made, "thumbnail 3/8"));
  CHECK(has(made, "thumbnail 0.3 by 3/16"));
  CHECK(has(made, "thumbnail 3/8 above a fillet"));
  CHECK(has(made, "torus 3/4 all round the edge"));
  SECTION("each is planned, and its plan stands every check") {
    for (const Made& one : made) {
      INFO(one.moulding.name);
      CHECK(one.plan.feasible);
      CHECK(faults(one.plan) == "");
      for (const Cut& cut : one.plan.cuts)
        if (cut.rides == Rides::two_arrises) CHECK(cut.imbalance <= 0.15 + 1e-9);
    }
  }
  SECTION("each has a file of its own, whose text is the section planned") {
    std::vector<std::string> files;
    for (const Made& one : made) {
      files.push_back(one.moulding.file);
      const Section read = need(read_profile(one.moulding.profile, one.moulding.file));
      CHECK(area(read.target) == Approx(area(one.plan.section.target)));
      CHECK(one.moulding.file.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789.-") ==
            std::string::npos);
    }
    std::sort(files.begin(), files.end());
    CHECK(std::adjacent_find(files.begin(), files.end()) == files.end());
  }
  SECTION("each fits the stock") {
    for (const Made& one : made) {
      CHECK(one.moulding.across <= 1.5 * kInch);
      const bool all_round = one.moulding.name == "torus 3/4 all round the edge";
      CHECK(one.moulding.down <= (all_round ? 0.75 : 0.625) * kInch + 1e-9);
    }
  }
}

TEST_CASE("a kit without hollows and rounds makes none of them", "[reach]") {
  CHECK(within_reach(kit("units inch\nrebate 3/4\n"), 2 * kInch, 0.75 * kInch, kPatient).empty());
}

TEST_CASE("a metric kit's mouldings are in millimetres", "[reach]") {
  const Kit metric = kit("units mm\nhollow 6 radius 10\nrebate 20\n");
  const std::vector<Made> made = within_reach(metric, 50, 20, kPatient);
  CHECK(has(made, "ovolo 10"));
  for (const Made& one : made) CHECK(one.moulding.profile.find("units    mm") != std::string::npos);
}

TEST_CASE("the plane that adds most comes first, and what it adds cannot be made without it", "[reach]") {
  const Kit hollow = kit("units inch\nhollow 6\nrebate 3/4\n");
  const std::vector<Addition> planes = additions(hollow, 1.25 * kInch, 0.5 * kInch, 1, kPatient);
  REQUIRE(planes.size() == 1);
  CHECK_FALSE(planes[0].gained.empty());
  Kit with = hollow;
  with.planes.push_back(planes[0].plane);
  PlanOptions any;
  any.any = true;
  for (const arrisline::Moulding& moulding : planes[0].gained) {
    INFO(moulding.name);
    CHECK(make_plan(moulding.section, with, any).feasible);
    const std::vector<Made> before = within_reach(hollow, 1.25 * kInch, 0.5 * kInch, kPatient);
    CHECK_FALSE(has(before, moulding.name));
    break;  // one is enough: the rest are made of the same radius
  }
}

}  // namespace
}  // namespace arrisline::test
