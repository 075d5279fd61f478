// A line that crosses itself is told so, and one that only comes near itself is not.
#include <cmath>
#include <random>
#include <string>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// Why no profile comes of it; empty where one does.
std::string refused(const Tracing& tracing) {
  std::string why;
  return fit_tracing(tracing, {}, &why) ? "" : why;
}

/// Points of a circle, so many degrees from one angle to another.
void add_circle(std::vector<Point>& points, Point centre, double r, double from, double to) {
  constexpr int kParts = 400;
  for (int i = 0; i <= kParts; ++i) {
    const double angle = to_radians(from + (to - from) * i / kParts);
    points.push_back(centre + Point{r * std::cos(angle), r * std::sin(angle)});
  }
}

Tracing scattered(std::vector<Point> points, double scatter) {
  std::mt19937 random(1);
  std::normal_distribution<double> off(0, scatter);
  Tracing out;
  for (const Point& p : points) out.points.push_back({p.x + off(random), p.y + off(random)});
  return out;
}

TEST_CASE("a line that crosses itself is refused where it does", "[trace][loops]") {
  // Two circles in one line, an eight that ends where it began; and a step that a circle at its end comes
  // back through.
  std::vector<Point> eight;
  add_circle(eight, {10, 5}, 10, 180, 540);
  add_circle(eight, {-10, 5}, 10, 0, -360);
  std::vector<Point> step;
  for (int i = 0; i < 120; ++i) step.push_back({0, 0.1 * i});
  add_circle(step, {-5, 9}, std::hypot(5, 3), 31, 350);
  for (const double scatter : {0.001, 0.05}) {
    CHECK(refused(scattered(eight, scatter)).starts_with("the line crosses itself, at ("));
    CHECK(refused(scattered(step, scatter)).starts_with("the line crosses itself, at ("));
  }
}

TEST_CASE("a groove with a narrow mouth does not cross itself", "[trace][loops]") {
  // A round groove of 6 mm whose mouth is a tenth of that, sunk in the face.
  for (const double scatter : {0.001, 0.02, 0.05}) {
    std::vector<Point> points;
    for (int i = 0; i < 100; ++i) points.push_back({25 - 0.097 * i, 0});
    const double half = to_degrees(std::asin(0.3 / 3));
    add_circle(points, {15, std::sqrt(9 - 0.09)}, 3, -90 + half, 270 - half);
    for (int i = 0; i < 100; ++i) points.push_back({14.7 - 0.097 * i, 0});
    CHECK(refused(scattered(points, scatter)).find("crosses itself") == std::string::npos);
  }
}

}  // namespace
}  // namespace arrisline::testing
