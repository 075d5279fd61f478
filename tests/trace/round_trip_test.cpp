// Sections sampled with scatter come back as what they were: the same elements, radii within what chance
// does.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "arrisline/read.h"
#include "catch.h"
#include "section/drawing_of.h"
#include "section/sections.h"
#include "text/write_profile.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// Mouldings by rule, one part as so many mm (design of each: P. Nicholson, The Mechanic's Companion;
/// Cyclopedia of Architecture, Carpentry and Building, vol. 7; Vitruvius 3.5.2, tr. Morgan; scotia after T.
/// Sheraton, Drawing-Book).
struct Classical {
  const char* name;
  const char* text;  // lengths in parts, written {n}
  double part;
};

std::string in_mm(const std::string& text, double part) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] != '{') {
      out += text[i++];
      continue;
    }
    const std::size_t end = text.find('}', i);
    std::ostringstream figure;
    figure.imbue(std::locale::classic());
    figure.precision(10);
    figure << std::strtod(text.substr(i + 1, end - i - 1).c_str(), nullptr) * part;
    out += figure.str();
    i = end + 1;
  }
  return out;
}

const Classical kClassical[] = {
    {"ovolo between fillets", "start face {16}\nstep down {3}\nbead out {12} down {12}\nfillet out {4}", 1},
    {"cyma recta, height 4 projection 3",
     "start face {3}\nbead out {1.5} down {2} radius {2.5}\ncove out {1.5} down {2} radius {2.5}", 4},
    {"cyma reversa, as high as it projects",
     "start face {2}\ncove out {1} down {1} radius {1}\nbead out {1} down {1} radius {1}", 9},
    {"Tuscan base: congé, listel, torus, plinth",
     "start face {9}\ncove out {0.75} down {0.75}\nfillet out {2.25}\nstep down {2.25}\n"
     "bead down {12} radius {6}\nfillet out {6}\nstep down {4}",
     2.5},
    {"Attic base",
     "start face {4}\nbead down {4} radius {2}\nstep down {1}\ncove down {4} radius {2.4}\n"
     "fillet out {0.5}\nstep down {1}\nbead down {6} radius {3}\nfillet out {3.5}\nstep down {3}",
     2.5},
    {"scotia of 7 parts",
     "start face {8}\nstep down {1}\ncove in {1.8} down {5.4} radius {3}\ncove out {4.8} down {1.6} radius "
     "{8}\nfillet out {5}",
     2.5},
};

Section classical(const Classical& one) {
  const std::string stock = "units mm\nstock 80 wide, 90 thick\n";
  const Reading<Section> reading = read_profile(stock + in_mm(one.text, one.part) + "\n", one.name);
  INFO(shown(reading));
  REQUIRE(reading.value);
  return *reading.value;
}

/// How far a radius found may be off, mm: five standard deviations of that of a circle fitted to so many
/// points along so much of it (R. L. Gluckstern, Nucl. Instrum. Methods 24, 1963: curvature from n points of
/// scatter s over a length l has the deviation s sqrt(720/(n + 4))/l²), and the tolerance's own share.
double bound_on(const Edge& arc, std::size_t points_on_it, double scatter, double tolerance) {
  const double n = static_cast<double>(points_on_it);
  const double l = length(arc);
  const double r = radius(arc);
  const double by_scatter = 5 * scatter * std::sqrt(720 / (n + 4)) * r * r / (l * l);
  // A line may lie `tolerance` off in the middle of the arc or at its ends.
  const double by_tolerance = 16 * tolerance * r * r / (l * l);
  return by_scatter + by_tolerance;
}

int seeds() {
  const char* given = std::getenv("ARRISLINE_TRACE_SEEDS");
  return given ? std::atoi(given) : 2;
}

struct Case {
  std::size_t points;
  double scatter;
};

/// Every seed digitises with another order, angle and way round.
void round_trips(const std::string& name, const Section& section, const std::vector<Case>& cases, int& done) {
  const std::vector<Edge> line = worked_line(section);
  const std::vector<Edge> drawn = with_sides(line, 6);
  double whole = 0;
  for (const Edge& edge : drawn) whole += length(edge);
  for (const Case& one : cases) {
    for (int seed = 1; seed <= seeds(); ++seed) {
      Digitiser by;
      by.points = one.points;
      by.scatter = one.scatter;
      by.askew = seed % 3 == 0 ? 0 : (seed * 37 % 19) - 9;
      by.backward = seed % 2 == 0;
      by.y_up = seed % 5 == 1;
      INFO(name << ", " << one.points << " points, scatter " << one.scatter << " mm, seed " << seed
                << ", askew " << by.askew);
      std::string why;
      const auto found = fit_tracing(digitised(drawn, by, static_cast<unsigned>(seed)), {}, &why);
      INFO(why);
      REQUIRE(found);
      const std::vector<Edge> back = worked_line(found->section);
      CHECK(kinds(back) == kinds(line));
      ++done;
      if (back.size() != line.size()) continue;
      for (std::size_t i = 0; i < line.size(); ++i) {
        if (!line[i].is_arc() || !back[i].is_arc()) continue;
        const auto on_it =
            static_cast<std::size_t>(static_cast<double>(one.points) * length(line[i]) / whole);
        CHECK(std::abs(radius(back[i]) - radius(line[i])) < bound_on(line[i], on_it, one.scatter, 0.05));
      }
    }
  }
}

TEST_CASE("classical mouldings, sampled with scatter, come back as they were drawn", "[trace][round_trip]") {
  int done = 0;
  for (const Classical& one : kClassical)
    round_trips(one.name, classical(one), {{400, 0}, {500, 0.02}, {900, 0.05}, {2000, 0.1}}, done);
  CHECK(done >= 6 * 4 * seeds());
}

TEST_CASE("the examples, sampled with scatter, come back as they are", "[trace][round_trip]") {
  int done = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(ARRISLINE_SOURCE_DIR) + "/examples")) {
    if (entry.path().extension() != ".profile") continue;
    const Reading<Section> reading = read_profile_file(entry.path().string());
    REQUIRE(reading.value);
    const std::vector<Edge> line = worked_line(*reading.value);
    // What starts on the back edge, or lies on the underside, is no line from the face to the working edge.
    const bool usual = line.front().from.y == 0 && (line.back().to.x == 0 || line.back().to.y == 0);
    if (!usual || reading.value->elements.front().chain != Chain::face) continue;
    round_trips(entry.path().filename().string(), *reading.value,
                {{400, 0}, {500, 0.02}, {900, 0.05}, {2000, 0.1}}, done);
  }
  CHECK(done >= 8 * 4 * seeds());
}

TEST_CASE("points in any order are put in the order of the line", "[trace][order]") {
  for (const Classical& one : {kClassical[0], kClassical[1], kClassical[2]}) {
    const Section section = classical(one);
    Digitiser by;
    by.any_order = true;
    for (const Case& how : {Case{300, 0}, Case{600, 0.02}, Case{900, 0.05}}) {
      by.points = how.points;
      by.scatter = how.scatter;
      INFO(one.name << " " << how.points);
      std::string why;
      const auto found = fit_tracing(digitised(with_sides(worked_line(section), 6), by, 11), {}, &why);
      REQUIRE(found);
      CHECK(kinds(worked_line(found->section)) == kinds(worked_line(section)));
    }
  }
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
  FitOptions options;
  options.division = 0.5;
  std::string why;
  const auto found = fit_tracing(tracing, options, &why);
  INFO(why);
  REQUIRE(found);
  CHECK(found->section.width == 40);
  CHECK(found->section.thickness == 20);
  REQUIRE(found->section.target.size() == section.target.size());
  CHECK(area(found->section.target) == Approx(area(section.target)).margin(0.01));
  const std::string text = profile_text(drawing_of(found->section, Unit::mm));
  INFO(text);
  const Section again = section_of(text);
  CHECK(area(again.target) == Approx(area(section.target)).margin(0.01));
  CHECK(std::count_if(again.elements.begin(), again.elements.end(),
                      [](const Element& e) { return e.chain == Chain::underside; }) == 2);
}

TEST_CASE("what is flat, or too few points, makes no profile", "[trace]") {
  std::string why;
  Tracing flat;
  for (int i = 0; i < 50; ++i) flat.points.push_back({i * 1.0, 0});
  CHECK_FALSE(fit_tracing(flat, {}, &why));
  CHECK(why == "there is no moulding in it: what is traced is flat; trace the whole line of the section");
  Tracing few;
  few.points = {{0, 0}, {1, 1}, {2, 1}};
  CHECK_FALSE(fit_tracing(few, {}, &why));
  CHECK(why == "so few points tell no line; measure at least 4, and better some hundred");
  Tracing apart;
  apart.points = {{0, 0}, {0, 5}, {5, 5}, {5, 10}, {20, 10}};
  CHECK_FALSE(fit_tracing(apart, {}, &why));
  CHECK(why == "no flats and arcs follow points that lie so far apart; measure more of them, and closer");
}

}  // namespace
}  // namespace arrisline::testing
