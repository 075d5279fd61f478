// Dots as characters: what each cell of a picture shows. Shown by tests/sheet/characters_test.cpp.
#include "sheet/glyphs.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace arrisline {
namespace {

/// UTF-8 of a character from U+0800 to U+FFFF.
std::string utf8(unsigned character) {
  return {static_cast<char>(0xe0U | (character >> 12U)), static_cast<char>(0x80U | ((character >> 6U) & 63U)),
          static_cast<char>(0x80U | (character & 63U))};
}

/// Wood is one dot in four, waste is strokes at 45 degrees, the line is every dot: told apart by eye where
/// they meet within one character too.
bool inked(Dot dot, std::size_t x, std::size_t y) {
  switch (dot) {
    case Dot::none:
      return false;
    case Dot::wood:
      return x % 2 == 0 && y % 2 == 0;
    case Dot::waste:
      return (x + y) % 4 == 0;
    case Dot::line:
      return true;
  }
  return false;
}

std::string braille(const Raster& raster, std::size_t x0, std::size_t y0) {
  // How Unicode numbers the dots of its patterns.
  constexpr std::array<std::array<unsigned, kDotsAcross>, kDotsDown> kBits = {
      {{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}};
  unsigned bits = 0;
  for (std::size_t y = 0; y < kDotsDown; ++y)
    for (std::size_t x = 0; x < kDotsAcross; ++x)
      if (inked(raster.at(x0 + x, y0 + y), x0 + x, y0 + y)) bits |= kBits[y][x];
  return bits == 0 ? " " : utf8(0x2800U + bits);
}

/// The stroke nearest to the dots of the line in one cell.
char stroke(const std::array<std::vector<double>, kDotsAcross>& line) {
  const auto mean = [](const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) sum += value;
    return sum / static_cast<double>(values.size());
  };
  const auto level = [](double down) { return down < 2.25 ? '-' : '_'; };
  if (line[0].empty() || line[1].empty()) {
    const std::vector<double>& only = line[0].empty() ? line[1] : line[0];
    return only.size() > 1 ? '|' : level(only.front());
  }
  const double left = mean(line[0]), right = mean(line[1]);
  if (line[0].size() > 2 && line[1].size() > 2) return '|';
  if (right - left >= 1) return '\\';
  if (left - right >= 1) return '/';
  return level((left + right) / 2);
}

char ascii_of(const Raster& raster, std::size_t x0, std::size_t y0) {
  std::array<std::vector<double>, kDotsAcross> line;
  std::size_t wood = 0, waste = 0;
  for (std::size_t y = 0; y < kDotsDown; ++y) {
    for (std::size_t x = 0; x < kDotsAcross; ++x) {
      const Dot dot = raster.at(x0 + x, y0 + y);
      wood += dot == Dot::wood ? 1 : 0;
      waste += dot == Dot::waste ? 1 : 0;
      if (dot == Dot::line) line[x].push_back(static_cast<double>(y));
    }
  }
  // A single dot is the corner of a stroke that its neighbour shows.
  const std::size_t drawn = line[0].size() + line[1].size();
  if (drawn > 1) return stroke(line);
  wood += drawn;
  const std::size_t half = kDotsAcross * kDotsDown / 2;
  if (wood >= half) return '#';
  return wood + waste >= half ? '.' : ' ';
}

/// The way into the wood, to the nearest eighth of a turn.
std::string arrow(double tilt) {
  // From down, counter-clockwise: the way a plane goes that leans toward the working edge, more and more.
  constexpr std::array<unsigned, 8> kArrows = {0x2193, 0x2198, 0x2192, 0x2197,
                                               0x2191, 0x2196, 0x2190, 0x2199};
  const int eighths = static_cast<int>(std::lround(tilt / 45));
  return utf8(kArrows[static_cast<std::size_t>((eighths % 8 + 8) % 8)]);
}

}  // namespace

std::vector<std::string> in_characters(const Raster& raster, const std::vector<Mark>& marks, bool ascii) {
  std::vector<std::string> out;
  for (std::size_t row = 0; row < raster.height / kDotsDown; ++row) {
    std::string line;
    for (std::size_t column = 0; column < raster.width / kDotsAcross; ++column) {
      const auto mark = std::find_if(marks.begin(), marks.end(),
                                     [&](const Mark& one) { return one.column == column && one.row == row; });
      const std::size_t x = column * kDotsAcross, y = row * kDotsDown;
      if (mark != marks.end()) {
        line += ascii ? "V" : arrow(mark->tilt);
      } else if (ascii) {
        line += ascii_of(raster, x, y);
      } else {
        line += braille(raster, x, y);
      }
    }
    out.push_back(std::move(line));
  }
  return out;
}

KeyGlyphs samples(bool ascii) {
  if (ascii) return {"##", "..", "_|/", "V"};
  const auto all = [](Dot dot) {
    Raster raster{2 * kDotsAcross, kDotsDown, {}};
    raster.dots.assign(raster.width * raster.height, dot);
    return in_characters(raster, {}, false).front();
  };
  Raster line{2 * kDotsAcross, kDotsDown, {}};
  line.dots.assign(line.width * line.height, Dot::none);
  for (std::size_t x = 0; x < line.width; ++x) line.at(x, 1) = line.at(x, 2) = Dot::line;
  return {all(Dot::wood), all(Dot::waste), in_characters(line, {}, false).front(), arrow(0)};
}

}  // namespace arrisline
