// What the planes can reach: each profile and kit here has a plan that was made out by hand, and the planner
// finds one that the replay and the clipper let pass. The profiles and kits are made up for the purpose.
#include <algorithm>
#include <cmath>
#include <set>

#include "plan/facets.h"
#include "plan/planning.h"
#include "plan/rails.h"
#include "plan/sequence.h"
#include "plan/tilts.h"

using namespace arrisline;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

const char* const kHalfSet =
    "units inch\nrebate 1 1/4\nrebate 3/4\nplough 1/8 3/16 1/4 5/16 3/8 1/2\n"
    "hollow 2\nround 2\nhollow 4\nround 4\nhollow 6\nround 6\nhollow 8\nround 8\nhollow 10\nround 10\n"
    "hollow 12\nround 12\nhollow 14\nround 14\nhollow 16\nround 16\nhollow 18\nround 18\nscraper\n";

/// A plan that holds.
Plan planned(const Section& section, const Kit& with, const PlanOptions& options = {}) {
  const Plan plan = make_plan(section, with, options);
  for (const Reason& reason : plan.reasons) UNSCOPED_INFO(reason.why);
  REQUIRE(plan.feasible);
  CHECK(test::faults(plan, options).empty());
  return plan;
}

int cuts_with(const Plan& plan, PlaneKind kind) {
  return static_cast<int>(std::count_if(plan.cuts.begin(), plan.cuts.end(),
                                        [&](const Cut& cut) { return cut.plane.kind == kind; }));
}

/// Rails laid on the raw blank for some way to finish the profile's first arc.
std::vector<Setup> rails_for_first_arc(const Problem& problem) {
  for (std::size_t i = 0; i < problem.surfaces.size(); ++i) {
    if (!problem.surfaces[i].arc) continue;
    const std::vector<std::vector<Draft>> ways = arc_drafts(problem, static_cast<int>(i));
    REQUIRE_FALSE(ways.empty());
    return lay_rails(problem, ways.front().front(), Wood(problem.blank));
  }
  return {};
}

}  // namespace

TEST_CASE("a torus by a hollow tighter than it, on chamfers all round", "[reach]") {
  const Plan small = planned(profile("2 wide, 7/8 thick", "start face 7/16\ntorus 7/8"), pair_of_sixes());
  CHECK(cuts_with(small, PlaneKind::hollow) >= 2);
  const Plan large = planned(profile("2 wide, 1 thick", "start face 1/2\ntorus 1"), pair_of_sixes());
  CHECK(cuts_with(large, PlaneKind::hollow) >= 2);
}

TEST_CASE("a groove of every width that fits is tried under a cove", "[reach]") {
  const Section section = profile("1 1/4 wide 3/4 thick",
                                  "start face 11/16\nstep down 1/16\ncove out 5/8 down 1/8 radius 3/8\n"
                                  "fillet out 1/16");
  const Kit with = kit(kHalfSet);
  planned(section, with);
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  for (const char* iron : {"plough 1/4", "plough 5/16"}) {
    const std::vector<Setup> setups = rails_for_first_arc(problem);
    CHECK(std::any_of(setups.begin(), setups.end(), [&](const Setup& setup) {
      return setup.cuts.size() == 1 && problem.plane(setup.cuts.front().plane).label == iron;
    }));
  }
}

TEST_CASE("where no rebate plane has room between two coves a plough cuts their rails", "[reach]") {
  // By hand: a groove down the middle, steps to either side of it, then the round from either side.
  const Plan plan = planned(profile("4 wide, 1 thick",
                                    "start face 2 1/2\ncove out 3/8 down 3/8\nfillet out 1/4\n"
                                    "cove out 3/8 up 3/8"),
                            kit("units inch\nrebate 1\nround 6 radius .37 width .38\nplough 1/4\n"));
  CHECK(cuts_with(plan, PlaneKind::rebate) == 0);
  CHECK(cuts_with(plan, PlaneKind::round) == 2);
}

TEST_CASE("a trough between two coves is taken out groove beside groove", "[reach]") {
  // By hand in nine cuts, which cost 46.7: three levels of grooves, then the round from either side.
  const Plan plan =
      planned(profile("4 wide, 1 1/4 thick",
                      "start face 2\ncove out 3/8 down 3/8\nfillet out 1/8\ncove out 3/8 up 3/8"),
              kit("units inch\nrebate 3/4\nplough 1/8 1/4\nhollow 6\nround 6\n"));
  CHECK(plan.effort < 46.7);
  CHECK(cuts_with(plan, PlaneKind::round) == 2);
  CHECK(plan.cuts.back().plane.kind == PlaneKind::round);
}

TEST_CASE("ploughs take the waste of a flute that no rebate plane has room in", "[reach]") {
  const Kit ploughs = kit("units inch\nrebate 3/4\nplough 1/8 1/4\nround 4\nround 6\nround 8\n");
  // By hand: three grooves and the round, 47.3.
  const Plan flute =
      planned(profile("2 wide, 3/4 thick", "start face 1 1/4\ncove out 1/2 radius 1/4"), ploughs);
  CHECK(flute.effort < 47.4);
  CHECK(cuts_with(flute, PlaneKind::plough) == 3);
  CHECK(cuts_with(flute, PlaneKind::round) == 1);
  // What takes the waste of one flute takes that of the next: no plan of several costs more than each by
  // itself.
  for (const int flutes : {2, 3}) {
    std::string chain = std::string("start face 2") + (flutes > 2 ? " 3/4" : "");
    for (int i = 0; i < flutes; ++i)
      chain += std::string(i > 0 ? "\nfillet out 1/4" : "") + "\ncove out 1/2 radius 1/4";
    const Plan plan = planned(profile("3 wide, 3/4 thick", chain), ploughs);
    INFO(flutes << " flutes, effort " << plan.effort << ", of one " << flute.effort);
    CHECK(plan.effort < flutes * flute.effort);
    CHECK(cuts_with(plan, PlaneKind::plough) >= 2 * flutes);
  }
  // Sunk between walls, so much is left that the round can do nothing without grooves.
  const Section sunk =
      profile("3 wide, 1 thick", "start face 1 3/4\nstep down 1/8\ncove out 3/4 radius 3/8\nstep up 1/8");
  CHECK(cuts_with(planned(sunk, ploughs), PlaneKind::plough) > 3);
}

TEST_CASE("a hollow as wide as the bead across the whole stock rides on the blank's own arrises", "[reach]") {
  const Section top = profile("1 wide, 3/4 thick", "start back .133975\nbead out 1 radius 1");
  for (const char* width : {"1", "1.02", "1.1"}) {
    INFO("sole " << width);
    const Plan plan =
        planned(top, kit(std::string("units inch\nrebate 3/4\nhollow radius 1 width ") + width));
    CHECK(cuts_with(plan, PlaneKind::hollow) == 1);
    CHECK(plan.cuts.size() <= 3);
  }
  // A little narrower, the arrises lie beside it: it needs chamfers. The flat that would be tangent to the
  // top takes nothing of a bead that all but reaches the face.
  const Plan narrower = planned(top, kit("units inch\nrebate 3/4\nhollow radius 1 width .98\n"));
  CHECK(cuts_with(narrower, PlaneKind::rebate) == 2);
}

TEST_CASE("three chamfers guide a hollow on a round-over", "[reach]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  const Kit with = kit("units inch\nrebate 3/4\nhollow radius 3/8 width .361\n");
  planned(section, with);
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  const std::vector<Setup> setups = rails_for_first_arc(problem);
  CHECK(std::any_of(setups.begin(), setups.end(), [&](const Setup& setup) {
    // At 22.5, 45 and 67.5 degrees.
    return setup.cuts.size() == 3 && std::all_of(setup.cuts.begin(), setup.cuts.end(), [&](const Draft& cut) {
             return std::abs(std::remainder(cut.poses.front().tilt, 22.5)) < 1e-6;
           });
  }));
}

TEST_CASE("a small bead over a wide fillet is ridden on the arrises of a notch", "[reach]") {
  for (const char* chain : {"start face 3/8\nstep down 1/8\novolo 1/8\nfillet out 1/4",
                            "start face 11/16\nstep down 1/8\novolo 3/16\nfillet out 1/2"}) {
    INFO(chain);
    const Plan plan = planned(profile("3 wide, 1 1/4 thick", chain), kit(kHalfSet));
    CHECK(cuts_with(plan, PlaneKind::hollow) == 1);
  }
}

TEST_CASE("a groove wider than any iron is ploughed in several", "[reach]") {
  const Kit ploughs = kit("units inch\nplough 1/8 1/4 3/8\n");
  const Plan plan =
      planned(profile("3 wide, 1 thick", "start face 2\nstep down 1/4\nfillet out 1\nstep up 1/4"), ploughs);
  CHECK(plan.left.max_height == Approx(0).margin(1e-6));
  planned(profile("3 wide, 1 thick", "start face 2\nstep down 1/2\nfillet out 1 1/4\nstep up 1/2"), ploughs);
}

TEST_CASE("a sole a hair wider than its arc stands off it by less than may be left", "[reach]") {
  // Arcs of 58.1 degrees under soles of 60, between a wall and each other.
  const Plan plan =
      planned(profile("2 wide, 3/4 thick",
                      "start face 3/4\nstep down 1/8\nogee out 5/8 down 3/8 radius 3/8\nfillet out 1/8"),
              pair_of_sixes());
  CHECK(plan.left.max_height > 0);
}

TEST_CASE("a wide rebate plane beside the one that chamfers a bead makes no plan dearer", "[reach]") {
  // The wide one has no room for the chamfer. It might make the flats, and would then be one plane more.
  const Section section =
      profile("2 wide, 3/4 thick", "start face 5/8\nstep down 3/16\novolo 3/8\nfillet out 1/4");
  const Plan one = planned(section, kit("units inch\nrebate 3/4\nhollow 6\n"));
  const Plan two = planned(section, kit("units inch\nrebate 1 1/4\nrebate 3/4\nhollow 6\n"));
  REQUIRE(one.optimal);
  REQUIRE(two.optimal);
  CHECK(two.effort <= one.effort + 1e-9);
}

TEST_CASE("a narrow sole rides as well as one of twice its size on a moulding twice as large", "[reach]") {
  const auto effort = [](const std::string& stock_and_chain, const std::string& planes) {
    const Plan plan = planned(test::need(read_profile("units mm\n" + stock_and_chain, "bead.profile")),
                              kit("units mm\n" + planes));
    REQUIRE(plan.optimal);
    return plan.effort;
  };
  const double small =
      effort("stock 25.2 wide, 9 thick\nstart face 5.2\nstep down 2\nbead out 5.2 down 3 radius 6\n",
             "rebate 20\nhollow radius 6 width 2.1\n");
  const double large =
      effort("stock 50.4 wide, 18 thick\nstart face 10.4\nstep down 4\nbead out 10.4 down 6 radius 12\n",
             "rebate 40\nhollow radius 12 width 4.2\n");
  // The same cuts, and half as thick.
  CHECK(small < large);
}

TEST_CASE("a hollow a little larger than a reed stands off it between its fillets", "[reach]") {
  // A half round of 9.5 mm under a sole 10 mm wide.
  const Section section =
      test::need(read_profile("units mm\nstock 40 wide, 19 thick\nstart face 24\nstep down 6\nfillet out 4\n"
                              "bead out 9.5 radius 9.5\nfillet out 10.5\n",
                              "reed.profile"));
  const Kit near = kit("units mm\nrebate 18\nplough 3\nhollow radius 10\n");
  const Plan plan = planned(section, near);
  CHECK(plan.left.max_height > 0.01);
  CHECK(plan.left.max_height <= 0.2);
  // Too far from its radius it leaves more than that.
  CHECK_FALSE(make_plan(section, kit("units mm\nrebate 18\nplough 3\nhollow radius 12\n"), {}).feasible);
}

TEST_CASE("the body is judged on the wood as it stands at each pose", "[reach]") {
  const Kit with_bodies =
      kit("units inch\nrebate 3/4 body 1/8 above 3/4\nplough 1/4\nhollow 6 body 1/4 above 1/2\n"
          "round 6 body 1/8 above 3/8\nscraper\n");
  const Plan plan = make_plan(
      profile("2 wide, 3/4 thick", "start face 1\ncove out 5/8 down 3/8 radius 3/8\nfillet out 3/8"),
      with_bodies, {});
  CHECK((!plan.feasible || test::faults(plan).empty()));
}

TEST_CASE("a pose for which the body has no room yet comes after one that makes it", "[reach]") {
  const Kit bodies =
      kit("units inch\nrebate 3/4\nplough 1/8 1/4\nround 4 body 1/8 above 1/8\nround 6 body 1/8 above 1/8\n"
          "round 8 body 1/8 above 1/8\n");
  const std::string chain = "start face 1/2\nstep down 1/4\ncavetto 3/8\nfillet out 1/8";
  const Plan edge = planned(profile("2 wide, 3/4 thick", chain), bodies);
  const Plan back = planned(profile("2 wide, 3/4 thick", "side back\n" + chain), bodies);
  CHECK(edge.cuts.size() == 7);
  CHECK(back.cuts.size() == 7);
  // At the back some cut is made upright that at the working edge is made on the plane's side, or the blank
  // is turned for it.
  CHECK(back.effort >= edge.effort - 1e-4);
  CHECK(back.effort <= edge.effort + bodies.shop.weight_change + 1e-4);
}

TEST_CASE("a plane is found to stand within a degree of tilts", "[reach]") {
  // Hollow 10 has room on the bead between leans of 29.95 and 30.73 degrees.
  const std::string chain = "start face 1 1/4\nstep down 1/16\nogee out 1 down 1/2\nfillet out 1/4";
  const Kit with = kit(kHalfSet);
  for (const std::string& side : {std::string(), std::string("side back\n")}) {
    INFO(side);
    const Section section = profile("4 wide, 3/4 thick", side + chain);
    const PlanOptions options;
    const Problem problem = make_problem(section, with, options);
    std::set<std::string> planes;
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      if (!problem.surfaces[s].arc || !problem.surfaces[s].bead) continue;
      for (const auto& way : arc_drafts(problem, static_cast<int>(s)))
        planes.insert(problem.plane(way.front().plane).label);
    }
    CHECK(planes.count("hollow 10") == 1);
  }
}

TEST_CASE("a round too small for a sunk cove leans on to bear with its edge beside the walls", "[reach]") {
  const Plan plan =
      planned(profile("3 wide, 1 thick", "start face 2\nstep down 1/8\ncove out 1 radius 1\nstep up 1/8"),
              pair_of_sixes());
  CHECK_FALSE(plan.left.scrape);
}

TEST_CASE("of the places at which a round leans on none can be spared", "[reach]") {
  // Over the fence it leans no farther than 60 degrees, and the cove of the back edge goes on to 90.
  const Section section = profile("3 wide, 3/4 thick",
                                  "side back\nstart face 3/8\nstep down 1/16\ncavetto 5/16\nfillet out 1/16");
  const Kit with = kit("units inch\nrebate 3/4\nround radius 0.255\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  const auto cove = std::find_if(problem.surfaces.begin(), problem.surfaces.end(),
                                 [](const Surface& surface) { return surface.arc; });
  REQUIRE(cove != problem.surfaces.end());
  const std::vector<std::vector<Draft>> ways =
      arc_drafts(problem, static_cast<int>(cove - problem.surfaces.begin()));
  const auto unfinished = [&](const std::vector<Pose>& poses) {
    std::vector<double> out;
    for (const double at : arc_looks(*cove)) {
      if (left_at(problem, *cove, problem.plane(1), poses, at) > allowances(problem).back())
        out.push_back(at);
    }
    return out;
  };
  int lean = 0;
  for (const std::vector<Draft>& way : ways) {
    if (way.size() > 1) continue;
    std::vector<double> tilts;
    for (const Pose& pose : way[0].poses) tilts.push_back(pose.tilt);
    const std::vector<Pose> upright = poses_at(problem, *cove, problem.plane(1), tilts);
    if (std::equal(upright.begin(), upright.end(), way[0].poses.begin(), same_pose)) continue;
    ++lean;
    for (std::size_t i = 0; i < way[0].poses.size(); ++i) {
      Draft fewer = way[0];
      fewer.poses.erase(fewer.poses.begin() + static_cast<std::ptrdiff_t>(i));
      const bool follows = std::all_of(fewer.poses.begin(), fewer.poses.end(), [&](const Pose& start) {
        Draft from = fewer;
        from.poses = poses_from(problem, fewer, start.tilt);
        return all_follow(problem, from);
      });
      INFO(i << " of " << way[0].poses.size());
      CHECK((!follows || unfinished(fewer.poses) != unfinished(way[0].poses)));
    }
  }
  CHECK(lean > 0);
}

TEST_CASE("a half-round flute by a smaller round, the blank lying one way", "[reach]") {
  // Past 60 degrees of lean over the fence it bears beside its middle.
  const Plan plan =
      planned(profile("3 wide, 1 thick", "start face 2\ncove out 1 radius 1/2"), pair_of_sixes());
  CHECK(cuts_with(plan, PlaneKind::round) == 1);
  planned(profile("3 wide, 1 thick", "start face 1 11/16\ncove out 3/8 radius 3/16"), kit(kHalfSet));
}

TEST_CASE("planes of another radius turn as often as the tolerance asks, and no oftener", "[reach]") {
  const Section cove = profile("2 wide, 1 thick", "start face 1/2\ncavetto 1/2");
  const Section bead = profile("2 wide, 1 thick", "start face 3/8\novolo 3/8");
  const Kit small_round = kit("units inch\nrebate 3/4\nround 6\n");
  const Kit large_hollow = kit("units inch\nrebate 3/4\nhollow 8\n");
  PlanOptions fine;
  fine.tolerance = 0.05;
  struct Pair {
    const Section* section;
    const Kit* kit;
    PlaneKind kind;
  };
  for (const Pair& pair :
       {Pair{&cove, &small_round, PlaneKind::round}, Pair{&bead, &large_hollow, PlaneKind::hollow}}) {
    const Plan coarse = planned(*pair.section, *pair.kit);
    const Plan close = planned(*pair.section, *pair.kit, fine);
    auto poses = [&](const Plan& plan) {
      std::size_t n = 0;
      for (const Cut& cut : plan.cuts) n += cut.plane.kind == pair.kind ? cut.poses.size() : 0;
      return n;
    };
    CHECK(poses(close) > poses(coarse));
    CHECK(coarse.left.max_height <= 0.2 + 1e-6);
    CHECK(close.left.max_height <= 0.05 + 1e-6);
  }
}

TEST_CASE("what only the scraper can take is left to it where the kit has one", "[reach]") {
  // Hollow 6 on an arc of 1/2 in rests on the edges of its sole, 0.35 mm off in its middle, and has no room
  // to turn so far that the edges take that as well.
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8 radius 1/2");
  const Kit without = kit("units inch\nrebate 3/4\nhollow 6\n");
  const Kit with = kit("units inch\nrebate 3/4\nhollow 6\nscraper\n");
  const PlanOptions options;
  const Problem bare = make_problem(section, without, options);
  const Problem scraped = make_problem(section, with, options);
  CHECK(arc_drafts(bare, 0).empty());
  CHECK_FALSE(arc_drafts(scraped, 0).empty());
}

TEST_CASE("a lamb's tongue by planes near its radius", "[reach]") {
  planned(profile("2 wide, 1 1/4 thick", "start face 1/2\nogee out 3/8 down 1\nfillet out 1/8"),
          kit(kHalfSet));
}

TEST_CASE("flats are offered from every side that they can be worked from", "[reach]") {
  // A rebate under the edge with a stop near the edge: on its side the plane would pass over the stop, turned
  // over it does not.
  const Section section = profile("2 wide, 3/4 thick",
                                  "start face 1/8\nchamfer 1/8\nside underside\nstart face 1\nstep down 1/4\n"
                                  "fillet out 1");
  const Kit with = kit("units inch\nrebate 3/4\nboard stops at 1 1/2\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, with, options);
  const std::vector<Draft> drafts = flat_drafts(problem);
  for (const double tilt : {90.0, 180.0}) {
    CHECK(std::any_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
      // Wall and floor in one cut.
      std::set<int> finished;
      for (const Stretch& part : draft.finishes) finished.insert(part.surface);
      const auto stands = [&](const std::vector<Pose>& poses) {
        return !poses.empty() && std::abs(wrap_degrees(poses.front().tilt - tilt)) < 1e-6;
      };
      return (stands(draft.poses) || stands(draft.otherwise)) && finished.size() == 2;
    }));
  }
}
