#include "sheet/full_size.h"
namespace arrisline {
Picture dimensioned_picture(const Section& section, Unit, double, double scale) {
  Picture p;
  p.width = section.width * scale;
  p.height = section.thickness * scale;
  p.window = {0, 0, p.width, p.height};
  p.shapes.push_back({Role::wood, {Placing{{0, 0}, scale}.chain(section.target)}, true, true});
  return p;
}
}  // namespace arrisline
