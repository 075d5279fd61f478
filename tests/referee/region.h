// Regions of the section in exact arithmetic, for the judge of plans: outlines of lines and arcs, their
// differences and what they have in common. Of the product only the types Point and Edge are used here; what
// is measured on them has code of its own. CGAL's boolean operations are under the GPL: for the referee only.
#pragma once

#include <memory>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline::referee {

/// Distance to a line or an arc, by its foot or its nearer end.
double off_edge(Point p, const Edge& edge);
double off_outline(Point p, const std::vector<Edge>& outline);
/// The point midway along, and the length.
Point middle_of(const Edge& edge);
double length_of(const Edge& edge);
/// Halves of an edge.
Edge first_half(const Edge& edge);
Edge second_half(const Edge& edge);

/// The same outline run so that its inside is to the left.
std::vector<Edge> inside_to_the_left(std::vector<Edge> outline);

class Region {
 public:
  Region();
  /// The inside of a closed outline, whichever way round it is given. Each arc is the circle through its two
  /// ends and its middle. Nothing where the outline crosses or touches itself or is not closed.
  static std::shared_ptr<const Region> inside(std::vector<Edge> outline);

  Region less(const Region& other) const;
  Region common(const Region& other) const;
  double area() const;
  /// Every boundary, outer ones and holes, each piece an edge; pieces that bound nothing thicker than
  /// rounding left out.
  const std::vector<std::vector<Edge>>& loops() const;
  bool holds(Point p) const;

 private:
  struct Body;
  std::shared_ptr<const Body> body_;
  explicit Region(std::shared_ptr<const Body> body) : body_(std::move(body)) {}
};

}  // namespace arrisline::referee
