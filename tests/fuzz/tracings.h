// What the fuzzers of traced sections hold of whatever was read.
#pragma once

#include <cmath>
#include <set>

#include "arrisline/limits.h"
#include "arrisline/trace.h"
#include "fuzz/holds.h"
#include "trace/faults.h"
#include "trace/one_line.h"

namespace arrisline::fuzz {

inline void hold_tracing(const Tracing& tracing) {
  const std::size_t size = tracing.points.size();
  hold(size >= 2, "a line has two points");
  hold(size <= (tracing.drawn ? kMaxDrawnPoints : kMaxKeptPoints), "points are bounded");
  hold(!tracing.closed || tracing.drawn, "only drawn lines are closed");
  hold(!tracing.mm_per_unit || (*tracing.mm_per_unit > 0 && std::isfinite(*tracing.mm_per_unit)),
       "a unit is more than nothing");
  for (std::size_t i = 0; i < size; ++i) {
    const Point p = tracing.points[i];
    hold(std::fabs(p.x) <= 1.5 * kLargestFigure && std::fabs(p.y) <= 1.5 * kLargestFigure,
         "points are within bounds");
    const bool next = i + 1 < size || tracing.closed;
    hold(!tracing.drawn || !next || !(tracing.points[(i + 1) % size] == p),
         "consecutive points are different");
  }
  if (!tracing.drawn || size > 300) return;
  // No two pieces but neighbours share a point, seen by a plain look at every pair.
  DrawnLine line{tracing.points, std::vector<std::size_t>(size, 0), 0, tracing.closed};
  const std::size_t count = size - (tracing.closed ? 0 : 1);
  const auto side = [](Point a, Point b, Point c) { return cross(b - a, c - a); };
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = i + 2; j < count; ++j) {
      if (tracing.closed && i == 0 && j + 1 == count) continue;
      const Point a = line.points[i], b = line.points[i + 1], c = line.points[j],
                  d = line.points[(j + 1) % size];
      const bool crossed =
          ((side(a, b, c) > 0 && side(a, b, d) < 0) || (side(a, b, c) < 0 && side(a, b, d) > 0)) &&
          ((side(c, d, a) > 0 && side(c, d, b) < 0) || (side(c, d, a) < 0 && side(c, d, b) > 0));
      const bool apart = std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x) ||
                         std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y);
      hold(!crossed || apart, "a line that was read does not cross itself");
    }
  }
}

/// Reads any bytes as a file of this name, with and without a width, and one layer of it alone.
inline void hold_file(const std::uint8_t* data, std::size_t size, const char* file) {
  const std::string_view text = text_of(data, size);
  for (const int turn : {0, 1, 2}) {
    const bool with_width = turn == 1;
    TracingOptions options;
    if (with_width) options.width = 50;
    if (turn == 2) options.layer = "0";
    const Reading<Tracing> reading = read_tracing(text, file, options);
    hold_diagnostics(reading, text);
    if (reading.value) hold_tracing(*reading.value);
    if (reading.value && with_width) hold(reading.value->mm_per_unit.has_value(), "a width says the unit");
  }
}

}  // namespace arrisline::fuzz
