// What a maker would have drawn: widths of grooves that an iron makes, and corners of a few degrees.
#include "trace/snap.h"

#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// The line found of this one, which has the same elements.
std::vector<Edge> found_of(const std::vector<Edge>& line, const FitOptions& options, std::size_t points,
                           double scatter, unsigned seed) {
  Digitiser by;
  by.points = points;
  by.scatter = scatter;
  std::string why;
  const auto found = fit_tracing(digitised(with_sides(line, 6), by, seed), options, &why);
  INFO(why);
  REQUIRE(found);
  const std::vector<Edge> back = worked_line(found->section);
  REQUIRE(kinds(back) == kinds(line));
  return back;
}

/// The line found with these irons, on halves of a millimetre where that lies near.
std::vector<Edge> found_with(const std::vector<double>& widths, const std::string& profile, double scatter,
                             unsigned seed) {
  FitOptions options;
  options.division = 0.5;
  options.widths = widths;
  return found_of(worked_line(section_of("units mm\nstock 60 wide, 40 thick\n" + profile + "\n")), options,
                  800, scatter, seed);
}

const std::vector<double> kIrons = {3.175, 4.7625, 6.35, 9.525};

// A bead of 3/8 in over 5/16 by 1/4 in begins at 6.9 degrees to the fillet before it. Without that corner the
// fillet ends 1 mm sooner, and the line follows the points as well.
TEST_CASE("a small corner is kept where the figures beside it are whole with it", "[trace][snap]") {
  const std::vector<Edge> line = worked_line(
      section_of("units inch\nstock 2 wide, 1 thick\nstart face 1 3/16\nstep down 1/8\nfillet out 1/8\n"
                 "bead out 5/16 down 1/4 radius 3/8\nfillet out 3/16\n"
                 "cove out 3/8 down 1/4 radius 1/2\nfillet out 3/16\n"));
  for (const double scatter : {0.0, 0.02}) {
    for (unsigned seed = 1; seed <= 4; ++seed) {
      INFO("scatter " << scatter << " mm, seed " << seed);
      FitOptions options;
      options.division = kMmPerInch / 32;
      const std::vector<Edge> back = found_of(line, options, 400, scatter, seed);
      CHECK(length(back[1]) == Approx(kMmPerInch / 8).margin(1e-5));
      CHECK(radius(back[2]) == Approx(3 * kMmPerInch / 8).margin(1e-5));
    }
  }
}

TEST_CASE("a groove about as wide as an iron is as wide as the iron", "[trace][snap]") {
  const std::string quirk =
      "start face 17.4625\nstep down 6.35\nfillet out 3.175\nstep up 3.175\nbead out 9.525 down 9.525\n"
      "step down 3.175\nfillet out 4.7625";
  for (const double scatter : {0.0, 0.02, 0.05}) {
    for (unsigned seed = 1; seed <= 4; ++seed) {
      INFO("scatter " << scatter << " mm, seed " << seed);
      const std::vector<Edge> back = found_with(kIrons, quirk, scatter, seed);
      CHECK(length(back[1]) == Approx(3.175).margin(5e-7));
      // The fillet at the working edge is no groove.
      if (scatter > 0) CHECK(length(back[5]) != Approx(4.7625).margin(1e-6));
    }
  }
}

TEST_CASE("beside a wall on a division the width of an iron goes before another division", "[trace][snap]") {
  const std::string groove =
      "start face 25.5\nstep down 5\nfillet out 9.525\nstep up 3\nfillet out 7\nstep down 9\nfillet out "
      "8.975";
  for (unsigned seed = 1; seed <= 4; ++seed) {
    const std::vector<Edge> back = found_with(kIrons, groove, 0.05, seed);
    CHECK(back[0].from.x == Approx(25.5).margin(1e-6));
    CHECK(length(back[1]) == Approx(9.525).margin(5e-7));
  }
}

TEST_CASE("a groove wider or narrower than the tolerance lets an iron be keeps its width", "[trace][snap]") {
  for (const double wide : {3.0, 3.3}) {
    const std::string profile = "start face " + std::to_string(16 + wide) + "\nstep down 6\nfillet out " +
                                std::to_string(wide) +
                                "\nstep up 3\nbead out 10 down 10\nstep down 3\nfillet out 6";
    CHECK(length(found_with(kIrons, profile, 0.02, 1)[1]) == Approx(wide).margin(0.03));
  }
}

}  // namespace
}  // namespace arrisline::testing
