// What a drawing is made of: straight lines, cubic Bezier curves and arcs of ellipses, exact until they
// become points.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

/// One piece of a line, from wherever the one before it ended.
struct Curve {
  enum class Kind { line, cubic, arc };
  Kind kind = Kind::line;
  Point to;
  Point a;          // of a cubic: its first handle; of an arc: the half axis at angle 0, from the centre
  Point b;          // of a cubic: its second handle; of an arc: the half axis at a quarter turn
  Point centre;     // of an arc
  double from = 0;  // of an arc: radians where it begins and ends, as centre + cos t a + sin t b
  double until = 0;
  std::size_t at = 0;  // byte of the text that drew it
};

/// Curves joined end to end as the file has them.
struct DrawnPath {
  Point from;
  std::vector<Curve> curves;
  std::size_t at = 0;  // byte of the text where it begins
};

/// x' = a x + c y + e, y' = b x + d y + f: the order in which SVG writes it.
struct Affine {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;

  Point operator()(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
  /// Of a vector: without the shift.
  Point turn(Point p) const { return {a * p.x + c * p.y, b * p.x + d * p.y}; }
};

/// First `second`, then `first`: the product of their matrices.
Affine operator*(const Affine& first, const Affine& second);

/// The curve as the map sends it. It stays what it is: maps like this send cubics to cubics and ellipses to
/// ellipses.
Curve mapped(Curve curve, const Affine& map);
DrawnPath mapped(DrawnPath path, const Affine& map);

/// The elliptical arc of SVG path data, as SVG 1.1 appendix F.6 has it; a line where a radius is 0. Nothing
/// comes of ends that are the same: to be left out before.
Curve elliptical_arc(Point from, Point to, double rx, double ry, double degrees, bool large, bool sweep);

/// The arc whose bulge, the tangent of a quarter of its sweep, is positive to the left; a line where it is 0.
Curve bulged(Point from, Point to, double bulge);

/// Appends points on the curve, its end last and exactly as given, so many that chords lie within `chord` of
/// it. More than `most` are none: false.
bool append_points(Point from, const Curve& curve, double chord, std::size_t most,
                   std::vector<Point>& points);

/// Of all that a stroke is drawn by, the handles of its cubics counted.
struct Extents {
  Point least;
  Point greatest;
  bool any = false;

  void add(Point point);
  double size() const { return any ? std::max(greatest.x - least.x, greatest.y - least.y) : 0; }
};
/// REQUIRES: a stroke of finite figures.
void add_extents(const DrawnPath& stroke, Extents& extents);
bool is_finite(const DrawnPath& stroke);

}  // namespace arrisline
