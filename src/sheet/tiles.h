// A picture larger than a page, in parts that are joined by marks.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace arrisline {

/// One part. Parts are lettered row by row.
struct Tile {
  std::string letter;
  std::size_t row = 0, column = 0;
  Box part;         // of the picture, what is drawn; it overlaps the neighbours' parts
  Picture picture;  // with the marks, no larger than the room that was given
};

struct Tiling {
  std::size_t rows = 1, columns = 1;
  std::vector<Tile> tiles;  // none where there would be more than `most` of them

  std::size_t parts() const { return rows * columns; }
};

/// Splits the picture into the fewest parts of one size that have room in this width and height. Neighbours
/// overlap by so much that each label stands whole on one of them; in the middle of that they are joined.
/// REQUIRES: at least 60 by 60 mm.
Tiling tiles_of(const Picture& picture, double width, double height, std::size_t most);

/// The parts (of a tiling that has any) beside each other, each with its letter, the one with this index
/// marked; none where it is past the last.
Picture map_of(const Tiling& tiling, std::size_t here);

}  // namespace arrisline
