// The fewest changes of plane and turns of the blank that cuts need in any order.
#include "plan/changes.h"

#include <algorithm>
#include <numeric>
#include <random>
#include <vector>

#include "catch.h"

using namespace arrisline;

namespace {

LieSet lies(std::initializer_list<Lies> ways) {
  LieSet out;
  for (const Lies way : ways) out.add(way);
  return out;
}

const LieSet kUp = lies({Lies::face_up});
const LieSet kUnder = lies({Lies::underside_up});
const LieSet kEither = lies({Lies::face_up, Lies::underside_up});

/// One plane taken up for each need after the other, in this order, the blank turned as seldom as may be.
std::size_t changes_in_order(const std::vector<Need>& needs, std::size_t at, int held, Lies lie) {
  if (at == needs.size()) return 0;
  std::size_t fewest = 1000;
  for (const Lies next : kWaysToLie) {
    if (!needs[at].may_lie.has(next)) continue;
    const std::size_t here = (needs[at].plane != held ? 1U : 0U) + (next != lie ? 1U : 0U);
    fewest = std::min(fewest, here + changes_in_order(needs, at + 1, needs[at].plane, next));
  }
  return fewest;
}

/// Every order gone through in which nothing that waits comes before what comes first.
std::size_t by_trying_all(const std::vector<Need>& needs, int held, Lies lie) {
  std::vector<std::size_t> order(needs.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::size_t fewest = 1000;
  do {
    std::vector<Need> in_order;
    for (const std::size_t i : order) in_order.push_back(needs[i]);
    const auto waits =
        std::find_if(in_order.begin(), in_order.end(), [](const Need& need) { return need.waits; });
    if (std::any_of(waits, in_order.end(), [](const Need& need) { return need.first; })) continue;
    fewest = std::min(fewest, changes_in_order(in_order, 0, held, lie));
  } while (std::next_permutation(order.begin(), order.end()));
  return fewest;
}

}  // namespace

TEST_CASE("each plane is taken up once where the blank need not be turned", "[changes]") {
  const std::vector<Need> needs = {{0, kUp, true, false}, {1, kUp, false, true}, {2, kEither, false, true}};
  CHECK(fewest_changes(needs, -1, Lies::face_up) == 3);
  CHECK(fewest_changes(needs, 0, Lies::face_up) == 2);
  CHECK(fewest_changes({}, 0, Lies::face_up) == 0);
}

TEST_CASE("a flat of the underside costs a turn, and its plane again where curves wait for the face",
          "[changes]") {
  const Need face{0, kUp, true, false}, bead{1, kUp, false, true}, under{0, kUnder, false, false};
  // Rebate, hollow, turn, rebate; or rebate, turn, rebate, turn, hollow.
  CHECK(fewest_changes(std::vector{face, bead, under}, -1, Lies::face_up) == 4);
  // Where the curve need not wait: hollow, rebate, turn, rebate.
  CHECK(fewest_changes(std::vector{{0, kUp, false, false}, bead, under}, -1, Lies::face_up) == 3);
  // Once the face is done: turn and go on, and back for the bead.
  CHECK(fewest_changes(std::vector{bead, under}, 0, Lies::face_up) == 3);
  // Made lying either way the flat costs no turn.
  CHECK(fewest_changes(std::vector{face, bead, {0, kEither, false, false}}, -1, Lies::face_up) == 2);
}

TEST_CASE("no order of the needs has fewer changes, and one has as few", "[changes]") {
  std::mt19937 random(7);
  const auto one_of = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  int turned = 0;
  for (int round = 0; round < 3000; ++round) {
    std::vector<Need> needs;
    const unsigned count = 1 + one_of(5);
    while (needs.size() < count) {
      Need need;
      need.plane = static_cast<int>(one_of(3));
      for (const Lies way : kWaysToLie) {
        if (one_of(2) == 0) need.may_lie.add(way);
      }
      need.waits = one_of(3) == 0;
      need.first = !need.waits && one_of(2) == 0;
      if (!need.may_lie.empty() && std::find(needs.begin(), needs.end(), need) == needs.end())
        needs.push_back(need);
    }
    const int held = static_cast<int>(one_of(4)) - 1;
    const Lies lie = kWaysToLie[one_of(4)];
    const std::size_t fewest = fewest_changes(needs, held, lie);
    if (fewest > count) ++turned;
    INFO(round);
    REQUIRE(fewest == by_trying_all(needs, held, lie));
  }
  CHECK(turned > 50);
}
