// Names of elements and the outline of the blank. Shown by tests/section.
#include "arrisline/section.h"

namespace arrisline {

const char* word(Chain chain) {
  switch (chain) {
    case Chain::face:
      return "face";
    case Chain::underside:
      return "underside";
    case Chain::back:
      return "back";
  }
  return "";
}

std::string describe(const Element& element) {
  std::string out = "element " + std::to_string(element.number);
  if (!element.name.empty()) {
    // "ogee (cove)" within brackets reads "(ogee, cove)".
    const std::size_t part = element.name.find(" (");
    out += " (" + element.name.substr(0, part);
    if (part != std::string::npos) out += ", " + element.name.substr(part + 2);
    if (part == std::string::npos) out += ")";
  }
  if (element.chain != Chain::face) out += std::string(" on the ") + word(element.chain);
  return out;
}

Loop blank_outline(double width, double thickness) {
  const Point a{0, 0}, b{width, 0}, c{width, thickness}, d{0, thickness};
  return {{a, b, {}, Turn::straight},
          {b, c, {}, Turn::straight},
          {c, d, {}, Turn::straight},
          {d, a, {}, Turn::straight}};
}

void close_outline(Loop& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) outline[(i + 1) % outline.size()].from = outline[i].to;
}

}  // namespace arrisline
