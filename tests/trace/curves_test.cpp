// Arcs against the formulas of SVG 1.1, appendix F.6; Bezier curves against closed forms; bulges against the
// DXF reference (group 42: the tangent of a quarter of the included angle, negative clockwise).
#include "trace/curves.h"

#include <random>

#include "catch.h"

using namespace arrisline;

namespace {

constexpr std::size_t kMany = 1000000;

std::vector<Point> points_of(Point from, const Curve& curve, double chord) {
  std::vector<Point> points{from};
  REQUIRE(append_points(from, curve, chord, kMany, points));
  return points;
}

Point on(const Curve& arc, double angle) {
  return arc.centre + std::cos(angle) * arc.a + std::sin(angle) * arc.b;
}

Curve cubic(Point a, Point b, Point to) {
  Curve curve;
  curve.kind = Curve::Kind::cubic;
  curve.a = a;
  curve.b = b;
  curve.to = to;
  return curve;
}

Point cubic_at(Point from, const Curve& c, double t) {
  const double u = 1 - t;
  return u * u * u * from + 3 * u * u * t * c.a + 3 * u * t * t * c.b + t * t * t * c.to;
}

}  // namespace

TEST_CASE("an elliptical arc has the centre and the sweep that it was made of", "[trace][curves]") {
  // F.6.4 gives ends and flags from the centre; F.6.5 has to lead back.
  std::mt19937 random(3);
  std::uniform_real_distribution<double> share(0, 1);
  int large_ones = 0;
  for (int i = 0; i < 2000; ++i) {
    const Point centre{20 * share(random) - 10, 20 * share(random) - 10};
    const double rx = 0.1 + 10 * share(random);
    const double ry = 0.1 + 10 * share(random);
    const double degrees = 720 * share(random) - 360;
    const double from = 2 * kPi * share(random);
    double swept = 2 * kPi * (0.01 + 0.98 * share(random));
    if (i % 2 == 0) swept = -swept;
    if (std::fabs(std::fabs(swept) - kPi) < 0.01) continue;  // both arcs are as large there
    const double phi = to_radians(degrees);
    const auto at = [&](double t) {  // F.6.3.1
      return centre + Point{std::cos(phi) * rx * std::cos(t) - std::sin(phi) * ry * std::sin(t),
                            std::sin(phi) * rx * std::cos(t) + std::cos(phi) * ry * std::sin(t)};
    };
    const bool large = std::fabs(swept) > kPi;
    large_ones += large ? 1 : 0;
    const Curve arc = elliptical_arc(at(from), at(from + swept), rx, ry, degrees, large, swept > 0);
    REQUIRE(arc.kind == Curve::Kind::arc);
    CHECK(distance(arc.centre, centre) < 1e-7);
    CHECK(arc.until - arc.from == Approx(swept).margin(1e-7));
    CHECK(arc.to == at(from + swept));
    for (const double part : {0.0, 0.3, 0.5, 1.0})
      CHECK(distance(on(arc, arc.from + part * (arc.until - arc.from)), at(from + part * swept)) < 1e-7);
  }
  CHECK(large_ones > 500);
}

TEST_CASE("arcs out of the ordinary are as appendix F.6.2 and F.6.6 say", "[trace][curves]") {
  // Radii too small are made larger, in proportion, until the ellipse just fits: half of one.
  const Curve small = elliptical_arc({0, 0}, {10, 0}, 2, 1, 0, false, true);
  CHECK(distance(small.centre, Point{5, 0}) < 1e-9);
  CHECK(norm(small.a) == Approx(5));
  CHECK(norm(small.b) == Approx(2.5));
  CHECK(small.until - small.from == Approx(kPi));
  // With y down and the sweep flag set, angles grow: over negative y.
  CHECK(distance(on(small, (small.from + small.until) / 2), Point{5, -2.5}) < 1e-9);
  // The sign of a radius is dropped; a radius of 0 makes a line.
  const Curve negative = elliptical_arc({0, 0}, {10, 0}, -8, 7, 30, true, false);
  const Curve positive = elliptical_arc({0, 0}, {10, 0}, 8, -7, 30, true, false);
  CHECK(negative.centre == positive.centre);
  CHECK(elliptical_arc({0, 0}, {10, 0}, 0, 7, 30, true, false).kind == Curve::Kind::line);
  CHECK(elliptical_arc({0, 0}, {10, 0}, 7, 0, 30, true, false).kind == Curve::Kind::line);
  // So large a radius that the arc is straight to the last digit, and all but a whole turn.
  const Curve flat = elliptical_arc({0, 0}, {1, 0}, 1e12, 1e12, 0, false, true);
  CHECK(flat.until - flat.from == Approx(1e-12).epsilon(0).margin(1e-15));
  const Curve whole = elliptical_arc({0, 0}, {1e-6, 0}, 10, 10, 0, true, true);
  CHECK(whole.until - whole.from == Approx(2 * kPi));
}

TEST_CASE("a bulge is the tangent of a quarter of the sweep", "[trace][curves]") {
  // From the DXF reference: a bulge of 0 is a straight segment, of 1 a half circle, negative is clockwise.
  const Curve half = bulged({0, 0}, {10, 0}, 1);
  CHECK(half.kind == Curve::Kind::arc);
  CHECK(distance(half.centre, Point{5, 0}) < 1e-12);
  CHECK(distance(on(half, (half.from + half.until) / 2), Point{5, -5}) <
        1e-12);  // to the left of its way: below
  const Curve clockwise = bulged({0, 0}, {10, 0}, -1);
  CHECK(distance(on(clockwise, (clockwise.from + clockwise.until) / 2), Point{5, 5}) < 1e-12);
  CHECK(bulged({0, 0}, {10, 0}, 0).kind == Curve::Kind::line);
  CHECK(bulged({3, 3}, {3, 3}, 1).kind == Curve::Kind::line);
  for (const double degrees : {1.0, 30.0, 90.0, 179.0, 270.0, 350.0, -45.0, -300.0}) {
    const double swept = to_radians(degrees);
    const double r = 7;
    const Point centre{3, -2};
    const auto at = [&](double angle) { return centre + Point{r * std::cos(angle), r * std::sin(angle)}; };
    const Curve arc = bulged(at(0.4), at(0.4 + swept), std::tan(swept / 4));
    CHECK(distance(arc.centre, centre) < 1e-9);
    CHECK(norm(arc.a) == Approx(r));
    CHECK(arc.until - arc.from == Approx(swept));
    CHECK(distance(on(arc, arc.from), at(0.4)) < 1e-9);
  }
}

TEST_CASE("chords lie within what is asked of the curve, and ends are exact", "[trace][curves]") {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> figure(-20, 20);
  for (int i = 0; i < 300; ++i) {
    const Point from{figure(random), figure(random)};
    const Curve curve = cubic({figure(random), figure(random)}, {figure(random), figure(random)},
                              {figure(random), figure(random)});
    const std::vector<Point> points = points_of(from, curve, 0.002);
    CHECK(points.back() == curve.to);
    // The curve, very finely, to the chords; by parameter, so the chord is known.
    const double steps = static_cast<double>(points.size() - 1);
    double off = 0;
    for (int k = 0; k <= 20000; ++k) {
      const double t = k / 20000.0;
      const std::size_t chord = std::min(static_cast<std::size_t>(t * steps), points.size() - 2);
      const Edge edge{points[chord], points[chord + 1], {}, Turn::straight};
      off = std::max(off, distance(cubic_at(from, curve, t), edge));
    }
    CHECK(off <= 0.002 * (1 + 1e-9));
  }
  // Of a circle the chord error is the sagitta r (1 − cos(h / 2)).
  for (const double r : {0.01, 1.0, 30.0, 2000.0}) {
    Curve circle;
    circle.kind = Curve::Kind::arc;
    circle.a = {r, 0};
    circle.b = {0, r};
    circle.to = {r, 0};
    circle.until = 2 * kPi;
    const std::vector<Point> points = points_of({r, 0}, circle, 0.002);
    CHECK(points.size() >= 5);
    for (std::size_t k = 0; k + 1 < points.size(); ++k) {
      const double half = distance(points[k], points[k + 1]) / 2;
      CHECK(r - std::sqrt(std::max(0.0, r * r - half * half)) <= 0.002 * (1 + 1e-9));
      CHECK(norm(points[k]) == Approx(r));
    }
    if (r == 30) CHECK(points.size() < 300);
  }
}

TEST_CASE("points on a Bezier curve reach as far as its closed form says", "[trace][curves]") {
  // x'(t) = 0 of (0,0) (10,0) (10,5) (0,5): x = 30 t (1 − t), greatest 7.5 at t = 1/2; y from 0 to 5.
  double most = 0;
  for (const Point p : points_of({0, 0}, cubic({10, 0}, {10, 5}, {0, 5}), 1e-6)) most = std::max(most, p.x);
  CHECK(most == Approx(7.5).margin(1e-6));
  // (0,0) (0,8) (6,-8) (6,0): y = 24 t (1 − t) (1 − 2 t), extremes ±4/√3·... at t = (3 ∓ √3) / 6.
  double high = 0;
  double low = 0;
  for (const Point p : points_of({0, 0}, cubic({0, 8}, {6, -8}, {6, 0}), 1e-6)) {
    high = std::max(high, p.y);
    low = std::min(low, p.y);
  }
  const double t = (3 - std::sqrt(3.0)) / 6;
  CHECK(high == Approx(24 * t * (1 - t) * (1 - 2 * t)).margin(1e-6));
  CHECK(low == Approx(-high).margin(1e-6));
}

TEST_CASE("a curve that takes too many points is refused", "[trace][curves]") {
  std::vector<Point> points;
  CHECK_FALSE(append_points({0, 0}, cubic({1e6, 0}, {0, 1e6}, {5, 5}), 1e-9, 1000, points));
  CHECK(points.empty());
}

TEST_CASE("maps of curves are maps of their points", "[trace][curves]") {
  const Affine map{1.5, 0.25, -0.5, 0.75, 3, -4};
  const Affine other{0.5, -1, 1, 2, 0, 7};
  const Point p{2, 5};
  CHECK(map(p) == Point{1.5 * 2 - 0.5 * 5 + 3, 0.25 * 2 + 0.75 * 5 - 4});
  CHECK(distance((map * other)(p), map(other(p))) < 1e-12);
  const Curve arc = elliptical_arc({0, 0}, {10, 3}, 9, 6, 20, true, true);
  const Curve sent = mapped(arc, map);
  for (const double part : {0.1, 0.5, 0.9}) {
    const double angle = arc.from + part * (arc.until - arc.from);
    CHECK(distance(on(sent, angle), map(on(arc, angle))) < 1e-9);
  }
  const Curve bezier = cubic({1, 2}, {3, 5}, {8, -1});
  CHECK(distance(cubic_at(map({0, 0}), mapped(bezier, map), 0.3), map(cubic_at({0, 0}, bezier, 0.3))) < 1e-9);
}

TEST_CASE("extents of arcs are those of the part that is drawn", "[trace][curves]") {
  std::mt19937 random(5);
  std::uniform_real_distribution<double> figure(-5, 5);
  for (int i = 0; i < 200; ++i) {
    Curve arc;
    arc.kind = Curve::Kind::arc;
    arc.centre = {figure(random), figure(random)};
    arc.a = {figure(random), figure(random)};
    arc.b = {figure(random), figure(random)};
    arc.from = figure(random);
    arc.until = arc.from + figure(random);
    arc.to = on(arc, arc.until);
    Extents extents;
    add_extents({on(arc, arc.from), {arc}, 0}, extents);
    Extents seen;
    for (int k = 0; k <= 5000; ++k) seen.add(on(arc, arc.from + (arc.until - arc.from) * k / 5000));
    CHECK(distance(extents.least, seen.least) < 1e-4);
    CHECK(distance(extents.greatest, seen.greatest) < 1e-4);
  }
}
