// Work on several edges, and on both sides of a long flat, planned part by part.
#include "plan/apart.h"

#include "plan/apart_at_flat.h"
#include "plan/apart_mirrored.h"
#include "plan/planning.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::profile;

namespace {

const char* kHalfSet =
    "units inch\nrebate 1 1/4\nrebate 3/4\nplough 1/8 3/16 1/4\nhollow 2\nround 2\nhollow 4\nround 4\nhollow "
    "6\nround 6\nhollow 8\nround 8\nhollow 10\nround 10\nscraper\n";

const char* kFourCurves = "units inch\nrebate 3/4\nhollow 2\nround 2\nhollow 3\nround 3\nscraper\n";

/// A bead over a cove on either side of a floor.
const test::Moulding kTray = {
    "tray", "4 wide, 7/8 thick",
    "start face 3 1/4\nbead out 3/16 down 3/16\nstep down 1/16\ncove out 1/8 down "
    "1/8\nfillet out 1 7/8\ncove out 1/8 up 1/8\nstep up 1/16\nbead out 3/16 up 3/16"};
/// The same the other way up, in a frame.
const test::Moulding kPanel = {
    "panel", "6 wide, 7/8 thick",
    "start face 5 5/8\nstep down 3/8\ncove out 1/8 down 1/8\nfillet out 7/8\nbead out 3/16 up 3/16\nstep up "
    "1/16\nfillet out 2\nstep down 1/16\nbead out 3/16 down 3/16\nfillet out 7/8\ncove out 1/8 up 1/8\nstep "
    "up 3/8"};
/// And with nothing about it.
const test::Moulding kCap = {
    "cap", "4 wide, 7/8 thick",
    "start face 4\nstep down 5/8\nfillet out 1/4\ncove out 1/8 up 1/8\nstep up 1/8\nbead out 3/16 up "
    "3/16\nfillet out 2 7/8\nbead out 3/16 down 3/16\nstep down 1/8\ncove out 1/8 down 1/8\nfillet out 1/4"};

Section section_of(const test::Moulding& moulding) {
  return profile(moulding.stock, moulding.chain);
}

std::vector<Section> sides_of(const Section& section, const Kit& kit) {
  const PlanOptions options;
  return sides_of_flat(make_problem(section, kit, options), 4);
}

/// The floor of the tray with the plane from one wall on to the other.
Draft floor_of(const Problem& tray, int plane, int open) {
  for (const Draft& draft : flat_drafts(tray)) {
    const Pose& first = draft.poses.front();
    const bool lowest = std::abs(first.at.y - 25.4 * 3 / 8) < 1e-6 && is_square(first.tilt);
    if (draft.plane == plane && lowest && draft.poses.size() > 1 &&
        (draft.poses[1].at.x > first.at.x) == (open > 0))
      return draft;
  }
  FAIL("no such floor");
  return {};
}

}  // namespace

TEST_CASE("what the blank's outline parts is a section of its own", "[plan][apart]") {
  const Section both =
      profile("3 wide, 3/4 thick",
              "start face 1/2\novolo 1/2\nside underside\nstart face 1/8\ncavetto 1/8\nside back\nstart face "
              "3/8\nstep down 1/8\novolo 3/8\n");
  const std::vector<Section> parts = parts_of(both);
  REQUIRE(parts.size() == 3);
  const double blank = both.width * both.thickness;
  double waste = 0;
  for (const Section& part : parts) {
    CHECK(area(part.target) < blank);
    waste += blank - area(part.target);
    for (std::size_t i = 0; i < part.target.size(); ++i) {
      CHECK(part.target[i].to == part.target[(i + 1) % part.target.size()].from);
      // What is not to be cut lies on the outline of the blank.
      if (part.source[i] >= 0) continue;
      CHECK(distance(part.target[i].from, blank_outline(both.width, both.thickness)) < 1e-9);
      CHECK(distance(point_at(part.target[i], 0.5), blank_outline(both.width, both.thickness)) < 1e-9);
    }
  }
  CHECK(waste == Approx(blank - area(both.target)));
}

TEST_CASE("two flutes are two parts, and one chain is one", "[plan][apart]") {
  CHECK(parts_of(profile("3 wide, 3/4 thick",
                         "start face 2\ncove out 1/2 radius 1/4\nfillet out 1/4\ncove out "
                         "1/2 radius 1/4"))
            .size() == 2);
  CHECK(parts_of(profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8"))
            .size() == 1);
}

TEST_CASE("what can be planned on each edge can be planned on both", "[plan][apart]") {
  // A scotia between steps, and the same on the back edge: by hand twice seven cuts.
  const std::string scotia =
      "start face .55175\nstep down 1/8\ncove out .0732 down .1768 radius 1/4\ncove out .35355 down .14645 "
      "radius "
      "1/2\nfillet out 1/8\nstep down 1/8\n";
  const Kit half_set = kit(kHalfSet);
  const Plan one = make_plan(profile("4 wide, 1 1/4 thick", scotia), half_set, {});
  REQUIRE(one.feasible);
  const Plan both = make_plan(profile("4 wide, 1 1/4 thick", scotia + "side back\n" + scotia), half_set, {});
  REQUIRE(both.feasible);
  CHECK(faults(both) == "");
  CHECK(both.cuts.size() <= 2 * one.cuts.size());
  CHECK(both.effort < 2 * one.effort);
}

TEST_CASE("plans of two parts one after another are a plan where no order of all their cuts is found",
          "[plan][apart]") {
  // Of radii that no plane has: eleven cuts on either edge, and the scraper.
  const std::string edge =
      "start face 1.3\nstep down 1/8\nbead out .2 down .13 radius .33\ncove out .3 down .26 radius "
      ".43\nfillet out "
      ".15\ncove out .35 down .35\nstep down .08\nfillet out .3\n";
  const Plan both = make_plan(profile("5 wide, 1 1/2 thick", edge + "side back\n" + edge),
                              kit(std::string(kHalfSet) + "round 12\n"), {});
  REQUIRE(both.feasible);
  CHECK(faults(both) == "");
  CHECK(both.cuts.size() >= 20);
}

TEST_CASE("each side of a long flat has the flat and its own side, and all wood that stays in the whole",
          "[plan][apart]") {
  const Kit four = kit(kFourCurves);
  const std::string tray = kTray.chain;
  const std::string below = "side underside\n" + tray;
  for (const test::Moulding& moulding : {kTray, kPanel, kCap, {"from below", kTray.stock, below.c_str()}}) {
    INFO(moulding.name);
    const Section whole = section_of(moulding);
    const std::vector<Section> sides = sides_of(whole, four);
    REQUIRE(sides.size() == 2);
    const PlanOptions options;
    std::size_t surfaces = 0;
    int stays = 0;
    for (const Section& side : sides) {
      surfaces += make_problem(side, four, options).surfaces.size();
      CHECK(area(side.target) > area(whole.target));
      for (std::size_t i = 0; i < side.target.size(); ++i)
        CHECK(side.target[i].to == side.target[(i + 1) % side.target.size()].from);
      const Wood kept(side.target);
      const Wood target(whole.target);
      for (double x = 0.37; x < whole.width; x += 0.7) {
        for (double y = 0.31; y < whole.thickness; y += 0.7) {
          if (!target.contains({x, y})) continue;
          ++stays;
          CHECK(kept.contains({x, y}));
        }
      }
    }
    CHECK(surfaces == make_problem(whole, four, options).surfaces.size() + 1);
    CHECK(stays > 1000);
  }
}

TEST_CASE("a floor that is short, or has little beside it, parts nothing", "[plan][apart]") {
  const Kit four = kit(kFourCurves);
  const Section tray = section_of(kTray);
  CHECK(sides_of(tray, kit("units inch\nrebate 2\nhollow 3\nround 2\n")).empty());
  CHECK(sides_of(tray, kit("units inch\nplough 1/4\nhollow 3\nround 2\n")).empty());
  CHECK(sides_of(profile("4 wide, 7/8 thick",
                         "start face 3\ncove out 1/8 down 1/8\nfillet out 1 7/8\ncove out "
                         "1/8 up 1/8"),
                 four)
            .empty());
  CHECK(sides_of(profile("4 wide, 7/8 thick",
                         "start face 3 1/4\nbead out 1/8 down 1/8\ncove out 1/8 down 1/8\nbead out 1/8 down "
                         "1/8\ncove out 1/8 down 1/8\nfillet out 1 7/8\nstep up 1/2"),
                 four)
            .empty());
}

TEST_CASE("a floor that two sides share is one cut", "[plan][apart]") {
  const Kit two = kit("units inch\nrebate 3/4\nrebate 1/2\nhollow 3\nround 2\n");
  const Section section = section_of(kTray);
  const PlanOptions options;
  const Problem tray = make_problem(section, two, options);
  const Draft left = floor_of(tray, 0, 1);
  const Draft right = floor_of(tray, 0, -1);
  const std::vector<Draft> joined = with_floors_joined(tray, {{left}, {right}});
  REQUIRE(joined.size() == 1);
  // Soles that pass over what is cut already are left out.
  CHECK(joined.front().poses.size() == left.poses.size());
  CHECK(joined.front().finishes.size() == left.finishes.size() + right.finishes.size());

  Draft narrow = right;
  narrow.plane = 1;
  SECTION("and what a cut before has taken is not cut again") {
    CHECK(with_floors_joined(tray, {{left}, {narrow}}).size() == 1);
  }
  SECTION("but not where one waits for a curve that the other comes before") {
    Draft late = right;
    late.late = true;
    const std::vector<Draft> apart = with_floors_joined(tray, {{left}, {late}});
    REQUIRE(apart.size() == 2);
    CHECK(apart.front().finishes.size() == left.finishes.size());
    CHECK(apart.back().late);
  }
  SECTION("but not where it is made with two planes") {
    Draft part = left;
    part.poses.resize(1);
    CHECK(with_floors_joined(tray, {{part}, {narrow}}).size() == 2);
  }
}

TEST_CASE("what is made on one side is made on the other where they are mirror images", "[plan][apart]") {
  const Kit four = kit(kFourCurves);
  const PlanOptions options;
  const Section section = section_of(kTray);
  const Problem tray = make_problem(section, four, options);
  const std::vector<Draft> there = arc_drafts(tray, 0).front();
  const std::vector<Draft> here = mirrored(tray, there);
  REQUIRE(here.size() == there.size());
  CHECK(here.front().arc == static_cast<int>(tray.surfaces.size()) - 1);
  CHECK(here.front().poses.front().tilt == Approx(-there.front().poses.front().tilt));
  const double middle = 25.4 * 2;
  CHECK(here.front().poses.front().at.x == Approx(2 * middle - there.front().poses.front().at.x));
  const std::vector<Draft> back = mirrored(tray, here);
  REQUIRE(back.size() == there.size());
  CHECK(back.front().arc == there.front().arc);
  CHECK(same_pose(back.front().poses.front(), there.front().poses.front()));

  SECTION("and not where they are none") {
    const Section other = profile("4 wide, 7/8 thick",
                                  "start face 3 1/4\nbead out 3/16 down 3/16\nfillet out 1 7/8\nbead out 1/8 "
                                  "up 1/8\nstep up 1/16");
    const Problem unlike = make_problem(other, four, options);
    std::vector<Draft> way;
    for (std::size_t s = 0; s < unlike.surfaces.size() && way.empty(); ++s) {
      if (unlike.surfaces[s].arc) way = arc_drafts(unlike, static_cast<int>(s)).front();
    }
    REQUIRE_FALSE(way.empty());
    CHECK(mirrored(unlike, way).empty());
  }
}

TEST_CASE("a sunk field and a raised one are planned from their sides", "[plan][apart]") {
  PlanOptions options;
  options.most_work = 200'000;
  const Kit four = kit(kFourCurves);
  for (const test::Moulding& moulding : {kTray, kPanel}) {
    INFO(moulding.name);
    const Plan plan = make_plan(section_of(moulding), four, options);
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");
    CHECK(plan.cuts.size() <= 12);
  }
}

// A bead of 60° on either side of the field, as wide as its sole and ending in corners: the floor between
// them has to wait for both. By hand 6 cuts.
TEST_CASE("a sunk field of few elements is planned from its sides where it has no plan as a whole",
          "[plan][apart][held_back]") {
  PlanOptions options;
  options.most_work = 20'000'000;
  const Plan plan =
      make_plan(profile("3 wide, 1/2 thick",
                        "start face 2 1/8\nstep down 1/8\nbead out 1/16 down .108253175 radius 1/8\n"
                        "fillet out 1 1/2\nbead out 1/16 up .108253175 radius 1/8\nstep up 1/8"),
                kit("units inch\nrebate 1 1/4\nrebate 3/4\nhollow 2\n"), options);
  REQUIRE(plan.feasible);
  CHECK(faults(plan) == "");
  CHECK(plan.cuts.size() <= 6);
}

// By the back edge a bead that rises beside a wall: a hollow open enough comes to it from one side only, and
// what it rides on would have to stand where the wall is.
TEST_CASE("where one part of the work has no plan, the whole has none", "[plan][apart]") {
  const Kit planes = kit("units inch\nrebate 1 1/4\nrebate 1/2\nhollow 8\nround 6\nhollow 4\nplough 1/8\n");
  const std::string front =
      "start face 1 1/4\nstep down 1/16\nbead out 1/4 down 1/4\nfillet out 1/8\ncove out 3/8 down 3/8\n"
      "fillet out 1/8\ncove out 5/16 down 3/16 radius 3/8\nfillet out 1/16\n";
  const std::string bead = "step down 1/2\nfillet out 1/4\nbead out 3/8 up 3/8\nfillet out 3/8\n";
  PlanOptions options;
  options.most_work = 8'000'000;
  const auto no = [&](const std::string& chain) {
    Plan plan = make_plan(profile("4 wide, 1 1/4 thick", chain), planes, options);
    CHECK_FALSE(plan.feasible);
    CHECK_FALSE(plan.undecided);
    std::vector<Chain> chains;
    for (const Reason& reason : plan.reasons) {
      const Element& element = plan.section.elements.at(static_cast<std::size_t>(reason.element));
      CHECK(element.number == 3);
      chains.push_back(element.chain);
    }
    return chains;
  };
  SECTION("and the reason names its element") {
    CHECK(no(front + "side back\nstart face 1\n" + bead) == std::vector{Chain::back});
  }
  SECTION("and where another has none either, the reasons name those of both") {
    CHECK(no("start face 1\n" + bead + "side back\nstart face 1\n" + bead) ==
          std::vector{Chain::face, Chain::back});
  }
  SECTION("and where each has one, so has the whole") {
    const std::string ovolo = "step down 1/8\nbead out 1/4 down 1/4\nfillet out 3/8\n";
    CHECK(make_plan(profile("4 wide, 1 1/4 thick", front + "side back\nstart face 5/8\n" + ovolo), planes,
                    options)
              .feasible);
  }
}
