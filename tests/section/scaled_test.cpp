// Mouldings made larger and smaller.
#include <cmath>
#include <string>

#include "catch.h"
#include "section/drawing_of.h"
#include "section/one_chain.h"
#include "section/reshaped.h"
#include "section/sections.h"
#include "text/write_profile.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

const char* const kEdge =
    "units mm\nstock 60 wide, 40 thick\nstart face 28\nstep down 4\nbead out 12 down 12\nfillet out 3\n"
    "cove out 12 down 16 radius 20\nfillet out 1\n";

Drawing edge() {
  return drawing_of(section_of(kEdge), Unit::mm);
}

Point size_of(const Drawing& drawing) {
  Point out;
  for (const Stroke& stroke : drawing.chains.front().strokes) out = out + stroke.move;
  return {-out.x, out.y};
}

ScaleOptions by(double factor, double fillet) {
  ScaleOptions options;
  options.by = factor;
  options.fillet = fillet;
  return options;
}

}  // namespace

TEST_CASE("by a factor everything is to scale, the wood behind stays", "[section][scale]") {
  std::string why;
  for (const double factor : {0.5, 0.9, 1.0, 2.0, 3.7}) {
    CAPTURE(factor);
    const auto result = scaled(edge(), by(factor, 0), &why);
    REQUIRE(result);
    CHECK(result->factor == factor);
    CHECK(result->greatest < 1e-9);
    const Section section = section_of(profile_text(result->drawing));
    check_promises(section);
    CHECK(section.width == Approx(28 * factor + 32));
    CHECK(section.thickness >= 40 * factor - 1e-9);
    CHECK(section.thickness == usual_thickness(40 * factor, Unit::mm));
    // What is cut away grows by the square: the part left of the start, above its lowest member.
    const Section before = section_of(kEdge);
    const auto waste = [](const Section& s) { return s.width * s.thickness - area(s.target); };
    CHECK(waste(section) == Approx(factor * factor * waste(before)).epsilon(1e-9));
  }
}

TEST_CASE("flats keep their least width, and the height comes out as asked", "[section][scale]") {
  std::string why;
  ScaleOptions options;
  options.height = 16;
  options.fillet = 1.5;
  const auto result = scaled(edge(), options, &why);
  REQUIRE(result);
  const auto& strokes = result->drawing.chains.front().strokes;
  CHECK(size_of(result->drawing).y == Approx(16).margin(1e-6));
  // At about a half, the step of 4 has 2 and goes on; the fillet of 3 keeps 1.5, that of 1 its 1.
  CHECK(strokes[0].move.y == Approx(4 * result->factor));
  CHECK(strokes[2].move.x == Approx(-1.5));
  CHECK(strokes[4].move.x == -1);
  CHECK(strokes[1].radius == Approx(12 * result->factor));
  CHECK(result->factor == Approx(0.5).margin(1e-9));
  REQUIRE(result->changes.size() == 5);
  CHECK_FALSE(result->changes[0]);
  REQUIRE(result->changes[4]);
  CHECK(result->changes[4]->meant == Approx(0.5));
  CHECK(result->changes[4]->made == 1);
  CHECK(result->greatest == Approx(0.5).margin(1e-6));
  // Smaller still, the step is kept too, and the arcs make up for it.
  options.height = 8;
  const auto small = scaled(edge(), options, &why);
  REQUIRE(small);
  CHECK(small->drawing.chains.front().strokes[0].move.y == 1.5);
  CHECK(small->factor == Approx((8 - 1.5) / 28));
  // Not even the step has room.
  options.height = 1;
  CHECK_FALSE(scaled(edge(), options, &why));
  CHECK(why ==
        "its flats alone, kept as wide as --fillet says, do not leave room for the rest in that height; give "
        "a smaller --fillet");
}

TEST_CASE("the projection comes out as asked", "[section][scale]") {
  std::string why;
  ScaleOptions options;
  options.projection = 42;
  options.fillet = 1.5;
  const auto result = scaled(edge(), options, &why);
  REQUIRE(result);
  CHECK(size_of(result->drawing).x == Approx(42));
  CHECK(size_of(result->drawing).y == Approx(32 * 1.5));
  section_of(profile_text(result->drawing));
}

TEST_CASE("arcs take the nearest radii of the kit, hollows for beads and rounds for coves",
          "[section][scale]") {
  const Reading<Kit> kit =
      read_kit("units mm\nhollow radius 6\nhollow radius 9\nround radius 14\nrebate 20\n", "k");
  REQUIRE(kit.value);
  std::string why;
  ScaleOptions options = by(0.6, 0);
  options.kit = &*kit.value;
  const auto result = scaled(edge(), options, &why);
  REQUIRE(result);
  const auto& strokes = result->drawing.chains.front().strokes;
  CHECK(strokes[1].radius == Approx(6));  // of 7.2: the hollows are 6 and 9
  CHECK(strokes[1].move.y == Approx(6));
  CHECK(strokes[3].radius == Approx(14));  // of 12
  CHECK(strokes[3].move.y == Approx(0.6 * 16 * 14 / 12));
  REQUIRE(result->changes[1]);
  CHECK(result->changes[1]->meant == Approx(7.2));
  CHECK(result->changes[1]->plane->radius == 6);
  // By hand: the bead's end is 1.2 short both ways, the cove's out 7.2 becomes 8.4, down 9.6 becomes 11.2.
  CHECK(result->greatest == Approx(1.2 * std::sqrt(2.0)));
  check_promises(section_of(profile_text(result->drawing)));
}

TEST_CASE("an arc keeps its radius where the nearest of the kit is more than a third off",
          "[section][scale]") {
  const Reading<Kit> kit = read_kit("units mm\nhollow radius 7.9\nround radius 8.1\n", "k");
  REQUIRE(kit.value);
  std::string why;
  ScaleOptions options = by(0.5, 0);
  options.kit = &*kit.value;
  const auto result = scaled(drawing_of(section_of("units mm\nstock 60 wide, 40 thick\nstart face 30\n"
                                                   "step down 4\nbead out 12 down 12\nfillet out 6\n"
                                                   "cove out 12 down 12\n"),
                                        Unit::mm),
                             options, &why);
  REQUIRE(result);
  const auto& strokes = result->drawing.chains.front().strokes;
  CHECK(strokes[1].radius == Approx(7.9));  // of 6, 32 hundredths more
  CHECK_FALSE(result->changes[1]->too_far);
  CHECK(strokes[3].radius == Approx(6));  // 8.1 is 35 hundredths more
  REQUIRE(result->changes[3]);
  CHECK(result->changes[3]->too_far);
  CHECK(result->changes[3]->plane->radius == Approx(8.1));
}

TEST_CASE("work on other sides is scaled with its stock", "[section][scale]") {
  const char* const text =
      "units mm\nstock 50 wide, 20 thick\nstart face 30\ncove out 10 radius 5\nside underside\nstart back 6\n"
      "fillet out 9\nstep up 6\n";
  std::string why;
  const auto result = scaled(drawing_of(section_of(text), Unit::mm), by(0.5, 1.5), &why);
  REQUIRE(result);
  CHECK(result->plainly);
  const Section section = section_of(profile_text(result->drawing));
  CHECK(area(section.target) == Approx(area(section_of(text).target) / 4));
}

TEST_CASE("height and projection are what the members reach in all, not what lies between their ends",
          "[section][scale]") {
  std::string why;
  const auto drawn = [](const std::string& chain) {
    return drawing_of(section_of("units mm\nstock 50 wide, 20 thick\n" + chain), Unit::mm);
  };
  ScaleOptions options;
  SECTION("of a flute the height is its depth") {
    options.height = 4;
    const auto result = scaled(drawn("start face 30\ncove out 10 radius 5\n"), options, &why);
    REQUIRE(result);
    CHECK(result->factor == Approx(0.8));
    CHECK(extent_of(result->drawing.chains.front().strokes).y == Approx(4));
  }
  SECTION("a bead that bulges farther out than where it ends projects by that") {
    options.projection = 5;
    const auto result = scaled(drawn("start face 10\nbead down 20 radius 10\n"), options, &why);
    REQUIRE(result);
    CHECK(result->factor == Approx(0.5));
  }
  SECTION("what goes straight down projects nowhere") {
    options.projection = 5;
    CHECK_FALSE(scaled(drawn("start face 10\nstep down 20\n"), options, &why));
    CHECK(why == "its members have no projection; give --by instead");
  }
}

TEST_CASE("height and projection of several chains are those of all of them together", "[section][scale]") {
  std::string why;
  const auto drawn = [](const std::string& chains) {
    return drawing_of(section_of("units mm\nstock 50 wide, 20 thick\n" + chains), Unit::mm);
  };
  const auto factor = [&](const Drawing& drawing, std::optional<double> height,
                          std::optional<double> projection) {
    ScaleOptions options;
    options.height = height;
    options.projection = projection;
    const auto result = scaled(drawing, options, &why);
    REQUIRE(result);
    const Point extent = extent_of(result->drawing);
    CHECK((height ? extent.y : extent.x) == Approx(height ? *height : *projection));
    return result->factor;
  };
  // Two flutes in the face, 5 and 4 deep, from 20 to 45.
  const Drawing flutes =
      drawn("start face 30\ncove out 10 radius 5\nside face\nstart face 45\ncove out 8 radius 4\n");
  CHECK(extent_of(flutes) == Point{25, 5});
  CHECK(factor(flutes, 2.5, std::nullopt) == Approx(0.5));
  CHECK(factor(flutes, std::nullopt, 50) == Approx(2));
  // A flute and a rebate of 9 by 6 at the back of the underside.
  const Drawing rebate =
      drawn("start face 30\ncove out 10 radius 5\nside underside\nstart back 6\nfillet out 9\nstep up 6\n");
  CHECK(extent_of(rebate) == Point{30, 20});
  CHECK(factor(rebate, 10, std::nullopt) == Approx(0.5));
  CHECK(factor(rebate, std::nullopt, 60) == Approx(2));
  // A chamfer of the back edge, 4 by 3, and one of the working edge, 5 by 2.
  const Drawing both =
      drawn("start face 5\nbevel out 5 down 2\nside back\nstart face 4\nbevel out 4 down 3\n");
  CHECK(extent_of(both) == Point{50, 3});
}

TEST_CASE("usual thicknesses", "[section][scale]") {
  // By common practice, no source.
  CHECK(usual_thickness(19.05, Unit::inch) == Approx(19.05));
  CHECK(usual_thickness(19.2, Unit::inch) == Approx(22.225));
  CHECK(usual_thickness(1.1 * 25.4, Unit::inch) == Approx(1.25 * 25.4));
  CHECK(usual_thickness(2.1 * 25.4, Unit::inch) == Approx(2.5 * 25.4));
  CHECK(usual_thickness(12, Unit::mm) == 12);
  CHECK(usual_thickness(12.1, Unit::mm) == 15);
  CHECK(usual_thickness(21, Unit::mm) == 25);
  CHECK(usual_thickness(51, Unit::mm) == 60);
}

TEST_CASE("a curve is written as the arcs that stand for it", "[section][curve]") {
  const Section section = section_of(
      "units mm\nstock 60 wide, 40 thick\nstart face 34\nstep down 2\ncurve bead out 12 down 18\nfillet out "
      "4\n"
      "curve cove out 18 down 8 parabola\n",
      true);
  const Section again = section_of(profile_text(drawing_of(section, Unit::mm)));
  REQUIRE(again.target.size() == section.target.size());
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& before = section.target[i];
    const Edge& after = again.target[i];
    CHECK(after.turn == before.turn);
    CHECK(distance(after.from, before.from) < 1e-6);
    CHECK(distance(after.to, before.to) < 1e-6);
    if (before.is_arc()) CHECK(radius(after) == Approx(radius(before)).margin(1e-6));
  }
}

TEST_CASE("an arc that grows to a plane's radius does not bulge past the working edge", "[section][scale]") {
  // A half-round to the underside, 3 of radius, that just touches the edge.
  const Drawing nosing = drawing_of(
      section_of("units mm\nstock 40 wide, 6 thick\nstart face 3\nbead down 6 radius 3\n"), Unit::mm);
  const Reading<Kit> kit = read_kit("units mm\nhollow radius 4\nrebate 20\n", "k");
  REQUIRE(kit.value);
  std::string why;
  ScaleOptions options = by(1, 0);
  options.kit = &*kit.value;
  const auto result = scaled(nosing, options, &why);
  REQUIRE(result);
  const Section section = section_of(profile_text(result->drawing));
  check_promises(section);
  CHECK(section.thickness == Approx(8));
  CHECK(section.width == Approx(41));
}

TEST_CASE("behind an undercut as much wood stays as was behind it", "[section][scale]") {
  // A scotia runs in under its head: farther back than where the work begins.
  const Drawing scotia = drawing_of(section_of("units mm\nstock 30 wide, 30 thick\nstart face 16\nstep down "
                                               "3\nscotia 14\nstep down 3\nfillet out 10\n"),
                                    Unit::mm);
  const auto behind = [](const Section& section) {
    double farthest = 0;
    for (std::size_t i = 0; i < section.target.size(); ++i) {
      if (section.source[i] < 0) continue;
      for (int k = 0; k <= 100; ++k) farthest = std::max(farthest, point_at(section.target[i], k / 100.0).x);
    }
    return section.width - farthest;
  };
  std::string why;
  for (const double factor : {0.6, 1.0, 1.7, 2.5}) {
    CAPTURE(factor);
    const auto result = scaled(scotia, by(factor, 0), &why);
    REQUIRE(result);
    const Section before = section_of(profile_text(scotia));
    const Section after = section_of(profile_text(result->drawing));
    CHECK(behind(after) == Approx(behind(before)).margin(0.01));
  }
}
