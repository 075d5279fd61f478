// Radii of arcs on a drawing, each figure where nothing else stands.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace arrisline {

/// An arc on paper, and the words for it.
struct Radius {
  Edge arc;
  std::string words;
  bool centred = true;  // its centre is near enough to be drawn
};

/// A cross at each centre, a thin line from it to the arc, and the words beside the arc with a leader: clear
/// of all labels of the picture so far, and where there is room clear of its lines too.
void add_radii(Picture& picture, const std::vector<Radius>& radii);

}  // namespace arrisline
