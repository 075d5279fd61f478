// The statements of a kit that describe planes.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "arrisline/kit.h"
#include "section/shapes.h"
#include "text/statement.h"

namespace arrisline {

/// Arc of a sole that is not measured, in degrees: common practice, no source.
inline constexpr double kUsualArc = 60;

/// A plane as written. The radius of one that goes by its number is settled when the whole file has been
/// read, since its numbering table may stand anywhere.
struct PlaneText {
  Plane plane;
  std::optional<double> radius;
  std::optional<double> width;
  std::optional<double> arc;  // degrees
  std::string measured;       // "radius .66 width .64", as written
  Place place;
};

/// `hollow …` or `round …`.
std::optional<PlaneText> read_curved(Statement& statement);
/// `rebate W` or `bench W`, with an optional body.
std::vector<PlaneText> read_flat(Statement& statement);
/// `plough W…`, one plane for each iron.
std::vector<PlaneText> read_plough(Statement& statement);
/// `body D above H`, from the word `body` on; the statement may go on after it.
std::optional<Body> read_body(Statement& statement);

/// Radius, width and half arc of a hollow or round from what is known of it. Reports what does not fit.
void settle(PlaneText& text, const std::map<int, double>& numbering, Unit unit, Mistakes& mistakes);

/// Gives planes of one label others: first what was measured of them, then a count.
std::vector<Plane> told_apart(std::vector<PlaneText> planes);

/// The sole of a shaped plane from the strokes of its chain, into `text`. Reports what no plane can have.
bool shape_sole(PlaneText& text, const std::vector<Part>& parts, const std::vector<Place>& places,
                Mistakes& mistakes);

}  // namespace arrisline
