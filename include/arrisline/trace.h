// From a traced section to a profile: what a reader finds in a file of points, an SVG or a DXF drawing.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/geometry.h"
#include "arrisline/read.h"

namespace arrisline {

/// Which way y grows in a file: SVG says down, DXF says up, a list of points says nothing.
enum class Upward { unknown, y_up, y_down };

/// The line of a section as a file has it.
struct Tracing {
  /// In the file's own frame and unit, finite. Drawn lines: in the order of the line, consecutive points
  /// different, curves and arcs as points that lie on them. Measured points: in any order.
  std::vector<Point> points;
  bool drawn = false;   // straight from point to point; otherwise points measured along the line, with noise
  bool closed = false;  // the last point joins the first (which is not repeated)
  Upward upward = Upward::unknown;
  std::optional<double> mm_per_unit;  // absent where the file does not say
};

/// What a caller says of a file of traced points or of a drawing.
struct TracingOptions {
  std::optional<double> width;  // mm: the full width of the line, whatever the file says of its size
};

/// Reads a tracing from text. `file` is its name in the messages, and its ending (.svg, .dxf, anything else:
/// points) tells what it is, but for a text that plainly is another kind.
Reading<Tracing> read_tracing(std::string_view text, const std::string& file,
                              const TracingOptions& options = {});
Reading<Tracing> read_tracing_file(const std::string& path, const TracingOptions& options = {});

}  // namespace arrisline
