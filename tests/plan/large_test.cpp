// Mouldings of so many elements that not all choices can be gone through: a plan is soon found all the same,
// and a no soon told.
#include <algorithm>
#include <random>
#include <set>

#include "plan/access.h"
#include "plan/covers.h"
#include "plan/grammar.h"
#include "plan/planning.h"
#include "plan/search.h"
#include "plan/takes.h"

using namespace arrisline;
using test::faults;
using test::profile;

namespace {

Kit six_planes() {
  return test::kit(
      "units inch\nscraper\nrebate 3/4\nhollow 6\nround 6\nhollow 4\nround 4\nplough 1/4\nplough 1/8\n");
}

/// Cornices of our own, in sixteenths of an inch.
Section eight_elements() {
  return profile("43/16 wide, 35/16 thick",
                 "start face 27/16\nstep down 2/16\ncavetto 3/8\nstep down 2/16\novolo 3/8\nstep down 3/16\n"
                 "cavetto 3/8\nfillet out 3/16\novolo 3/8");
}

Section twenty_elements() {
  return profile("109/16 wide, 74/16 thick",
                 "start face 93/16\ncavetto 3/8\nbevel out 4/16 down 2/16\ncavetto 3/8\n"
                 "bevel out 6/16 down 4/16\novolo 3/8\nfillet out 2/16\ncavetto 3/8\nstep down 4/16\n"
                 "cavetto 3/8\nfillet out 4/16\novolo 3/8\nfillet out 4/16\ncavetto 3/8\nfillet out 3/16\n"
                 "cavetto 3/8\nfillet out 3/16\novolo 3/8\nfillet out 4/16\novolo 3/8\nfillet out 3/16");
}

/// A slant between two beads, shorter than the one rebate plane is wide.
Section slant_between_beads() {
  return profile("34/16 wide, 23/16 thick",
                 "start face 18/16\nstep down 3/16\novolo 3/8\nbevel out 6/16 down 4/16\novolo 3/8");
}

/// What the covers of a profile of flats alone are put together from.
struct FlatsOnly {
  Section section;
  Kit kit;
  PlanOptions options;
  Problem problem = make_problem(section, kit, options);
  std::vector<Draft> drafts = flat_drafts(problem);
  std::vector<Draft> none;
  Covers covers{problem, drafts, none, 0};

  FlatsOnly(Section of, Kit with) : section(std::move(of)), kit(std::move(with)) {}
  FlatsOnly(const FlatsOnly&) = delete;
};

/// Grooves in a face 10 in wide, each as wide as so many irons of 1/8 in and a half.
FlatsOnly grooves(int number, int irons) {
  std::string chain = "start face 9";
  for (int i = 0; i < number; ++i) {
    if (i > 0) chain += "\nfillet out 1/8";
    chain += "\nstep down 1/8\nfillet out " + std::to_string(2 * irons + 1) + "/16\nstep up 1/8";
  }
  return {profile("10 wide, 1 thick", chain), test::kit("units inch\nplough 1/8 reach 12\n")};
}

}  // namespace

TEST_CASE("mouldings of eight and of twenty elements are planned within the work allowed", "[plan][large]") {
  const Kit kit = six_planes();
  for (const Section& section : {eight_elements(), twenty_elements()}) {
    const Plan plan = make_plan(section, kit, {});
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");
    CHECK(plan.bound <= plan.effort);
    CHECK(plan.optimal == (plan.bound == plan.effort));
  }
}

TEST_CASE("more work finds no worse plan of a large moulding, and none below the bound told",
          "[plan][large]") {
  const Kit kit = six_planes();
  PlanOptions options;
  double before = 1e300, bound = 0;
  for (const std::uint64_t work : {100'000U, 1'000'000U, 4'000'000U}) {
    options.most_work = work;
    const Plan plan = make_plan(eight_elements(), kit, options);
    REQUIRE(plan.feasible);
    CHECK(plan.effort <= before + 1e-9);
    CHECK(plan.effort >= bound - 1e-9);
    before = plan.effort;
    bound = std::max(bound, plan.bound);
  }
}

TEST_CASE("a flat that nothing comes near is told without a search", "[plan][large][reasons]") {
  const Kit kit = test::kit("units inch\nscraper\nrebate 3/4\nhollow 6\nround 6\n");
  const std::uint64_t before = wood_work();
  const Plan plan = make_plan(slant_between_beads(), kit, {});
  CHECK(wood_work() - before < 20'000);
  CHECK_FALSE(plan.feasible);
  CHECK_FALSE(plan.undecided);
  REQUIRE(plan.reasons.size() == 1);
  CHECK(plan.reasons.front().element == 2);

  const Kit narrow = test::kit("units inch\nscraper\nrebate 3/4\nrebate 3/8\nhollow 6\nround 6\n");
  CHECK(make_plan(slant_between_beads(), narrow, {}).feasible);
}

TEST_CASE("no plane gets into the foot of an astragal, and that is told without a search", "[plan][large]") {
  // 30 degrees between the bead and the fillet below: some 0.6 mm stay, little more than the scraper may
  // take.
  const Section section =
      profile("1 1/2 wide, 1 1/2 thick",
              "start face 7/8\nstep down 3/16\nfillet out .2\nbead down .433 radius 1/4\nfillet out .675");
  const Kit kit = test::kit("units inch\nrebate 3/4\nplough 1/8\nhollow 4\nhollow 6\nscraper\n");
  const std::uint64_t before = wood_work();
  const Plan plan = make_plan(section, kit, {});
  CHECK(wood_work() - before < 20'000);
  CHECK_FALSE(plan.feasible);
  CHECK_FALSE(plan.undecided);
  REQUIRE(plan.reasons.size() == 1);
  CHECK(plan.reasons.front().element == 3);
  const PlanOptions options;
  const Problem problem = make_problem(section, kit, options);
  const Point foot{0.675 * kMmPerInch, 0.6205 * kMmPerInch};
  CHECK_FALSE(something_takes(problem, foot - Point{0.5, 0.2}));
  CHECK(something_takes(problem, foot - Point{8, 0.2}));
}

TEST_CASE("of what is told to be out of all reach, the whole search finds no plan", "[plan][large][random]") {
  std::mt19937 random(11);
  int told = 0;
  for (int pair = 0; pair < 400; ++pair) {
    std::string bytes(300, '\0');
    for (char& byte : bytes) byte = static_cast<char>(random() & 0xFF);
    test::Choices choices(bytes);
    const std::string kit_text = test::make_kit(choices);
    const std::string profile_text = test::make_profile(choices);
    const Reading<Kit> kit = read_kit(kit_text, "random.kit");
    const Reading<Section> section = read_profile(profile_text, "random.profile");
    if (!kit.value || !section.value) continue;
    PlanOptions options;
    options.most_work = 50'000;
    const Problem problem = make_problem(*section.value, *kit.value, options);
    if (problem.surfaces.empty() || problem.surfaces.size() > 20) continue;
    const std::vector<Draft> flats = flat_drafts(problem);
    if (!is_hopeless(problem, flats)) continue;
    ++told;
    INFO(pair << "\n" << profile_text << "--- kit\n" << kit_text);
    Patience patience(options);
    Composition found;
    std::vector<std::vector<Draft>> given = {{}};
    for (const Draft& shaped : shaped_drafts(problem)) given.push_back({shaped});
    for (const std::vector<Draft>& drafts : given) Search(problem, flats, drafts, {}, patience, found).run();
    CHECK_FALSE(found.best.has_value());
  }
  CHECK(told > 20);
}

TEST_CASE("of many flats a cover is soon found, and then the others by what they cost", "[plan][large]") {
  FlatsOnly three = grooves(3, 2);
  const Problem& problem = three.problem;
  const std::vector<Draft>& drafts = three.drafts;
  Covers& covers = three.covers;
  Patience patience(three.options);
  std::set<std::vector<int>> seen;
  double cheapest = 1e300, last = 0;
  std::optional<double> first;
  while (const std::optional<Covers::Cover> cover = covers.next(patience)) {
    CHECK(seen.insert(cover->drafts).second);
    for (std::size_t s = 0; s < problem.surfaces.size(); ++s) {
      std::vector<std::pair<double, double>> spans;
      for (const int d : cover->drafts) {
        for (const Stretch& stretch : drafts[static_cast<std::size_t>(d)].finishes) {
          if (stretch.surface == static_cast<int>(s)) spans.emplace_back(stretch.from, stretch.to);
        }
      }
      CHECK(bare_of(spans, length(problem.edge(problem.surfaces[s]))).length <= kUnclaimed);
    }
    if (first) {
      CHECK(cover->least >= last);
      CHECK(cover->least <= covers.least_to_come());
      last = cover->least;
    } else {
      first = cover->least;
    }
    cheapest = std::min(cheapest, cover->least);
  }
  CHECK_FALSE(covers.too_many());
  CHECK(covers.least_to_come() == std::numeric_limits<double>::infinity());
  CHECK(seen.size() > 1);
  // What is left of a node is counted at the least only: no cover is cheaper than was said before any was
  // known.
  CHECK(Covers(problem, drafts, three.none, 0).least_to_come() <= cheapest);
}

TEST_CASE("too many choices of flats are not taken for all of them", "[plan][large]") {
  FlatsOnly seven = grooves(7, 7);
  Covers& covers = seven.covers;
  PlanOptions patient;
  patient.limit = 600;
  patient.most_work = std::numeric_limits<std::uint64_t>::max();
  Patience patience(patient);
  std::size_t found = 0;
  while (found < 200'000 && covers.next(patience)) ++found;
  CHECK(found > 0);
  CHECK(covers.too_many());
  CHECK(covers.least_to_come() < std::numeric_limits<double>::infinity());
}

TEST_CASE("a good order holds, and costs no less than the best", "[plan][large]") {
  const Kit kit = six_planes();
  int same = 0, compared = 0;
  for (const char* chain :
       {"start face .6\nogee out .6 down .45", "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8",
        "start face 3/4\nreverse-ogee out 3/4 down 3/4",
        "start face 7/8\nbead out 3/8 down 3/8\nfillet out 1/8\ncove out 3/8 down 3/8"}) {
    const Section section = profile("2 1/2 wide, 3/4 thick", chain);
    const PlanOptions options;
    const Problem problem = make_problem(section, kit, options);
    const Composition found = compose(problem);
    REQUIRE(found.best.has_value());
    std::vector<Draft> drafts;
    for (const Step& step : found.best->steps) drafts.push_back(step.draft);
    KnownTurns known(problem);
    LeastCost least(known, in_order(drafts), OrderOf::flats_first);
    least.work_out();
    const std::optional<Sequence> best = best_order(problem, least);
    const std::optional<Sequence> good = good_order(problem, least);
    REQUIRE(best.has_value());
    REQUIRE(good.has_value());
    CHECK(good->steps.size() == best->steps.size());
    CHECK(good->effort >= best->effort - 1e-9);
    CHECK(good->left.height == Approx(best->left.height).margin(1e-3));
    CHECK_FALSE(good_order(problem, least, good->effort - 1e-3).has_value());
    same += good->effort < best->effort + 1e-9 ? 1 : 0;
    ++compared;
  }
  CHECK(same * 2 >= compared);
}
