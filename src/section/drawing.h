// A profile as drawn: chains of strokes, each in the reading of its side, before they become a section.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/kit.h"
#include "arrisline/section.h"
#include "wording/source.h"

namespace arrisline {

/// One straight line or arc, relative to where it begins. In the reading of every side x grows away from the
/// edge that `out` goes toward and y is the depth below the surface that the chain starts on, and the wood
/// lies to the right of the way the chain runs (in plain numbers).
struct Stroke {
  Point move;
  Turn turn = Turn::straight;  // right: convex, the wood on the side of the centre; left: concave
  double radius = 0;           // arcs only, at least half the move
  bool large = false;          // the arc over 180° instead of the one under it
  int element = 0;             // index into Drawing::elements
};

/// One chain, from its start to its end.
struct DrawnChain {
  Chain side = Chain::face;
  bool from_back = false;  // starts on the back edge, `start` deep; otherwise on the face, `start` in
  double start = 0;        // mm
  Place place;             // of the `start` statement
  std::vector<Stroke> strokes;
};

/// A profile whose statements are all sound by themselves.
struct Drawing {
  std::string name;
  Unit unit = Unit::inch;  // for lengths in messages
  double width = 0;
  double thickness = 0;
  std::vector<DrawnChain> chains;
  std::vector<Element> elements;
  std::vector<Place> places;  // of each element
  std::vector<int> chain_of;  // of each element: the same number for those of one chain
};

/// The section, or nothing where the chains do not make one; every reason is reported. A chain may touch the
/// blank's outline or run along it; elements that meet in a cleft of no angle are warned of.
std::optional<Section> build_section(const Drawing& drawing, Mistakes& mistakes);

}  // namespace arrisline
