// From a traced section to a profile: what a reader finds in a file of points, an SVG or a DXF drawing.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/diagnostic.h"
#include "arrisline/geometry.h"
#include "arrisline/length.h"
#include "arrisline/section.h"

namespace arrisline {

/// Which way y grows in a file: SVG says down, DXF says up, a list of points says nothing.
enum class Upward { unknown, y_up, y_down };

/// The side of a tracing that the working edge is at, face up.
enum class EdgeAt { left, right };

/// The line of a section as a file has it.
struct Tracing {
  /// In the file's own frame and unit, finite. Drawn lines: in the order of the line, consecutive points
  /// different, curves and arcs as points that lie on them. Measured points: in any order.
  std::vector<Point> points;
  bool drawn = false;   // straight from point to point; otherwise points measured along the line, with noise
  bool closed = false;  // the last point joins the first (which is not repeated)
  Upward upward = Upward::unknown;
  std::optional<double> mm_per_unit;  // absent where the file does not say
  // Of measured points: the greatest step that all figures go by; of a drawing that of the last decimal they
  // are written with. 0 where none is told.
  double step = 0;
};

/// What a caller says of a file of traced points or of a drawing.
struct TracingOptions {
  std::optional<double> width;  // mm: the full width of the line, whatever the file says of its size
  // Of a drawing only what is on this layer (DXF), or in the element that has this id or label (SVG).
  std::optional<std::string> layer;
  std::function<void(std::size_t)>
      progress;  // now and then, of points: how many have been read; may be empty
};

/// Reads a tracing from text. `file` is its name in the messages, and its ending (.svg, .dxf, anything else:
/// points) tells what it is, but for a text that plainly is another kind.
Reading<Tracing> read_tracing(std::string_view text, const std::string& file,
                              const TracingOptions& options = {});
Reading<Tracing> read_tracing_file(const std::string& path, const TracingOptions& options = {});

/// What a tracing is fitted by. Lengths in mm.
struct FitOptions {
  double tolerance = 0.05;  // how far the line may lie from the tracing, its scatter averaged out
  double mm_per_unit = 1;   // of the tracing's figures
  double division = 0;      // levels and radii are whole multiples of it where the tolerance allows; 0: never
  std::vector<double> preferred;  // radii taken before others where the tolerance allows: those of planes
  std::vector<double> widths;     // of grooves, likewise: those of irons
  std::optional<EdgeAt> edge;     // else where a drawing shows it; of points, at the left
  std::optional<double> width;    // of the stock; else as the tracing has it
  std::optional<double> thickness;
};

/// How well one element of the fitted line follows the tracing.
struct FitOfElement {
  int element = 0;         // index into Section::elements
  double greatest = 0;     // mm, greatest distance of the line from the tracing, its scatter averaged out
  double farthest = 0;     // mm, distance of the one point that is farthest from the line
  std::size_t points = 0;  // measured points, or places along a drawing, that the figures are of
  // Of an arc whose radius was made a division's or a plane's: the radius that lies nearest by itself, and
  // what `greatest` would be with it.
  std::optional<double> free_radius;
  double free_greatest = 0;
};

/// A place where the line lies so close beside itself that points in no order do not tell which of its two
/// sides they lie on.
struct Cleft {
  Point at;        // between the two, in the frame of the section
  double gap = 0;  // mm
};

/// A traced section as flats and arcs.
struct FittedProfile {
  Section section;
  std::vector<FitOfElement> fits;  // of each element
  double scatter = 0;              // standard deviation of the points square to the line, mm; 0 for drawings
  double step = 0;                 // mm, that the figures were rounded to; 0 where that told nothing
  double turned = 0;               // degrees that the tracing lay askew
  bool mirrored = false;           // the working edge was at its right
  bool may_be_mirrored = false;    // it was taken to be at the left, and the line looks as well the other way
  bool put_in_order = false;       // the points were in no order of the line
  std::size_t joined = 0;          // so many points were corners, and joined straight; 0: they were not
  std::vector<Point> strays;       // left out since they lie alone beside the line; as the file has them
  std::vector<Cleft> unclear;      // where that order is not sure; none where the points had one
  bool traced_width = false;  // the tracing shows how wide the stock is; else it is as wide as it must be
  bool traced_thickness = false;
};

/// The fewest flats and arcs that follow the tracing within the tolerance (exact over some four hundred
/// places where they may meet), laid into the frame of the section. Nothing, and why, where there is no
/// section in it. REQUIRES: at least 2 different points.
std::optional<FittedProfile> fit_tracing(const Tracing& tracing, const FitOptions& options, std::string* why);

}  // namespace arrisline
