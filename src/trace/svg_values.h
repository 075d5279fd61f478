// What stands in the attributes of an SVG: numbers, lengths, maps.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trace/curves.h"
#include "trace/faults.h"

namespace arrisline {

/// The value of an attribute and where it stands in the file. A value that holds references (&amp; and the
/// like) stands there otherwise written: `as_written` is false and `at` is the place of all of it.
struct Passage {
  std::string_view text;
  std::size_t at = 0;
  bool as_written = true;

  Span span(std::size_t from, std::size_t bytes) const {
    return as_written ? Span{at + from, bytes} : Span{at, 1};
  }
};

/// Reads a passage from its beginning on.
struct Scanner {
  Passage in;
  std::size_t pos = 0;
  bool too_large = false;  // what number() last found none in was a number, and too large for any

  bool at_end() const { return pos >= in.text.size(); }
  char peek() const { return at_end() ? '\0' : in.text[pos]; }
  void skip_blanks();
  /// Blanks, and a comma among them. False where there was no comma.
  bool skip_comma();
  /// A number in the short forms too ("-.5.5" is two), or nothing, and nothing is passed.
  std::optional<double> number();
  /// A run of letters.
  std::string_view word();
  /// Why number() has found none.
  std::string what_number() const;
  /// The characters that a mistake here is about.
  Span here() const;
};

/// A list of at most so many numbers; a mistake, and nothing, where it is none.
std::optional<std::vector<double>> numbers_of(const Passage& passage, std::size_t most, Faults& faults);

/// A length. `mm` where its unit is one of length, px and none being 1/96 in; nothing for %, em and ex.
struct SvgLength {
  double number = 0;
  std::optional<double> mm;
  bool percent = false;
  /// In user units, px; 0 for %, em and ex.
  double px() const;
};
std::optional<SvgLength> length_of(const Passage& passage, Faults& faults);

inline constexpr double kMmPerPx = 25.4 / 96;

/// The map of a `transform` attribute.
std::optional<Affine> transform_of(const Passage& passage, Faults& faults);

struct ViewBox {
  Point least;
  Point size;
};
std::optional<ViewBox> view_box_of(const Passage& passage, Faults& faults);

/// preserveAspectRatio.
struct Aspect {
  bool keep = true;     // else `none`
  bool slice = false;   // else `meet`
  double across = 0.5;  // 0 for xMin, 1 for xMax
  double down = 0.5;
};
std::optional<Aspect> aspect_of(const Passage& passage, Faults& faults);

/// From the viewBox to a viewport of this size with its corner at the origin.
Affine view_map(const ViewBox& box, const Aspect& aspect, Point size);

}  // namespace arrisline
