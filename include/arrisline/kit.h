// What is on the shelf, and how the shop works.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/length.h"
#include "arrisline/plane.h"

namespace arrisline {

/// Weights of effort and the shop's own figures. Thicknesses in mm. The defaults are this project's own
/// choice; every one is set by a `shop` line.
struct Shop {
  double shaving_rebate = 0.1524;  // .006 in; flat soles
  double shaving_curved = 0.1016;  // .004 in; hollows, rounds and shaped planes
  double weight_change = 2;        // of taking up another plane
  double weight_cut = 1;
  double weight_setting = 1;  // of a gauge figure not set by the cut before
  double weight_stroke = 0.05;
  double weight_wear = 30;   // of wood taken by a sole that is not flat, per square of its width
  double weight_slow = 3;    // times that a stroke of a hollow or round deeper than `deep` counts; at least 1
  double weight_slant = 2;   // times that a stroke of a slanted flat counts; at least 1
  double weight_uneven = 6;  // of a hollow or round that rides, but not well laid out
  double deep = 3;           // mm of wood
  double strokes_per_minute = 20;
  int facets = 0;               // most flats that may finish an arc where no curved plane serves
  std::optional<double> gauge;  // smallest division printed; default 1/32 in, or 0.5 mm in mm
};

/// The sticking board: stop screws measured from the fence. Lengths in mm.
struct Board {
  std::vector<double> stops;
  double screw = 9.525;   // diameter of the head
  double clear = 1.5875;  // kept between screw and plane
};

struct Kit {
  std::string name;
  Unit unit = Unit::inch;
  std::vector<Plane> planes;  // in the order of the file, one per iron for a plough; no scraper
  bool scraper = false;
  Shop shop;
  std::optional<Board> board;
};

}  // namespace arrisline
