// Figures that a slanted flat may find set, worked out by hand on a blank of 50 by 20 mm.
#include "plan/figures.h"

#include "plan/planning.h"

using namespace arrisline;

namespace {

constexpr double kWidth = 30;  // mm, of the rebate plane

struct OnBlank {
  Section section = [] {
    Section out;
    out.width = 50;
    out.thickness = 20;
    return out;
  }();
  Plane plane = [] {
    Plane out;
    out.kind = PlaneKind::rebate;
    out.width = kWidth;
    return out;
  }();

  std::vector<Sweep> at(Point middle, double tilt) const { return {Sweep(plane, {middle, tilt})}; }
  Flanks blank() const { return flanks_of(blank_outline(section.width, section.thickness)); }
  /// Of a slanted flat, on the blank alone and on the cuts given as `by` 0, 1, …
  std::vector<MaybeFigure> figures(const std::vector<Sweep>& flat,
                                   const std::vector<Flanks>& cuts = {}) const {
    std::vector<MaybeFigure> out;
    add_figures(section, flat, blank(), -1, out);
    for (std::size_t i = 0; i < cuts.size(); ++i)
      add_figures(section, flat, cuts[i], static_cast<int>(i), out);
    return out;
  }
};

bool has(const std::vector<MaybeFigure>& all, Side from, double at) {
  return std::any_of(all.begin(), all.end(), [&](const MaybeFigure& figure) {
    return figure.from == from && std::abs(figure.at - at) < 1e-9;
  });
}

}  // namespace

TEST_CASE("a chamfer is struck on the face from the edge, and on the edge from the face", "[figures]") {
  const OnBlank on;
  // At 45 degrees through (6, 0) and (0, 6).
  const std::vector<MaybeFigure> all = on.figures(on.at({3, 3}, 45));
  CHECK(has(all, Side::edge, 6));
  CHECK(has(all, Side::face, 6));
  CHECK(std::is_sorted(all.begin(), all.end()));
  // Never on the face from the face.
  CHECK_FALSE(has(all, Side::face, 0));
}

TEST_CASE("a chamfer below is struck from the underside", "[figures]") {
  const OnBlank on;
  const std::vector<MaybeFigure> all = on.figures(on.at({3, 17}, 135));
  CHECK(has(all, Side::edge, 6));
  CHECK(has(all, Side::underside, 6));
}

TEST_CASE("a chamfer that meets a rebate is struck on its floor and on its wall", "[figures]") {
  const OnBlank on;
  // Floor 4 mm down, wall 10 mm in; the chamfer runs through (8, 4) and (10, 2).
  const Flanks rebate = flanks_of(on.at({10 - kWidth / 2, 4}, 0));
  const std::vector<MaybeFigure> all = on.figures(on.at({9, 3}, 45), {rebate});
  CHECK(has(all, Side::edge, 8));
  CHECK(has(all, Side::face, 2));
}

TEST_CASE("a rebate stands at its floor and at its walls, and nowhere else", "[figures]") {
  const OnBlank on;
  const Flanks rebate = flanks_of(on.at({10 - kWidth / 2, 4}, 0));
  CHECK(stands_at(on.section, rebate, {Side::face, 4, -1}));
  CHECK(stands_at(on.section, rebate, {Side::underside, 16, -1}));
  CHECK(stands_at(on.section, rebate, {Side::edge, 10, -1}));
  CHECK(stands_at(on.section, rebate, {Side::back, 40, -1}));
  CHECK_FALSE(stands_at(on.section, rebate, {Side::face, 10, -1}));
  CHECK_FALSE(stands_at(on.section, rebate, {Side::edge, 4, -1}));
}

TEST_CASE("a hollow stands only at its sides", "[figures]") {
  OnBlank on;
  on.plane.kind = PlaneKind::hollow;
  on.plane.width = 12;
  on.plane.radius = 12;
  const Flanks hollow = flanks_of(on.at({20, 4}, 0));
  CHECK(stands_at(on.section, hollow, {Side::edge, 14, -1}));
  CHECK(stands_at(on.section, hollow, {Side::edge, 26, -1}));
  CHECK_FALSE(stands_at(on.section, hollow, {Side::face, 4, -1}));
}

TEST_CASE("chamfers on two edges share the figure they have in common, and others none", "[figures]") {
  const OnBlank on;
  // Both 6 mm from the edge, one on the face and one on the underside; the third 7 mm.
  const std::vector<MaybeFigure> above = on.figures(on.at({3, 3}, 45));
  const std::vector<MaybeFigure> below = on.figures(on.at({3, 17}, 135));
  const std::vector<MaybeFigure> farther = on.figures(on.at({3.5, 16.5}, 135));
  CHECK(share_a_figure(above, 0, below, 1));
  CHECK(share_a_figure(below, 1, above, 0));
  CHECK_FALSE(share_a_figure(above, 0, farther, 1));
}

TEST_CASE("two chamfers that cross do not share the line in which they cross", "[figures]") {
  const OnBlank on;
  // One through (8, 0) and (0, 4), one through (4, 0) and (0, 8): they cross in (8/3, 8/3).
  const double steep = 90 - to_degrees(std::atan2(4.0, 8.0)), flat = 90 - steep;
  const std::vector<Sweep> one = on.at({4, 2}, flat), other = on.at({2, 4}, steep);
  std::vector<MaybeFigure> of_one, of_other;
  add_figures(on.section, one, on.blank(), -1, of_one);
  add_figures(on.section, other, on.blank(), -1, of_other);
  const bool before = share_a_figure(of_one, 0, of_other, 1);
  add_figures(on.section, one, flanks_of(other), 1, of_one);
  add_figures(on.section, other, flanks_of(one), 0, of_other);
  REQUIRE(has(of_one, Side::edge, 8.0 / 3));
  REQUIRE(has(of_other, Side::edge, 8.0 / 3));
  CHECK_FALSE(before);
  CHECK_FALSE(share_a_figure(of_one, 0, of_other, 1));
  // A third cut would find it.
  CHECK(share_a_figure(of_one, 2, of_other, 3));
}
