// Points, edges and loops of a section: straight lines and circular arcs, kept exact (never flattened).
//
// Frame: x in mm from the working edge, growing across the face toward the fence; y in mm, the depth
// below the face. "Left" and "counter-clockwise" are meant in plain (x, y) numbers throughout, that is,
// as the section looks when drawn with y upward.
#pragma once

#include <cmath>
#include <span>
#include <vector>

namespace arrisline {

inline constexpr double kPi = 3.14159265358979323846;
inline constexpr double kMmPerInch = 25.4;  // exact by definition

/// A point or a vector of the section, in mm.
struct Point {
  double x = 0;
  double y = 0;

  friend Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
  friend Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
  friend Point operator*(double s, Point a) { return {s * a.x, s * a.y}; }
  friend bool operator==(Point, Point) = default;
};

inline double dot(Point a, Point b) {
  return a.x * b.x + a.y * b.y;
}
/// Positive when b lies to the left of a.
inline double cross(Point a, Point b) {
  return a.x * b.y - a.y * b.x;
}
/// Plain square root: coordinates of a section are far from where a square overflows.
inline double norm(Point a) {
  return std::sqrt(a.x * a.x + a.y * a.y);
}
inline double distance(Point a, Point b) {
  return norm(b - a);
}
inline double to_radians(double degrees) {
  return degrees * kPi / 180;
}
inline double to_degrees(double radians) {
  return radians * 180 / kPi;
}
/// The angle brought into (−180, 180].
double wrap_degrees(double degrees);

enum class Turn { straight, left, right };

/// One edge of an outline. A straight edge ignores `centre`. An arc runs from `from` to `to` about
/// `centre`, counter-clockwise when `turn` is left; it sweeps more than 0 and less than 360 degrees.
struct Edge {
  Point from;
  Point to;
  Point centre;
  Turn turn = Turn::straight;

  bool is_arc() const { return turn != Turn::straight; }
};

double radius(const Edge& arc);
/// Signed sweep in radians, positive to the left; 0 for a straight edge.
double sweep(const Edge& edge);
double length(const Edge& edge);
/// The point a fraction t in [0, 1] of the way along the edge (by length).
Point point_at(const Edge& edge, double t);
/// Unit direction of travel at fraction t; a straight edge of no length gives (0, 0).
Point direction_at(const Edge& edge, double t);
/// The piece between fractions t0 < t1. Ends at 0 and 1 keep the edge's own end points bit for bit.
Edge piece(const Edge& edge, double t0, double t1);
Edge reversed(const Edge& edge);
/// Whether the spoke, a vector from the centre, points to somewhere on the arc, its ends included.
bool spoke_meets(const Edge& arc, Point spoke);
/// Distance from p to the nearest point of the edge.
double distance(Point p, const Edge& edge);
/// The edge's share of the area integral ½∮(x dy − y dx); summed over a closed outline it is the
/// enclosed area in mm², positive when the interior lies to the left.
double area_term(const Edge& edge);

/// A closed outline: each edge starts where the one before ended, the last ends where the first began,
/// and the interior lies to the left of every edge.
using Loop = std::vector<Edge>;

double area(std::span<const Edge> edges);
/// Inside or outside of a closed outline; a point within 1e-9 mm of it may be called either.
bool contains(const Loop& loop, Point p);
double distance(Point p, std::span<const Edge> edges);

}  // namespace arrisline
