// A section as dots, eight to a character: two across and four down, which is square where a character is
// twice as high as wide.
#pragma once

#include <cstddef>
#include <vector>

#include "arrisline/kit.h"
#include "arrisline/section.h"
#include "sheet/outline.h"

namespace arrisline {

inline constexpr std::size_t kDotsAcross = 2;  // of a character
inline constexpr std::size_t kDotsDown = 4;

/// Where the characters of a picture lie on the section, and the rule beside it.
struct Grid {
  std::size_t columns = 0;
  std::size_t rows = 0;
  double column = 0;             // width of a character, mm of wood; its height is twice that
  Point origin;                  // upper left corner of the first character
  double shown = 0;              // mm of the blank from the working edge
  bool cut_off = false;          // the blank goes on to the right
  double rule = 0;               // length of the rule, mm
  std::size_t rule_columns = 0;  // the same, exactly

  double dot() const { return column / kDotsAcross; }
};

/// The largest scale at which the work, and as much of the blank beyond it as tells it apart, has room in so
/// many characters, and at which a round length of the unit is whole columns. All of the blank where little
/// more would be, then in the middle of the grid. Columns and rows are as many as it takes.
Grid grid_of(const Section& section, Unit unit, std::size_t most_columns, std::size_t most_rows);

enum class Dot : unsigned char {
  none,   // not wood, or wood no longer
  wood,   // that stays
  waste,  // or what a cut takes
  line,   // the finished line, which lies in the wood that stays
};

struct Raster {
  std::size_t width = 0;  // dots
  std::size_t height = 0;
  std::vector<Dot> dots;  // row by row

  Dot& at(std::size_t x, std::size_t y) { return dots[y * width + x]; }
  Dot at(std::size_t x, std::size_t y) const { return dots[y * width + x]; }
};

/// What is in `after` is wood, what is in `before` alone is waste; over them the finished line, so many dots
/// wide.
Raster raster_of(const Section& section, const Region& before, const Region& after, const Grid& grid,
                 std::size_t line_width);

}  // namespace arrisline
