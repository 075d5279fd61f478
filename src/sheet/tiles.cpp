// Parts of a large picture. Shown by tests/sheet/full_size_test.cpp.
#include "sheet/tiles.h"

#include <algorithm>
#include <cmath>

#include "report/gauge_lines.h"

namespace arrisline {
namespace {

// mm of paper.
constexpr double kStrip = 6;     // beside a part, for the letters of its neighbours
constexpr double kOverlap = 20;  // at least
constexpr double kType = 4;
constexpr double kCross = 3;  // of the marks at both ends of a joint

void add_line(Picture& picture, Point a, Point b) {
  picture.shapes.push_back({Role::leader, {{line(a, b)}}, false, false});
}

Picture part_of(const Picture& whole, const Box& part) {
  Picture out;
  out.width = kStrip + part.width();
  out.height = kStrip + part.height();
  out.window = {kStrip, kStrip, out.width, out.height};
  out.description = whole.description;
  const Placing placing{{kStrip - part.x0, kStrip - part.y0}, 1};
  for (DrawnShape shape : whole.shapes) {
    for (auto& chain : shape.chains) chain = placing.chain(chain);
    shape.clipped = true;
    out.shapes.push_back(std::move(shape));
  }
  for (Label label : whole.labels) {
    const Box box = box_of(label);
    if (box.x0 < part.x0 || box.x1 > part.x1 || box.y0 < part.y0 || box.y1 > part.y1) continue;
    label.at = placing.point(label.at);
    out.labels.push_back(std::move(label));
  }
  return out;
}

void add_letter(Picture& picture, Point at, const std::string& letter, Anchor anchor) {
  picture.labels.push_back({at, letter, kType, anchor, true});
}

/// A joint across the part, at x, with the letters of what lies on either side of it.
void add_upright_joint(Picture& picture, double x, const std::string& left, const std::string& right) {
  add_line(picture, {x, kStrip - 4}, {x, picture.height});
  for (const double y : {kStrip + kCross, picture.height - kCross})
    add_line(picture, {x - kCross, y}, {x + kCross, y});
  add_letter(picture, {x - 1.2, kStrip - 1.2}, left, Anchor::end);
  add_letter(picture, {x + 1.2, kStrip - 1.2}, right, Anchor::start);
}

void add_level_joint(Picture& picture, double y, const std::string& above, const std::string& below) {
  add_line(picture, {kStrip - 5, y}, {picture.width, y});
  for (const double x : {kStrip + kCross, picture.width - kCross})
    add_line(picture, {x, y - kCross}, {x, y + kCross});
  add_letter(picture, {kStrip - 1.2, y - 1.3}, above, Anchor::end);
  add_letter(picture, {kStrip - 1.2, y + 4.4}, below, Anchor::end);
}

/// How many parts of this size, overlapping so, make up the whole.
std::size_t parts(double whole, double size, double overlap) {
  if (whole <= size) return 1;
  return static_cast<std::size_t>(std::ceil((whole - overlap) / (size - overlap) - 1e-9));
}

}  // namespace

Tiling tiles_of(const Picture& picture, double width, double height, std::size_t most) {
  double wide = kOverlap, high = kOverlap;
  for (const Label& label : picture.labels) {
    wide = std::max(wide, box_of(label).width() + 2);
    high = std::max(high, box_of(label).height() + 2);
  }
  const double across = width - kStrip, down = height - kStrip;
  wide = std::min(wide, across / 2);
  high = std::min(high, down / 2);
  Tiling out;
  out.columns = parts(picture.width, across, wide);
  out.rows = parts(picture.height, down, high);
  if (out.parts() > most) return out;
  const auto letter = [&](std::size_t row, std::size_t column) {
    return line_letter(row * out.columns + column);
  };
  const double step_x = across - wide, step_y = down - high;
  for (std::size_t row = 0; row < out.rows; ++row) {
    for (std::size_t column = 0; column < out.columns; ++column) {
      Tile tile;
      tile.letter = letter(row, column);
      tile.row = row;
      tile.column = column;
      const double x = static_cast<double>(column) * step_x, y = static_cast<double>(row) * step_y;
      tile.part = {x, y, std::min(x + across, picture.width), std::min(y + down, picture.height)};
      tile.picture = part_of(picture, tile.part);
      tile.picture.title = "Part " + tile.letter + " of the section at true size";
      if (column > 0)
        add_upright_joint(tile.picture, kStrip + wide / 2, letter(row, column - 1), tile.letter);
      if (column + 1 < out.columns)
        add_upright_joint(tile.picture, kStrip + step_x + wide / 2, tile.letter, letter(row, column + 1));
      if (row > 0) add_level_joint(tile.picture, kStrip + high / 2, letter(row - 1, column), tile.letter);
      if (row + 1 < out.rows)
        add_level_joint(tile.picture, kStrip + step_y + high / 2, tile.letter, letter(row + 1, column));
      out.tiles.push_back(std::move(tile));
    }
  }
  return out;
}

Picture map_of(const Tiling& tiling, std::size_t here) {
  constexpr double kCell = 7;
  Picture out;
  out.title = "How the parts lie";
  for (std::size_t i = 0; i < tiling.tiles.size(); ++i) {
    const Tile& tile = tiling.tiles[i];
    const double x = kCell * static_cast<double>(tile.column), y = kCell * static_cast<double>(tile.row);
    const Point a = {x + 0.5, y + 0.5}, b = {x + kCell, y + 0.5}, c = {x + kCell, y + kCell},
                d = {x + 0.5, y + kCell};
    out.shapes.push_back({i == here ? Role::finished : Role::leader,
                          {{line(a, b), line(b, c), line(c, d), line(d, a)}},
                          true,
                          false});
    out.labels.push_back(
        {{x + kCell / 2 + 0.25, y + kCell / 2 + 1.3}, tile.letter, 3, Anchor::middle, i == here});
  }
  out.width = kCell * static_cast<double>(tiling.columns) + 0.5;
  out.height = kCell * static_cast<double>(tiling.rows) + 0.5;
  out.window = {0, 0, out.width, out.height};
  return out;
}

}  // namespace arrisline
