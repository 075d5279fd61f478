// The strokes of a drawing as one line.
#pragma once

#include <optional>
#include <vector>

#include "arrisline/trace.h"
#include "trace/curves.h"
#include "trace/faults.h"

namespace arrisline {

/// Chords lie within this of curves and arcs, mm: far below what a plane or a gauge can do.
inline constexpr double kChord = 0.002;
/// Ends no farther apart than this are one, mm: drawings give their figures to a hundredth and better.
inline constexpr double kJoin = 0.01;
/// Ends that lie apart by what few decimals round off are one up to this, mm: about what two steps of a
/// thousandth of an inch are, and the tolerance of a fit.
inline constexpr double kMostJoin = 0.06;
/// Points no farther apart than this are one, mm: what is left of rounding where one figure is had in two
/// ways.
inline constexpr double kRepeated = 1e-5;
/// Where the unit is not known, the size of the drawing stands for so many mm.
inline constexpr double kAssumedSize = 100;

/// The line that all strokes make together, whatever their order and direction: it runs as the first of them
/// does. Nothing, and mistakes, where they make several lines, branch, or cross. `upward` and `mm_per_unit`
/// are what the file says; a width in the options goes before it. `step`: of the last decimal of its figures,
/// in the file's unit; 0 where they have as many as they need.
std::optional<Tracing> one_line(const std::vector<DrawnPath>& strokes, Upward upward,
                                std::optional<double> mm_per_unit, const TracingOptions& options,
                                Faults& faults, double step = 0);

/// A line of points, and for each point the byte of the text that drew what begins there.
struct DrawnLine {
  std::vector<Point> points;
  std::vector<std::size_t> at;
  std::size_t begins = 0;  // byte of the text where the line as a whole begins
  bool closed = false;     // the last point joins the first, which is not repeated
};

/// Joins lines at ends that are within `reach` of one another. Nothing where that does not make one line.
std::optional<DrawnLine> join(std::vector<DrawnLine> lines, double reach, Faults& faults);

/// Leaves only the first of consecutive points that are no farther apart than `near`; of a closed line, the
/// last is not as near as that to the first.
void drop_repeated(DrawnLine& line, double near);

/// Mistakes for each pair of places where the line crosses, touches or runs along itself.
void find_crossings(const DrawnLine& line, Faults& faults);

}  // namespace arrisline
