// Walls that a profile gauge has no pins on.
#include <algorithm>
#include <cmath>
#include <random>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// Two congés, each under a wall that stands as high as they are, or two thirds of it.
double depth_at(double x) {
  if (x > 25) return 0;
  if (x > 20) return 5 + std::sqrt(25 - (x - 20) * (x - 20));
  if (x > 10) return 10;
  if (x > 2.5) return 15 + std::sqrt(7.5 * 7.5 - (x - 2.5) * (x - 2.5));
  return 22.5;
}

/// The line found on halves of a millimetre where the pins of a gauge go so deep, those nearest the working
/// edge last.
template <class Depth>
std::vector<Edge> found_by_pins(double from, double pitch, double scatter, std::mt19937& random,
                                Depth depth) {
  std::normal_distribution<double> off(0, scatter);
  Tracing gauge;
  for (double x = from; x > 0; x -= pitch) gauge.points.push_back({x, depth(x) + off(random)});
  FitOptions options;
  options.division = 0.5;
  std::string why;
  const auto found = fit_tracing(gauge, options, &why);
  INFO(why);
  REQUIRE(found);
  return worked_line(found->section);
}

TEST_CASE("between the pins of a profile gauge a wall stands, and no arc runs on", "[trace][walls]") {
  constexpr double kPitch = 0.5;
  std::mt19937 random(1);
  for (const double first : {0.05, 0.15, 0.25, 0.35, 0.45}) {
    INFO("first pin at " << first);
    const std::vector<Edge> line = found_by_pins(33 - first, kPitch, 0.02, random, depth_at);
    REQUIRE(kinds(line) == "step cove fillet step cove fillet ");
    // As near as the pins are apart.
    CHECK(std::abs(line[0].from.x - 25) <= kPitch);
    CHECK(std::abs(radius(line[1]) - 5) <= kPitch);
    CHECK(std::abs(radius(line[4]) - 7.5) <= kPitch);
    CHECK(std::abs(length(line[3]) - 5) <= kPitch);
  }
}

/// Points as the pins of a gauge leave them that is set to a drawn line, the face at the right: the least
/// depth over each, to a thousandth of a millimetre.
Tracing pins_of(const Tracing& drawn, double first, double pitch) {
  Tracing out;
  const auto [left, right] = std::minmax_element(drawn.points.begin(), drawn.points.end(),
                                                 [](Point a, Point b) { return a.x < b.x; });
  for (double x = right->x - first; x > left->x; x -= pitch) {
    double depth = HUGE_VAL;
    for (std::size_t i = 1; i < drawn.points.size(); ++i) {
      const Point a = drawn.points[i - 1];
      const Point b = drawn.points[i];
      if (a.x == b.x || (a.x - x) * (b.x - x) > 0) continue;
      depth = std::min(depth, a.y + (x - a.x) / (b.x - a.x) * (b.y - a.y));
    }
    out.points.push_back({x, std::round(depth * 1000) / 1000});
  }
  return out;
}

TEST_CASE("pins that lie exactly are no reason to leave some of them out", "[trace][walls]") {
  // Thumbnails and cavettos under walls, mm.
  const Tracing drawn = traced_path(
      "M86.75 0h-10v2.5a18.5 18.5 0 0 0 -15.5 8.4h-2v4.5a18.5 18.5 0 0 0 -15.5 8.4h-4v2.5a7.5 7.5 0 0 1 -7.5 "
      "7.5h-3.5v4.5a18.5 18.5 0 0 0 -15.5 8.4h-2v4.5a7.25 7.25 0 0 1 -7.25 7.25h-4");
  const std::vector<Edge> line = worked_line(on_halves(pins_of(drawn, 0.03, 0.1)).section);
  CHECK(kinds(line) ==
        "step bead fillet step bead fillet step cove fillet step bead fillet step cove fillet ");
}

TEST_CASE("pins see no undercut: a cavetto ends at the wall over it", "[trace][walls]") {
  constexpr double kPitch = 1;
  std::mt19937 random(2);
  // The cavetto's circle, run on, comes back to within two pins of the top of its wall.
  const auto cavetto = [](double x) {
    if (x > 50) return 0.0;
    if (x > 31) return 6 + std::sqrt(19 * 19 - (x - 31) * (x - 31));
    return x > 18 ? 25.0 : 31.0;
  };
  for (const double first : {0.1, 0.3, 0.5, 0.7, 0.9}) {
    INFO("first pin at " << first);
    const std::vector<Edge> line = found_by_pins(62 - first, kPitch, 0.03, random, cavetto);
    REQUIRE(kinds(line) == "step cove fillet step fillet ");
    CHECK(std::abs(length(line[0]) - 6) <= kPitch);
    CHECK(std::abs(radius(line[1]) - 19) <= kPitch);
  }
}

}  // namespace
}  // namespace arrisline::testing
