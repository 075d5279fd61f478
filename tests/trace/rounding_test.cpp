// Figures that go in steps so large that rounding is what the points are off by.
#include "trace/rounding.h"

#include <cmath>

#include "catch.h"
#include "section/sections.h"
#include "trace/mouldings.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

Tracing rounded(Tracing tracing, double step) {
  for (Point& p : tracing.points) p = {step * std::round(p.x / step), step * std::round(p.y / step)};
  tracing.step = step_of(tracing.points);
  return tracing;
}

TEST_CASE("the step of figures is the greatest that all are multiples of", "[trace][rounding]") {
  CHECK(step_of({{0.1, 12.3}, {-7, 8.8}}) == 0.1);
  CHECK(step_of({{3.5, -12}, {7, 8.5}}) == 0.5);
  CHECK(step_of({{0.005, 1.01}, {2.325, 0.115}}) == 0.005);
  CHECK(step_of({{3, 12}, {6, -9}}) == 3);
  CHECK(step_of({{0.03125, 0.5}, {1.0625, 2}}) == 0.03125);
  // A gauge whose pins stand by millimetres says nothing of how deep they went in.
  CHECK(step_of({{1, 0.32}, {2, 0.45}, {3, 0.51}}) == 0.01);
  CHECK(step_of({{1.0 / 3, 2}, {5, 6}}) == 0);
  CHECK(step_of({{1e9, 0.1}}) == 0);
  CHECK(traced("0.125;3\n1;2.5\n", "a.csv").step == 0.125);
}

TEST_CASE("a step is told of figures that had another unit or origin after they were rounded",
          "[trace][rounding]") {
  Digitiser by;
  by.points = 300;
  const Tracing tracing = digitised(worked_line(classical(kClassical[0])), by, 1);
  for (const double origin : {0.0, 0.04}) {
    std::vector<Point> tenths, finer;
    for (const Point p : tracing.points) {
      const Point rounded = {std::round(10 * p.x) / 10 + origin, std::round(10 * p.y) / 10 - origin};
      const auto in_inches = [](double mm) { return std::round(mm / kMmPerInch * 1e5) / 1e5; };
      tenths.push_back({in_inches(rounded.x), in_inches(rounded.y)});
      finer.push_back({in_inches(p.x), in_inches(p.y)});
    }
    CHECK(step_of(tenths) == Approx(0.1 / kMmPerInch).epsilon(0.001));
    CHECK(step_of(finer) == Approx(0.00001));
  }
}

TEST_CASE("flats drawn by whole steps are not rounded, and anything else is", "[trace][rounding]") {
  std::vector<Point> flats, curve;
  for (int i = 0; i < 10; ++i) flats.push_back({0.5 * i, 0});
  for (int i = 0; i < 10; ++i) flats.push_back({5, 0.5 * i});
  for (int i = 0; i < 10; ++i) flats.push_back({5 + 0.5 * i, 5 + 0.5 * i});
  CHECK_FALSE(shows_rounding(flats));
  for (int i = 0; i < 10; ++i) curve.push_back({std::round(0.8 * i * i), 5.0 * i});
  CHECK(shows_rounding(curve));
}

TEST_CASE("points written to a tenth of a millimetre, or to five thousandths of an inch, come back",
          "[trace][rounding][campaign]") {
  const char* const kProfiles[] = {
      "start face 12\nstep down 2.5\nbead out 8 down 8\nfillet out 4\n",
      "start face 20\nstep down 3\ncove out 8 down 6 radius 10\nbead out 8 down 6 radius 10\nfillet out 4\n",
      ("start face 24.5\nstep down 4\ncove out 9 down 9\nfillet out 4.5\nstep down 3\nbead out 7 down 7\n"
       "fillet out 4\n")};
  for (const char* const profile : kProfiles) {
    const std::vector<Edge> line =
        worked_line(section_of(std::string("units mm\nstock 60 wide, 40 thick\n") + profile));
    for (const std::size_t points : {200U, 500U, 1500U}) {
      for (const double askew : {0.0, 5.0}) {
        for (const double step : {0.1, 0.127}) {
          for (const double scatter : {0.0, 0.05}) {
            INFO(profile << points << " points, " << askew << " degrees, steps of " << step << " mm, scatter "
                         << scatter << " mm");
            Digitiser by;
            by.points = points;
            by.askew = askew;
            by.scatter = scatter;
            const std::vector<Edge> drawn = with_sides(line, 7);
            double whole = 0;
            for (const Edge& edge : drawn) whole += length(edge);
            std::string why;
            const auto found = fit_tracing(rounded(digitised(drawn, by, 1), step), {}, &why);
            INFO(why);
            REQUIRE(found);
            const std::vector<Edge> back = worked_line(found->section);
            REQUIRE(kinds(back) == kinds(line));
            for (std::size_t i = 0; i < line.size(); ++i) {
              // Where one arc runs on as another, hardly anything tells where.
              if (i == 0 || !line[i].is_arc() || !line[i - 1].is_arc())
                CHECK(distance(back[i].from, line[i].from) < 0.5);
              if (!line[i].is_arc()) continue;
              const double off = std::hypot(scatter, step / std::sqrt(12.0));
              const auto on_it =
                  static_cast<std::size_t>(static_cast<double>(points) * length(line[i]) / whole);
              CHECK(std::abs(radius(back[i]) - radius(line[i])) < bound_on(line[i], on_it, off, step / 2));
            }
            if (scatter == 0 && askew == 0) CHECK(found->step == Approx(step));
          }
        }
      }
    }
  }
}

// Most short stretches of such a line lie on one row of the steps and show no scatter, and the line itself is
// all stairs.
TEST_CASE("points written to steps of five tolerances are no list of corners", "[trace][rounding]") {
  const std::vector<Edge> line =
      worked_line(section_of("units mm\nstock 60 wide, 40 thick\nstart face 20\nstep down 3\n"
                             "cove out 8 down 6 radius 10\nbead out 8 down 6 radius 10\nfillet out 4\n"));
  for (const double step : {0.25, 0.254}) {
    for (const std::size_t points : {150U, 400U, 1000U}) {
      INFO("steps of " << step << " mm, " << points << " points");
      Digitiser by;
      by.points = points;
      std::string why;
      const auto found = fit_tracing(rounded(digitised(with_sides(line, 7), by, 1), step), {}, &why);
      INFO(why);
      REQUIRE(found);
      CHECK(found->joined == 0);
      CHECK(found->step == Approx(step));
      const std::vector<Edge> back = worked_line(found->section);
      REQUIRE(kinds(back) == kinds(line));
      for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i].is_arc()) CHECK(radius(back[i]) == Approx(radius(line[i])).epsilon(0.08));
      }
    }
  }
}

TEST_CASE("a profile of flats on whole millimetres is taken as it stands", "[trace][rounding]") {
  // By a point each millimetre: a step of 3 mm is no chance of the rounding.
  Tracing tracing;
  for (int i = 0; i < 20; ++i) tracing.points.push_back({static_cast<double>(i), 20});
  for (int i = 0; i < 3; ++i) tracing.points.push_back({20, 20.0 - i});
  for (int i = 0; i < 9; ++i) tracing.points.push_back({20.0 + i, 17});
  for (int i = 0; i < 12; ++i) tracing.points.push_back({29, 17.0 - i});
  for (int i = 0; i < 14; ++i) tracing.points.push_back({29.0 + i, 5});
  for (Point& p : tracing.points) p = {p.x, -p.y};
  tracing.step = step_of(tracing.points);
  REQUIRE(tracing.step == 1);
  const FittedProfile found = on_halves(tracing);
  CHECK(found.step == 0);
  const std::vector<Edge> back = worked_line(found.section);
  REQUIRE(kinds(back).starts_with("step fillet step "));
}

}  // namespace
}  // namespace arrisline::testing
