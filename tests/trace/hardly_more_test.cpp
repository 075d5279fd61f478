// Where the fewest flats and arcs make no profile, or lie off the drawing, a few more are taken.
#include <string>

#include "arrisline/trace.h"
#include "catch.h"
#include "trace/tracing.h"
#include "trace/tracings.h"

namespace arrisline::testing {
namespace {

/// A step, a cavetto, a fillet that runs smoothly into a half-round below it, and a fillet, mm: one arc over
/// the fillet and the half-round follows both within the tolerance, and passes by the cavetto.
struct OverTorus {
  double step, cavetto, fillet, torus, foot;
};

constexpr OverTorus kOverTorus[] = {
    {3.5, 17.5, 2.5, 20.5, 15.25}, {3, 6.5, 1.5, 10, 9}, {4, 18, 2, 15.5, 11.75}, {4, 12.5, 1.5, 9.5, 8.75}};

/// With so much of the face before it and of the working edge behind it.
std::vector<Edge> line_of(const OverTorus& one, double sides) {
  const double r = one.cavetto;
  const double high = one.step + r;
  const double wide = one.foot + one.fillet;
  const auto flat = [](Point from, Point to) { return Edge{from, to, {}, Turn::straight}; };
  return {flat({wide + r + sides, 0}, {wide + r, 0}),
          flat({wide + r, 0}, {wide + r, one.step}),
          Edge{{wide + r, one.step}, {wide, high}, {wide, one.step}, Turn::left},
          flat({wide, high}, {one.foot, high}),
          Edge{{one.foot, high}, {one.foot, high + one.torus}, {one.foot, high + one.torus / 2}, Turn::right},
          flat({one.foot, high + one.torus}, {0, high + one.torus}),
          flat({0, high + one.torus}, {0, high + one.torus + sides})};
}

std::string path_of(const OverTorus& one) {
  const auto n = [](double value) { return std::to_string(value) + " "; };
  const double r = one.cavetto;
  const double half = one.torus / 2;
  return "M" + n(one.foot + one.fillet + r + 10) + "0h-10v" + n(one.step) + "a" + n(r) + n(r) + "0 0 1 " +
         n(-r) + n(r) + "h" + n(-one.fillet) + "a" + n(half) + n(half) + "0 0 0 0 " + n(one.torus) + "h" +
         n(-one.foot) + "v10";
}

void check_as_drawn(const OverTorus& one, const std::vector<Edge>& back, double off) {
  REQUIRE(kinds(back) == "step cove fillet bead fillet ");
  CHECK(length(back[0]) == Approx(one.step).margin(off));
  CHECK(radius(back[1]) == Approx(one.cavetto).margin(off));
  CHECK(length(back[2]) == Approx(one.fillet).margin(off));
  CHECK(radius(back[3]) == Approx(one.torus / 2).margin(off));
  CHECK(length(back[4]) == Approx(one.foot).margin(off));
}

TEST_CASE("what a drawing is made of is kept, whole figures or not", "[trace][drawn][hardly_more]") {
  // As small as those above, of no whole figures: the fewest that follow within the tolerance pass by the
  // fillet.
  for (const OverTorus& one :
       {OverTorus{1.5875, 7.93, 1.58, 15.08, 11.9}, OverTorus{2.9, 16.6, 2.1, 21.5, 14.55},
        OverTorus{2.37, 11.13, 1.31, 9.73, 8.41}}) {
    INFO("cavetto " << one.cavetto);
    const FittedProfile back = on_halves(traced_path(path_of(one)));
    check_as_drawn(one, worked_line(back.section), 0.03);
    for (const FitOfElement& fit : back.fits) CHECK(fit.greatest < 0.01);
  }
}

TEST_CASE("a drawing that whole figures would make no profile of keeps its own",
          "[trace][drawn][hardly_more][campaign]") {
  // A scotia of 30/7 and 80/7 mm straight off the face, a fillet, a step, and an ovolo or a cavetto of 3/8
  // in.
  for (const char* last : {"0 0 0", "0 0 1"}) {
    const FittedProfile back = on_halves(traced_path(
        "M31.810714 5H23.810714A4.285714 4.285714 0 0 1 26.382143 12.714286A11.428571 11.428571 0 0 1 19.525 "
        "15H14.525V19A9.525 9.525 " +
        std::string(last) + " 5 28.525V33.525"));
    const std::vector<Edge> line = worked_line(back.section);
    REQUIRE(kinds(line) == (last[4] == '0' ? "cove cove fillet step bead " : "cove cove fillet step cove "));
    CHECK(radius(line[0]) == Approx(30.0 / 7).margin(2e-3));
    CHECK(radius(line[1]) == Approx(80.0 / 7).margin(2e-3));
    CHECK(length(line[2]) == Approx(5).margin(2e-3));
    CHECK(length(line[3]) == Approx(4).margin(2e-3));
    CHECK(radius(line[4]) == Approx(9.525).margin(2e-3));
  }
}

TEST_CASE("a curve that is no arc has the fewest arcs that follow it", "[trace][drawn][hardly_more]") {
  // Six would follow this one to 0.0025 mm.
  const FittedProfile back = on_halves(traced_path("M28.1 0H20.1V3.7C20.1 11.68 12 17 3.9 17H0V25"));
  CHECK(kinds(worked_line(back.section)) == "step cove cove fillet ");
}

TEST_CASE("a fillet between a cavetto and a torus is found where the fewest arcs pass it by",
          "[trace][drawn][hardly_more]") {
  for (const OverTorus& one : kOverTorus) {
    INFO("cavetto " << one.cavetto);
    check_as_drawn(one, worked_line(on_halves(traced_path(path_of(one))).section), 1e-3);
  }
}

TEST_CASE("so it is of points, exact and scattered", "[trace][hardly_more]") {
  struct Case {
    OverTorus line;
    std::size_t points;
    double scatter;
  };
  for (const auto& [line, points, scatter] :
       {Case{kOverTorus[0], 400, 0}, Case{kOverTorus[1], 400, 0}, Case{kOverTorus[0], 400, 0.01},
        Case{kOverTorus[0], 1500, 0.02}}) {
    INFO("cavetto " << line.cavetto << ", scatter " << scatter);
    Digitiser by;
    by.points = points;
    by.scatter = scatter;
    const Tracing tracing = digitised(line_of(line, 10), by, 1);
    check_as_drawn(line, worked_line(on_halves(tracing).section), 0.05 + 5 * scatter);
  }
}

TEST_CASE("what is found of a small drawing lies within the tolerance", "[trace][drawn][hardly_more]") {
  // An ogee whose last step is hardly longer than what two arcs in the place of all three are off. In the
  // end, with flats level and upright, the fewest would lie farther off than they are to.
  const FittedProfile found = on_halves(traced_path(
      "M13 0H10a3.830926 3.830926 0 0 0 -3.830926 3.830926h-0.907164v1.003212a2.877515 2.877515 0 "
      "0 1 -2.144355 1.858128a2.877515 2.877515 0 0 0 -2.144355 1.858128v0.830430H0v1.6"));
  CHECK(kinds(worked_line(found.section)) == "bead fillet step cove bead step fillet ");
  for (const FitOfElement& fit : found.fits) CHECK(fit.greatest <= 0.05);
}

}  // namespace
}  // namespace arrisline::testing
