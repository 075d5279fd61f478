// How an element of an SVG looks, as far as it matters what is drawn at all.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "trace/svg_rules.h"
#include "trace/svg_shapes.h"

namespace arrisline {

/// The properties of one element: what its style attribute declares, else the style sheets, else its
/// attribute of that name; an important declaration of a sheet goes before the style. REQUIRES: what it is
/// made of lives as long.
class SvgStyle {
 public:
  SvgStyle(std::string_view name, const Attributes& attributes, const StyleRules& rules);

  /// Whether a property has this value; `otherwise` where it is not said, or said to be inherited.
  bool is(const char* property, std::string_view value, bool otherwise) const;

 private:
  /// In small letters; nothing where it is not said.
  std::optional<std::string> said(const char* property) const;

  std::string_view name_;
  const Attributes& attributes_;
  const StyleRules& rules_;
  std::optional<Passage> style_;
  std::optional<Passage> id_;
  std::optional<Passage> classes_;
};

}  // namespace arrisline
