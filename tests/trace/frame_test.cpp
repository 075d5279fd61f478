// Which end of a drawn line is on the face, and at which side its working edge is.
#include <algorithm>
#include <string>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// The same with the other side at the left.
Tracing turned_about(Tracing tracing) {
  for (Point& p : tracing.points) p.x = -p.x;
  return tracing;
}

TEST_CASE("a line that goes round the working edge to the underside has it where it turns",
          "[trace][frame]") {
  // A nosing, of whose face is drawn more than of its underside, as much, and less.
  for (const char* under : {"15", "20", "25"}) {
    Tracing nosing = traced_path("M20 0 H6 A6 6 0 0 0 6 12 H" + std::string(under));
    for (const bool from_right : {false, true}) {
      for (const bool backward : {false, true}) {
        INFO("to " << under << (from_right ? ", edge at the right" : "") << (backward ? ", backward" : ""));
        Tracing drawn = from_right ? turned_about(nosing) : nosing;
        if (backward) std::reverse(drawn.points.begin(), drawn.points.end());
        const FittedProfile found = on_halves(drawn);
        CHECK(found.mirrored == from_right);
        CHECK(found.section.thickness == Approx(12).margin(1e-3));
        const std::vector<Edge> line = worked_line(found.section);
        REQUIRE(kinds(line) == "bead ");
        CHECK(radius(line[0]) == Approx(6).margin(1e-3));
      }
    }
  }
}

TEST_CASE("a face that is drawn leads to the working edge, whatever comes back under it", "[trace][frame]") {
  // A step and an ovolo, then a rebate from the underside that goes farther back than the face is drawn.
  const Tracing drawn = traced_path("M12 0 H8 V3 A8 8 0 0 0 0 11 V16 H30");
  for (const bool from_right : {false, true}) {
    const FittedProfile found = on_halves(from_right ? turned_about(drawn) : drawn);
    CHECK(found.mirrored == from_right);
    const std::vector<Edge> line = worked_line(found.section);
    CHECK(kinds(line) == "step bead ");
    CHECK(line.front().from.x == Approx(8).margin(1e-3));
    CHECK(found.section.width == Approx(30).margin(1e-3));
  }
}

TEST_CASE("a whole section is the same whichever way round it is drawn", "[trace][frame][closed]") {
  for (const char* path : {"M5 5H35V8A9 9 0 0 1 44 17H47V25H5Z", "M5 5V25H47V17H44A9 9 0 0 0 35 8V5Z"}) {
    for (const bool at_left : {false, true}) {
      INFO(path << (at_left ? ", edge at the left" : ""));
      const Tracing drawn = traced_path(path);
      const FittedProfile found = on_halves(at_left ? turned_about(drawn) : drawn);
      CHECK(found.mirrored == !at_left);
      CHECK(found.section.width == Approx(42).margin(1e-3));
      const std::vector<Edge> line = worked_line(found.section);
      REQUIRE(kinds(line) == "step bead fillet ");
      CHECK(line.front().from.x == Approx(12).margin(1e-3));
      CHECK(line.front().from.y == Approx(0).margin(1e-3));
    }
  }
}

TEST_CASE("an arc that runs back under a face that is not drawn goes toward the lower end",
          "[trace][frame]") {
  // A scotia and a fillet; then with the working edge below it.
  for (const char* more : {"", "V20"}) {
    const Tracing drawn = traced_path("M9 0A6 6 0 0 1 12.6 10.8A16 16 0 0 1 3 14H0" + std::string(more));
    for (const bool from_right : {false, true}) {
      INFO(more << (from_right ? ", edge at the right" : ""));
      const FittedProfile found = on_halves(from_right ? turned_about(drawn) : drawn);
      CHECK(found.mirrored == from_right);
      CHECK(kinds(worked_line(found.section)) == "cove cove fillet ");
    }
  }
}

TEST_CASE("an underside that a scattered nosing runs into is a side of the stock",
          "[trace][frame][campaign]") {
  // Where it runs into it not quite smoothly it reaches lower by a millionth of what anybody sees.
  for (unsigned seed = 1; seed <= 24; ++seed) {
    std::vector<Edge> line = {{{22, 0}, {7.9375, 0}, {}, Turn::straight},
                              {{7.9375, 0}, {7.9375, 15.875}, {7.9375, 7.9375}, Turn::right},
                              {{7.9375, 15.875}, {13, 15.875}, {}, Turn::straight}};
    Digitiser by;
    by.scatter = 0.05;
    const FittedProfile found = on_halves(digitised(line, by, seed));
    INFO("seed " << seed);
    CHECK(kinds(worked_line(found.section)) == "bead ");
  }
}

/// By the pins of a profile gauge, so far apart: what stands upright has none.
Tracing by_gauge(const std::vector<Point>& corners, double pitch, double first) {
  Tracing out;
  for (double x = corners.front().x - first; x > corners.back().x; x -= pitch) {
    const auto after =
        std::find_if(corners.begin(), corners.end(), [x](const Point& corner) { return corner.x < x; });
    const Point a = *std::prev(after);
    const Point b = *after;
    out.points.push_back({x, a.y + (b.y - a.y) * (a.x - x) / (a.x - b.x)});
  }
  return out;
}

TEST_CASE("walls between the pins of a profile gauge tell of no tilt", "[trace][frame]") {
  // Two bevels, before each a wall that leans by as much as two pins are apart.
  const std::vector<Point> corners = {{47, 0}, {39, 0}, {39, 6}, {15, 12}, {15, 18}, {3, 30}, {0, 30}};
  for (const double pitch : {0.5, 0.75, 1.0}) {
    for (const double first : {0.1, 0.2, 0.3, 0.4}) {
      INFO("pins " << pitch << " apart, the first at " << first);
      CHECK(on_halves(by_gauge(corners, pitch, first)).turned == 0);
    }
  }
}

TEST_CASE("where a line goes straight down from the face its lower end is at the working edge",
          "[trace][frame]") {
  const Tracing cavetto = traced_path("M10 0 V2 A8 8 0 0 1 2 10 H0");
  for (const bool from_right : {false, true}) {
    const FittedProfile found = on_halves(from_right ? turned_about(cavetto) : cavetto);
    CHECK(found.mirrored == from_right);
    CHECK(kinds(worked_line(found.section)) == "step cove fillet ");
  }
}

TEST_CASE("of points the working edge is at the left unless it is said to be at the right",
          "[trace][frame]") {
  // A step, a cove and a fillet, with the face before them and the working edge after.
  const std::vector<Edge> line = {{{18, 0}, {12, 0}, {}, Turn::straight},
                                  {{12, 0}, {12, 2}, {}, Turn::straight},
                                  {{12, 2}, {4, 10}, {4, 2}, Turn::left},
                                  {{4, 10}, {0, 10}, {}, Turn::straight},
                                  {{0, 10}, {0, 15}, {}, Turn::straight}};
  FitOptions options;
  options.division = 0.5;
  for (const bool y_up : {false, true}) {
    for (const bool backward : {false, true}) {
      INFO((y_up ? "y up" : "y down") << (backward ? ", backward" : ""));
      Digitiser by;
      by.scatter = 0.02;
      by.y_up = y_up;
      by.backward = backward;
      const Tracing left = digitised(line, by, 1);
      const Tracing right = turned_about(left);
      std::string why;
      options.edge = std::nullopt;
      const auto as_it_stands = fit_tracing(left, options, &why);
      const auto unsaid = fit_tracing(right, options, &why);
      options.edge = EdgeAt::right;
      const auto said = fit_tracing(right, options, &why);
      REQUIRE((as_it_stands && unsaid && said));
      CHECK(kinds(worked_line(as_it_stands->section)) == "step cove fillet ");
      CHECK_FALSE(as_it_stands->may_be_mirrored);
      CHECK(kinds(worked_line(said->section)) == "step cove fillet ");
      CHECK(said->mirrored);
      CHECK_FALSE(said->may_be_mirrored);
      // Edge and face look like a step and a fillet then.
      CHECK(kinds(worked_line(unsaid->section)) == "step fillet bead step fillet ");
      CHECK(unsaid->may_be_mirrored);
    }
  }
}

TEST_CASE("a drawing is believed of its working edge unless the other side is said", "[trace][frame]") {
  const Tracing cavetto = traced_path("M20 0 H10 V2 A8 8 0 0 1 2 10 H0 V15");
  FitOptions options;
  std::string why;
  options.edge = EdgeAt::left;
  const auto left = fit_tracing(cavetto, options, &why);
  options.edge = EdgeAt::right;
  const auto right = fit_tracing(turned_about(cavetto), options, &why);
  REQUIRE((left && right));
  CHECK(kinds(worked_line(left->section)) == "step cove fillet ");
  CHECK(kinds(worked_line(right->section)) == "step cove fillet ");
}

}  // namespace
}  // namespace arrisline::testing
