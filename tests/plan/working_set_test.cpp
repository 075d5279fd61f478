// "4, 6 and 8 make a full working set" and "a pair of sixes makes …": common practice, no source. What each
// is taken to cover is listed here: the sizes of its numbers, those between them, and mouldings put together
// of several.
#include <algorithm>
#include <string>
#include <vector>

#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::Moulding;
using test::pair_of_sixes;
using test::profile;

namespace {

// Beads of the set's own numbers and between them, with and without fillets.
const std::vector<Moulding> kBeads = {
    {"round-over 1/4", "2 wide, 3/4 thick", "start face 1/4\novolo 1/4"},
    {"round-over 5/16", "2 wide, 3/4 thick", "start face 5/16\novolo 5/16"},
    {"round-over 3/8", "2 wide, 3/4 thick", "start face 3/8\novolo 3/8"},
    {"round-over 7/16", "2 wide, 3/4 thick", "start face 7/16\novolo 7/16"},
    {"round-over 1/2", "2 wide, 3/4 thick", "start face 1/2\novolo 1/2"},
    {"ovolo 1/4", "2 wide, 3/4 thick", "start face 3/8\nstep down 1/8\novolo 1/4\nfillet out 1/8"},
    {"ovolo 3/8", "2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"},
    {"ovolo 1/2", "2 wide, 3/4 thick", "start face 5/8\nstep down 1/8\novolo 1/2\nfillet out 1/8"},
    {"thumbnail 3/8", "2 wide, 1 thick", "start face 3/8\nthumbnail 3/8"},
    {"nosing 3/4", "2 wide, 3/4 thick", "start face 3/8\ntorus 3/4"},
    {"nosing 1", "2 wide, 1 thick", "start face 1/2\ntorus 1"},
    {"astragal 3/4", "2 wide, 1 1/8 thick", "start face 3/8\nastragal 3/4"},
    {"astragal 1/2", "2 wide, 3/4 thick", "start face 1/4\nastragal 1/2"},
};

// Coves: a smaller round serves a larger cove, so those between and beyond the numbers too.
const std::vector<Moulding> kCoves = {
    {"cavetto 1/4", "2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4"},
    {"cavetto 5/16", "2 wide, 3/4 thick", "start face 5/16\ncavetto 5/16"},
    {"cavetto 3/8", "2 wide, 3/4 thick", "start face 3/8\ncavetto 3/8"},
    {"cavetto 7/16", "2 wide, 3/4 thick", "start face 7/16\ncavetto 7/16"},
    {"cavetto 1/2", "2 wide, 3/4 thick", "start face 1/2\ncavetto 1/2"},
    {"cavetto 5/8", "2 wide, 3/4 thick", "start face 5/8\ncavetto 5/8"},
    {"cavetto 3/4", "3 wide, 1 thick", "start face 3/4\ncavetto 3/4"},
    {"cavetto 1/4 with fillets", "2 wide, 3/4 thick",
     "start face 3/8\nstep down 1/8\ncavetto 1/4\nfillet out 1/8"},
    {"cavetto 1/2 with fillets", "2 wide, 3/4 thick",
     "start face 5/8\nstep down 1/8\ncavetto 1/2\nfillet out 1/8"},
    {"flute in a face", "3 wide, 3/4 thick", "start face 1 3/4\ncove out 1/2 radius 1/2"},
};

// Two arcs, and whole mouldings.
const std::vector<Moulding> kCompounds = {
    {"ogee 1/2", "2 wide, 3/4 thick", "start face 1/2\nogee out 1/2 down 1/2"},
    {"ogee 3/4", "2 wide, 3/4 thick", "start face 3/4\nogee out 3/4 down 3/4"},
    {"ogee 1", "3 wide, 1 1/8 thick", "start face 1\nogee out 1 down 1"},
    {"reverse ogee 1/2", "2 wide, 3/4 thick", "start face 1/2\nreverse-ogee out 1/2 down 1/2"},
    {"reverse ogee 3/4", "2 wide, 3/4 thick", "start face 3/4\nreverse-ogee out 3/4 down 3/4"},
    {"reverse ogee 1", "3 wide, 1 1/8 thick", "start face 1\nreverse-ogee out 1 down 1"},
    {"flat ogee with fillets", "3 wide, 3/4 thick",
     "start face 7/8\nstep down 1/16\nogee out 3/4 down 9/16\nfillet out 1/8"},
    {"base: cove over a bead", "4 wide, 3/4 thick",
     "start face 7/8\ncove out 3/8 down 3/8\nfillet out 1/8\nstep down 1/8\nbead out 1/4 down 1/4\nfillet "
     "out 1/8"},
    {"bed moulding: ovolo over a cavetto", "3 wide, 1 thick",
     "start face 1\nstep down 1/8\novolo 3/8\nfillet out 1/8\ncavetto 3/8\nfillet out 1/8"},
    {"cornice: ovolo of one number over a cavetto of another", "3 wide, 1 1/4 thick",
     "start face 1\nstep down 1/8\novolo 1/4\nfillet out 1/8\ncavetto 1/2\nfillet out 1/8"},
};

// On 3/4 in stock, "a classical profile with fillets" among them.
const std::vector<Moulding> kSixes = {
    {"round-over", "2 wide, 3/4 thick", "start face 3/8\novolo 3/8"},
    {"ovolo", "2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"},
    {"cavetto", "2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\ncavetto 3/8\nfillet out 1/8"},
    {"ogee", "2 wide, 3/4 thick", "start face 3/4\nogee out 3/4 down 3/4"},
    {"reverse ogee", "2 wide, 3/4 thick", "start face 3/4\nreverse-ogee out 3/4 down 3/4"},
    {"fillet, ovolo, fillet, cavetto, fillet", "2 wide, 3/4 thick",
     "start face 1\nstep down 1/16\nbead out 3/8 down 3/8\nfillet out 1/8\ncove out 5/16 down 3/16 radius "
     "3/8\n"
     "fillet out 3/16"},
};

/// Planned without a fault and without a scraper; the planes that it takes.
std::vector<PlaneKind> made(const Moulding& moulding, const Kit& with) {
  const Plan plan = make_plan(profile(moulding.stock, moulding.chain), with, {});
  std::vector<PlaneKind> kinds;
  for (const Reason& reason : plan.reasons) UNSCOPED_INFO(reason.why);
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  for (const Cut& cut : plan.cuts) kinds.push_back(cut.plane.kind);
  return kinds;
}

Kit four_six_eight() {
  return kit("units inch\nrebate 3/4\nhollow 4\nround 4\nhollow 6\nround 6\nhollow 8\nround 8\nscraper\n");
}

}  // namespace

TEST_CASE("4, 6 and 8 make the beads", "[plan][trade]") {
  for (const Moulding& moulding : kBeads) {
    INFO(moulding.name);
    made(moulding, four_six_eight());
  }
}

TEST_CASE("4, 6 and 8 make the coves", "[plan][trade]") {
  for (const Moulding& moulding : kCoves) {
    INFO(moulding.name);
    made(moulding, four_six_eight());
  }
}

TEST_CASE("4, 6 and 8 make ogees and whole mouldings", "[plan][trade]") {
  for (const Moulding& moulding : kCompounds) {
    INFO(moulding.name);
    made(moulding, four_six_eight());
  }
}

TEST_CASE("the 4 sets the least cove of 4, 6 and 8", "[plan][trade]") {
  // A round never cuts a cove tighter than itself; a larger one may be worked with it.
  Kit kit = four_six_eight();
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  CHECK(make_plan(section, kit, {}).feasible);
  kit.planes.erase(std::remove_if(kit.planes.begin(), kit.planes.end(),
                                  [](const Plane& plane) { return plane.number == 4; }),
                   kit.planes.end());
  REQUIRE(kit.planes.size() == 5);
  CHECK_FALSE(make_plan(section, kit, {}).feasible);
}

TEST_CASE("a pair of sixes and a rebate plane do without a scraper, and neither six is idle",
          "[plan][trade]") {
  Kit sixes = pair_of_sixes();
  sixes.scraper = false;
  for (const Moulding& moulding : kSixes) {
    INFO(moulding.name);
    const std::vector<PlaneKind> kinds = made(moulding, sixes);
    for (const PlaneKind kind : {PlaneKind::rebate, PlaneKind::hollow, PlaneKind::round}) {
      if (std::count(kinds.begin(), kinds.end(), kind) == 0) continue;
      INFO("without the " << word(kind));
      Kit less = sixes;
      less.planes.erase(std::remove_if(less.planes.begin(), less.planes.end(),
                                       [&](const Plane& plane) { return plane.kind == kind; }),
                        less.planes.end());
      CHECK_FALSE(make_plan(profile(moulding.stock, moulding.chain), less, {}).feasible);
    }
  }
}
