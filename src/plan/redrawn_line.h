// A chain of the drawing as a line that is drawn anew, near to what it was.
#pragma once

#include <optional>
#include <vector>

#include "section/drawing.h"
#include "trace/exact.h"

namespace arrisline {

/// The chain as it is drawn, and points on it that lines drawn anew are held against.
struct ChainLine {
  DrawnChain drawn;
  FlatsAndArcs line;
  Samples samples;
  std::vector<std::size_t> from;  // of each link: its first sample
};
ChainLine line_of(const DrawnChain& chain, double width);

/// The line with a piece of the stock's side at either end: where a line begins farther along the face, what
/// it departs by is not how far its start has moved.
std::vector<Edge> with_sides(const FlatsAndArcs& line, double thickness);

/// Whether the line runs on without a corner at the joint, an arc on one side of it at least.
bool smooth_at(const FlatsAndArcs& line, std::size_t joint);

/// What a line drawn anew keeps of the drawn one on a stock of this width and thickness: flats level or
/// upright, smooth joints, radii, ends on the sides of the stock.
Held kept(const ChainLine& chain, double width, double thickness);

/// Holds the flat at this width: it grows by as much at both ends, but for an end that is on a side of the
/// stock.
void hold_width(const FlatsAndArcs& line, std::size_t i, double width, Held& held);

/// The line that keeps to `held` and departs least: least squares, the weights then moved to where it departs
/// most (C. L. Lawson's way to the least greatest distance), in so many rounds at most: after the first it is
/// that of least squares. Nothing where none keeps to it, or clearly none
/// that does lies within `allow`.
std::optional<FlatsAndArcs> nearest_line(const ChainLine& chain, const Held& held, double thickness,
                                         double allow, int rounds = 25);

/// What is held is reached, and nothing turned about.
bool keeps(const FlatsAndArcs& line, const Held& held);

/// An arc that ran level into the face and now passes over it is put under it. False where the line then does
/// not keep to what is held.
bool put_in_blank(FlatsAndArcs& line, const Held& held, double allow);

/// The greatest distance between two lines with the stock's sides at their ends, either way round, mm.
double apart(const FlatsAndArcs& one, const FlatsAndArcs& other, double thickness);

}  // namespace arrisline
