// Where a kit cannot cut the drawing: the nearest profile that it can.
#include "arrisline/substitute.h"

#include "plan/planning.h"

namespace arrisline::test {
namespace {

Plan refused(const Section& section, const Kit& kit, const PlanOptions& options = {}) {
  Plan plan = make_plan(section, kit, options);
  find_remedies(plan, kit, options);
  REQUIRE_FALSE(plan.feasible);
  REQUIRE_FALSE(plan.undecided);
  return plan;
}

/// The greatest distance of a worked point of either section from the outline of the other, mm.
double apart(const Section& a, const Section& b) {
  double most = 0;
  for (const auto& [from, to] : {std::pair(&a, &b), std::pair(&b, &a)}) {
    for (std::size_t i = 0; i < from->target.size(); ++i) {
      if (from->source[i] < 0) continue;
      for (int k = 0; k <= 100; ++k)
        most = std::max(most, distance(point_at(from->target[i], k / 100.0), to->target));
    }
  }
  return most;
}

std::vector<Edge> worked(const Section& section) {
  std::vector<Edge> out;
  for (std::size_t i = 0; i < section.target.size(); ++i)
    if (section.source[i] >= 0) out.push_back(section.target[i]);
  return out;
}

const Kit& sixes() {
  static const Kit kit_of_two = kit("units inch\nhollow 6\nround 6\nrebate 3/4\n");
  return kit_of_two;
}

// A cove of 5/16 in: round 6 is too flat for it.
const char* const kOddCove =
    "start face 3/4\nstep down 1/8\nbead out 3/8 down 3/8\nfillet out 1/16\ncove out 5/32 down 3/16 radius "
    "5/16\n"
    "fillet out 5/32";
// A cyma whose bead is wider than hollow 6.
const char* const kCyma =
    "start face 3/4\nbead out 5/16 down 5/16 radius 7/16\ncove out 5/16 down 5/16 radius 7/16\nfillet out "
    "1/8";

TEST_CASE("an arc of a radius that no plane has is redrawn with one that the kit has", "[substitute]") {
  const Section drawn = profile("2 wide, 1 thick", kOddCove);
  const Plan no = refused(drawn, sixes());
  const std::optional<Substitute> found = nearest_profile(no, sixes(), {}, 0.5).nearest;
  REQUIRE(found);
  SECTION("it lies within what is allowed, measured on the two lines") {
    CHECK(found->departure <= 0.5);
    CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));
  }
  SECTION("the profile written is the section planned, and its plan stands every check") {
    const Section read = need(read_profile(found->profile, "redrawn.profile"));
    CHECK(apart(read, found->section) < 1e-6);
    const Plan plan = make_plan(read, sixes(), {});
    CHECK(plan.feasible);
    CHECK(faults(plan) == "");
  }
  SECTION("every figure that is another is told, and none besides") {
    const auto radius_of_cove = std::find_if(
        found->changes.begin(), found->changes.end(),
        [](const Redrawn& change) { return change.element == 3 && change.what == Redrawn::What::radius; });
    REQUIRE(radius_of_cove != found->changes.end());
    CHECK(radius_of_cove->drawn == Approx(5.0 / 16 * kMmPerInch));
    CHECK(radius_of_cove->now == Approx(6.0 / 16 * kMmPerInch));
    for (const Redrawn& change : found->changes) CHECK(std::abs(change.drawn - change.now) > 1e-3);
  }
}

TEST_CASE("what may not depart so far is not redrawn", "[substitute]") {
  const Section drawn = profile("2 wide, 1 thick", kOddCove);
  const Plan no = refused(drawn, sixes());
  const std::optional<Substitute> found = nearest_profile(no, sixes(), {}, 0.5).nearest;
  REQUIRE(found);
  CHECK_FALSE(nearest_profile(no, sixes(), {}, found->departure * 0.9).nearest);
}

TEST_CASE("a groove narrower than any iron is widened", "[substitute]") {
  const Kit ploughing = kit("units inch\nrebate 3/4\nplough 1/4\n");
  const Section drawn =
      profile("3 wide, 3/4 thick", "start face 1\nstep down 1/4\nfillet out 7/32\nstep up 1/4");
  const Plan no = refused(drawn, ploughing);
  const std::optional<Substitute> found = nearest_profile(no, ploughing, {}, 1).nearest;
  REQUIRE(found);
  // Wider by 1/32 in, half of it on either side.
  CHECK(found->departure == Approx(kMmPerInch / 64).margin(0.01));
}

TEST_CASE("the limit of the plan holds for the search too, which says where it was left off",
          "[substitute]") {
  const Section drawn = profile("2 wide, 1 thick", kOddCove);
  const Plan no = refused(drawn, sixes());
  PlanOptions options;
  options.limit = 3600;
  options = from_now(options);
  const Redrawing in_time = nearest_profile(no, sixes(), options, 0.5);
  REQUIRE(in_time.nearest);
  CHECK_FALSE(in_time.left_off);
  // Whatever time is left for a better one, there is a plan of it that stands every check.
  CHECK(in_time.nearest->plan.feasible);
  CHECK(faults(in_time.nearest->plan) == "");
  options.since = *options.since - std::chrono::hours(2);
  const Redrawing late = nearest_profile(no, sixes(), options, 0.5);
  CHECK_FALSE(late.nearest);
  CHECK(late.left_off);
  // Where everything was tried and nothing found, nothing was left off.
  const Redrawing none = nearest_profile(no, sixes(), {}, 0.001);
  CHECK_FALSE(none.nearest);
  CHECK_FALSE(none.left_off);
}

TEST_CASE("a groove between flats is widened at both walls, and the walls stay upright", "[substitute]") {
  // A chain that begins with the wall: widened on the one side only it would depart by all of the difference.
  const Kit planes = kit("units inch\nhollow 6\nround 6\nrebate 3/4\nplough 1/8 1/4\n");
  struct Case {
    std::string stock, chain;
    double width;  // drawn, mm
  };
  const double iron = kMmPerInch / 8;
  for (const Case& one :
       {Case{"2 wide, 1 thick", "start face 1\nstep down 1/4\nfillet out 0.1\nstep up 1/4", 2.54},
        Case{"50mm wide, 25mm thick", "start face 30mm\nstep down 5mm\nfillet out 2.8mm\nstep up 5mm", 2.8},
        Case{"2 wide, 1 thick",
             "start face 1 1/2\nstep down 1/8\nfillet out 0.1\nstep up 1/8\nfillet out 1/2\nstep down "
             "1/8\nfillet out 0.11\nstep up 1/8",
             2.54}}) {
    INFO(one.chain);
    const Section drawn = profile(one.stock, one.chain);
    const Plan no = refused(drawn, planes);
    const double half = (iron - one.width) / 2;
    CHECK_FALSE(nearest_profile(no, planes, {}, half - 0.01).nearest);
    const std::optional<Substitute> found = nearest_profile(no, planes, {}, half + 0.01).nearest;
    REQUIRE(found);
    CHECK(found->departure == Approx(half).margin(1e-4));
    const Section read = need(read_profile(found->profile, "redrawn.profile"));
    CHECK(apart(drawn, read) == Approx(half).margin(1e-4));
    for (const Edge& edge : worked(read)) CHECK((edge.from.x == edge.to.x || edge.from.y == edge.to.y));
    CHECK(std::any_of(found->changes.begin(), found->changes.end(),
                      [](const Redrawn& change) { return change.what == Redrawn::What::start; }));
  }
}

TEST_CASE("what is written departs by the figure told and no more than is allowed", "[substitute]") {
  const Kit planes = kit("units inch\nhollow 6\nround 6\nrebate 3/4\nplough 3/16\n");
  int redrawn = 0;
  for (const char* chain :
       {kOddCove, kCyma, "start face 3/4\nstep down 1/16\nbead out 1/2 down 1/2\nfillet out 1/4",
        "start face 1\nstep down 1/4\nfillet out 0.17\nstep up 1/4\nfillet out 0.455\nbead out 3/8 down 3/8",
        "start face 1 1/4\nbead out 3/8 down 3/8\ncove out 3/8 down 3/8\nfillet out 1/2"}) {
    const Section drawn = profile("2 wide, 1 thick", chain);
    const Plan no = make_plan(drawn, planes, {});
    if (no.feasible) continue;
    for (const double allow : {0.15, 0.4, 1.0}) {
      INFO(chain << "\nwithin " << allow);
      const std::optional<Substitute> found = nearest_profile(no, planes, {}, allow).nearest;
      if (!found) continue;
      ++redrawn;
      CHECK(found->departure <= allow + 1e-5);
      const Section read = need(read_profile(found->profile, "redrawn.profile"));
      CHECK(apart(drawn, read) == Approx(found->departure).margin(2e-3));
    }
  }
  CHECK(redrawn >= 6);
}

TEST_CASE("moved ends let it lie nearer than another radius between the same ends", "[substitute]") {
  const Section drawn = profile("2 wide, 1 thick", kCyma);
  const Plan no = refused(drawn, sixes());
  double same_ends = 0;
  for (const Remedy& remedy : no.remedies) same_ends = std::max(same_ends, remedy.departure);
  REQUIRE(same_ends > 0);
  const std::optional<Substitute> found = nearest_profile(no, sixes(), {}, 1).nearest;
  REQUIRE(found);
  CHECK(found->departure < same_ends);
  CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));

  // A smooth joint stays smooth.
  const std::vector<Edge> line = worked(found->section);
  int smooth = 0;
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (!line[i - 1].is_arc() || !line[i].is_arc()) continue;
    CHECK(std::abs(cross(direction_at(line[i - 1], 1), direction_at(line[i], 0))) < 2e-3);
    ++smooth;
  }
  CHECK(smooth == 1);
}

TEST_CASE("a quadrant of another radius departs by the least that any may", "[substitute]") {
  // With its ends kept it departs by the difference of the two rises; with them moved by well under half of
  // that.
  const Section drawn =
      profile("2 wide, 1 thick", "start face 3/4\nstep down 1/16\nbead out 1/2 down 1/2\nfillet out 1/4");
  const Plan no = refused(drawn, sixes());
  const std::optional<Substitute> found = nearest_profile(no, sixes(), {}, 3).nearest;
  REQUIRE(found);
  const double same_ends = [] {
    const double half = 0.5 * std::sqrt(0.5);
    return (0.375 - std::sqrt(0.375 * 0.375 - half * half) - (0.5 - std::sqrt(0.25 - half * half))) *
           kMmPerInch;
  }();
  CHECK(found->departure < same_ends / 2.5);
  CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));
}

TEST_CASE("where a remedy redraws an arc, what is found departs no more", "[substitute][campaign]") {
  // Where bead and cove run smooth into each other they do so no longer.
  const Kit odd =
      kit("units mm\nrebate 25\nplough 4 6\nhollow radius 6.5\nround radius 6.5\nhollow radius 11\n"
          "round radius 12\nscraper\n");
  const Section drawn = profile("38mm wide, 28mm thick",
                                "start face 18mm\nbead out 4.5mm down 4.5mm\nbead out 5.5mm down 5.5mm\n"
                                "bead out 4mm down 4mm\ncove out 4mm down 4mm");
  const Plan no = refused(drawn, odd);
  std::optional<double> remedy;
  for (const Remedy& one : no.remedies) {
    if (!one.redraw.empty()) remedy = one.departure;
  }
  REQUIRE(remedy);
  const std::optional<Substitute> found = nearest_profile(no, odd, {}, *remedy + 0.01).nearest;
  REQUIRE(found);
  CHECK(found->departure <= *remedy + 1e-3);
  CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));
}

TEST_CASE("a bead that runs level into the face does so with another radius too", "[substitute]") {
  const Section drawn =
      profile("1 1/2 wide, 3/4 thick",
              "start face 0.75\nbead out 0.296 down 0.135 radius 0.392\ncove out 0.296 down 0.135 "
              "radius 0.392\nfillet out 0.158");
  PlanOptions close;
  close.tolerance = 0.07;  // hollow 6 bearing with its edges leaves more
  const Plan no = refused(drawn, sixes(), close);
  const std::optional<Substitute> found = nearest_profile(no, sixes(), close, 0.3).nearest;
  REQUIRE(found);
  CHECK(found->departure < 0.1);
  bool bead = false;
  for (const Edge& edge : worked(found->section))
    bead = bead || (edge.turn == Turn::left && radius(edge) == Approx(0.375 * kMmPerInch));
  CHECK(bead);
}

TEST_CASE("a flat along the face that comes out otherwise is told too", "[substitute]") {
  const Kit planes =
      kit("units mm\nrebate 19\nrebate 6\nplough 3 5\nhollow radius 8\nround radius 8\nhollow radius 11\n");
  const Section drawn = profile("80mm wide, 18mm thick",
                                "start face 21.28mm\nstep down 4mm\nfillet out 2.7mm\nstep up 4mm\n"
                                "fillet out 3.7mm\nbead out 11.98mm down 11.98mm\nfillet out 2.9mm");
  const int along_the_face = 3;
  REQUIRE(std::count(drawn.source.begin(), drawn.source.end(), along_the_face) == 0);
  PlanOptions close;
  close.tolerance = 0.05;
  const Plan no = refused(drawn, planes, close);
  const std::optional<Substitute> found = nearest_profile(no, planes, close, 0.4).nearest;
  REQUIRE(found);
  // It lies between the wall of the groove and the bead.
  const auto gap = [](const Section& section) {
    const auto edge = [&](int element) {
      const auto at = std::find(section.source.begin(), section.source.end(), element);
      return section.target[static_cast<std::size_t>(at - section.source.begin())];
    };
    return std::abs(edge(along_the_face + 1).to.x - edge(along_the_face - 1).from.x);
  };
  REQUIRE(gap(drawn) == Approx(3.7));
  REQUIRE(std::abs(gap(found->section) - 3.7) > 0.1);
  const auto told = std::find_if(found->changes.begin(), found->changes.end(), [](const Redrawn& change) {
    return change.element == along_the_face && change.what == Redrawn::What::across;
  });
  REQUIRE(told != found->changes.end());
  CHECK(told->drawn == Approx(3.7));
  CHECK(told->now == Approx(gap(found->section)).margin(1e-3));
}

TEST_CASE("an arc too short for the sole grows at both ends", "[substitute]") {
  // Hollow 6 has a sole of 60 degrees; the bead's chord is as long as 8.5 mm, its sole 9.5.
  const Section drawn =
      profile("80mm wide, 16mm thick",
              "start face 10mm\nstep down 3.4mm\nbead out 6mm down 6mm radius 8.6mm\nfillet out 4mm");
  const Plan no = refused(drawn, sixes());
  const std::optional<Substitute> found = nearest_profile(no, sixes(), {}, 1).nearest;
  REQUIRE(found);
  CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));
  // By hand: bead out 6.6 down 6.6 radius 9.525, the step before it 3.1, the fillet after it 3.6, departs
  // 0.3.
  CHECK(found->departure < 0.34);
  double longest = 0;
  for (const Edge& edge : worked(found->section))
    if (edge.is_arc()) longest = std::max(longest, distance(edge.from, edge.to));
  // Both corners of the sole may sink by what may be left.
  CHECK(longest > 9.525 - 2 * PlanOptions{}.tolerance);
  CHECK(found->plan.feasible);
  CHECK(faults(found->plan) == "");
  SECTION("so too where it has the plane's radius already") {
    const Section of_radius =
        profile("80mm wide, 16mm thick",
                "start face 10mm\nstep down 3.4mm\nbead out 6mm down 6mm radius 9.525mm\nfillet out 4mm");
    const std::optional<Substitute> grown =
        nearest_profile(refused(of_radius, sixes()), sixes(), {}, 1).nearest;
    REQUIRE(grown);
    CHECK(grown->departure < 0.34);
  }
}

/// Two pairs of planes with soles shorter than their radii make it, and two of a quarter.
const Kit& bench() {
  static const Kit planes =
      kit("units mm\nrebate 25\nrebate 8\nplough 2 4 6\nhollow radius 5 arc 75\nround radius 5 arc 75\n"
          "hollow radius 9 width 8\nround radius 9 width 8\nhollow radius 16 width 15\n"
          "round radius 16 width 15\nscraper\n");
  return planes;
}

PlanOptions patient() {
  PlanOptions options;
  options.limit = 3600;
  return from_now(options);
}

TEST_CASE("where one drawn by hand can be cut, what is found lies no farther off", "[substitute][campaign]") {
  struct Case {
    const Kit& planes;
    std::string stock, drawn, by_hand;
  };
  const Kit metric =
      kit("units mm\nrebate 20\nplough 3 5 8\nhollow radius 7.5 width 7.5\nround radius 7.5 width 7.5\n"
          "hollow radius 9.8 width 10.1\nround radius 10.2 width 9.9\nscraper\n");
  for (const Case& one :
       {// The start on the face moves, and the cove becomes shallower.
        Case{bench(), "14mm wide, 12mm thick",
             "start face 4.6mm\nstep down 2.1mm\ncove out 3mm down 2.4mm radius 2.8mm\nfillet out 1.6mm",
             "start face 4.45mm\nstep down 3.05mm\ncove out 2.87mm down 1.45mm radius 5mm\n"
             "fillet out 1.58mm"},
        // Both ends of the bead move in.
        Case{metric, "24mm wide, 20mm thick",
             "start face 13.5mm\nstep down 3mm\nbead out 10.5mm down 10.5mm radius 18.5mm\nfillet out 3mm",
             "start face 12.9mm\nstep down 3.85mm\nbead out 9.05mm down 9.05mm radius 9.8mm\n"
             "fillet out 3.85mm"},
        // The arcs no longer run smooth into each other.
        Case{sixes(), "28mm wide, 25mm thick",
             "start face 17mm\nstep down 2mm\ncove out 7.75mm down 7.75mm radius 6.6mm\n"
             "bead out 7.75mm down 7.75mm radius 6.6mm\nfillet out 1.5mm",
             "start face 17.5mm\nstep down 2.6mm\ncove out 8.3mm down 7.65mm radius 9.525mm\n"
             "bead out 8mm down 7.45mm radius 6.6mm\nfillet out 1.2mm"},
        // The sole may be longer than the arc by what one of its corners sinks.
        Case{bench(), "22mm wide, 20mm thick",
             "start face 12mm\nstep down 4mm\ncove out 4mm down 4mm radius 4mm\nfillet out 2mm\n"
             "step down 1.5mm\nbead out 4mm down 4mm radius 4.4mm\nfillet out 2mm",
             "start face 12mm\nstep down 4mm\ncove out 4mm down 4mm radius 4mm\nfillet out 1.89mm\n"
             "step down 1.37mm\nbead out 4.23mm down 4.23mm radius 5mm\nfillet out 1.88mm"}}) {
    INFO(one.drawn);
    const Section drawn = profile(one.stock, one.drawn);
    const Section by_hand = profile(one.stock, one.by_hand);
    REQUIRE(make_plan(by_hand, one.planes, {}).feasible);
    const double within = apart(drawn, by_hand);
    const Plan no = refused(drawn, one.planes);
    const std::optional<Substitute> found = nearest_profile(no, one.planes, patient(), within).nearest;
    REQUIRE(found);
    CHECK(found->departure <= within);
    CHECK(apart(drawn, found->section) == Approx(found->departure).margin(2e-3));
    CHECK(found->plan.feasible);
    CHECK(faults(found->plan) == "");
  }
}

TEST_CASE("more allowed never lets it lie farther off, and just what it takes is enough",
          "[substitute][campaign]") {
  const Section drawn =
      profile("27mm wide, 21mm thick",
              "start face 16.2mm\nstep down 1.5mm\ncove out 4mm down 5.2mm radius 8.2mm\nfillet out 3mm\n"
              "step down 4mm\nbead out 5.2mm down 4mm radius 9mm\nfillet out 4mm");
  const Plan no = refused(drawn, bench());
  const std::optional<Substitute> most = nearest_profile(no, bench(), patient(), 1).nearest;
  REQUIRE(most);
  for (const double allow : {0.6, most->departure + 1e-3}) {
    INFO("within " << allow);
    const std::optional<Substitute> found = nearest_profile(no, bench(), patient(), allow).nearest;
    REQUIRE(found);
    CHECK(found->departure == Approx(most->departure).margin(1e-3));
  }
}

}  // namespace
}  // namespace arrisline::test
