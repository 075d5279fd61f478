// The section as polygons: chords as near to their arcs as is promised, and no more of them than that takes.
#include "replay/flattened.h"

#include <algorithm>
#include <cmath>

#include "arrisline/section.h"
#include "catch.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

Edge arc(Point centre, double r, double from, double to) {
  const auto at = [&](double degrees) {
    return centre + r * Point{std::cos(to_radians(degrees)), std::sin(to_radians(degrees))};
  };
  return {at(from), at(to), centre, to > from ? Turn::left : Turn::right};
}

std::vector<Point> points_of(const Edge& edge) {
  // Its own end is where the next edge starts.
  const std::vector<Edge> there_and_back{edge, {edge.to, edge.from, {}, Turn::straight}};
  std::vector<Point> out;
  for (const ClipperLib::IntPoint p : flatten(std::span<const Edge>(there_and_back)))
    out.push_back(unflatten(p));
  return out;
}

ClipperLib::Path rectangle(double x0, double y0, double x1, double y1) {
  const std::vector<Edge> edges{{{x0, y0}, {x1, y0}, {}, Turn::straight},
                                {{x1, y0}, {x1, y1}, {}, Turn::straight},
                                {{x1, y1}, {x0, y1}, {}, Turn::straight},
                                {{x0, y1}, {x0, y0}, {}, Turn::straight}};
  return flatten(std::span<const Edge>(edges));
}

}  // namespace

TEST_CASE("a chord is no farther from its arc than half a thousandth, and no shorter than that needs",
          "[replay]") {
  for (const double r : {0.5, 2.0, 9.525, 60.0, 700.0})
    for (const double swept : {359.0, 120.0, 75.3, -40.0, -250.0}) {
      const std::vector<Point> points = points_of(arc({40, 10}, r, 17, 17 + swept));
      INFO("radius " << r << " over " << swept);
      double worst = 0;
      for (std::size_t i = 0; i + 1 < points.size(); ++i) {
        CHECK(distance(points[i], Point{40, 10}) == Approx(r).margin(2e-6));
        const double rise = r - distance(0.5 * (points[i] + points[i + 1]), Point{40, 10});
        worst = std::max(worst, rise);
      }
      CHECK(worst <= 0.0005 + 2e-6);
      // So many chords go round the whole circle; at either end of the arc one may be cut short.
      const double round = std::ceil(kPi / std::acos(1 - 0.0005 / r));
      CHECK(static_cast<double>(points.size() - 1) <= round * std::abs(swept) / 360 + 2);
    }
}

TEST_CASE("the points of an arc go from its one end to the other the way it turns", "[replay]") {
  for (const double swept : {100.0, -100.0, 300.0, -300.0}) {
    const Edge edge = arc({3, 4}, 2, 17, 17 + swept);
    const std::vector<Point> points = points_of(edge);
    CHECK(distance(points.front(), edge.from) < 1e-6);
    CHECK(distance(points.back(), edge.to) < 1e-6);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      const Point a = points[i] - Point{3, 4}, b = points[i + 1] - Point{3, 4};
      CHECK(cross(a, b) * swept > 0);
      CHECK(distance(a, b) < 0.09);  // steps of 2·acos(1 − 0.0005/2), and no two points are one
      CHECK(distance(a, b) > 1e-5);
    }
  }
}

TEST_CASE("two arcs of one circle flatten alike where they overlap", "[replay]") {
  for (const double r : {0.7, 3.175, 9.525, 48.3}) {
    const std::vector<Point> a = points_of(arc({3, 4}, r, 10.3, 100.1));
    const std::vector<Point> b = points_of(arc({3, 4}, r * (1 + 1e-13), 131.7, 55.9));
    int shared = 0;
    for (std::size_t i = 1; i + 1 < a.size(); ++i)
      shared += std::any_of(b.begin(), b.end(), [&](Point p) { return distance(p, a[i]) < 2e-6; }) ? 1 : 0;
    const double step = 2 * std::acos(1 - 0.0005 / r);
    INFO("radius " << r);
    CHECK(shared >= std::floor(to_radians(100.1 - 55.9) / step) - 1);
  }
}

TEST_CASE("an arc smaller than the error of a chord is still a triangle or less, and nothing breaks",
          "[replay]") {
  const std::vector<Point> points = points_of(arc({3, 4}, 2e-4, 0, 270));
  CHECK(points.size() >= 3);
  CHECK(points.size() <= 4);
}

TEST_CASE("points of a polygon are kept to a millionth of a millimetre", "[replay]") {
  const Point p{12.3456784, -98.7654321};
  const std::vector<Edge> edge{{p, {0, 0}, {}, Turn::straight}, {{0, 0}, p, {}, Turn::straight}};
  const ClipperLib::Path path = flatten(std::span<const Edge>(edge));
  REQUIRE(path.size() == 2);
  CHECK(std::abs(unflatten(path[0]).x - p.x) <= 0.5e-6);
  CHECK(std::abs(unflatten(path[0]).y - p.y) <= 0.5e-6);
}

TEST_CASE("areas are in square millimetres whichever way an outline runs", "[replay]") {
  ClipperLib::Path path = rectangle(1, 2, 5, 4);
  CHECK(area_of({path}) == Approx(8));
  std::reverse(path.begin(), path.end());
  CHECK(area_of({path}) == Approx(8));
  CHECK(area_of({path, rectangle(10, 10, 11, 11)}) == Approx(7));  // a hole runs the other way
  CHECK(area_of({}) == 0);
  const ClipperLib::Paths big{rectangle(0, 0, 10, 10)}, corner{rectangle(7, 8, 20, 20)};
  CHECK(area_of(less(big, corner)) == Approx(94));
  CHECK(area_of(less(corner, big)) == Approx(13 * 12 - 6));
  CHECK(area_of(common(big, corner)) == Approx(6));
  CHECK(area_of(less(big, {rectangle(2, 2, 3, 3)})) == Approx(99));
  CHECK(area_of(less(big, {})) == Approx(100));
}

TEST_CASE("what a pose sweeps is its sole drawn along the plane", "[replay]") {
  Plane plane;
  plane.width = 6;
  const double far = 50, chord = 6 * 50;
  const auto swept_area = [&](double tilt) {
    return area_of({flatten(sweep_of(plane, {{7, 3}, tilt}, far))});
  };
  for (const double tilt : {0.0, 33.0, -120.0}) {
    plane.kind = PlaneKind::rebate;
    CHECK(swept_area(tilt) == Approx(chord));
    plane.radius = 5;
    const double angle = 2 * plane.half_arc(), segment = 25 * (angle - std::sin(angle)) / 2;
    plane.kind = PlaneKind::round;
    CHECK(swept_area(tilt) == Approx(chord + segment).margin(0.005));
    plane.kind = PlaneKind::hollow;
    CHECK(swept_area(tilt) == Approx(chord - segment).margin(0.005));
    plane.kind = PlaneKind::shaped;
    plane.sole = {{{-3, 2}, {0, 0}, {}, Turn::straight}, {{0, 0}, {3, 2}, {}, Turn::straight}};
    CHECK(swept_area(tilt) == Approx(chord + 6));
  }
}
