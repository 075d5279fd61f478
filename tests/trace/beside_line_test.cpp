// A single point beside the line of a list in order is told; what the line itself does is not.
#include "trace/beside_line.h"

#include <random>

#include "catch.h"
#include "trace/mouldings.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

constexpr double kTolerance = 0.05;

std::vector<std::size_t> told(const std::vector<Point>& points, double step = 0) {
  std::vector<std::size_t> out;
  const std::vector<bool> beside = beside_line(points, kTolerance, step);
  for (std::size_t i = 0; i < beside.size(); ++i)
    if (beside[i]) out.push_back(i);
  return out;
}

/// By so much to the right of the way from the point before to the one behind, and by as much along it: a pin
/// of a gauge would stand square to it.
Point aside(const std::vector<Point>& points, std::size_t i, double by) {
  const Point way = points[i + 1] - points[i - 1];
  return points[i] + (by / norm(way)) * Point{way.x - way.y, way.x + way.y};
}

TEST_CASE("a point beside the line of a list in order is told, near it and far off, at corners too",
          "[trace][strays][campaign]") {
  std::size_t tried = 0;
  for (const Moulding& one : usual_examples()) {
    Digitiser by;
    by.points = 600;
    for (const double scatter : {0.0, 0.02}) {
      by.scatter = scatter;
      const std::vector<Point> line = digitised(with_sides(worked_line(one.section), 6), by, 3).points;
      for (const double off : {0.7, -1.5, 4.0, -15.0}) {
        // One after the other all along the line, so that some lie at each corner.
        for (std::size_t i = 10; i + 10 < line.size(); i += 29) {
          std::vector<Point> points = line;
          points[i] = aside(line, i, off);
          INFO(one.name << ", point " << i << ", " << off << " mm off, scatter " << scatter);
          CHECK(told(points) == std::vector{i});
          ++tried;
        }
      }
    }
  }
  CHECK(tried >= 1000);
}

TEST_CASE("two and three points beside the line are told, one after the other too", "[trace][strays]") {
  Digitiser by;
  by.scatter = 0.02;
  const std::vector<Point> line =
      digitised(with_sides(worked_line(classical(kClassical[0])), 6), by, 2).points;
  std::vector<Point> points = line;
  for (const std::size_t i : {120U, 300U, 420U}) points[i] = aside(line, i, 2);
  CHECK(told(points) == std::vector<std::size_t>{120, 300, 420});
  points = line;
  points[200] = points[200] + Point{4, 9};
  points[201] = points[201] + Point{-6, 5};
  CHECK(told(points) == std::vector<std::size_t>{200, 201});
}

TEST_CASE("nothing that a line does is told, however few points show it", "[trace][strays][campaign]") {
  std::size_t tried = 0;
  for (const Moulding& one : usual_examples()) {
    for (const std::size_t count : {120U, 300U, 2000U}) {
      for (const double scatter : {0.0, 0.02, 0.1}) {
        Digitiser by;
        by.points = count;
        by.scatter = scatter;
        INFO(one.name << ", " << count << " points, scatter " << scatter);
        const std::vector<Point> points = digitised(with_sides(worked_line(one.section), 6), by, 1).points;
        CHECK(told(points).empty());
        ++tried;
        // To a tenth of a millimetre.
        std::vector<Point> rounded;
        for (const Point p : points)
          rounded.push_back({std::round(10 * p.x) / 10, std::round(10 * p.y) / 10});
        CHECK(told(rounded, 0.1).empty());
      }
    }
  }
  CHECK(tried >= 90);
  // The tips of sharp arrises, of three points to a side: out to it, and back.
  std::vector<Point> saw;
  for (int i = 0; i < 120; ++i) saw.push_back({0.6 * i, 1.0 * std::abs(i % 8 - 4)});
  CHECK(told(saw).empty());
}

TEST_CASE("a single pin of a profile gauge in a quirk is no stray, nor is one that found a bead",
          "[trace][strays]") {
  std::mt19937 random(5);
  std::normal_distribution<double> off(0, 0.02);
  for (const double askew : {0.0, 5.0}) {
    std::vector<Point> pins;
    for (int i = 0; i < 150; ++i) {
      const double deep = i == 60 ? 4 : i == 100 ? -1.5 : 0;
      const Point p = {0.8 * i + off(random), deep + off(random)};
      const double angle = to_radians(askew);
      pins.push_back(
          {std::cos(angle) * p.x - std::sin(angle) * p.y, std::sin(angle) * p.x + std::cos(angle) * p.y});
    }
    CHECK(told(pins).empty());
    // One that stands where no pin would.
    pins[30] = pins[30] + Point{1.1, 3};
    CHECK(told(pins) == std::vector<std::size_t>{30});
  }
}

TEST_CASE("points in no order, or too few, tell of none", "[trace][strays]") {
  Digitiser by;
  by.any_order = true;
  CHECK(told(digitised(with_sides(worked_line(classical(kClassical[0])), 6), by, 2).points).empty());
  std::vector<Point> few;
  for (int i = 0; i < 60; ++i) few.push_back({0.5 * i, i == 30 ? 3.0 : 0.0});
  CHECK(told(few).empty());
}

}  // namespace
}  // namespace arrisline::testing
