// Shown by tests/trace/svg_test.cpp and layers_test.cpp.
#include "trace/svg_style.h"

#include <algorithm>

namespace arrisline {

static std::string_view trimmed(std::string_view part) {
  constexpr std::string_view kSpace = " \t\r\n";
  part.remove_prefix(std::min(part.find_first_not_of(kSpace), part.size()));
  return part.substr(0, part.find_last_not_of(kSpace) + 1);
}

/// What a style attribute declares of a property, as display: none; nothing where it does not.
static std::optional<std::string_view> declared(std::string_view style, std::string_view property) {
  std::optional<std::string_view> found;
  while (!style.empty()) {
    const std::string_view one = style.substr(0, style.find(';'));
    const std::size_t colon = one.find(':');
    if (colon != std::string_view::npos && trimmed(one.substr(0, colon)) == property) {
      const std::string_view said = one.substr(colon + 1);
      found = trimmed(said.substr(0, said.find('!')));
    }
    style.remove_prefix(std::min(style.size(), one.size() + 1));
  }
  return found;
}

bool SvgStyle::is(const char* property, std::string_view value, bool otherwise) const {
  if (style_) {
    if (const std::optional<std::string_view> said = declared(style_->text, property)) return *said == value;
  }
  const std::optional<Passage> said = attributes_(property);
  return said ? said->text == value : otherwise;
}

}  // namespace arrisline
