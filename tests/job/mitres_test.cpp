// Saw settings of mitred ends against published tables, and the short points.
#include <cmath>

#include "arrisline/job_plan.h"
#include "catch.h"

using namespace arrisline;

namespace {

Mould mould(double spring, double corner, Ends ends = Ends::both) {
  Mould out;
  out.width = 40;
  out.section.thickness = 20;
  out.length = 500;
  out.mitre = ends;
  out.spring = spring;
  out.corner = corner;
  return out;
}

struct Row {
  double spring, corner, mitre, bevel;
};

}  // namespace

// Published compound-angle tables (shared by manuals of saws); rounded manuals differ by up to .02 degrees.
TEST_CASE("mitre and bevel are those of the published tables of compound angles", "[mitres]") {
  for (const Row& row :
       {Row{38, 90, 31.619, 33.863}, Row{38, 135, 14.306, 17.551}, Row{45, 135, 16.325, 15.700},
        Row{45, 90, 35.264, 30.000}, Row{52, 5, 86.829, 37.957}}) {
    INFO("spring " << row.spring << ", corner " << row.corner);
    const Mitre mitre = mitre_of(mould(row.spring, row.corner), true);
    CHECK(mitre.mitre == Approx(row.mitre).margin(0.0006));
    CHECK(mitre.bevel == Approx(row.bevel).margin(0.0006));
  }
}

// Common practice, no source: a picture frame's corner is sawn at 45 degrees, a hexagon's at 30.
TEST_CASE("a moulding that lies flat has a plain mitre, half of what the corner lacks of straight",
          "[mitres]") {
  for (const double corner : {60.0, 90.0, 108.0, 120.0, 135.0}) {
    const Mitre mitre = mitre_of(mould(90, corner), false);
    CHECK(mitre.mitre == Approx(90 - corner / 2));
    CHECK(mitre.bevel == Approx(0).margin(1e-12));
  }
}

TEST_CASE("a moulding that stands against the wall has the same angle as a bevel, and no mitre", "[mitres]") {
  for (const double corner : {60.0, 90.0, 120.0, 135.0}) {
    const Mitre mitre = mitre_of(mould(0, corner), false);
    CHECK(mitre.mitre == Approx(0).margin(1e-12));
    CHECK(mitre.bevel == Approx(90 - corner / 2));
  }
}

TEST_CASE("each mitred end runs back by the moulding's reach from the corner", "[mitres]") {
  // Flat: by its width at 90 degrees; standing: by its thickness.
  CHECK(mitre_of(mould(90, 90), true).runs_back == Approx(40));
  CHECK(mitre_of(mould(90, 90), true).short_point == Approx(420));
  CHECK(mitre_of(mould(90, 90, Ends::left), true).short_point == Approx(460));
  CHECK(mitre_of(mould(0, 90), true).runs_back == Approx(20));
  CHECK(mitre_of(mould(0, 90), true).short_point == Approx(460));
  // In space: the saw's plane through the corner bisects it. A section's corner that lies `out` of the wall
  // is `out` / tan(C/2) short of the one at the wall, and a back edge at the spring S over a width W and a
  // thickness T is W sin S + T cos S out of the wall.
  const Mitre sprung = mitre_of(mould(38, 120), true);
  const double out = 40 * std::sin(38 * kPi / 180) + 20 * std::cos(38 * kPi / 180);
  CHECK(sprung.runs_back == Approx(out * std::tan(30 * kPi / 180)));
}

// The published formulas, derived anew with vectors: the saw's plane is the corner's bisector; turned with
// the moulding until its back lies on the bench, its normal gives both angles.
TEST_CASE("the angles are those of the corner's bisecting plane, seen from the moulding's back", "[mitres]") {
  for (double spring = 0; spring <= 90; spring += 7.5) {
    for (double corner = 20; corner < 180; corner += 12.5) {
      INFO("spring " << spring << ", corner " << corner);
      const Mitre mitre = mitre_of(mould(spring, corner), true);
      // Along the piece, out of the wall, up the wall: the bisector's normal before the turn.
      const double half = corner * kPi / 360;
      const double n_along = std::sin(half), n_out = std::cos(half);
      // The back's own axes: across it (leaning `spring` off the wall) and out of it.
      const double s = spring * kPi / 180;
      const double n_across = n_out * std::sin(s);
      const double n_off = n_out * std::cos(s);
      CHECK(mitre.mitre == Approx(std::atan2(n_across, n_along) * 180 / kPi).margin(1e-9));
      CHECK(mitre.bevel == Approx(std::asin(n_off) * 180 / kPi).margin(1e-9));
    }
  }
}

TEST_CASE("the table has every mitred end once, left before right", "[mitres]") {
  Job job;
  job.moulds = {mould(90, 90, Ends::both), mould(90, 90, Ends::none), mould(0, 90, Ends::right)};
  const std::vector<Mitre> mitres = mitres_of(job);
  REQUIRE(mitres.size() == 3);
  CHECK(mitres[0].mould == 0);
  CHECK(mitres[0].left);
  CHECK(mitres[1].mould == 0);
  CHECK_FALSE(mitres[1].left);
  CHECK(mitres[2].mould == 2);
  CHECK_FALSE(mitres[2].left);
}
