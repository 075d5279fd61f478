// Drawings have no scatter: what is drawn comes back with its own figures, and what departs from one flat or
// arc by more than the tolerance is never made one with it.
#include <cmath>
#include <random>
#include <tuple>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

std::string group(int code, double value) {
  return std::to_string(code) + "\n" + std::to_string(value) + "\n";
}

/// DXF in mm, y up, of lines and arcs as a draughtsman has them.
class Drawn {
 public:
  void line(Point from, Point to) {
    entities_ +=
        "0\nLINE\n8\n0\n" + group(10, from.x) + group(20, from.y) + group(11, to.x) + group(21, to.y);
  }
  void arc(Point centre, double r, double from, double until) {
    entities_ += "0\nARC\n8\n0\n" + group(10, centre.x) + group(20, centre.y) + group(40, r) +
                 group(50, from) + group(51, until);
  }
  Tracing read() const {
    return traced("0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" +
                      entities_ + "0\nENDSEC\n0\nEOF\n",
                  "a.dxf");
  }

 private:
  std::string entities_;
};

std::vector<Edge> found_in(const Drawn& drawn) {
  std::string why;
  const auto found = fit_tracing(drawn.read(), {}, &why);
  INFO(why);
  REQUIRE(found);
  return worked_line(found->section);
}

/// How far the worked line lies from the points of the drawing that are lower than so much and off the edge.
double departs(const std::vector<Edge>& line, const Tracing& drawn, double below) {
  double most = 0;
  for (const Point& p : drawn.points) {
    const Point at = {p.x, -p.y};
    if (at.y < below || at.y > line.back().to.y) continue;
    double least = HUGE_VAL;
    for (const Edge& edge : line) least = std::min(least, distance(at, edge));
    most = std::max(most, least);
  }
  return most;
}

TEST_CASE("flats and quadrants of a drawing come back with their own figures", "[trace][drawn]") {
  Drawn drawn;
  drawn.line({30, 0}, {20.35, 0});
  drawn.line({20.35, 0}, {20.35, -3.3});
  drawn.arc({13.05, -3.3}, 7.3, 270, 360);
  drawn.line({13.05, -10.6}, {4.45, -10.6});
  drawn.arc({4.45, -15.05}, 4.45, 90, 180);
  drawn.line({0, -15.05}, {0, -25});
  const std::vector<Edge> back = found_in(drawn);
  REQUIRE(kinds(back) == "step cove fillet bead ");
  constexpr double kExact = 1e-3;
  CHECK(back[0].from.x == Approx(20.35).margin(kExact));
  CHECK(length(back[0]) == Approx(3.3).margin(kExact));
  CHECK(radius(back[1]) == Approx(7.3).margin(kExact));
  CHECK(length(back[2]) == Approx(8.6).margin(kExact));
  CHECK(radius(back[3]) == Approx(4.45).margin(kExact));
}

TEST_CASE("what was drawn by figures is not rounded to the division of the gauge", "[trace][drawn][snap]") {
  // A cavetto of 3/8 in, and the two arcs of an ogee of one radius, in a shop that works to half a
  // millimetre.
  FitOptions shop;
  shop.division = 0.5;
  Drawn cavetto;
  cavetto.line({25, 0}, {15.525, 0});
  cavetto.line({15.525, 0}, {15.525, -3});
  cavetto.line({15.525, -3}, {12.525, -3});
  cavetto.arc({3, -3}, 9.525, 270, 360);
  cavetto.line({3, -12.525}, {0, -12.525});
  cavetto.line({0, -12.525}, {0, -20});
  Drawn ogee;
  ogee.line({20, 0}, {9.68, 0});
  ogee.line({9.68, 0}, {9.68, -2});
  ogee.arc({6.34, -2}, 3.34, 300, 360);
  ogee.arc({9.68, -2 - 6.68 * std::sin(to_radians(60))}, 3.34, 120, 180);
  ogee.line({6.34, -2 - 6.68 * std::sin(to_radians(60))}, {0, -2 - 6.68 * std::sin(to_radians(60))});
  ogee.line({0, -2 - 6.68 * std::sin(to_radians(60))}, {0, -20});
  for (const auto& [drawn, said, radii] :
       {std::tuple(cavetto, "step fillet cove fillet ", std::vector<double>{9.525}),
        std::tuple(ogee, "step cove bead fillet ", std::vector<double>{3.34, 3.34})}) {
    std::string why;
    const auto found = fit_tracing(drawn.read(), shop, &why);
    INFO(why);
    REQUIRE(found);
    const std::vector<Edge> back = worked_line(found->section);
    CHECK(kinds(back) == said);
    std::vector<double> arcs;
    for (const Edge& edge : back) {
      if (edge.is_arc()) arcs.push_back(radius(edge));
    }
    REQUIRE(arcs.size() == radii.size());
    for (std::size_t i = 0; i < arcs.size(); ++i) CHECK(arcs[i] == Approx(radii[i]).margin(0.002));
  }
}

TEST_CASE("a line that runs smoothly into an edge that is not drawn keeps its figures", "[trace][drawn]") {
  // A step and an ovolo down to the working edge, of which nothing is drawn; with the face, and without.
  for (const double r : {4.0, 6.0, 7.5, 8.0, 9.525, 10.0, 12.0}) {
    for (const bool face : {true, false}) {
      INFO("radius " << r << (face ? ", face drawn" : ""));
      Drawn ovolo;
      if (face) ovolo.line({r + 7, 0}, {r, 0});
      ovolo.line({r, 0}, {r, -3});
      ovolo.arc({r, -3 - r}, r, 90, 180);
      const std::vector<Edge> back = found_in(ovolo);
      REQUIRE(kinds(back) == "step bead ");
      constexpr double kExact = 1e-3;
      CHECK(back[0].from.x == Approx(r).margin(kExact));
      CHECK(length(back[0]) == Approx(3).margin(kExact));
      CHECK(radius(back[1]) == Approx(r).margin(kExact));
      CHECK(back[1].to.y == Approx(3 + r).margin(kExact));
    }
  }
}

TEST_CASE("an arc that meets an edge that is not drawn ends where it was drawn to", "[trace][drawn]") {
  // At an angle to it: half a bead, its lowest point level with its ends.
  const std::vector<Edge> back = found_in([] {
    Drawn bead;
    bead.line({20, 0}, {10, 0});
    bead.line({10, 0}, {10, -4});
    const double aside = to_degrees(std::asin(5.0 / 6));
    bead.arc({5, -4 - std::sqrt(11.0)}, 6, 90 - aside, 90 + aside);
    return bead;
  }());
  REQUIRE(kinds(back) == "step bead ");
  CHECK(back[1].to.y == Approx(4).margin(1e-3));
  CHECK(radius(back[1]) == Approx(6).margin(1e-3));
}

/// Two level flats a step of so much apart, face and working edge beside them.
Drawn stepped(double step, double larger = 1) {
  const double n = larger;
  Drawn out;
  out.line({30 * n, 0}, {24 * n, 0});
  out.line({24 * n, 0}, {24 * n, -5 * n});
  out.line({24 * n, -5 * n}, {12 * n, -5 * n});
  out.line({12 * n, -5 * n}, {12 * n, -5 * n - step});
  out.line({12 * n, -5 * n - step}, {0, -5 * n - step});
  out.line({0, -5 * n - step}, {0, -20 * n});
  return out;
}

TEST_CASE("a step is kept from twice the tolerance on, and may go below it", "[trace][drawn]") {
  // One flat between the two lies half the step from each.
  for (const double step : {0.11, 0.15, 0.3, 1.0}) {
    INFO(step);
    CHECK(kinds(found_in(stepped(step))) == "step fillet step fillet ");
    // Ten times as large, where the line's samples are farther apart than the step is high.
    CHECK(kinds(found_in(stepped(step, 10))) == "step fillet step fillet ");
  }
  CHECK(found_in(stepped(0.04)).size() == 2);
  FitOptions fine;
  fine.tolerance = 0.01;
  std::string why;
  const auto kept = fit_tracing(stepped(0.04).read(), fine, &why);
  REQUIRE(kept);
  CHECK(kinds(worked_line(kept->section)) == "step fillet step fillet ");
  CHECK(length(worked_line(kept->section)[2]) == Approx(0.04).margin(2e-3));
}

/// How far the nearest single arc lies from a run of points: the greatest distance made small by ever smaller
/// moves of the centre, from far and near beginnings.
double departure_of_one_arc(const std::vector<Point>& points) {
  auto departs = [&](Point centre) {
    double least = HUGE_VAL, most = 0;
    for (const Point& p : points) {
      least = std::min(least, distance(p, centre));
      most = std::max(most, distance(p, centre));
    }
    return (most - least) / 2;
  };
  const Point middle = points[points.size() / 2];
  const Point chord = points.back() - points.front();
  const Point square = (1 / norm(chord)) * Point{-chord.y, chord.x};
  double best = HUGE_VAL;
  for (const double r : {-30.0, -10.0, -3.0, 3.0, 10.0, 30.0}) {
    Point at = middle + r * square;
    double now = departs(at);
    for (double move = 4; move > 1e-6; move /= 2) {
      for (int tried = 0; tried < 40; ++tried) {
        bool better = false;
        for (int k = 0; k < 16; ++k) {
          const double angle = k * kPi / 8;
          const Point next = at + move * Point{std::cos(angle), std::sin(angle)};
          if (departs(next) < now) now = departs(next), at = next, better = true;
        }
        if (!better) break;
      }
    }
    best = std::min(best, now);
  }
  return best;
}

TEST_CASE("arcs that no one arc follows within the tolerance stay two", "[trace][drawn][campaign]") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> radii(3, 15), angles(25, 65);
  int differ = 0, both = 0;
  for (int n = 0; n < 40; ++n) {
    // A round of two radii, level at its top and upright at the working edge.
    const double r1 = radii(random);
    const double r2 = radii(random);
    const double turn = angles(random);
    const double a = to_radians(turn);
    const Point joint = {-r1 * std::sin(a), r1 * std::cos(a)};  // from the centre of the first
    const Point second = (1 - r2 / r1) * joint;
    const Point end = second - Point{r2, 0};
    const Point shift = {-end.x, -5 - r1};
    std::vector<Point> points;
    for (int k = 0; k <= 60; ++k) {
      const double t = a * k / 60;
      points.push_back({-r1 * std::sin(t), r1 * std::cos(t)});
    }
    for (int k = 1; k <= 60; ++k) {
      const double t = a + (kPi / 2 - a) * k / 60;
      points.push_back(second + r2 * Point{-std::sin(t), std::cos(t)});
    }
    if (departure_of_one_arc(points) < 0.06) continue;
    ++differ;
    Drawn drawn;
    const Point first = shift;
    drawn.line({first.x + 6, 0}, {first.x, 0});
    drawn.line({first.x, 0}, {first.x, first.y + r1});
    drawn.arc(first, r1, 90, 90 + turn);
    drawn.arc(second + shift, r2, 90 + turn, 180);
    drawn.line(end + shift, end + shift - Point{0, 8});
    INFO("radii " << r1 << " and " << r2 << ", " << turn << " degrees");
    const std::vector<Edge> back = found_in(drawn);
    CHECK(back.size() >= 3);
    CHECK(departs(back, drawn.read(), 5) <= 0.05 + 0.002);
    if (kinds(back) != "step bead bead ") continue;  // one of them may be a flat within the tolerance
    ++both;
    CHECK(radius(back[1]) == Approx(r1).epsilon(0.01));
    CHECK(radius(back[2]) == Approx(r2).epsilon(0.01));
  }
  CHECK(differ >= 15);
  CHECK(both >= differ / 2);
}

/// What is found of a step, a fillet and a bead that leaves it at a small corner, in SVG whose figures are in
/// so many mm.
FittedProfile fillet_before_bead(double fillet, double mm) {
  FitOptions options;
  options.division = 0.5;
  options.mm_per_unit = mm;
  std::string why;
  const auto found =
      fit_tracing(traced("<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 "
                         "100 100'><path d='M0 0h10v3h" +
                             std::to_string(fillet) + "a6.5 6.5 0 0 1 5 4h2v6'/></svg>",
                         "a.svg"),
                  options, &why);
  INFO(why);
  REQUIRE(found);
  return *found;
}

TEST_CASE("a fillet of a drawing is not lost in the bead beside it where their figures are whole",
          "[trace][drawn][snap]") {
  for (const double fillet : {1.0, 1.5, 2.0}) {
    const FittedProfile found = fillet_before_bead(fillet, 1);
    const std::vector<Edge> line = worked_line(found.section);
    INFO("fillet " << fillet);
    REQUIRE(kinds(line) == "step fillet bead fillet ");
    CHECK(distance(line[0].from, line[0].to) == Approx(3).margin(1e-9));
    CHECK(distance(line[1].from, line[1].to) == Approx(fillet).margin(1e-9));
    CHECK(std::abs(line[2].to.x - line[2].from.x) == Approx(5).margin(1e-9));
    CHECK(std::abs(line[2].to.y - line[2].from.y) == Approx(4).margin(1e-9));
    CHECK(radius(line[2]) == Approx(6.5).margin(1e-9));
    for (const FitOfElement& fit : found.fits) CHECK(fit.greatest < 0.004);
  }
}

TEST_CASE("nor where they are not", "[trace][drawn]") {
  for (const double fillet : {1.0, 2.0})
    CHECK(kinds(worked_line(fillet_before_bead(fillet, 1.0137).section)) == "step fillet bead fillet ");
}

TEST_CASE("a whole section drawn by figures keeps them as an open line of it does", "[trace][closed]") {
  // By sixteenths of an inch, on a stock a twentieth of a millimetre off a half.
  const std::string line =
      "M44.45 0V3.175A9.525 9.525 0 0 1 34.925 12.7H28.575V15.875A9.525 9.525 0 0 0 19.05 25.4H12.7V28.575"
      "A15.875 15.875 0 0 1 0 38.1";
  const FittedProfile open = on_halves(traced_path("M52.45 0H44.45" + line.substr(line.find('V')) + "V44.1"));
  const FittedProfile whole = on_halves(traced_path(line + "V44.1H52.45V0Z"));
  CHECK(whole.section.width == Approx(52.45).margin(1e-4));
  CHECK(whole.section.thickness == Approx(44.1).margin(1e-4));
  const std::vector<Edge> of_open = worked_line(open.section);
  const std::vector<Edge> of_whole = worked_line(whole.section);
  REQUIRE(kinds(of_open) == "step cove fillet step bead fillet step cove ");
  REQUIRE(kinds(of_whole) == kinds(of_open));
  for (std::size_t i = 0; i < of_open.size(); ++i) {
    CHECK(distance(of_whole[i].from, of_open[i].from) < 1e-4);
    if (of_open[i].is_arc()) CHECK(radius(of_whole[i]) == Approx(radius(of_open[i])).margin(1e-4));
  }
}

TEST_CASE("a drawing of few decimals is as exact as they are", "[trace][drawn][snap]") {
  // A congé of 3 mm under a step of 5, in inches to three decimals: its upper end comes to lie 0.001 in
  // beside the step.
  const Tracing tracing =
      traced(dxf_of("0 ARC 10 4.409 20 1.772 40 0.118 50 270.000 51 0.000 "
                    "0 LINE 10 4.528 20 1.969 11 4.843 21 1.969 0 LINE 10 4.094 20 1.496 11 4.094 21 1.654 "
                    "0 LINE 10 4.094 20 1.654 11 4.409 21 1.654 0 LINE 10 4.528 20 1.969 11 4.528 21 1.772 "
                    "0 LINE 10 4.094 20 1.496 11 3.937 21 1.496 0 LINE 10 3.937 20 1.496 11 3.937 21 1.260",
                    "9 $INSUNITS 70 1"),
             "a.dxf");
  CHECK(tracing.step == Approx(0.001));
  FitOptions options;
  options.mm_per_unit = kMmPerInch;
  options.division = kMmPerInch / 32;
  std::string why;
  const auto found = fit_tracing(tracing, options, &why);
  INFO(why);
  REQUIRE(found);
  CHECK(kinds(worked_line(found->section)) == "step cove fillet step fillet ");
}

}  // namespace
}  // namespace arrisline::testing
