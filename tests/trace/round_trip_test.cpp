// Sections sampled with scatter come back as what they were: the same elements, radii within what chance
// does.

#include "catch.h"
#include "section/drawing_of.h"
#include "section/sections.h"
#include "text/write_profile.h"
#include "trace/mouldings.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

struct Case {
  std::size_t points;
  double scatter;
};

/// Digitised in an order, at an angle and from an end that the seed chooses.
Tracing digitised_anyhow(const std::vector<Edge>& drawn, const Case& one, int seed) {
  Digitiser by;
  by.points = one.points;
  by.scatter = one.scatter;
  by.askew = seed % 3 == 0 ? 0 : (seed * 37 % 19) - 9;
  by.backward = seed % 2 == 0;
  by.y_up = seed % 5 == 1;
  return digitised(drawn, by, static_cast<unsigned>(seed));
}

void round_trip(const std::string& name, const Section& section, const Case& one, int seed) {
  const std::vector<Edge> line = worked_line(section);
  const std::vector<Edge> drawn = with_sides(line, 6);
  double whole = 0;
  for (const Edge& edge : drawn) whole += length(edge);
  INFO(name << ", " << one.points << " points, scatter " << one.scatter << " mm, seed " << seed);
  std::string why;
  const auto found = fit_tracing(digitised_anyhow(drawn, one, seed), {}, &why);
  INFO(why);
  REQUIRE(found);
  const std::vector<Edge> back = worked_line(found->section);
  CHECK(kinds(back) == kinds(line));
  if (back.size() != line.size()) return;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (!line[i].is_arc() || !back[i].is_arc()) continue;
    const auto on_it = static_cast<std::size_t>(static_cast<double>(one.points) * length(line[i]) / whole);
    CHECK(std::abs(radius(back[i]) - radius(line[i])) < bound_on(line[i], on_it, one.scatter, 0.05));
  }
}

const std::vector<Case> kCases = {{200, 0.02}, {400, 0}, {500, 0.02}, {900, 0.05}, {2000, 0.1}};

TEST_CASE("classical mouldings, sampled with scatter, come back as they were drawn",
          "[trace][round_trip][campaign]") {
  for (const Classical& moulding : kClassical)
    for (const Case& one : kCases)
      for (int seed = 1; seed <= seeds(); ++seed) round_trip(moulding.name, classical(moulding), one, seed);
}

TEST_CASE("the examples, sampled with scatter, come back as they are", "[trace][round_trip][campaign]") {
  const std::vector<Moulding> examples = usual_examples();
  CHECK(examples.size() >= 8);
  for (const Moulding& moulding : examples)
    for (const Case& one : kCases)
      for (int seed = 1; seed <= seeds(); ++seed) round_trip(moulding.name, moulding.section, one, seed);
}

TEST_CASE("a small congé is told from a bevel", "[trace][round_trip]") {
  // Of a radius under 2 mm, among points that scatter by a twentieth of it and more: a bevel and the flat
  // beside it, made longer, lie nearly as close.
  const Classical& tuscan = kClassical[3];
  REQUIRE(std::string(tuscan.name).starts_with("Tuscan base"));
  for (const int seed : {16, 32, 132}) round_trip(tuscan.name, classical(tuscan), {2000, 0.1}, seed);
  for (const int seed : {9, 14}) round_trip(tuscan.name, classical(tuscan), {500, 0.05}, seed);
  for (const int seed : {2, 3, 4, 5}) round_trip(tuscan.name, classical(tuscan), {200, 0.1}, seed);
}

TEST_CASE("a few exact points to each flat and arc are not taken for scatter", "[trace][round_trip]") {
  // 60 and 100 points over seven of them: most stretches of nine points hold a corner.
  const Section section = section_of(
      "units mm\nstock 60 wide, 40 thick\nstart face 36\nstep down 3\nfillet out 3\ncove out 9 down 9\nstep "
      "down "
      "3\nfillet out 4\nbead out 12 down 12\nfillet out 8\n");
  for (const std::size_t points : {60U, 100U}) round_trip("seven members", section, {points, 0}, 3);
}

TEST_CASE("a fillet of a dozen standard deviations is found beside a cove", "[trace][round_trip]") {
  const Classical& attic = kClassical[4];
  REQUIRE(std::string(attic.name).starts_with("Attic base"));
  for (const int seed : {1, 2, 3, 14}) round_trip(attic.name, classical(attic), {500, 0.1}, seed);
}

TEST_CASE("a tracing says where its working edge is, or it is taken to be at the left", "[trace][frame]") {
  const Section section = classical(kClassical[0]);
  const std::vector<Edge> line = with_sides(worked_line(section), 6);
  for (const bool y_up : {false, true}) {
    for (const bool from_right : {false, true}) {
      Digitiser by;
      by.y_up = y_up;
      by.from_right = from_right;
      std::string why;
      const auto found = fit_tracing(digitised(line, by, 1), {}, &why);
      REQUIRE(found);
      CHECK(found->mirrored == from_right);
      CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
      CHECK(std::abs(worked_line(found->section).front().from.x - 16) < 0.05);
    }
  }
}

TEST_CASE("what chance turns a tracing by is not taken for how it was laid down",
          "[trace][frame][campaign]") {
  // Short flats, each of which may lie off by half a degree and more for scatter alone.
  const Section section = section_of(
      "units mm\nstock 60 wide, 40 thick\nstart face 22\nstep down 3\nfillet out 2\ncove out 7 down "
      "7\nfillet out "
      "3\nbead out 8 down 8\nfillet out 2\n");
  const std::vector<Edge> line = with_sides(worked_line(section), 4);
  Digitiser by;
  by.scatter = 0.1;
  int turned = 0, taken_for_upright = 0;
  constexpr unsigned kSeeds = 40;
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    for (const double askew : {0.0, 3.0}) {
      by.askew = askew;
      std::string why;
      const auto found = fit_tracing(digitised(line, by, seed), {}, &why);
      INFO(why);
      REQUIRE(found);
      if (askew == 0 && found->turned != 0) ++turned;
      if (askew != 0 && found->turned == 0) ++taken_for_upright;
    }
  }
  CHECK(turned <= 2);  // one in fifty or so
  CHECK(taken_for_upright == 0);
}

TEST_CASE("a small tilt is found where the flats agree on it more nearly than chance makes them",
          "[trace][frame]") {
  // Two flats of 3 mm, each of which the tolerance would let lie off by half a degree.
  const std::vector<Edge> line = worked_line(section_of(
      "units mm\nstock 26 wide, 20 thick\nstart face 13\nstep down 3\nbead out 10 down 10\nfillet out 3\n"));
  for (const double askew : {0.2, 0.7, -0.4, 1.5}) {
    Digitiser by;
    by.askew = askew;
    INFO(askew << " degrees");
    std::string why;
    const auto found = fit_tracing(digitised(line, by, 1), {}, &why);
    INFO(why);
    REQUIRE(found);
    CHECK(found->turned == Approx(askew).margin(0.01));
    CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
  }
}

// Of 2 000 independent errors the greatest is, but for one time in ten thousand, between 2.6 and 5.5 standard
// deviations (normal distribution, computed).
TEST_CASE("the farthest point is told beside what the line lies off on the whole", "[trace][fit]") {
  Digitiser by;
  by.points = 2000;
  by.scatter = 0.05;
  std::string why;
  const auto found =
      fit_tracing(digitised(with_sides(worked_line(classical(kClassical[0])), 6), by, 3), {}, &why);
  INFO(why);
  REQUIRE(found);
  double farthest = 0;
  for (const FitOfElement& one : found->fits) {
    CHECK(one.farthest >= one.greatest);
    farthest = std::max(farthest, one.farthest);
  }
  CHECK(farthest > 2.6 * by.scatter);
  CHECK(farthest < 5.5 * by.scatter);
}

TEST_CASE("levels and radii are whole divisions where that lies within the tolerance", "[trace][snap]") {
  const Section section = classical(kClassical[0]);
  FitOptions options;
  options.division = 0.5;
  Digitiser by;
  by.scatter = 0.03;
  by.points = 800;
  std::string why;
  const auto found = fit_tracing(digitised(with_sides(worked_line(section), 6), by, 5), options, &why);
  REQUIRE(found);
  const std::vector<Edge> back = worked_line(found->section);
  REQUIRE(kinds(back) == "step bead fillet ");
  CHECK(back[0].to.y == 3);
  CHECK(back[0].from.x == 16);
  CHECK(radius(back[1]) == Approx(12).margin(1e-9));
  CHECK(back[1].to.x == 4);
  CHECK(back[1].to.y == 15);

  // A step of 3.2 mm is no whole half millimetre, and stays.
  Section odd = section_of(
      "units mm\nstock 80 wide, 90 thick\nstart face 16\nstep down 3.2\nbead out 12 down 12\nfillet out 4\n");
  const auto kept = fit_tracing(digitised(with_sides(worked_line(odd), 6), by, 5), options, &why);
  REQUIRE(kept);
  CHECK(worked_line(kept->section)[0].to.y == Approx(3.2).margin(0.05));
}

TEST_CASE("radii of planes are taken within the tolerance, and what they cost is told", "[trace][snap]") {
  const Section section = classical(kClassical[0]);
  FitOptions options;
  options.tolerance = 0.3;
  options.preferred = {12.3};
  std::string why;
  const auto found = fit_tracing(digitised(with_sides(worked_line(section), 6), {}, 5), options, &why);
  REQUIRE(found);
  REQUIRE(found->fits.size() == 3);
  const FitOfElement& bead = found->fits[1];
  CHECK(radius(worked_line(found->section)[1]) == Approx(12.3).margin(1e-6));
  REQUIRE(bead.free_radius);
  CHECK(*bead.free_radius == Approx(12).margin(0.02));
  CHECK(bead.greatest > bead.free_greatest);
  CHECK(bead.greatest <= 0.3);

  options.tolerance = 0.02;
  const auto strict = fit_tracing(digitised(with_sides(worked_line(section), 6), {}, 5), options, &why);
  REQUIRE(strict);
  CHECK(radius(worked_line(strict->section)[1]) == Approx(12).margin(0.02));
}

TEST_CASE("a plane's radius is taken by how far the line then lies off, however near the drawn one is",
          "[trace][snap]") {
  // A hollow of 3/8 in for a quarter of 9.6 mm: 0.03 mm off at most.
  const Section section = section_of(
      "units mm\nstock 25 wide, 20 thick\nstart face 12.6\nstep down 3\nbead out 9.6 down 9.6\nfillet out "
      "3\n");
  FitOptions options;
  options.division = 0.5;
  options.preferred = {6.35, 9.525, 12.7};
  for (const std::size_t points : {210U, 1200U}) {
    Digitiser by;
    by.points = points;
    std::string why;
    const auto found = fit_tracing(digitised(with_sides(worked_line(section), 6), by, 1), options, &why);
    REQUIRE(found);
    REQUIRE(found->fits.size() == 3);
    INFO(points);
    CHECK(radius(worked_line(found->section)[1]) == Approx(9.525).margin(1e-6));
    CHECK(found->fits[1].greatest <= options.tolerance);
  }
  // At 9.9 mm it would be 0.15 mm off.
  const Section larger = section_of(
      "units mm\nstock 25 wide, 20 thick\nstart face 12.9\nstep down 3\nbead out 9.9 down 9.9\nfillet out "
      "3\n");
  std::string why;
  const auto kept = fit_tracing(digitised(with_sides(worked_line(larger), 6), {}, 1), options, &why);
  REQUIRE(kept);
  CHECK(radius(worked_line(kept->section)[1]) == Approx(9.9).margin(0.005));
}

TEST_CASE("a whole section, closed, gives the stock and the work on every side", "[trace][closed]") {
  const Section section = section_of(
      "units mm\nstock 40 wide, 20 thick\nstart face 10\nstep down 2\nbead out 8 down 8\nfillet out 2\n"
      "side underside\nstart back 5\nfillet out 8\nstep up 5\n");
  Tracing tracing;
  tracing.drawn = true;
  tracing.closed = true;
  tracing.upward = Upward::y_down;
  for (const Edge& edge : section.target) {
    const int parts = edge.is_arc() ? 80 : 1;
    for (int k = 0; k < parts; ++k) tracing.points.push_back(point_at(edge, static_cast<double>(k) / parts));
  }
  const FittedProfile found = on_halves(tracing);
  CHECK(found.section.width == 40);
  CHECK(found.section.thickness == 20);
  REQUIRE(found.section.target.size() == section.target.size());
  CHECK(area(found.section.target) == Approx(area(section.target)).margin(0.01));
  const std::string text = profile_text(drawing_of(found.section, Unit::mm));
  INFO(text);
  const Section again = section_of(text);
  CHECK(area(again.target) == Approx(area(section.target)).margin(0.01));
  CHECK(std::count_if(again.elements.begin(), again.elements.end(),
                      [](const Element& e) { return e.chain == Chain::underside; }) == 2);
}

// Some five points to a millimetre, of which three at a time would be made one: one about a corner lies as
// far beside it as the tolerance, and on the short flats there are but four or five.
TEST_CASE("exact points of a whole section are not averaged over its corners", "[trace][closed]") {
  const Section section = section_of(
      "units mm\nstock 74 wide, 80.5 thick\nstart face 48\nstep down 3.5\nfillet out 3\nstep down 2.25\n"
      "bead down 9 radius 4.5\nstep down 2.25\nfillet out 2\nstep down 4.5\nfillet out 3\n"
      "cove out 5 down 5\nbead out 9 down 9\nfillet out 26\n");
  for (const std::size_t points : {1402U, 1447U, 1492U}) {
    Digitiser by;
    by.points = points;
    by.askew = 3;
    INFO(points);
    std::string why;
    const auto found = fit_tracing(digitised(section.target, by, 1), {}, &why);
    INFO(why);
    REQUIRE(found);
    CHECK(kinds(worked_line(found->section)) ==
          "step fillet step bead step fillet step fillet cove bead fillet ");
  }
}

TEST_CASE("a corner that lies in a gap of the points is found where its flats meet", "[trace][gap]") {
  const std::vector<Edge> drawn = with_sides(worked_line(classical(kClassical[0])), 6);
  Tracing tracing = digitised(drawn, {}, 1);
  const Point corner = drawn[0].to;
  std::erase_if(tracing.points, [&](Point p) { return distance(p, corner) < 0.5; });
  std::string why;
  const auto found = fit_tracing(tracing, {}, &why);
  INFO(why);
  REQUIRE(found);
  CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
}

TEST_CASE("what is flat, or too few points, makes no profile", "[trace]") {
  std::string why;
  Tracing flat;
  for (int i = 0; i < 50; ++i) flat.points.push_back({i * 1.0, 0});
  CHECK_FALSE(fit_tracing(flat, {}, &why));
  CHECK(why == "there is no moulding in it: what is traced is flat; trace the whole line of the section");
  Tracing round;
  round.closed = round.drawn = true;
  for (int i = 0; i < 90; ++i) {
    const double angle = 2 * kPi * i / 90;
    round.points.push_back({5 * std::cos(angle), 5 * std::sin(angle)});
  }
  CHECK_FALSE(fit_tracing(round, {}, &why));
  CHECK(
      why ==
      "the line is closed, and no flat of it is a side of the stock; draw the whole section, or an open line "
      "from the face to the working edge");
  Tracing few;
  few.points = {{0, 0}, {1, 1}, {2, 1}};
  CHECK_FALSE(fit_tracing(few, {}, &why));
  CHECK(why == "so few points tell no line; measure at least 4, and better some hundred");
  Tracing apart;
  apart.points = {{0, 0}, {5, 0}, {9, 0.9}, {10, 6}, {14, 8}};
  CHECK_FALSE(fit_tracing(apart, {}, &why));
  CHECK(why ==
        "no flats and arcs follow the line within the tolerance; measure more points, and closer, or give a "
        "larger --tolerance");
}

}  // namespace
}  // namespace arrisline::testing
