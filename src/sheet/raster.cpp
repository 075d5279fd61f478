// A section as dots. Shown by tests/sheet/characters_test.cpp.
#include "sheet/raster.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

namespace arrisline {
namespace {

constexpr double kTall = 2;  // height of a character over its width, as terminals have it within a tenth

// Part of a dot, or of an edge, that keeps a place off the borders between dots, where the noise of the
// arithmetic would decide and a section and its mirror image come out different.
constexpr double kTie = 1e-6;

/// Millimetres of the blank to show, from the working edge. `room` is what fits where the scale is that of
/// the rows.
double shown_of(const Section& section, double room) {
  const double right = std::max(reach(section), section.thickness / 2) * 1.25 + section.thickness / 2;
  const bool all = works_back_edge(section) || section.width <= std::max(1.3 * right, room);
  return all ? section.width : right;
}

std::size_t whole(double value) {
  // Room for the noise of a division that comes out even.
  return static_cast<std::size_t>(std::max(1.0, std::ceil(value - 1e-6)));
}

/// The longest round length of the unit that is no longer than this, or else the shortest.
double round_length(double most, Unit unit) {
  double length = unit == Unit::inch ? kMmPerInch / 64 : 0.1;
  if (unit == Unit::inch) {
    while (2 * length <= most) length *= 2;
    return length;
  }
  for (const double power : {0.1, 1.0, 10.0, 100.0, 1000.0})
    for (const double step : {1.0, 2.0, 5.0})
      if (power * step <= most) length = power * step;
  return length;
}

Raster painted(const Grid& grid, const std::function<Dot(Point)>& what) {
  Raster raster;
  raster.width = kDotsAcross * grid.columns;
  raster.height = kDotsDown * grid.rows;
  raster.dots.reserve(raster.width * raster.height);
  for (std::size_t y = 0; y < raster.height; ++y)
    for (std::size_t x = 0; x < raster.width; ++x)
      raster.dots.push_back(
          what(grid.origin + grid.dot() * Point{static_cast<double>(x) + 0.5, static_cast<double>(y) + 0.5}));
  return raster;
}

/// Which dots of a raster are of the line being drawn.
struct Mask {
  std::size_t width = 0;
  std::size_t height = 0;
  std::vector<bool> set;

  explicit Mask(const Raster& raster)
      : width(raster.width), height(raster.height), set(raster.dots.size(), false) {}

  /// Where p lies, in dots; nothing outside.
  std::optional<std::size_t> place(Point p) const {
    if (p.x < 0 || p.y < 0) return std::nullopt;
    const auto x = static_cast<std::size_t>(p.x), y = static_cast<std::size_t>(p.y);
    if (x >= width || y >= height) return std::nullopt;
    return y * width + x;
  }
  bool beside(std::size_t i) const {
    const std::size_t x = i % width;
    return (x > 0 && set[i - 1]) || (x + 1 < width && set[i + 1]);
  }
  bool above(std::size_t i) const { return i >= width && set[i - width]; }
  bool below(std::size_t i) const { return i + width < set.size() && set[i + width]; }
};

/// Leaves out dots that make a step of two where the line runs on across their corner: first those over
/// another, then those under one, so that it comes out alike in a section and its mirror image.
void thin(Mask& mask, const std::vector<bool>& kept) {
  for (const bool over : {true, false}) {
    const Mask before = mask;
    for (std::size_t i = 0; i < mask.set.size(); ++i)
      if (before.set[i] && !kept[i] && before.beside(i) && before.above(i) != before.below(i) &&
          before.below(i) == over)
        mask.set[i] = false;
  }
}

/// The finished line, a quarter of a dot into the wood that stays and so many dots more, so that it is the
/// same line whichever way the section is drawn.
void draw_finished_line(Raster& raster, const Section& section, const Grid& grid, std::size_t dots_in) {
  const double dot = grid.dot();
  const double in = (0.25 + static_cast<double>(dots_in)) * dot;
  Mask mask(raster);
  std::vector<bool> ends = mask.set;  // corners of the section stay as they are
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] < 0) continue;
    const Edge& edge = section.target[i];
    const double steps = std::ceil(4 * length(edge) / dot);
    for (double k = 0; k <= steps; ++k) {
      const double t = std::clamp(k / steps, kTie, 1 - kTie);
      const Point along = direction_at(edge, t);
      const Point p = point_at(edge, t) + in * Point{-along.y, along.x} - grid.origin;
      const std::optional<std::size_t> place = mask.place((1 / dot) * p);
      if (!place) continue;
      mask.set[*place] = true;
      if (k == 0 || k == steps) ends[*place] = true;
    }
  }
  thin(mask, ends);
  for (std::size_t i = 0; i < mask.set.size(); ++i)
    if (mask.set[i]) raster.dots[i] = Dot::line;
}

}  // namespace

Grid grid_of(const Section& section, Unit unit, std::size_t most_columns, std::size_t most_rows) {
  Grid grid;
  // The least that a character can be wide for the rows to do.
  const double by_rows = section.thickness / (kTall * static_cast<double>(most_rows));
  grid.shown = shown_of(section, by_rows * static_cast<double>(most_columns));
  grid.cut_off = grid.shown < section.width;
  const double least = std::max(grid.shown / static_cast<double>(most_columns), by_rows);
  grid.rule = round_length(std::max(grid.shown / 2, least), unit);
  const double columns = std::max(1.0, std::floor(grid.rule / least + 1e-9));
  grid.rule_columns = static_cast<std::size_t>(columns);
  grid.column = grid.rule / columns;
  grid.columns = std::min(most_columns, whole(grid.shown / grid.column));
  grid.rows = std::min(most_rows, whole(section.thickness / (kTall * grid.column)));
  if (grid.cut_off) grid.shown = static_cast<double>(grid.columns) * grid.column;
  // A blank that is seen whole stands in the middle, so that it looks the same from either side.
  const double across = static_cast<double>(grid.columns) * grid.column;
  const double down = static_cast<double>(grid.rows) * kTall * grid.column;
  grid.origin = {grid.cut_off ? 0 : (grid.shown - across) / 2, (section.thickness - down) / 2};
  return grid;
}

Raster raster_of(const Section& section, const Region& before, const Region& after, const Grid& grid,
                 std::size_t line_width) {
  const double in = kTie * grid.dot();
  Raster raster = painted(grid, [&](Point p) {
    if (p.x < in || p.y < in || p.x > section.width - in || p.y > section.thickness - in) return Dot::none;
    return contains(after, p) ? Dot::wood : contains(before, p) ? Dot::waste : Dot::none;
  });
  for (std::size_t i = 0; i < line_width; ++i) draw_finished_line(raster, section, grid, i);
  return raster;
}

}  // namespace arrisline
