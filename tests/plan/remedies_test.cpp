// What would make a "no" a "yes". Every remedy is tried again, and each plan it gives is held against the
// replay; what is expected of a remedy follows from what was taken out of a kit that can.
#include <algorithm>
#include <chrono>
#include <cmath>

#include "plan/candidates.h"
#include "plan/planning.h"
#include "plan/uncut.h"

using namespace arrisline;
using test::faults;
using test::kit;
using test::pair_of_sixes;
using test::profile;

namespace {

constexpr double kIn = kMmPerInch;

Plan asked(const Section& section, const Kit& planes, const PlanOptions& options = {}) {
  Plan plan = make_plan(section, planes, options);
  find_remedies(plan, planes, options);
  return plan;
}

const Remedy* of_kind(const Plan& plan, bool (*is)(const Remedy&)) {
  const auto found = std::find_if(plan.remedies.begin(), plan.remedies.end(), is);
  return found == plan.remedies.end() ? nullptr : &*found;
}
bool adds(const Remedy& r) {
  return !r.add.empty();
}
bool redraws(const Remedy& r) {
  return !r.redraw.empty();
}
bool allows(const Remedy& r) {
  return r.tolerance.has_value();
}
bool scrapes(const Remedy& r) {
  return r.scrape.has_value();
}

/// The outline with the arcs of the remedy put in by their definition: the centre on the chord's middle line.
Section redrawn(Section section, const Remedy& remedy) {
  for (const Remedy::Redrawn& arc : remedy.redraw) {
    for (std::size_t i = 0; i < section.target.size(); ++i) {
      if (section.source[i] != arc.element || !section.target[i].is_arc()) continue;
      Edge& edge = section.target[i];
      const Point middle = 0.5 * (edge.from + edge.to);
      const Point away = middle - point_at(edge, 0.5);
      const double half = distance(edge.from, edge.to) / 2;
      REQUIRE(norm(away) > 0);
      REQUIRE(arc.radius >= half - 1e-9);
      edge.centre =
          middle + (std::sqrt(std::max(0.0, arc.radius * arc.radius - half * half)) / norm(away)) * away;
    }
  }
  return section;
}

double largest_gap(const Section& a, const Section& b) {
  double most = 0;
  for (const Edge& edge : a.target) {
    for (int i = 0; i <= 400; ++i) most = std::max(most, distance(point_at(edge, i / 400.0), b.target));
  }
  return most;
}

bool has_plane(const Kit& planes, const Plane& plane) {
  if (plane.kind == PlaneKind::scraper) return planes.scraper;
  return std::any_of(planes.planes.begin(), planes.planes.end(), [&](const Plane& own) {
    return own.kind == plane.kind && std::abs(own.width - plane.width) < 0.01 &&
           std::abs(own.radius - plane.radius) < 0.01;
  });
}

/// Tries each remedy of the plan again, by itself.
void check_remedies(const Plan& no, const Kit& planes, const PlanOptions& options = {}) {
  REQUIRE_FALSE(no.feasible);
  for (const Remedy& remedy : no.remedies) {
    const int set = (remedy.add.empty() ? 0 : 1) + (remedy.redraw.empty() ? 0 : 1) +
                    (remedy.tolerance ? 1 : 0) + (remedy.scrape ? 1 : 0);
    CHECK(set == 1);
    Kit more = planes;
    Section section = no.section;
    PlanOptions wider = options;
    for (const Plane& plane : remedy.add) {
      CHECK_FALSE(has_plane(planes, plane));
      if (plane.kind == PlaneKind::scraper) {
        more.scraper = true;
      } else {
        more.planes.push_back(plane);
      }
    }
    if (!remedy.redraw.empty()) {
      section = redrawn(section, remedy);
      const double gap = std::max(largest_gap(section, no.section), largest_gap(no.section, section));
      CHECK(remedy.departure == Approx(gap).margin(1e-3));
    }
    if (remedy.tolerance) wider.tolerance = *remedy.tolerance;
    if (remedy.scrape) wider.scrape = *remedy.scrape;
    const Plan yes = make_plan(section, more, wider);
    REQUIRE(yes.feasible);
    CHECK(faults(yes, wider) == "");
    // Without any one of the planes it does not go: they are the fewest.
    for (std::size_t i = 0; remedy.add.size() > 1 && i < remedy.add.size(); ++i) {
      Kit fewer = planes;
      for (std::size_t j = 0; j < remedy.add.size(); ++j) {
        if (j != i && remedy.add[j].kind != PlaneKind::scraper) fewer.planes.push_back(remedy.add[j]);
        if (j != i && remedy.add[j].kind == PlaneKind::scraper) fewer.scraper = true;
      }
      CHECK_FALSE(make_plan(no.section, fewer, options).feasible);
    }
  }
}

/// The remedy of a no that adds so many planes. All its remedies are found to hold first.
const Remedy& addition(const Plan& no, const Kit& planes, std::size_t count) {
  check_remedies(no, planes);
  const Remedy* remedy = of_kind(no, adds);
  REQUIRE(remedy != nullptr);
  REQUIRE(remedy->add.size() == count);
  return *remedy;
}

/// A no with a plane to add, and no other radius for the drawing.
void adds_and_does_not_redraw(const Section& section, const Kit& planes) {
  const Plan no = asked(section, planes);
  check_remedies(no, planes);
  CHECK(of_kind(no, redraws) == nullptr);
  REQUIRE(of_kind(no, adds) != nullptr);
}

}  // namespace

TEST_CASE("a kit that lacks one plane is told that plane", "[plan][remedies]") {
  struct Case {
    std::string chain, kit, lacks;
  };
  const std::vector<Case> cases = {
      {"start face 1/4\ncavetto 1/4", "hollow 6\nround 6\nrebate 3/4\n", "round 4"},
      {"start face 1/4\novolo 1/4", "round 4\nrebate 3/4\n", "hollow 4"},
      {"start face 3/8\nbead out 3/8 down 3/8", "round 6\nrebate 3/4\n", "hollow 6"},
      {"start face 1/2\novolo 1/2", "hollow 6\nround 6\nrebate 3/4\n", "hollow 8"},
      {"start face 1\nstep down 1/4\nfillet out 1/8\nstep up 1/4\nfillet out 7/8", "rebate 3/4\n",
       "plough 1/8"},
      {"start face 1\nstep down 1/4\nfillet out 3/16\nstep up 1/4\nfillet out 13/16",
       "rebate 3/4\nplough 1/4\n", "plough 3/16"},
      // Ends as read upright: a hollow for the bead, a round for the cove of a cyma of 60 degrees each.
      {"start face 0.6495\nogee out 0.6495 down 3/8", "hollow 6\nrebate 3/4\n", "round 6"},
  };
  for (const Case& one : cases) {
    INFO(one.chain << "\nwith\n" << one.kit);
    const Section section = profile("2 wide, 3/4 thick", one.chain);
    const Kit short_kit = kit("units inch\n" + one.kit);
    const Kit lacking = kit("units inch\n" + one.lacks + "\n");
    const Plan no = asked(section, short_kit);
    const Plane& added = addition(no, short_kit, 1).add[0];
    CHECK(added.kind == lacking.planes[0].kind);
    CHECK(added.number == lacking.planes[0].number);
    CHECK(added.width == Approx(lacking.planes[0].width).margin(1e-6));
    CHECK(added.radius == Approx(lacking.planes[0].radius).margin(1e-6));
    for (const Reason& reason : no.reasons) {
      REQUIRE(reason.nearest.has_value());
      CHECK(reason.nearest->kind == lacking.planes[0].kind);
      CHECK(reason.nearest->number == lacking.planes[0].number);
    }
  }
}

TEST_CASE("a plane that can be bought is named before one that would have to be made", "[plan][remedies]") {
  // Radii of 7.2/16 and 12.8/16 in: the nearest hollows that go in are 8 and 13.
  for (const auto& [radius, number] : {std::pair{"0.45", 8}, {"0.8", 13}}) {
    const Section section =
        profile("3 wide, 1 1/4 thick", "start face " + std::string(radius) + "\novolo " + radius);
    const Kit planes = kit("units inch\nhollow 6\nround 6\nrebate 3/4\n");
    const Plan no = asked(section, planes);
    const Plane& added = addition(no, planes, 1).add[0];
    CHECK(added.kind == PlaneKind::hollow);
    CHECK(added.number == number);
  }
}

TEST_CASE("two planes are named where one does not do, each beside its element", "[plan][remedies]") {
  const Section section = profile("2 wide, 1 thick", "start face 1\novolo 1/2\nfillet out 1/4\ncavetto 1/4");
  const Kit planes = kit("units inch\nhollow 6\nround 6\nrebate 3/4\n");
  const Plan no = asked(section, planes);
  addition(no, planes, 2);
  REQUIRE(no.reasons.size() == 2);
  for (const Reason& reason : no.reasons) {
    REQUIRE(reason.nearest.has_value());
    CHECK(reason.nearest->number == (reason.element == 0 ? 8 : 4));
    CHECK(reason.nearest->kind == (reason.element == 0 ? PlaneKind::hollow : PlaneKind::round));
  }
}

TEST_CASE("the radius to change the drawing to, and how far the line then lies off", "[plan][remedies]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  const Plan no = asked(section, pair_of_sixes());
  check_remedies(no, pair_of_sixes());
  const Remedy* remedy = of_kind(no, redraws);
  REQUIRE(remedy != nullptr);
  REQUIRE(remedy->redraw.size() == 1);
  CHECK(remedy->redraw[0].element == 0);
  CHECK(remedy->redraw[0].radius == Approx(0.375 * kIn));
  // Sagittas over the chord of the quadrant, √2/4 in: 1/4 (1 − cos 45°), and 3/8 − √(3/8² − 1/32).
  const double drawn = 0.25 * (1 - std::sqrt(0.5));
  const double changed = 0.375 - std::sqrt(0.375 * 0.375 - 1.0 / 32);
  CHECK(remedy->departure == Approx((drawn - changed) * kIn).epsilon(1e-6));
  // And as the maker would write it.
  const Plan yes = make_plan(profile("2 wide, 3/4 thick", "start face 1/4\ncove out 1/4 down 1/4 radius 3/8"),
                             pair_of_sixes(), {});
  CHECK(yes.feasible);
}

TEST_CASE("both arcs of an ogee take one radius", "[plan][remedies]") {
  const Section section =
      profile("2 wide, 1 thick", "start face 5/8\nstep down 1/8\nogee out 1/2 down 1/2\nfillet out 1/8");
  const Kit planes = kit("units inch\nhollow 5\nround 5\nrebate 3/4\n");
  const Plan no = asked(section, planes);
  check_remedies(no, planes);
  const Remedy* remedy = of_kind(no, redraws);
  REQUIRE(remedy != nullptr);
  REQUIRE(remedy->redraw.size() == 2);
  CHECK(remedy->redraw[0].radius == remedy->redraw[1].radius);
  CHECK(remedy->redraw[0].radius == Approx(5 * kIn / 16));
}

TEST_CASE("no radius is named that does not reach between the ends", "[plan][remedies]") {
  // A half-round of 3/4 in: a hollow of 1/4 in cannot be drawn over it.
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\ntorus 3/4");
  const Kit planes = kit("units inch\nhollow 4\nrebate 3/4\n");
  adds_and_does_not_redraw(section, planes);
}

TEST_CASE("no radius is named that makes another shape of it", "[plan][remedies]") {
  // A half-round flute 1/4 in wide is 1/8 in deep; by round 4 between the same ends it is 0.033 in deep.
  const Section section = profile("2 wide, 3/4 thick", "start face 3/4\ncove out 1/4 radius 1/8");
  const Kit planes = kit("units inch\nrebate 3/4\nplough 1/8\nround 4\n");
  adds_and_does_not_redraw(section, planes);
}

TEST_CASE("the tolerance at which it passes is the least", "[plan][remedies]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  const Kit inch = kit("units inch\nround 5\nrebate 3/4\n");
  const Kit metric = kit("units mm\nround radius 7.94\nrebate 20\n");
  for (const Kit& planes : {inch, metric}) {
    PlanOptions options;
    options.unit = planes.unit;
    const Plan no = asked(section, planes, options);
    check_remedies(no, planes, options);
    const Remedy* remedy = of_kind(no, allows);
    REQUIRE(remedy != nullptr);
    const double step = planes.unit == Unit::inch ? kIn / 1000 : 0.01;
    CHECK(std::abs(*remedy->tolerance / step - std::round(*remedy->tolerance / step)) < 1e-6);
    PlanOptions wider = options;
    wider.tolerance = *remedy->tolerance - step;
    CHECK_FALSE(make_plan(section, planes, wider).feasible);
    // A round of 5/16 on a cove of 1/4 bears on the edges of its sole and leaves the difference of the
    // sagittas in its middle; nothing less can be allowed.
    const double w = planes.planes[0].width / 2;
    auto sagitta = [&](double r) { return r - std::sqrt(r * r - w * w); };
    CHECK(*remedy->tolerance > sagitta(kIn / 4) - sagitta(planes.planes[0].radius));
  }
}

TEST_CASE("a scraper, or more for the one there is", "[plan][remedies]") {
  // A round of 5/16 in leaves the middle of a cove of 1/4 in a little full.
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  const Kit without = kit("units inch\nround 5\nrebate 3/4\n");
  const Kit with = kit("units inch\nround 5\nrebate 3/4\nscraper\n");
  PlanOptions tight;
  tight.scrape = 0.25;
  const Plan no = asked(section, with, tight);
  check_remedies(no, with, tight);
  REQUIRE(of_kind(no, scrapes) != nullptr);
  REQUIRE(of_kind(no, allows) != nullptr);
  CHECK(*of_kind(no, scrapes)->scrape == *of_kind(no, allows)->tolerance);
  const Plan none = asked(section, without, tight);
  check_remedies(none, without, tight);
  CHECK(of_kind(none, scrapes) == nullptr);
}

TEST_CASE("not to cut a part of the drawing is no remedy", "[plan][remedies]") {
  struct Case {
    std::string chain, kit;
    double size;  // of what would stay under the wood, mm
  };
  for (const Case& one :
       {// A groove of 1/64 in that no sole enters: allowed as much, it is not cut at all.
        Case{"start face 1\nstep down 1/64\nfillet out 1/2\nstep up 1/64\nfillet out 1/2",
             "rebate 3/4\nscraper\n", kIn / 64},
        // Fillets between reeds that stand 3/8 (1 - cos 30) in above them.
        Case{"start face 1 3/4\nstep down 1/4\nfillet out 1/4\nbead out 3/8 radius 3/8\nfillet out "
             "1/8\nbead out 3/8 radius 3/8\nfillet out 5/8",
             "rebate 0.43\nhollow 4\nround 4\nhollow 6\nround 6\n", 0.0502 * kIn},
        // A bevel so flat that the face might as well stay.
        Case{"start face 1\nbevel out 1/2 down 1/32\nfillet out 1/8\nstep up 1/32\nfillet out 3/8",
             "rebate 3/4\n", kIn / 32}}) {
    INFO(one.chain);
    const Section section = profile("2 wide, 3/4 thick", one.chain);
    const Kit planes = kit("units inch\n" + one.kit);
    PlanOptions tight;
    tight.scrape = 0.25;
    const Plan no = asked(section, planes, tight);
    check_remedies(no, planes, tight);
    for (const Remedy& remedy : no.remedies) {
      CHECK(remedy.tolerance.value_or(0) <= one.size / 4);
      CHECK(remedy.scrape.value_or(0) <= one.size / 4);
    }
    // With that allowed there is a plan, which is why it must not be named.
    PlanOptions wide = tight;
    wide.tolerance = one.size + 0.03;
    CHECK(make_plan(section, planes, wide).feasible);
  }
}

TEST_CASE("a groove cut a little narrow has its walls", "[plan][remedies]") {
  // 0.13 in with a plough of 1/8 in: one wall stands 0.127 mm off the line.
  const Section groove = profile(
      "3 wide, 3/4 thick", "start face 1 1/2\nstep down 1/4\nfillet out .13\nstep up 1/4\nfillet out 1.37");
  const Kit planes = kit("units inch\nrebate 3/4\nplough 1/8\n");
  PlanOptions options;
  options.tolerance = 0.15;
  Plan narrow = make_plan(groove, planes, options);
  REQUIRE(narrow.feasible);
  narrow.cuts.resize(1);
  narrow.left.max_height = 0.127;
  const Problem problem = make_problem(groove, planes, options);
  CHECK_FALSE(leaves_uncut(problem, narrow));
  Plan none = narrow;
  none.cuts.clear();
  CHECK(leaves_uncut(problem, none));
}

TEST_CASE("a plane that matches another arc is named where the order is what fails", "[plan][remedies]") {
  // The one hollow of the kit gets at the bead, but on no two arrises that a plan could leave it.
  const Section section = profile(
      "1 wide, 1/2 thick",
      "start face 1/4\nbead out 1/16 down 1/16\nfillet out 1/16\ncove out 1/16 down 1/16\nfillet out 1/16");
  const std::string large = "units inch\nrebate 5/8\nhollow radius 0.6 width 0.5\nround 4\n";
  for (const auto& [planes, lacks] : {std::pair(kit(large + "round 1\n"), 1), std::pair(kit(large), 2)}) {
    const Plan no = asked(section, planes);
    check_remedies(no, planes);
    const Remedy* remedy = of_kind(no, adds);
    REQUIRE(remedy != nullptr);
    CHECK(static_cast<int>(remedy->add.size()) == lacks);
    CHECK(std::any_of(remedy->add.begin(), remedy->add.end(), [](const Plane& plane) {
      return plane.kind == PlaneKind::hollow && plane.number == 1;
    }));
  }
}

TEST_CASE("where the kit's own hollow is kept out, narrower ones are tried first", "[plan][remedies]") {
  // Computed: the bead is 2 3/8 sin 22.5 = 0.287 in from end to end, the sole of hollow 6 is 0.375 in wide.
  const Section section =
      profile("2 wide, 1 thick",
              "start face 1\nstep down 1/4\nbead out .1747 down .2277 radius 3/8\nfillet out .8253");
  const Kit planes = kit("units inch\nrebate 3/4\nhollow 1\nhollow 6\nscraper\n");
  const PlanOptions options;
  const Problem problem = make_problem(section, planes, options);
  const auto bead =
      std::find_if(problem.surfaces.begin(), problem.surfaces.end(), [](const Surface& s) { return s.arc; });
  REQUIRE(bead != problem.surfaces.end());
  const std::vector<Plane> tried =
      helping_planes(problem, planes, {static_cast<int>(bead - problem.surfaces.begin())});
  REQUIRE(tried.size() >= 2);
  for (std::size_t i = 0; i < tried.size(); ++i) {
    CHECK(tried[i].kind == PlaneKind::hollow);
    CHECK(tried[i].radius == Approx(0.375 * kIn));
    CHECK(tried[i].width == Approx((4 - static_cast<double>(i)) * kIn / 16));
  }
}

TEST_CASE("a sole narrower than a shallow arc is named, and the plane for its rails", "[plan][remedies]") {
  const Section section =
      profile("2 wide, 3/4 thick",
              "start face 1\nstep down 1/32\nbead out 3/16 down 1/32 radius 3/4\nstep down "
              "1/16\nfillet out 13/16");
  const Kit planes = kit("units inch\nrebate 3/4\nplough 1/8\nhollow 2\nhollow 12\nscraper\n");
  const Plan no = asked(section, planes);
  check_remedies(no, planes);
  const Remedy* remedy = of_kind(no, adds);
  REQUIRE(remedy != nullptr);
  CHECK(remedy->add[0].kind == PlaneKind::hollow);
  CHECK(remedy->add[0].radius == Approx(0.75 * kIn));
  CHECK(remedy->add[0].width == Approx(3 * kIn / 16));
}

TEST_CASE("a cleft has no remedy, and none is made up", "[plan][remedies]") {
  const Section section = profile("3 wide, 1 thick", "start face 1/2\ntorus 3/4\nfillet out 1/2");
  const Kit planes = kit("units inch\nhollow 6\nrebate 3/4\n");
  const Plan no = asked(section, planes);
  REQUIRE_FALSE(no.feasible);
  CHECK(no.remedies.empty());
  bool named = false;
  for (const Reason& reason : no.reasons) {
    named = named || reason.why.find("sharper than square") != std::string::npos;
    CHECK_FALSE(reason.nearest.has_value());
  }
  CHECK(named);
}

TEST_CASE("a number that the kit uses for another size is not named", "[plan][remedies]") {
  // This kit's own No. 4 has a radius of 0.29 in.
  const Section section = profile("2 wide, 3/4 thick", "start face 1/4\ncavetto 1/4");
  const Kit planes = kit("units inch\nnumber 4 radius 0.29\nhollow 4\nround 6\nrebate 3/4\n");
  const Plan no = asked(section, planes);
  const Remedy& remedy = addition(no, planes, 1);
  CHECK_FALSE(remedy.add[0].number.has_value());
  CHECK(remedy.add[0].radius == Approx(kIn / 4));
}

TEST_CASE("a kit that goes by millimetres is told no numbers", "[plan][remedies]") {
  for (const char* radius : {"25.4", "11.7"}) {  // a No. 16, and none
    INFO(radius);
    const std::string r = std::string(radius) + "mm";
    const Section section =
        profile("90mm wide, 45mm thick", "start face " + r + "\nbead out " + r + " down " + r);
    const Kit planes = kit("units mm\nrebate 20\nhollow radius 6\nround radius 6\n");
    // The next whole millimetre can be bought.
    const Plan no = asked(section, planes);
    const Remedy& remedy = addition(no, planes, 1);
    CHECK_FALSE(remedy.add[0].number.has_value());
    CHECK(remedy.add[0].radius == Approx(std::ceil(std::stod(radius))));
  }
}

TEST_CASE("remedies leave a yes alone, and are the same every time", "[plan][remedies]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  Plan yes = make_plan(section, pair_of_sixes(), {});
  const std::string before = plan_to_json(yes);
  find_remedies(yes, pair_of_sixes(), {});
  CHECK(plan_to_json(yes) == before);
  const Kit planes = kit("units inch\nround 6\nplough 1/8\n");
  CHECK(plan_to_json(asked(section, planes)) == plan_to_json(asked(section, planes)));
}

TEST_CASE("a plan and its remedies share one limit", "[plan][remedies]") {
  const Section section = profile("2 wide, 3/4 thick", "start face 3/8\ncavetto 3/8");
  const Kit planes = kit("units inch\nhollow 6\nrebate 3/4\n");
  PlanOptions options;
  options.limit = 3600;
  options.since = std::chrono::steady_clock::now();
  const Plan in_time = asked(section, planes, options);
  CHECK_FALSE(in_time.remedies.empty());
  CHECK_FALSE(in_time.remedies_left_off);
  // Nothing is called a remedy that there was no time to plan with, and it is said that time ran out.
  Plan late = make_plan(section, planes, {});
  REQUIRE_FALSE(late.feasible);
  options.since = *options.since - std::chrono::hours(2);
  find_remedies(late, planes, options);
  CHECK(late.remedies.empty());
  CHECK(late.remedies_left_off);
  CHECK(make_plan(section, planes, from_now(options)).reasons.size() == late.reasons.size());
}

TEST_CASE("the first plan found is a valid one", "[plan][remedies]") {
  PlanOptions any;
  any.any = true;
  for (const char* chain :
       {"start face 3/8\nbead out 3/8 down 3/8", "start face 1/2\nstep down 1/8\ncavetto 3/8\nfillet out 1/8",
        "start face 0.6495\nogee out 0.6495 down 3/8"}) {
    const Section section = profile("2 wide, 3/4 thick", chain);
    const Plan plan = make_plan(section, pair_of_sixes(), any);
    REQUIRE(plan.feasible);
    CHECK(faults(plan) == "");
    CHECK(plan.effort >= make_plan(section, pair_of_sixes(), {}).effort - 1e-6);
  }
}

TEST_CASE("remedies of many profiles and short kits hold", "[plan][remedies]") {
  const std::vector<std::string> chains = {
      "start face 1\nstep down 1/8\novolo 3/8\nfillet out 5/8",
      "start face 7/8\ncavetto 5/16\nstep down 1/16\nfillet out 9/16",
      "start face 3/4\nstep down 3/16\nbead out 3/8 down 1/4 radius 1/2\nfillet out 3/8",
      "start face 3/4\nreverse-ogee out 1/2 down 3/8 radius 3/8\nfillet out 1/4",
      "start face 1\nstep down 1/8\nfillet out 1/16\nstep up 1/8\nfillet out 15/16",
      "start face 1/2\nbevel out 3/8 down 1/4\nfillet out 1/8",
      "start face 1 1/4\ncove out 1/2 radius 1/4"};
  const std::vector<std::string> kits = {"rebate 3/4\n", "hollow 6\nround 6\nrebate 3/4\nscraper\n",
                                         "hollow 8\nround 8\nplough 1/8\n"};
  int added = 0, drawn = 0, allowed = 0, refused = 0;
  for (const std::string& chain : chains) {
    for (const std::string& text : kits) {
      INFO(chain << "\nwith\n" << text);
      const Section section = profile("2 wide, 1 thick", chain);
      const Kit planes = kit("units inch\n" + text);
      const Plan no = asked(section, planes);
      if (no.feasible) continue;
      ++refused;
      check_remedies(no, planes);
      added += of_kind(no, adds) != nullptr ? 1 : 0;
      drawn += of_kind(no, redraws) != nullptr ? 1 : 0;
      allowed += of_kind(no, allows) != nullptr ? 1 : 0;
    }
  }
  INFO(added << " " << drawn << " " << allowed << " of " << refused);
  CHECK(added >= 10);
  CHECK(drawn >= 1);
  CHECK(allowed >= 1);
}
