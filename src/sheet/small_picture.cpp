// The section as `plan --picture` draws it, small and without its rule. Shown by tests/cli/words.golden.
#include "sheet/small_picture.h"

#include "sheet/glyphs.h"
#include "sheet/raster.h"

namespace arrisline {

std::vector<std::string> small_picture(const Section& section, Waste waste, bool ascii) {
  const Grid grid = grid_of(section, Unit::inch, kSmallColumns, kSmallRows);
  const Region stays = {section.target};
  const Region before =
      waste == Waste::shown ? Region{blank_outline(section.width, section.thickness)} : stays;
  const Raster raster = raster_of(section, before, stays, grid, 1);
  std::vector<std::string> rows = in_characters(raster, {}, ascii);
  const std::string empty = "\u2800";  // the Braille pattern without dots
  for (std::string& row : rows) {
    while (!row.empty()) {
      if (row.back() == ' ') {
        row.pop_back();
      } else if (row.size() >= empty.size() &&
                 row.compare(row.size() - empty.size(), empty.size(), empty) == 0) {
        row.resize(row.size() - empty.size());
      } else {
        break;
      }
    }
  }
  while (!rows.empty() && rows.back().empty()) rows.pop_back();
  return rows;
}

}  // namespace arrisline
