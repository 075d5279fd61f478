// What chance has put into a fitted line is taken back, and nothing else is changed by it.
#include "trace/simplify.h"

#include "catch.h"
#include "trace/chain.h"

namespace arrisline::testing {
namespace {

void sample(const Edge& edge, int count, Samples& samples) {
  for (int k = 0; k < count; ++k) {
    samples.points.push_back(point_at(edge, (k + 0.5) / count));
    samples.filled.push_back(false);
  }
}

// The second flat points at the centre of the arc: its line crosses the circle on the far side too, and there
// too every sample lies on the line.
TEST_CASE("a joint stays beside the samples where a flat points at the centre of an arc",
          "[trace][simplify]") {
  const double radius = 11.5;
  const Edge first = {{-8, -radius}, {0, -radius}, {}, Turn::straight};
  const Edge arc = {{0, -radius}, {radius, 0}, {0, 0}, Turn::left};
  const Edge second = {{radius, 0}, {30, 0}, {}, Turn::straight};
  Samples samples;
  samples.scatter = 1e-5;
  samples.spacing = 0.2;
  sample(first, 40, samples);
  sample(arc, 90, samples);
  sample(second, 90, samples);
  // One sample of the second flat was made a link of its own.
  Fitted fitted;
  fitted.from = {0, 40, 130, 131, 220};
  fitted.line.joints = {first.from, arc.from, arc.to, {11.75, 0}, second.to};
  fitted.line.bulges = {0, bulge_of(arc), 0, 0};
  simplify(samples, fitted, {0.05, samples.scatter});
  REQUIRE(fitted.line.size() == 3);
  CHECK(fitted.worst < 0.1);
  CHECK(distance(fitted.line.joints[2], arc.to) < 0.02);
}

TEST_CASE("an arc that rises less than anybody sees is a flat", "[trace][simplify]") {
  const Edge first = {{0, 0}, {20, 0}, {}, Turn::straight};
  const Edge second = {{20, 0}, {20, 8}, {}, Turn::straight};
  Samples samples;
  samples.scatter = 1e-5;
  samples.spacing = 0.2;
  sample(first, 100, samples);
  // A step of the tolerance, which neither a flat nor an arc follows, is no reason for an arc of 20 m.
  for (std::size_t i = 50; i < 100; ++i) samples.points[i].y = 0.15;
  sample(second, 40, samples);
  Fitted fitted;
  fitted.from = {0, 100, 140};
  fitted.line.joints = {first.from, second.from, second.to};
  fitted.line.bulges = {0.0003, 0};
  simplify_arcs(samples, fitted, {0.05, samples.scatter});
  REQUIRE(fitted.line.size() == 2);
  CHECK(fitted.line.bulges[0] == 0);
}

}  // namespace
}  // namespace arrisline::testing
