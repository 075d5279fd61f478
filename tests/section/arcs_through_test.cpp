// Smooth curves as arcs: against closed forms, and measured a second way.
#include "section/arcs_through.h"

#include <algorithm>
#include <cmath>

#include "catch.h"

using namespace arrisline;

namespace {

SmoothCurve quarter_ellipse(double a, double b) {
  return {[=](double t) {
            return Point{a * std::sin(t * kPi / 2), b * (1 - std::cos(t * kPi / 2))};
          },
          [=](double t) {
            return Point{a * std::cos(t * kPi / 2), b * std::sin(t * kPi / 2)};
          }};
}

/// Arcs follow one another in position and direction, within rounding.
void check_smooth(const SmoothCurve& curve, const FittedArcs& arcs) {
  REQUIRE(!arcs.edges.empty());
  const auto unit = [](Point p) { return (1 / norm(p)) * p; };
  CHECK(distance(arcs.edges.front().from, curve.at(0)) < 1e-12);
  CHECK(distance(arcs.edges.back().to, curve.at(1)) < 1e-12);
  CHECK(distance(direction_at(arcs.edges.front(), 0), unit(curve.direction(0))) < 1e-9);
  CHECK(distance(direction_at(arcs.edges.back(), 1), unit(curve.direction(1))) < 1e-9);
  for (std::size_t i = 0; i < arcs.edges.size(); ++i) {
    const Edge& edge = arcs.edges[i];
    CHECK(std::abs(distance(edge.centre, edge.from) - distance(edge.centre, edge.to)) < 1e-9);
    if (i == 0) continue;
    CHECK(edge.from == arcs.edges[i - 1].to);
    CHECK(distance(direction_at(edge, 0), direction_at(arcs.edges[i - 1], 1)) < 1e-9);
  }
}

/// The greatest distance, measured anew: points of the arcs against chords of the curve, and points of the
/// curve, between those that the fit looked at, against the arcs.
double measured(const SmoothCurve& curve, const FittedArcs& arcs) {
  constexpr int kChords = 5003;
  std::vector<Edge> chords;
  double worst = 0;
  for (int i = 0; i < kChords; ++i) {
    chords.push_back(
        {curve.at(i / double{kChords}), curve.at((i + 1) / double{kChords}), {}, Turn::straight});
    worst = std::max(worst, distance(chords.back().from, arcs.edges));
  }
  for (const Edge& edge : arcs.edges)
    for (int i = 0; i <= 40; ++i) worst = std::max(worst, distance(point_at(edge, i / 40.0), chords));
  return worst;
}

}  // namespace

TEST_CASE("quarters of ellipses and parabolas become smooth arcs within the tolerance", "[section][arcs]") {
  int several = 0;
  for (const double b : {2.0, 5.0, 9.0, 14.0, 40.0}) {
    for (const double tolerance : {0.2, 0.05, 0.002}) {
      CAPTURE(b, tolerance);
      const SmoothCurve ellipse = quarter_ellipse(10, b);
      const SmoothCurve parabola{[=](double t) {
                                   return Point{10 * t, b * t * t};
                                 },
                                 [=](double t) {
                                   return Point{10, 2 * b * t};
                                 }};
      for (const SmoothCurve& curve : {ellipse, parabola}) {
        const FittedArcs arcs = arcs_through(curve, tolerance);
        check_smooth(curve, arcs);
        CHECK(arcs.greatest <= tolerance);
        const double again = measured(curve, arcs);
        CHECK(again <= tolerance * 1.001);
        CHECK(again == Approx(arcs.greatest).epsilon(0.02).margin(1e-6));
        several += arcs.edges.size() > 2;
      }
    }
  }
  CHECK(several >= 10);
}

TEST_CASE("a circle becomes one arc", "[section][arcs]") {
  const FittedArcs arcs = arcs_through(quarter_ellipse(7, 7), 0.01);
  REQUIRE(arcs.edges.size() == 1);
  CHECK(radius(arcs.edges[0]) == Approx(7).epsilon(1e-9));
  CHECK(arcs.greatest < 1e-9);
}

TEST_CASE("arcs approach the curvature and the area of the ellipse", "[section][arcs]") {
  // Closed forms: the radii of curvature at the vertices are a²/b and b²/a; a quarter's area is πab/4.
  constexpr double a = 12;
  constexpr double b = 8;
  const FittedArcs arcs = arcs_through(quarter_ellipse(a, b), 1e-4);
  CHECK(radius(arcs.edges.front()) == Approx(a * a / b).epsilon(0.03));
  CHECK(radius(arcs.edges.back()) == Approx(b * b / a).epsilon(0.03));
  std::vector<Edge> outline = arcs.edges;
  outline.push_back({{a, b}, {0, b}, {}, Turn::straight});
  outline.push_back({{0, b}, {0, 0}, {}, Turn::straight});
  CHECK(area(outline) == Approx(kPi * a * b / 4).margin(1e-4 * (a + b)));
}

TEST_CASE("two arcs of a quarter are the four-centre oval, no worse than the one by rule",
          "[section][arcs]") {
  // The four-centre oval in common use (drawing-office handbooks; from memory): with d = a − b, the chord
  // AB is shortened by d and what is left is bisected at right angles; the centres lie where the bisector
  // meets the axes.
  constexpr double a = 12;
  constexpr double b = 8;
  const double chord = std::hypot(a, b);
  const double half = (chord - (a - b)) / 2;
  const double small = half * chord / a;            // radius at the end of the long axis
  const double large = (chord - half) * chord / b;  // at the end of the short axis
  FittedArcs oval;
  const Point first{0, large};
  const Point second{a - small, b};
  const Point way = second - first;
  const Point joint = first + (large / norm(way)) * way;
  REQUIRE(distance(joint, second) == Approx(small).epsilon(1e-12));
  oval.edges = {{{0, 0}, joint, first, Turn::left}, {joint, {a, b}, second, Turn::left}};
  const double by_rule = measured(quarter_ellipse(a, b), oval);
  const FittedArcs arcs = arcs_through(quarter_ellipse(a, b), by_rule);
  REQUIRE(arcs.edges.size() == 2);
  CHECK(arcs.greatest <= by_rule);
}

TEST_CASE("half a turn is divided", "[section][arcs]") {
  const SmoothCurve half{[](double t) {
                           return Point{3 * std::sin(t * kPi), 5 - 5 * std::cos(t * kPi)};
                         },
                         [](double t) {
                           return Point{3 * std::cos(t * kPi), 5 * std::sin(t * kPi)};
                         }};
  const FittedArcs arcs = arcs_through(half, 0.05);
  check_smooth(half, arcs);
  CHECK(arcs.edges.size() >= 4);
  CHECK(measured(half, arcs) <= 0.05 * 1.001);
}
