// A profile on a blank of another width.
#include "catch.h"
#include "plan/planning.h"

using namespace arrisline;
using test::profile;

namespace {

std::vector<Point> corners(const Section& section) {
  std::vector<Point> out;
  for (const Edge& edge : section.target) out.push_back(edge.from);
  return out;
}

Section shelf() {
  return profile("9 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
}

}  // namespace

TEST_CASE("what has to be cut keeps its place from the working edge", "[on_width]") {
  const std::optional<Section> narrow = on_width(shelf(), 1 * kMmPerInch);
  REQUIRE(narrow);
  const Section drawn = profile("1 wide, 3/4 thick", "start face 3/8\nbead out 3/8 down 3/8");
  CHECK(corners(*narrow) == corners(drawn));
  CHECK(narrow->source == drawn.source);
  CHECK(narrow->width == Approx(25.4));
  CHECK(area(narrow->target) == Approx(area(drawn.target)));
  CHECK(on_width(shelf(), 20 * kMmPerInch)->width == Approx(508));  // wider goes too
}

TEST_CASE("on its own width a profile is as it was, work on the back edge or not", "[on_width]") {
  const Section back = profile("2 wide, 3/4 thick", "start back 1/4\nfillet out 2");
  CHECK(works_back_edge(back));
  REQUIRE(on_width(back, back.width));
  CHECK(corners(*on_width(back, back.width)) == corners(back));
  CHECK_FALSE(on_width(back, 1.5 * kMmPerInch));
  CHECK_FALSE(on_width(back, 2.5 * kMmPerInch));
  const Section behind = profile("2 wide, 3/4 thick", "side back\nstart face 1/4\nbead out 1/4 down 1/4");
  CHECK(works_back_edge(behind));
  CHECK_FALSE(on_width(behind, 3 * kMmPerInch));
}

TEST_CASE("a profile fits on the width it reaches, and on none that is less", "[on_width]") {
  CHECK(reach(shelf()) == Approx(3 * kMmPerInch / 8));
  CHECK_FALSE(works_back_edge(shelf()));
  const std::optional<Section> least = on_width(shelf(), 3 * kMmPerInch / 8);
  REQUIRE(least);
  // Nothing is left of the face: the bead begins at the back edge.
  const double below = 3 * kMmPerInch / 8 * 3 * kMmPerInch / 8;
  CHECK(area(least->target) == Approx(below + kPi / 4 * below));
  for (const Edge& edge : least->target) CHECK(length(edge) > 1e-6);
  CHECK_FALSE(on_width(shelf(), 3 * kMmPerInch / 8 - 0.01));
  // A step down right at the back edge would take the back edge away.
  const Section stepped = profile("2 wide, 3/4 thick", "start face 1/2\nstep down 1/4\nfillet out 1/2");
  CHECK_FALSE(on_width(stepped, kMmPerInch / 2));
}

TEST_CASE("an arc that bulges past its ends counts with its bulge", "[on_width]") {
  // A cove under a quirk, three quarters of a circle: it goes 1/8 in farther in than its ends.
  const Section bulging =
      profile("3 wide, 1 thick", "start face 1\ncove out 1/4 down 1/4 radius 1/4 large\nfillet out 3/4");
  CHECK(reach(bulging) > kMmPerInch + 1);
  CHECK_FALSE(on_width(bulging, kMmPerInch + 1));
}
