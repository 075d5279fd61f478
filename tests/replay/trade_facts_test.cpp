// What follows from the geometry of planes with a 60° sole, found again on the wood of real plans. Computed:
// the figures are closed forms of the drawing; that a sole is a 60° arc is common practice, no source.
#include <cmath>
#include <numeric>

#include "arrisline/replay.h"
#include "catch.h"
#include "replay/plans.h"
#include "replay/seating.h"

using namespace arrisline;
using namespace arrisline::replaying;

static constexpr double kFar = 200;

// The wood before cut `index`, and how that cut's first pose sits on it.
static Seating seated(const Plan& plan, std::size_t index) {
  Standing wood(plan.section.width, plan.section.thickness);
  for (std::size_t i = 0; i < index; ++i)
    for (const Pose& pose : plan.cuts[i].poses) wood.take(sweep_of(plan.cuts[i].plane, pose, kFar));
  return seat(wood, plan.cuts[index].plane, plan.cuts[index].poses.front());
}

TEST_CASE("a tangent chamfer leaves two arrises 0.828 R apart", "[trade]") {
  const Seating seating = seated(plans::round_over(), 1);
  REQUIRE(seating.contacts.size() == 2);
  CHECK(seating.contacts[1] - seating.contacts[0] == Approx(0.828 * plans::kSix).epsilon(0.001));
  CHECK(seating.contacts[1] == Approx(plans::kSix * std::tan(to_radians(22.5))).margin(1e-5));
  CHECK(seating.contacts[1] < plans::kSix / 2);
  CHECK(seating.two_arrises);
  CHECK(seating.imbalance < 1e-6);
}

TEST_CASE("one rebate into a cove leaves arrises at the edges of the sole", "[trade]") {
  const Seating seating = seated(plans::cavetto_one(), 1);
  REQUIRE(seating.contacts.size() == 2);
  CHECK(seating.contacts[0] == Approx(-plans::kSix / 2).margin(1e-5));
  CHECK(seating.contacts[1] == Approx(plans::kSix / 2).margin(1e-5));
  CHECK(seating.two_arrises);
}

TEST_CASE("two equal rebates leave one arris in the middle, on which the plane rocks", "[trade]") {
  const Seating seating = seated(plans::cavetto_two(), 2);
  REQUIRE(seating.contacts.size() == 1);
  CHECK(seating.contacts[0] == Approx(0).margin(1e-5));
  CHECK_FALSE(seating.two_arrises);
}

TEST_CASE("three rebates leave two arrises 0.229 R either side of the middle", "[trade]") {
  const Seating seating = seated(plans::cavetto_three(), 3);
  REQUIRE(seating.contacts.size() == 2);
  CHECK(seating.contacts[0] / plans::kSix == Approx(-0.229).margin(0.0005));
  CHECK(seating.contacts[1] / plans::kSix == Approx(0.229).margin(0.0005));
  CHECK(seating.imbalance < 1e-6);
}

TEST_CASE("two chamfers at 30 and 60 degrees leave arrises 0.268 R either side of a hollow at 30",
          "[trade]") {
  const Seating seating = seated(plans::round_over_two_chamfers(), 2);
  REQUIRE(seating.contacts.size() == 2);
  CHECK(seating.contacts[0] / plans::kSix == Approx(-0.268).margin(0.0005));
  CHECK(seating.contacts[1] / plans::kSix == Approx(0.268).margin(0.0005));
}

TEST_CASE("flat soles take this much of a quadrant's waste", "[trade]") {
  const auto share = [](const Plan& plan) { return 100 * plan.waste_by_flat / plan.waste_area; };
  CHECK(share(plans::cavetto_one()) == Approx(63.7).margin(0.05));
  CHECK(share(plans::cavetto_two()) == Approx(78.4).margin(0.05));
  CHECK(share(plans::cavetto_three()) == Approx(84.8).margin(0.05));
  // These two are known in whole per cent.
  CHECK(share(plans::round_over()) == Approx(80).margin(0.5));
  CHECK(share(plans::round_over_two_chamfers()) == Approx(91).margin(0.5));
  // The stated shares are those that the clipper finds on the wood.
  for (const Plan& plan : {plans::cavetto_one(), plans::cavetto_two(), plans::cavetto_three(),
                           plans::round_over(), plans::round_over_two_chamfers()})
    CHECK(second_opinion(plan).empty());
}

TEST_CASE("a 60 degree sole needs two tilts for a quadrant", "[trade]") {
  Plan plan = plans::round_over_two_chamfers();
  CHECK(replay(plan, {}).findings.empty());
  plan.cuts[2].poses.pop_back();
  plan.cuts[2].set.pop_back();
  CHECK(replay(plan, {}).max_height > 0.2);
}

TEST_CASE("a slot no wider than the plane takes it by its walls; plain wood guides nothing", "[trade]") {
  Standing plain(plans::kWidth, plans::kThickness);
  const Plane hollow = plans::curved(PlaneKind::hollow), round = plans::curved(PlaneKind::round);
  const Pose down{{25, 2}, 0};
  const Seating on_edges = seat(plain, hollow, down);
  CHECK(on_edges.contacts.empty());
  CHECK(on_edges.patches.size() == 2);
  const Seating rocking = seat(plain, round, down);
  CHECK_FALSE(rocking.two_arrises);

  Standing slot(plans::kWidth, plans::kThickness);
  Plane plough;
  plough.kind = PlaneKind::plough;
  plough.width = hollow.width;
  slot.take(sweep_of(plough, {{25, 5}, 0}, kFar));
  const Seating walled = seat(slot, hollow, {{25, 6}, 0});
  CHECK(walled.two_arrises);
  CHECK(walled.contacts.size() == 2);
  // A slot a little narrower than a round holds it by its arrises.
  Standing narrow(plans::kWidth, plans::kThickness);
  plough.width = 0.8 * round.width;
  narrow.take(sweep_of(plough, {{25, 5}, 0}, kFar));
  const Seating held = seat(narrow, round, {{25, 2}, 0});
  REQUIRE(held.contacts.size() == 2);
  CHECK(held.contacts[1] == Approx(0.4 * round.width).margin(1e-5));
  // It stands off by the depth in the sole of its arris, less the depth of the pose.
  CHECK(held.stands_off == Approx(2 - sole_height(round, 0.4 * round.width)).margin(1e-5));
}

TEST_CASE("the arrises of a chamfer and of steps grow with the radius", "[trade]") {
  // The figures of the cases above, in parts of R, at every number up to that whose chamfers the rebate plane
  // spans.
  const auto contacts = [](const Plan& plan, std::size_t index, double r) {
    std::vector<double> out = seated(plan, index).contacts;
    for (double& u : out) u /= r;
    return out;
  };
  for (int number = 1; number <= 10; ++number) {
    INFO("No. " << number);
    const double r = number * kMmPerInch / 16;
    const auto chamfer = contacts(plans::round_over(r), 1, r);
    REQUIRE(chamfer.size() == 2);
    CHECK(chamfer[1] - chamfer[0] == Approx(2 * std::tan(to_radians(22.5))).margin(1e-5));
    const auto two = contacts(plans::round_over_two_chamfers(r), 2, r);
    REQUIRE(two.size() == 2);
    CHECK(two[1] - two[0] == Approx(2 * std::tan(to_radians(15))).margin(1e-5));
    const auto one_step = contacts(plans::cavetto_one(r), 1, r);
    REQUIRE(one_step.size() == 2);
    CHECK(one_step[1] - one_step[0] == Approx(1).margin(1e-5));
    CHECK_FALSE(seated(plans::cavetto_two(r), 2).two_arrises);
    // Corners at 22.5° and 45° leave an arris at (cos 45°, sin 22.5°) R, and its mirror image.
    const auto three = contacts(plans::cavetto_three(r), 3, r);
    REQUIRE(three.size() == 2);
    const double u = (std::cos(to_radians(45)) - std::sin(to_radians(22.5))) / std::sqrt(2.0);
    CHECK(three[0] == Approx(-u).margin(1e-5));
    CHECK(three[1] == Approx(u).margin(1e-5));
    CHECK(u == Approx(0.229).margin(0.0005));
    for (const Plan& plan :
         {plans::round_over(r), plans::round_over_two_chamfers(r), plans::cavetto_three(r)})
      for (const Finding& finding : replay(plan, {}).findings)
        FAIL_CHECK(plan.section.name << ": " << finding.text);
  }
}
