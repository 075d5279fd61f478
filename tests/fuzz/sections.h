// What every section and every plane promises, whatever text it came from.
#pragma once

#include <algorithm>

#include "arrisline/kit.h"
#include "arrisline/section.h"
#include "fuzz/holds.h"

namespace arrisline::fuzz {

inline bool finite(Point p) {
  return std::isfinite(p.x) && std::isfinite(p.y);
}

/// include/arrisline/section.h
inline void hold_section(const Section& section) {
  constexpr double kHair = 1e-6;
  const Loop& target = section.target;
  hold(target.size() >= 3 && target.size() == section.source.size(), "an outline with its sources");
  hold(section.width > 0 && section.thickness > 0, "a blank");
  bool something_to_cut = false;
  for (std::size_t i = 0; i < target.size(); ++i) {
    const Edge& edge = target[i];
    hold(edge.to == target[(i + 1) % target.size()].from, "the outline is closed");
    hold(distance(edge.from, edge.to) >= kHair, "no edge is shorter than 1e-6 mm");
    if (edge.is_arc()) {
      hold(radius(edge) > 0 && std::abs(distance(edge.centre, edge.to) - radius(edge)) <= kHair,
           "both ends of an arc are on its radius");
      hold(finite(edge.centre) && std::abs(sweep(edge)) < 2 * kPi, "an arc is less than a circle");
    }
    for (const double t : {0.0, 0.25, 0.5, 0.75}) {
      const Point p = point_at(edge, t);
      hold(finite(p), "the outline is finite");
      hold(p.x >= -kHair && p.y >= -kHair && p.x <= section.width + kHair && p.y <= section.thickness + kHair,
           "the outline is inside the stock");
    }
    hold(section.source[i] >= -1 && section.source[i] < static_cast<int>(section.elements.size()),
         "an edge comes from an element or from the stock");
    something_to_cut = something_to_cut || section.source[i] >= 0;
  }
  hold(something_to_cut, "something has to be cut");
  const double left = area(target);
  hold(left > 0 && left < section.width * section.thickness, "some of the wood is left, and some is waste");
}

/// include/arrisline/plane.h
inline void hold_plane(const Plane& plane) {
  hold(plane.kind != PlaneKind::scraper, "a scraper is no plane of the list");
  hold(!plane.label.empty(), "a plane has a name");
  hold(plane.width > 0 && std::isfinite(plane.width), "a sole has a width");
  if (plane.is_curved())
    hold(std::isfinite(plane.radius) && plane.width <= 2 * plane.radius, "a sole is on its circle");
  if (plane.body) hold(plane.body->overhang > 0 && plane.body->above >= 0, "a body is outside the sole");
  hold(plane.reach > 0 && plane.deep > 0, "a plough reaches somewhere");
  hold(plane.sole.empty() == (plane.kind != PlaneKind::shaped), "shaped planes alone have a sole drawn");
  double lowest = plane.sole.empty() ? 0 : plane.sole.front().from.y;
  for (std::size_t i = 0; i < plane.sole.size(); ++i) {
    const Edge& edge = plane.sole[i];
    hold(finite(edge.from) && finite(edge.to), "a sole is finite");
    hold(edge.from.x < edge.to.x, "a sole goes out all the way");
    if (i > 0) hold(plane.sole[i - 1].to == edge.from, "a sole has no gap");
    for (const double t : {0.0, 0.5, 1.0}) lowest = std::min(lowest, point_at(edge, t).y);
  }
  hold(lowest >= -1e-6, "no part of a sole is below its lowest");
  for (const double tilt : {0.0, 37.0, -90.0}) {
    for (const Edge& edge : sole_edges(plane, {{10, 10}, tilt}))
      hold(finite(edge.from) && finite(edge.to), "a sole stands anywhere");
  }
}

inline void hold_kit(const Kit& kit) {
  hold(!kit.planes.empty() && kit.planes.size() <= 1000, "a kit has planes, and not too many");
  for (const Plane& plane : kit.planes) hold_plane(plane);
  const Shop& shop = kit.shop;
  for (const double figure : {shop.shaving_rebate, shop.shaving_curved, shop.strokes_per_minute})
    hold(figure > 0 && std::isfinite(figure), "shavings and strokes are more than nothing");
  for (const double weight : {shop.weight_change, shop.weight_cut, shop.weight_setting, shop.weight_stroke,
                              shop.weight_wear, shop.weight_uneven, shop.deep})
    hold(weight >= 0 && std::isfinite(weight), "no weight is negative");
  hold(shop.weight_slow >= 1 && shop.weight_slant >= 1, "nothing goes faster than it goes");
  if (shop.gauge) hold(*shop.gauge > 0, "a gauge has a division");
  if (!kit.board) return;
  hold(!kit.board->stops.empty() && kit.board->screw > 0 && kit.board->clear >= 0, "a board has stops");
  for (const double stop : kit.board->stops) hold(stop > 0 && std::isfinite(stop), "a stop is on the board");
}

}  // namespace arrisline::fuzz
