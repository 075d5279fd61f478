// From strokes to points, and from several lines to one. Shown by tests/trace/one_line_test.cpp.
#include "trace/one_line.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "arrisline/limits.h"
#include "wording/figures.h"

namespace arrisline {

/// Against the size of the drawing, chords are never finer than this: 10 m at kChord.
static constexpr double kFinest = kChord / 10000;

/// In units of the file, so that kLargestFigure is a whole number of them that fits.
static constexpr double kFinestReach = 1e-9;

void drop_repeated(DrawnLine& line, double near) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < line.points.size(); ++i) {
    if (kept > 0 && distance(line.points[i], line.points[kept - 1]) <= near) {
      line.at[kept - 1] = line.at[i];  // what begins here is what comes after the repetition
      continue;
    }
    line.points[kept] = line.points[i];
    line.at[kept++] = line.at[i];
  }
  while (line.closed && kept > 1 && distance(line.points[kept - 1], line.points[0]) <= near) --kept;
  line.points.resize(kept);
  line.at.resize(kept);
}

/// The stroke as points; nothing where there would be too many.
static std::optional<DrawnLine> as_points(const DrawnPath& stroke, double chord, std::size_t most) {
  DrawnLine line;
  line.points.push_back(stroke.from);
  line.begins = stroke.at;
  Point from = stroke.from;
  for (const Curve& curve : stroke.curves) {
    if (line.points.size() >= most) return std::nullopt;
    if (!append_points(from, curve, chord, most - line.points.size(), line.points)) return std::nullopt;
    line.at.resize(line.points.size() - 1, curve.at);
    from = curve.to;
  }
  line.at.push_back(line.at.empty() ? stroke.at : line.at.back());
  return line;
}

static bool sound(const std::vector<DrawnPath>& strokes, Faults& faults) {
  for (const DrawnPath& stroke : strokes) {
    Extents own;
    const bool finite = is_finite(stroke);
    if (finite) add_extents(stroke, own);
    const double largest = std::max({std::fabs(own.least.x), std::fabs(own.least.y),
                                     std::fabs(own.greatest.x), std::fabs(own.greatest.y)});
    if (finite && largest <= kLargestFigure) continue;
    faults.error({stroke.at, 1},
                 "this line goes farther than 1000000000 units from the origin; move the drawing there");
    return false;
  }
  return true;
}

/// Units of the file in a mm, as far as it is known: of a width given, that of the handles stands for it.
static double units_of(const Extents& extents, std::optional<double> mm_per_unit,
                       std::optional<double> width) {
  const double wide = extents.greatest.x - extents.least.x;
  if (width && wide > 0) return wide / *width / 2;
  return mm_per_unit ? 1 / *mm_per_unit : extents.size() / kAssumedSize;
}

std::optional<Tracing> one_line(const std::vector<DrawnPath>& strokes, Upward upward,
                                std::optional<double> mm_per_unit, const TracingOptions& options,
                                Faults& faults, double step) {
  if (options.width) mm_per_unit.reset();
  if (!sound(strokes, faults)) return std::nullopt;
  Extents extents;
  for (const DrawnPath& stroke : strokes) add_extents(stroke, extents);
  if (extents.size() == 0) {
    faults.error({}, "there is no line in the drawing; draw that of the section, in one piece");
    return std::nullopt;
  }
  const double unit = units_of(extents, mm_per_unit, options.width);
  const double chord = std::max(kChord * unit, kFinest * extents.size());
  // One end has its figures rounded, and that of an arc its centre's, its radius and its angle.
  constexpr double kSteps = 2.01;
  const double rounded = std::min(kSteps * step, kMostJoin * unit);
  const double reach = std::max({kJoin * unit, rounded, kFinestReach});
  std::vector<DrawnLine> lines;
  std::size_t count = 0;
  for (const DrawnPath& stroke : strokes) {
    std::optional<DrawnLine> line = as_points(stroke, chord, kMaxDrawnPoints - count);
    if (!line) {
      faults.error({stroke.at, 1}, "with this line the drawing takes more than " +
                                       std::to_string(kMaxDrawnPoints) + " points; draw the line with fewer" +
                                       to_raise("kMaxDrawnPoints"));
      return std::nullopt;
    }
    count += line->points.size();
    lines.push_back(std::move(*line));
  }
  std::optional<DrawnLine> line = join(std::move(lines), reach, faults);
  if (!line) return std::nullopt;
  drop_repeated(*line, kRepeated * unit);
  find_crossings(*line, faults);
  if (faults.errors > 0) return std::nullopt;

  Tracing tracing;
  tracing.drawn = true;
  tracing.closed = line->closed;
  tracing.upward = upward;
  tracing.step = step;
  tracing.mm_per_unit = mm_per_unit;
  if (options.width) {
    Extents wide;
    for (const Point point : line->points) wide.add(point);
    const double width = wide.greatest.x - wide.least.x;
    if (!(width > kLeastWidth)) {
      faults.error({line->begins, 1},
                   "the line is upright, so that the width given says nothing; leave --width out");
      return std::nullopt;
    }
    tracing.mm_per_unit = *options.width / width;
  }
  tracing.points = std::move(line->points);
  return tracing;
}

}  // namespace arrisline
