// Curves under affine maps, and points on them. Shown by tests/trace/curves_test.cpp.
#include "trace/curves.h"

#include <algorithm>
#include <cmath>

namespace arrisline {

Affine operator*(const Affine& first, const Affine& second) {
  const Point x = first.turn({second.a, second.b});
  const Point y = first.turn({second.c, second.d});
  const Point shift = first({second.e, second.f});
  return {x.x, x.y, y.x, y.y, shift.x, shift.y};
}

Curve mapped(Curve curve, const Affine& map) {
  curve.to = map(curve.to);
  if (curve.kind == Curve::Kind::cubic) {
    curve.a = map(curve.a);
    curve.b = map(curve.b);
  } else if (curve.kind == Curve::Kind::arc) {
    curve.a = map.turn(curve.a);
    curve.b = map.turn(curve.b);
    curve.centre = map(curve.centre);
  }
  return curve;
}

DrawnPath mapped(DrawnPath path, const Affine& map) {
  path.from = map(path.from);
  for (Curve& curve : path.curves) curve = mapped(curve, map);
  return path;
}

Curve elliptical_arc(Point from, Point to, double rx, double ry, double degrees, bool large, bool sweep) {
  Curve curve;
  curve.to = to;
  rx = std::fabs(rx);
  ry = std::fabs(ry);
  if (rx == 0 || ry == 0) return curve;
  const double turn = to_radians(std::fmod(degrees, 360.0));
  const double c = std::cos(turn);
  const double s = std::sin(turn);
  // F.6.5.1: half the chord, seen along the axes; here in shares of the radii.
  const Point half = 0.5 * (from - to);
  const Point seen{(c * half.x + s * half.y) / rx, (-s * half.x + c * half.y) / ry};
  const double length = std::hypot(seen.x, seen.y);
  // F.6.6: radii that are too small are made larger until one ellipse fits.
  const double grown = std::max(1.0, length);
  rx *= grown;
  ry *= grown;
  const Point unit = (1 / grown) * seen;
  // F.6.5.2: the centre, at a right angle to the chord.
  const double square = dot(unit, unit);
  double along = square > 0 ? std::sqrt(std::max(0.0, (1 - square) / square)) : 0;
  if (large == sweep) along = -along;
  const Point centre{along * unit.y, -along * unit.x};
  curve.kind = Curve::Kind::arc;
  curve.a = {rx * c, rx * s};
  curve.b = {-ry * s, ry * c};
  curve.centre = 0.5 * (from + to) + centre.x * curve.a + centre.y * curve.b;
  // F.6.5.5 and F.6.5.6; the sweep by half its sine, which does not turn about where it is next to nothing.
  curve.from = std::atan2(unit.y - centre.y, unit.x - centre.x);
  const double small = 2 * std::asin(std::min(1.0, std::sqrt(square)));
  const double swept = large ? 2 * kPi - small : small;
  curve.until = curve.from + (sweep ? swept : -swept);
  return curve;
}

/// A bulge that is taken for none. Its arc rises half as much of its chord, half a micrometre over 10 m; the
/// centres of flatter ones lie so far off that points about them lose more than that.
static constexpr double kFlat = 1e-7;

Curve bulged(Point from, Point to, double bulge) {
  Curve curve;
  curve.to = to;
  const Point chord = to - from;
  if (std::fabs(bulge) < kFlat || chord == Point{}) return curve;
  curve.kind = Curve::Kind::arc;
  // The centre lies on the bisector of the chord, (1 − b²) / (4 b) of the chord's length to its left.
  const double off = (1 - bulge * bulge) / (4 * bulge);
  curve.centre = 0.5 * (from + to) + off * Point{-chord.y, chord.x};
  const double radius = norm(chord) * (1 + bulge * bulge) / (4 * std::fabs(bulge));
  curve.a = {radius, 0};
  curve.b = {0, radius};
  const Point spoke = from - curve.centre;
  curve.from = std::atan2(spoke.y, spoke.x);
  curve.until = curve.from + 4 * std::atan(bulge);
  return curve;
}

/// Steps of equal parameter that keep chords near the curve: a chord over a step h lies within M h² / 8 of
/// it, where M bounds the second derivative.
static double steps_for(double second_derivative, double parameter, double chord) {
  return std::ceil(parameter * std::sqrt(second_derivative / (8 * chord)));
}

bool append_points(Point from, const Curve& curve, double chord, std::size_t most,
                   std::vector<Point>& points) {
  double steps = 1;
  if (curve.kind == Curve::Kind::cubic) {
    const Point first = from - 2 * curve.a + curve.b;
    const Point second = curve.a - 2 * curve.b + curve.to;
    steps = steps_for(6 * std::max(norm(first), norm(second)), 1, chord);
  } else if (curve.kind == Curve::Kind::arc) {
    // The longer half axis of the ellipse that a and b are conjugate half axes of.
    const double sum = dot(curve.a, curve.a) + dot(curve.b, curve.b);
    const double area = cross(curve.a, curve.b);
    const double longest = std::sqrt((sum + std::sqrt(std::max(0.0, sum * sum - 4 * area * area))) / 2);
    steps = steps_for(longest, std::fabs(curve.until - curve.from), chord);
    // A whole turn never becomes nothing, however small it is.
    if (std::fabs(curve.until - curve.from) > kPi) steps = std::max(steps, 4.0);
  }
  if (!(steps < static_cast<double>(most))) return false;
  for (double step = 1; step < steps; ++step) {
    const double t = step / steps;
    if (curve.kind == Curve::Kind::cubic) {
      const double u = 1 - t;
      points.push_back(u * u * u * from + 3 * u * u * t * curve.a + 3 * u * t * t * curve.b +
                       t * t * t * curve.to);
    } else {
      const double angle = curve.from + t * (curve.until - curve.from);
      points.push_back(curve.centre + std::cos(angle) * curve.a + std::sin(angle) * curve.b);
    }
  }
  points.push_back(curve.to);
  return true;
}

void Extents::add(Point point) {
  if (!any) least = greatest = point;
  any = true;
  least = {std::min(least.x, point.x), std::min(least.y, point.y)};
  greatest = {std::max(greatest.x, point.x), std::max(greatest.y, point.y)};
}

/// Where an arc goes farthest along an axis, of which a and b are the parts of its half axes.
static void add_farthest(const Curve& arc, double a, double b, Extents& extents) {
  const double least = std::min(arc.from, arc.until);
  const double most = std::max(arc.from, arc.until);
  const double first = std::atan2(b, a);
  for (double angle = first + kPi * std::ceil((least - first) / kPi); angle < most; angle += kPi)
    extents.add(arc.centre + std::cos(angle) * arc.a + std::sin(angle) * arc.b);
}

void add_extents(const DrawnPath& stroke, Extents& extents) {
  extents.add(stroke.from);
  for (const Curve& curve : stroke.curves) {
    extents.add(curve.to);
    if (curve.kind == Curve::Kind::cubic) {
      extents.add(curve.a);
      extents.add(curve.b);
    } else if (curve.kind == Curve::Kind::arc) {
      add_farthest(curve, curve.a.x, curve.b.x, extents);
      add_farthest(curve, curve.a.y, curve.b.y, extents);
    }
  }
}

bool is_finite(const DrawnPath& stroke) {
  const auto finite = [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); };
  return finite(stroke.from) && std::all_of(stroke.curves.begin(), stroke.curves.end(), [&](const Curve& c) {
           return finite(c.to) && finite(c.a) && finite(c.b) && finite(c.centre) && std::isfinite(c.from) &&
                  std::isfinite(c.until);
         });
}

}  // namespace arrisline
