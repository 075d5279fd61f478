// The style sheets of an SVG, as far as it matters what is drawn at all.
#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

/// What a declaration says of a property, in small letters.
struct Declared {
  std::string value;
  bool important = false;
};
/// What declarations, as in a style attribute, say of a property; nothing where they do not. The last of them
/// holds, an important one before others.
std::optional<Declared> declared(std::string_view declarations, std::string_view property);

/// The properties that are read.
inline constexpr std::array<std::string_view, 4> kStyleProperties = {"display", "visibility", "fill",
                                                                     "stroke"};

/// Rules for an element, a class, an id, or an element with one of these; of other selectors it is only known
/// that there were some.
class StyleRules {
 public:
  /// Takes a sheet in. False where its rules take more than `room` bytes, which is lessened by what they
  /// take.
  bool add(std::string_view sheet, std::size_t& room);
  /// Whether rules that may matter were passed over.
  bool has_unread() const { return unread_; }

  /// What they say of a property of an element: by specificity, and of the same by what comes last (CSS 2.1,
  /// 6.4). `classes` is the attribute, names between blanks.
  const Declared* find(std::string_view property, std::string_view name, std::string_view id,
                       std::string_view classes) const;

 private:
  struct Rule {
    std::array<std::optional<Declared>, kStyleProperties.size()> said;
    std::array<std::size_t, kStyleProperties.size()> order = {};
  };
  bool add_rule(std::string_view selectors, std::string_view declarations, std::size_t& room);

  std::map<std::string, Rule, std::less<>> rules_;  // by selector
  std::size_t count_ = 0;
  bool unread_ = false;
};

}  // namespace arrisline
