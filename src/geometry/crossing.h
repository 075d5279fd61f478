// Where an edge meets a straight line or a circle. Places on it are told as Measured tells them.
#pragma once

#include <vector>

#include "geometry/measured.h"

namespace arrisline {

/// Two things closer than this are one. Coordinates are below 1e4 mm, so double arithmetic keeps about
/// 1e-12 mm; a near-tangent crossing loses half the digits, and this stays above what is left.
inline constexpr double kSame = 1e-7;

/// Appends the places t in (0, 1) at which the edge crosses or touches the infinite line through p
/// along the unit vector d. An edge that lies along the line adds nothing.
void cross_line(const Measured& edge, Point p, Point d, std::vector<double>& ts);

/// Appends the places t in (0, 1) at which the edge crosses or touches the full circle. An arc of the
/// same circle adds nothing.
void cross_circle(const Measured& edge, Point centre, double r, std::vector<double>& ts);

/// Where the edge runs along the line or circle, or all but touches it: appends the places at which it
/// comes within kSame of it, on either side, so that on each stretch between them the two are one or are not.
/// Elsewhere nothing: what crosses plainly is that close for no length that counts.
void part_line(const Measured& edge, Point p, Point d, std::vector<double>& ts);
void part_circle(const Measured& edge, Point centre, double r, std::vector<double>& ts);
/// The same of the whole line or circle that carries `other`.
void part_carrier(const Measured& edge, const Measured& other, std::vector<double>& ts);

/// Appends the place t in (0, 1) of the point p where it lies on the edge or no farther off than `reach`.
void cross_at(const Measured& edge, Point p, std::vector<double>& ts, double reach = kSame);

/// Appends the places t in (0, 1) at which an arc's normal points along ±d; nothing for a straight edge.
void extremes_along(const Measured& arc, Point d, std::vector<double>& ts);

}  // namespace arrisline
