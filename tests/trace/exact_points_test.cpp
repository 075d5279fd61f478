// Points as an instrument writes them, without scatter but for rounding.
#include <cmath>
#include <string>

#include "arrisline/trace.h"
#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

TEST_CASE("of more points than are looked at the ends stay where they are", "[trace][points]") {
  // A step and an ovolo, of which nothing else says how high and how far in they begin and end.
  const Section section =
      section_of("units mm\nstock 20 wide, 30 thick\nstart face 12\nstep down 3\nbead out 12 down 12\n");
  Digitiser by;
  by.points = 3000;
  Tracing exact = digitised(worked_line(section), by, 1);
  exact.points.insert(exact.points.begin(), {12, 0});
  exact.points.push_back({0, 15});
  std::string why;
  const auto found = fit_tracing(exact, {}, &why);
  INFO(why);
  REQUIRE(found);
  const std::vector<Edge> back = worked_line(found->section);
  REQUIRE(kinds(back) == "step bead ");
  CHECK(back[0].from.x == Approx(12).margin(1e-4));
  CHECK(length(back[0]) == Approx(3).margin(1e-4));
}

TEST_CASE("figures rounded to a hundredth come back level, upright and whole", "[trace][snap]") {
  // A quirk and an ovolo, by points as an instrument writes them: they follow no nearer than they are
  // rounded, and are to be moved within what exact ones are.
  const Section section = section_of(
      "units mm\nstock 30 wide, 40 thick\nstart face 12.5\nstep down 5\nfillet out 2.5\nstep up 5\n"
      "bead out 10 down 10\n");
  for (const std::size_t points : {300U, 400U, 600U}) {
    Digitiser by;
    by.points = points;
    Tracing exact = digitised(worked_line(section), by, 1);
    for (Point& p : exact.points) p = {std::round(100 * p.x) / 100, std::round(100 * p.y) / 100};
    FitOptions options;
    options.division = 0.5;
    std::string why;
    const auto found = fit_tracing(exact, options, &why);
    INFO(points << " points " << why);
    REQUIRE(found);
    const std::vector<Edge> back = worked_line(found->section);
    REQUIRE(kinds(back) == "step fillet step bead ");
    CHECK(radius(back[3]) == Approx(10).margin(1e-6));
  }
}

}  // namespace
}  // namespace arrisline::testing
