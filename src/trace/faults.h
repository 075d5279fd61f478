// The mistakes in a file of points or a drawing.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/diagnostic.h"
#include "wording/source.h"

namespace arrisline {

/// Errors, and warnings, that are kept of one file.
inline constexpr std::size_t kMaxTraceMistakes = 20;

/// Coordinates are no larger than this, whatever the unit: 1000 km of the smallest.
inline constexpr double kLargestFigure = 1e9;

/// What to do about a drawing whose text is not what its program ought to write.
inline constexpr std::string_view kSaveDxfAgain = "; save the drawing again, as DXF R12";
inline constexpr std::string_view kSaveSvgAgain = "; save the drawing again, as plain SVG";

/// A line that a width is given for is wider than this, in units of its file.
inline constexpr double kLeastWidth = 1e-9;

/// A run of bytes of a text.
struct Span {
  std::size_t at = 0;
  std::size_t bytes = 1;
};

/// A mistake in a line of which the text is given.
Diagnostic mistake_in_line(const std::string& file, std::string_view line, int number, Span span,
                           std::string message);

/// The first few errors and warnings of one file. Those of a text kept whole are given by its bytes.
struct Faults {
  std::string_view text;  // all of it, or nothing where mistakes are added as they are
  std::string file;
  std::vector<Diagnostic> list;
  std::size_t errors = 0;
  std::size_t warnings = 0;

  Faults(std::string_view of, std::string name) : text(of), file(std::move(name)) {}
  void add(Diagnostic diagnostic);
  void error(Span span, std::string message);
  void warn(Span span, std::string message);
  bool full() const { return errors > kMaxTraceMistakes; }

  /// Where a byte of the text stands.
  Place place(std::size_t at) const;
  /// In order of place, and at the end that there are more where there are.
  std::vector<Diagnostic> in_order() &&;
};

/// "line 3, column 7".
std::string spoken(Place place);
/// "(1.5, -2)".
std::string spoken(double x, double y);

}  // namespace arrisline
