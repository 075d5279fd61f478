// The section with its dimensions: every level is there, and no figure lies on another.
#include "sheet/full_size.h"

#include <algorithm>
#include <cmath>

#include "catch.h"
#include "sheet/levels.h"
#include "sheet/plans.h"
#include "sheet/tiles.h"
#include "wording/figures.h"

using namespace arrisline;

namespace {

bool has(const Picture& picture, const std::string& words) {
  return std::any_of(picture.labels.begin(), picture.labels.end(),
                     [&](const Label& label) { return label.words == words; });
}

void check_apart(const Picture& picture) {
  std::vector<Box> boxes;
  for (const Label& label : picture.labels) boxes.push_back(box_of(label));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const Box& a = boxes[i];
    INFO(picture.labels[i].words);
    CHECK((a.x0 >= -1e-9 && a.y0 >= -1e-9 && a.x1 <= picture.width + 1e-9 && a.y1 <= picture.height + 1e-9));
    for (std::size_t k = i + 1; k < boxes.size(); ++k) {
      INFO("and " << picture.labels[k].words);
      const Box& b = boxes[k];
      CHECK_FALSE((a.x0 < b.x1 - 1e-9 && b.x0 < a.x1 - 1e-9 && a.y0 < b.y1 - 1e-9 && b.y0 < a.y1 - 1e-9));
    }
  }
}

}  // namespace

TEST_CASE("no figure of a section lies on another, at any scale, in either unit", "[sheet]") {
  for (const std::vector<test::Drawable>* drawables : {&test::drawn_examples(), &test::drawn_extremes()}) {
    for (const test::Drawable& one : *drawables) {
      for (const Unit unit : {Unit::inch, Unit::mm}) {
        for (const double scale : {0.4, 1.0, 4.0}) {
          INFO(one.name << " at " << scale);
          const Picture picture = dimensioned_picture(one.plan.section, unit, scale);
          check_apart(picture);
          const std::string width = exact(one.plan.section.width, unit);
          CHECK(has(picture, width.substr(0, width.size() - 3)));
        }
      }
    }
  }
}

TEST_CASE("a section has the figures of its profile", "[sheet]") {
  // Each figure is one that the profile is drawn with, or the sum of such.
  const Section section = test::need(
      read_profile("units inch\nstock 2 wide, 3/4 thick\nstart face 1/2\nstep down 1/8\ncavetto 3/8\n"
                   "fillet out 1/8\n",
                   "test.profile"));
  const Picture picture = dimensioned_picture(section, Unit::inch, 1);
  std::vector<std::string> words;
  for (const Label& label : picture.labels) words.push_back(label.words);
  std::sort(words.begin(), words.end());
  // From the edge 1/8, 1/2 and 2, from the face 1/8, 1/2 and 3/4.
  CHECK(words == std::vector<std::string>{"1/2", "1/2", "1/8", "1/8", "2", "3/4", "R 3/8"});
  std::size_t crosses = 0;
  for (const DrawnShape& shape : picture.shapes) crosses += shape.role == Role::centre;
  CHECK(crosses == 1);
}

TEST_CASE("figures pushed apart keep their order and stay near", "[sheet]") {
  const std::vector<double> out = stand_apart({0, 1, 2, 50}, 4, -100);
  // Three within a breath of each other about their mean, the fourth where it was.
  CHECK(out[0] == Approx(-3));
  CHECK(out[1] == Approx(1));
  CHECK(out[2] == Approx(5));
  CHECK(out[3] == Approx(50));
}

TEST_CASE("the parts of a large picture cover it, and each label is whole on one of them", "[sheet]") {
  for (const test::Drawable& one : test::drawn_extremes()) {
    INFO(one.name);
    const Picture whole = dimensioned_picture(one.plan.section, Unit::mm, 1);
    const Tiling tiling = tiles_of(whole, 120, 80, 100);
    CHECK(tiling.tiles.size() == tiling.rows * tiling.columns);
    for (const Tile& tile : tiling.tiles) {
      CHECK(tile.picture.width <= 120 + 1e-9);
      CHECK(tile.picture.height <= 80 + 1e-9);
    }
    for (double x = 0.5; x < whole.width; x += 5) {
      for (double y = 0.5; y < whole.height; y += 5) {
        CHECK(std::any_of(tiling.tiles.begin(), tiling.tiles.end(), [&](const Tile& tile) {
          return x >= tile.part.x0 && x <= tile.part.x1 && y >= tile.part.y0 && y <= tile.part.y1;
        }));
      }
    }
    for (const Label& label : whole.labels) {
      INFO(label.words);
      CHECK(std::any_of(tiling.tiles.begin(), tiling.tiles.end(),
                        [&](const Tile& tile) { return has(tile.picture, label.words); }));
    }
  }
}
