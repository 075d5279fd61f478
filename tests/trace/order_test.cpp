// Points in no order give the profile that they give in the order of the line, wherever they tell it.
#include "trace/order.h"

#include <chrono>
#include <map>
#include <random>
#include <sstream>

#include "catch.h"
#include "trace/mouldings.h"
#include "trace/spread.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// The least distance of two places of the line that are over three times as far from each other along it.
double narrowest_cleft(const std::vector<Edge>& line) {
  constexpr double kStep = 0.05;
  std::vector<Point> places;
  std::vector<double> way;
  double whole = 0;
  for (const Edge& edge : line) {
    const int parts = std::max(2, static_cast<int>(length(edge) / kStep));
    for (int k = 0; k < parts; ++k) {
      const double share = static_cast<double>(k) / parts;
      places.push_back(point_at(edge, share));
      way.push_back(whole + share * length(edge));
    }
    whole += length(edge);
  }
  double least = HUGE_VAL;
  for (std::size_t i = 0; i < places.size(); ++i) {
    for (std::size_t j = i + 1; j < places.size(); ++j) {
      const double d = distance(places[i], places[j]);
      if (way[j] - way[i] > 10 * kStep && way[j] - way[i] > 3 * d) least = std::min(least, d);
    }
  }
  return least;
}

/// Turned up to 9 degrees, from either end, y up or down.
Digitiser held_anyhow(std::size_t points, double scatter, int seed) {
  Digitiser out;
  out.points = points;
  out.scatter = scatter;
  out.askew = seed % 3 == 0 ? 0 : (seed * 37 % 19) - 9;
  out.backward = seed % 2 == 0;
  out.y_up = seed % 5 == 1;
  return out;
}

struct Counted {
  int clear = 0, clear_alike = 0;         // no cleft is narrower than six times the scatter
  int narrow = 0, narrow_alike = 0;       // one is
  int narrow_other = 0, narrow_said = 0;  // came out otherwise; of those, said to be unsure or refused
};

/// The same points in the order of the line and in none.
void compare(const Moulding& one, std::size_t points, double scatter, int seed, Counted& counted) {
  const std::vector<Edge> drawn = with_sides(worked_line(one.section), 6);
  double whole = 0;
  for (const Edge& edge : drawn) whole += length(edge);
  Digitiser by = held_anyhow(points, scatter, seed);
  std::string why;
  const auto in_order = fit_tracing(digitised(drawn, by, static_cast<unsigned>(seed)), {}, &why);
  REQUIRE(in_order);
  by.any_order = true;
  const auto shuffled = fit_tracing(digitised(drawn, by, static_cast<unsigned>(seed)), {}, &why);
  const std::vector<Edge> wanted = worked_line(in_order->section);
  const std::vector<Edge> back = shuffled ? worked_line(shuffled->section) : std::vector<Edge>{};
  bool alike = kinds(back) == kinds(wanted);
  for (std::size_t i = 0; alike && i < wanted.size(); ++i) {
    if (!wanted[i].is_arc()) continue;
    const auto on_it = static_cast<std::size_t>(static_cast<double>(points) * length(wanted[i]) / whole);
    alike = std::abs(radius(back[i]) - radius(wanted[i])) < bound_on(wanted[i], on_it, scatter, 0.05);
  }
  const bool clear = narrowest_cleft(drawn) > 6 * scatter && narrowest_cleft(drawn) > 0.1;
  ++(clear ? counted.clear : counted.narrow);
  if (alike) ++(clear ? counted.clear_alike : counted.narrow_alike);
  if (alike) return;
  const bool said = !shuffled || !shuffled->unclear.empty();
  if (!clear) ++counted.narrow_other, counted.narrow_said += said ? 1 : 0;
  WARN(one.name << ", " << points << " points, scatter " << scatter << " mm, seed " << seed
                << (clear ? "" : " (narrow)") << ": in order " << kinds(wanted) << "- in none "
                << (shuffled ? kinds(back) : why) << (said ? " (said)" : ""));
}

std::vector<Moulding> all_mouldings() {
  std::vector<Moulding> out = usual_examples();
  for (const Classical& one : kClassical) out.push_back({one.name, classical(one)});
  for (const Classical& one : kCleft) out.push_back({one.name, classical(one)});
  return out;
}

TEST_CASE("points in no order give what they give in the order of the line", "[trace][order][campaign]") {
  const bool all = std::getenv("ARRISLINE_TRACE_SEEDS") != nullptr;
  struct Case {
    std::size_t points;
    double scatter;
  };
  std::vector<Case> cases = {{200, 0}, {300, 0.02}, {500, 0.1}};
  if (all) {
    cases.clear();
    for (const std::size_t points : {200U, 500U, 1000U, 2000U})
      for (const double scatter : {0.0, 0.02, 0.05, 0.1}) cases.push_back({points, scatter});
  }
  Counted counted;
  for (const Moulding& one : all_mouldings())
    for (const Case& how : cases)
      for (int seed = 1; seed <= (all ? seeds() : 1); ++seed)
        compare(one, how.points, how.scatter, seed, counted);
  if (all)
    WARN("alike: " << counted.clear_alike << " of " << counted.clear << " without a narrow cleft, "
                   << counted.narrow_alike << " of " << counted.narrow << " with one");
  CHECK(counted.clear >= 50);
  CHECK(counted.narrow >= 5);
  CHECK(counted.clear_alike >= 0.95 * counted.clear);
  // What comes out otherwise where a cleft is narrow is said to be unsure.
  CHECK(counted.narrow_said == counted.narrow_other);
}

// Points at random come as far apart as some eight times their spacing, and so do the two ends of the way.
TEST_CASE("a whole section by points at random in no order is closed", "[trace][order][closed]") {
  const Section section = section_of(
      "units mm\nstock 25 wide, 21 thick\nstart face 13\nstep down 3\nbead out 10 down 10\nfillet out 3\n");
  double whole = 0;
  for (const Edge& edge : section.target) whole += length(edge);
  int right = 0;
  constexpr unsigned kSeeds = 10;
  for (unsigned seed = 1; seed <= kSeeds; ++seed) {
    std::mt19937 random(seed);
    Tracing tracing;
    while (tracing.points.size() < 600) {
      double at = whole * static_cast<double>(random()) / 4294967296.0;
      std::size_t i = 0;
      while (i + 1 < section.target.size() && at > length(section.target[i]))
        at -= length(section.target[i++]);
      tracing.points.push_back(point_at(section.target[i], std::min(1.0, at / length(section.target[i]))));
    }
    FitOptions options;
    options.division = 0.5;
    INFO("seed " << seed);
    std::string why;
    const auto found = fit_tracing(tracing, options, &why);
    INFO(why);
    REQUIRE(found);
    CHECK(found->section.width == 25);
    CHECK(found->section.thickness == 21);
    right += kinds(worked_line(found->section)) == "step bead fillet " ? 1 : 0;
  }
  CHECK(right >= 9);  // of one the farthest gap is a corner, which looks cut off
}

// Points of which several lie within their scatter of one another along the line: of a few of them in a row
// nothing tells how far they scatter.
TEST_CASE("points in no order that lie far closer than they scatter are no slower and no worse",
          "[trace][order]") {
  const std::vector<Edge> drawn = with_sides(worked_line(classical(kClassical[0])), 6);
  struct Case {
    std::size_t points;
    double scatter;
  };
  for (const Case& one : {Case{1000, 0.2}, Case{1600, 0.1}, Case{2200, 0.1}, Case{2000, 0.08}}) {
    Digitiser by;
    by.points = one.points;
    by.scatter = one.scatter;
    by.any_order = true;
    INFO(one.points << " points, scatter " << one.scatter);
    std::string why;
    const auto found = fit_tracing(digitised(drawn, by, 3), {}, &why);
    INFO(why);
    REQUIRE(found);
    CHECK(found->scatter == Approx(one.scatter).epsilon(0.15));
    CHECK(kinds(worked_line(found->section)) == "step bead fillet ");
  }
}

TEST_CASE("a shuffled line without scatter is put in its very order", "[trace][order]") {
  for (const Moulding& one : all_mouldings()) {
    // The sides of a cusp come nearer to each other than any points are apart.
    const std::vector<Edge> drawn = with_sides(worked_line(one.section), 6);
    if (narrowest_cleft(drawn) < 0.5) continue;
    INFO(one.name);
    Digitiser by = held_anyhow(600, 0, 1);
    const Tracing straight = digitised(drawn, by, 1);
    by.any_order = true;
    bool changed = false;
    std::vector<Point> found = in_line(digitised(drawn, by, 1).points, changed);
    CHECK(changed);
    if (distance(found.front(), straight.points.front()) > distance(found.back(), straight.points.front()))
      std::reverse(found.begin(), found.end());
    CHECK(found == straight.points);
  }
}

TEST_CASE("points that stand in the order of the line keep it, from either end", "[trace][order]") {
  const std::vector<Edge> drawn = with_sides(worked_line(classical(kCleft[0])), 6);
  for (const int seed : {1, 2}) {
    for (const double scatter : {0.0, 0.1}) {
      const Tracing tracing = digitised(drawn, held_anyhow(2000, scatter, seed), 3);
      bool changed = true;
      CHECK(in_line(tracing.points, changed) == tracing.points);
      CHECK_FALSE(changed);
    }
  }
}

TEST_CASE("where points in no order do not tell the sides of a cleft apart, the place is said",
          "[trace][order]") {
  // The torus of a Tuscan base meets its plinth in a cusp, 15 mm from where the torus is widest.
  const std::vector<Edge> line = worked_line(classical(kClassical[3]));
  Digitiser by = held_anyhow(1000, 0.05, 3);
  std::string why;
  const auto in_order = fit_tracing(digitised(with_sides(line, 6), by, 3), {}, &why);
  REQUIRE(in_order);
  CHECK_FALSE(in_order->put_in_order);
  CHECK(in_order->unclear.empty());
  by.any_order = true;
  const auto shuffled = fit_tracing(digitised(with_sides(line, 6), by, 3), {}, &why);
  REQUIRE(shuffled);
  CHECK(shuffled->put_in_order);
  REQUIRE(shuffled->unclear.size() == 1);
  CHECK(shuffled->unclear[0].gap <= 0.3);
  CHECK(distance(shuffled->unclear[0].at, line[3].to) < 4);
}

TEST_CASE("how far points scatter and how close they lie is told in any order", "[trace][order]") {
  const std::vector<Edge> drawn = with_sides(worked_line(classical(kClassical[0])), 6);
  double whole = 0;
  for (const Edge& edge : drawn) whole += length(edge);
  for (const double scatter : {0.0, 0.02, 0.1}) {
    for (const std::size_t points : {300U, 2000U}) {
      Digitiser by = held_anyhow(points, scatter, 3);
      by.any_order = true;
      const Tracing tracing = digitised(drawn, by, 3);
      const Density found = density_of(tracing.points, NearPoints(tracing.points, 0));
      INFO(points << " points, scatter " << scatter);
      CHECK(found.scatter == Approx(scatter).epsilon(0.2).margin(1e-3));
      CHECK(found.spacing == Approx(whole / static_cast<double>(points)).epsilon(0.25));
    }
  }
}

}  // namespace
}  // namespace arrisline::testing
