// How far edges come from an outline, in closed form: within 1e-4 mm of the truth and never over it.
#include "replay/depth.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "catch.h"

using namespace arrisline;
using namespace arrisline::replaying;

namespace {

Edge line(Point from, Point to) {
  return {from, to, {}, Turn::straight};
}
Edge dot_at(Point p) {
  return line(p, p);
}

/// The arc about the centre from one angle to the other, in degrees, counter-clockwise where that is more.
Edge arc(Point centre, double r, double from, double to) {
  const auto at = [&](double degrees) {
    return centre + r * Point{std::cos(to_radians(degrees)), std::sin(to_radians(degrees))};
  };
  return {at(from), at(to), centre, to > from ? Turn::left : Turn::right};
}

bool anywhere(Point) {
  return true;
}

Depth farthest(const std::vector<Edge>& edges, const std::vector<Edge>& outline,
               const std::function<bool(Point)>& counts = anywhere) {
  const Depth found = greatest_distance(edges, outline, counts);
  CHECK(distance(found.at, outline) == Approx(found.mm).margin(1e-12));
  CHECK(distance(found.at, edges) < 1e-12);
  return found;
}

void check_depth(const Depth& found, double truth) {
  CHECK(found.mm <= truth + 1e-9);
  CHECK(found.mm >= truth - 1.0001e-4);
}

}  // namespace

TEST_CASE("the nearest edge, and those that may be nearest a little farther on", "[replay]") {
  const std::vector<Edge> edges{line({0, 1}, {9, 1}), line({0, -1.9}, {9, -1.9}), line({0, 2.1}, {9, 2.1}),
                                line({0, -8}, {9, -8})};
  const Nearest nearest = nearest_about(each_of(edges), {4, 0}, 0.5);
  CHECK(nearest.mm == 1);
  REQUIRE(nearest.edges.size() == 2);  // half a millimetre up or down, both are 1.4 to 1.5 off
  CHECK(nearest.edges[0] == &edges[0]);
  CHECK(nearest.edges[1] == &edges[1]);
  CHECK(nearest_about(each_of(edges), {4, 0}, 0.4).edges.size() == 1);
  CHECK(nearest_about(each_of(edges), {4, 0}, 0.56).edges.size() == 3);
  CHECK(nearest_about(each_of(edges), {4, 0}, 4).edges.size() == 4);
}

TEST_CASE("the farthest of an edge from one beside it is at its middle, its end, or all along", "[replay]") {
  const std::vector<Edge> level{line({0, 0}, {10, 0})};
  CHECK(farthest(level, {line({-5, 3}, {15, 3})}).mm == Approx(3));
  CHECK(farthest(level, {line({-5, 3}, {15, 4})}).mm ==
        Approx(distance(Point{10, 0}, line({-5, 3}, {15, 4}))));
  check_depth(farthest(level, {dot_at({-1, 0}), dot_at({8.3, 0})}), 4.65);
  check_depth(farthest(level, {line({-1, -1}, {-1, 1}), line({8.3, -1}, {8.3, 1})}), 4.65);
  CHECK(farthest(level, {dot_at({2, 0})}).mm == Approx(8));
  // Of several edges the farthest, in whatever order they come.
  const std::vector<Edge> more{line({0, 0}, {1, 0}), line({1, 0}, {1, 7}), line({1, 7}, {0, 7})};
  CHECK(farthest(more, {line({-9, 0}, {9, 0})}).mm == Approx(7));
  CHECK(farthest({more[2], more[1], more[0]}, {line({-9, 0}, {9, 0})}).mm == Approx(7));
  // An end of one edge that the next does not go on from.
  CHECK(farthest({line({0, 0}, {0, 2}), line({5, 5}, {6, 5})}, {line({-9, 0}, {9, 0})}).mm == Approx(5));
}

TEST_CASE("only what counts is asked how far it is, and no less than the floor is found", "[replay]") {
  const std::vector<Edge> level{line({-10, 0}, {10, 0})};
  const std::vector<Edge> circle{arc({2.3, 1}, 5, 0, 180), arc({2.3, 1}, 5, 180, 360)};
  const auto inside = [](Point p) { return distance(p, Point{2.3, 1}) < 5; };
  const auto outside = [&](Point p) { return !inside(p); };
  check_depth(farthest(level, circle, inside), 4);  // under the centre
  check_depth(farthest(level, circle, outside), std::hypot(12.3, 1) - 5);
  CHECK(greatest_distance(level, circle, [](Point) { return false; }).mm == 0);
  const Depth floor{4.2, {1, 1}};
  CHECK(greatest_distance(level, circle, inside, floor).mm == 4.2);
  CHECK(greatest_distance(level, circle, inside, floor).at == Point{1, 1});
  check_depth(greatest_distance(level, circle, inside, {3.9, {1, 1}}), 4);
  // Ends that do not count, though they are farthest.
  check_depth(greatest_distance(std::vector<Edge>{line({2.3, 1}, {20, 1})}, circle, outside, {}), 12.7);
  CHECK(greatest_distance(std::vector<Edge>{line({2.3, 1}, {8, 1})}, circle, outside, {}).mm == Approx(0.7));
}

TEST_CASE("a line is farthest from two points where it is as far from both, or at an end", "[replay]") {
  std::mt19937 random(31);
  std::uniform_real_distribution<double> unit(-10, 10);
  int between = 0;
  for (int i = 0; i < 400; ++i) {
    const auto chance = [&] { return Point{unit(random), unit(random)}; };
    const Point a = chance(), b = chance(), p = chance(), q = chance();
    const auto away = [&](Point at) { return std::min(distance(at, a), distance(at, b)); };
    double truth = std::max(away(p), away(q));
    // |p + t(q − p) − a|² = |p + t(q − p) − b|² is linear in t.
    const double t = (dot(a - b, p - a) + dot(a - b, p - b)) / (2 * dot(b - a, q - p));
    if (t > 0 && t < 1 && away(p + t * (q - p)) > truth) {
      truth = away(p + t * (q - p));
      ++between;
    }
    INFO(i);
    check_depth(farthest({line(p, q)}, {dot_at(a), dot_at(b)}), truth);
  }
  CHECK(between > 50);
}

TEST_CASE("an arc is farthest from a circle on the line of the centres, or at an end", "[replay]") {
  std::mt19937 random(32);
  std::uniform_real_distribution<double> unit(0, 1);
  int between = 0;
  for (int i = 0; i < 400; ++i) {
    // Nearly one circle, and anything else.
    const double off = i % 2 == 0 ? 0.02 : 6.0;
    const double r = 2 + 8 * unit(random), angle = 360 * unit(random), swept = 20 + 300 * unit(random);
    const Edge edge = arc({0, 0}, r, angle, i % 3 == 0 ? angle - swept : angle + swept);
    const Point centre{off * unit(random) + 1e-3, off * unit(random)};
    const double other = r + (off < 1 ? 0.1 * (unit(random) - 0.5) : 6 * unit(random));
    const std::vector<Edge> circle{arc(centre, other, 0, 180), arc(centre, other, 180, 360)};
    const auto away = [&](Point p) { return std::abs(distance(p, centre) - other); };
    double truth = std::max(away(edge.from), away(edge.to));
    for (const double side : {1.0, -1.0}) {
      const Point far = (side * r / norm(centre)) * centre;
      if (!spoke_meets(edge, far) || away(far) <= truth) continue;
      truth = away(far);
      ++between;
    }
    INFO(i);
    check_depth(farthest({edge}, circle), truth);
  }
  CHECK(between > 100);
}

TEST_CASE("the end of an arc keeps a point off that lies beyond it", "[replay]") {
  // A quarter of a circle: beyond its end the distance is from the end, not from the circle.
  const std::vector<Edge> quarter{arc({0, 0}, 5, 0, 90)};
  check_depth(farthest({arc({0, 0}, 5.001, -20, 60)}, quarter),
              distance(Point{5, 0}, arc({0, 0}, 5.001, -20, 60).from));
  check_depth(farthest({arc({0, 0}, 5.001, 40, 100)}, quarter),
              distance(Point{0, 5}, arc({0, 0}, 5.001, 40, 100).to));
  check_depth(farthest({line({5.001, 1}, {5.001, -2})}, quarter), std::hypot(2, 0.001));
  // And so of a straight edge, on either side of it and whichever way it runs.
  for (const double off : {0.001, -0.001})
    for (const Edge& level : {line({0, 0}, {5, 0}), line({5, 0}, {0, 0})}) {
      check_depth(farthest({line({1, off}, {7, off})}, {level}), std::hypot(2, off));
      check_depth(farthest({line({-3, off}, {4, off})}, {level}), std::hypot(3, off));
      // Two edges in one line with a gap between: it is deepest in the gap's middle.
      check_depth(farthest({line({0, off}, {20, off})}, {line({0, 0}, {7, 0}), line({20, 0}, {8.5, 0})}),
                  std::hypot(0.75, off));
    }
}

TEST_CASE("a shallow bend is as deep as its rise", "[replay]") {
  // A chord of 4 under arcs so flat that one look at the middle is all but enough.
  for (const double rise : {1e-4, 1.4e-4, 3e-4, 1e-3, 0.02})
    for (const double shift : {0.0, 0.3, -0.77}) {
      const double r = (4 + rise * rise) / (2 * rise);  // of half a chord of 2
      const double half = to_degrees(std::asin(2 / r));
      const std::vector<Edge> bend{arc({0, rise - r}, r, 90 + half, 90 - half)};
      INFO(rise << " shifted by " << shift);
      // All of the chord and some of it.
      check_depth(farthest({line({-2, 0}, {2, 0})}, bend), rise);
      check_depth(farthest({line({-2, 0}, {1 + shift, 0})}, bend), rise);
      check_depth(farthest(bend, {line({-3, 0}, {4, 0})}), rise);
    }
}
