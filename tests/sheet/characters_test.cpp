// Pictures of characters: as much wood and waste as the section has, no wider than asked, the same from both
// sides, and nothing but ASCII where that is asked.
#include <algorithm>
#include <cmath>
#include <set>
#include <sstream>

#include "arrisline/sheet.h"
#include "report/page.h"
#include "sheet/glyphs.h"
#include "sheet/plans.h"

using namespace arrisline;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> out;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) out.push_back(line);
  return out;
}

std::vector<test::Drawable> all_drawables() {
  std::vector<test::Drawable> out = test::drawn_examples();
  const auto& more = test::drawn_extremes();
  out.insert(out.end(), more.begin(), more.end());
  return out;
}

/// The rows of the section's picture, without their indent: between the first two empty lines.
std::vector<std::string> picture_of(const std::string& text) {
  const std::vector<std::string> lines = lines_of(text);
  const auto first = std::find(lines.begin(), lines.end(), "");
  REQUIRE(first != lines.end());
  std::vector<std::string> out;
  for (auto line = first + 1; line != lines.end() && !line->empty(); ++line) {
    REQUIRE(line->substr(0, 2) == "  ");
    out.push_back(line->substr(2));
  }
  return out;
}

Raster raster_of(const Section& section, const Grid& grid) {
  return arrisline::raster_of(section, {blank_outline(section.width, section.thickness)}, {section.target},
                              grid, 1);
}

/// The most cells of this width and height that the outline of the waste can meet. A stretch that turns back
/// neither across nor down passes at most one grid line more each way than its extent holds, so it meets at
/// most three cells more than the quotients; an arc has at most five such stretches, and one that runs along
/// the grid passes none of the lines beside it.
///
/// All other cells are wholly of one kind and drawn as that: the finished line is drawn within the wood, so a
/// cell that it meets and the outline does not is wood and no waste. So no more than these can be wrong.
double cells_met(const Section& section, double width, double height) {
  double out = 0;
  // Sides of the blank that border on waste.
  double across = section.width * 2, down = section.thickness * 2;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& edge = section.target[i];
    double dx = 0, dy = 0;
    constexpr int kPieces = 1000;
    for (int k = 0; k < kPieces; ++k) {
      const Point by = point_at(edge, (k + 1.0) / kPieces) - point_at(edge, 1.0 * k / kPieces);
      dx += std::fabs(by.x);
      dy += std::fabs(by.y);
    }
    if (section.source[i] < 0) {
      across -= dx;
      down -= dy;
    } else {
      out += dx / width + dy / height + (edge.is_arc() ? 15 : dx < 1e-9 || dy < 1e-9 ? 2 : 3);
    }
  }
  return out + across / width + down / height + 2 * 4;
}

double waste_of(const Section& section) {
  return section.width * section.thickness - area(std::span<const Edge>(section.target));
}

Section mirrored(const Section& section) {
  Section out = section;
  out.target.clear();
  out.source.clear();
  const auto across = [&](Point p) { return Point{section.width - p.x, p.y}; };
  // Mirrored and then run the other way, an arc turns as it did.
  for (std::size_t i = section.target.size(); i-- > 0;) {
    const Edge& edge = section.target[i];
    out.target.push_back({across(edge.to), across(edge.from), across(edge.centre), edge.turn});
    out.source.push_back(section.source[i]);
  }
  return out;
}

}  // namespace

TEST_CASE("dots of waste come to the area of the waste", "[sheet][characters]") {
  for (const std::size_t rows : {16U, 80U}) {  // as drawn, and finer, where it tells more
    int telling = 0;
    for (const test::Drawable& one : all_drawables()) {
      INFO(one.name << " in rows: " << rows);
      const Section& section = one.plan.section;
      const Grid grid = grid_of(section, one.kit.unit, 5 * rows, rows);
      const Raster raster = raster_of(section, grid);
      const double dot = grid.dot();
      const auto count = [&](Dot what) {
        return double(std::count(raster.dots.begin(), raster.dots.end(), what));
      };
      const double bound = dot * dot * cells_met(section, dot, dot);
      CHECK(std::fabs(count(Dot::waste) * dot * dot - waste_of(section)) <= bound);
      CHECK(count(Dot::line) > 0);
      if (bound < waste_of(section) * (rows > 16 ? 0.1 : 0.5)) ++telling;
    }
    CHECK(telling >= 8);
  }
}

TEST_CASE("characters of waste come to the area of the waste", "[sheet][characters]") {
  int telling = 0;
  for (const test::Drawable& one : all_drawables()) {
    for (const bool ascii : {false, true}) {
      INFO(one.name << (ascii ? " in ASCII" : " in Unicode"));
      const Section& section = one.plan.section;
      const Grid grid = grid_of(section, one.kit.unit, 77, 16);
      const std::vector<std::string> rows =
          picture_of(drawn_in_characters(one.plan, {ascii, false, 80, one.kit.unit}));
      REQUIRE(rows.size() == grid.rows);
      double waste = 0;
      for (const std::string& row : rows) {
        if (ascii) {
          waste += double(std::count(row.begin(), row.end(), '.'));
          continue;
        }
        for (const std::string full : {"\u2881", "\u2814"})  // hatched through and through
          for (std::size_t at = row.find(full); at != std::string::npos; at = row.find(full, at + 3)) ++waste;
      }
      const double wide = grid.column, high = 2 * grid.column;
      const double bound = wide * high * cells_met(section, wide, high);
      CHECK(std::fabs(waste * wide * high - waste_of(section)) <= bound);
      if (bound < waste_of(section)) ++telling;
    }
  }
  CHECK(telling >= 8);
}

TEST_CASE("the rule is as long as it says", "[sheet][characters]") {
  for (const test::Drawable& one : all_drawables()) {
    for (const std::size_t columns : {20U, 37U, 77U}) {
      const Grid grid = grid_of(one.plan.section, one.kit.unit, columns, 16);
      INFO(one.name << ' ' << columns);
      CHECK(grid.rule == Approx(static_cast<double>(grid.rule_columns) * grid.column));
      CHECK(grid.columns <= columns);
      CHECK(grid.rows <= 16);
      CHECK(static_cast<double>(grid.columns) * grid.column >= grid.shown - 1e-6);
      CHECK(static_cast<double>(grid.rows) * 2 * grid.column >= one.plan.section.thickness - 1e-6);
      CHECK((grid.shown < one.plan.section.width) == grid.cut_off);
      CHECK(grid.shown >= reach(one.plan.section));
    }
  }
}

TEST_CASE("no line of a picture is too wide, and none has a space at its end", "[sheet][characters]") {
  for (const test::Drawable& one : all_drawables()) {
    for (const bool ascii : {false, true}) {
      for (const std::size_t most : {40U, 61U, 80U}) {
        const std::string text = drawn_in_characters(one.plan, {ascii, true, most, one.kit.unit});
        INFO(one.name << '\n' << text);
        bool words = true;  // paragraphs of words are laid out for a page of 80 columns
        for (const std::string& line : lines_of(text)) {
          words = most == 80 || line.find("wood") != std::string::npos || line.substr(0, 2) != "  " ||
                  line.find("goes on to the right") != std::string::npos ||
                  line.find("edge at") != std::string::npos || line.find("where the") != std::string::npos;
          CHECK(columns(line) <= (words ? 80 : most));
          CHECK((line.empty() || line.back() != ' '));
        }
        if (ascii)
          CHECK(std::all_of(text.begin(), text.end(),
                            [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); }));
        else
          CHECK(text.find("\u2805") != std::string::npos);
      }
    }
  }
}

TEST_CASE("a section and its mirror image make mirrored pictures", "[sheet][characters]") {
  int shapes = 0;
  for (const test::Drawable& one : all_drawables()) {
    const Section& section = one.plan.section;
    Section other = mirrored(section);
    Grid grid = grid_of(section, one.kit.unit, 77, 16);
    if (grid.cut_off) continue;
    INFO(one.name);
    const Grid same = grid_of(other, one.kit.unit, 77, 16);
    REQUIRE(same.columns == grid.columns);
    REQUIRE(same.column == grid.column);
    const Raster left = raster_of(section, grid), right = raster_of(other, grid);
    std::size_t differ = 0;
    std::set<Dot> seen;
    for (std::size_t y = 0; y < left.height; ++y)
      for (std::size_t x = 0; x < left.width; ++x) {
        if (left.at(x, y) != right.at(left.width - 1 - x, y)) ++differ;
        seen.insert(left.at(x, y));
      }
    CHECK(differ == 0);
    CHECK(seen.size() >= 3);

    std::vector<std::string> rows = in_characters(left, {}, true);
    for (std::string& row : rows) {
      std::reverse(row.begin(), row.end());
      for (char& c : row) c = c == '/' ? '\\' : c == '\\' ? '/' : c;
    }
    CHECK(rows == in_characters(right, {}, true));
    ++shapes;
  }
  CHECK(shapes >= 3);
}

TEST_CASE("every cut has its picture with number and plane, and the key comes once", "[sheet][characters]") {
  for (const test::Drawable& one : all_drawables()) {
    const std::string text = drawn_in_characters(one.plan, {true, true, 80, one.kit.unit});
    INFO(one.name);
    for (const Cut& cut : one.plan.cuts)
      CHECK(text.find("  " + std::to_string(cut.number) + ". " + cut.plane.label) != std::string::npos);
    const std::string key = "wood that this cut takes";
    REQUIRE(text.find(key) != std::string::npos);
    CHECK(text.find(key) == text.rfind(key));
    CHECK(drawn_in_characters(one.plan, {true, false, 80, one.kit.unit}).find(key) == std::string::npos);
  }
}

TEST_CASE("what a file calls a moulding or a plane cannot reach the terminal as it is",
          "[sheet][characters]") {
  test::Drawable one = test::drawn_examples().front();
  one.plan.section.name = "red\x1b[31m";
  for (Cut& cut : one.plan.cuts) cut.plane.label = "\x1b]0;title\x07" + std::string(200, 'w');
  const std::string text = drawn_in_characters(one.plan, {true, true, 80, Unit::inch});
  CHECK(text.find("red\\x1b[31m") != std::string::npos);
  CHECK(text.find("\\x1b]0;title") != std::string::npos);
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find('\x07') == std::string::npos);
  for (const std::string& line : lines_of(text)) CHECK(columns(line) <= 80);
}

TEST_CASE("a plan that is not feasible has its section drawn, and no cuts", "[sheet][characters]") {
  Plan plan = test::drawn_examples().front().plan;
  const std::string section = drawn_in_characters(plan, {true, false, 80, Unit::inch});
  plan.feasible = false;
  plan.cuts.clear();
  CHECK(drawn_in_characters(plan, {true, true, 80, Unit::inch}) == section);
}
