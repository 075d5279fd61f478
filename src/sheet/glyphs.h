// Dots as lines of characters.
#pragma once

#include <string>
#include <vector>

#include "sheet/raster.h"

namespace arrisline {

/// A place where a plane comes down, and the way it goes.
struct Mark {
  std::size_t column = 0;
  std::size_t row = 0;
  double tilt = 0;  // of the pose
};

/// One string a row of characters, each exactly as many characters as the raster is wide.
///   Unicode  Braille patterns: wood is dotted, waste hatched, the finished line solid; marks are arrows
///   ASCII    #, a full stop, and the line as - _ | / \ ; marks are V
std::vector<std::string> in_characters(const Raster& raster, const std::vector<Mark>& marks, bool ascii);

/// The same of no picture: three characters of wood, waste, finished line, and a mark.
struct KeyGlyphs {
  std::string wood, waste, line, mark;
};
KeyGlyphs samples(bool ascii);

}  // namespace arrisline
