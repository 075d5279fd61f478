// How an element of an SVG looks, as far as it matters what is drawn at all.
#pragma once

#include <optional>
#include <string_view>

#include "trace/svg_shapes.h"

namespace arrisline {

/// The properties of one element: what its style attribute declares, else its attribute of that name. Sheets
/// of styles are not read. REQUIRES: the attributes live as long.
class SvgStyle {
 public:
  explicit SvgStyle(const Attributes& attributes) : attributes_(attributes), style_(attributes("style")) {}

  /// Whether a property has this value; `otherwise` where it is not said.
  bool is(const char* property, std::string_view value, bool otherwise) const;

 private:
  const Attributes& attributes_;
  std::optional<Passage> style_;
};

}  // namespace arrisline
