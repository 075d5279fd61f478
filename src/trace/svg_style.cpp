// The cascade of SVG 1.1, 6.2 to 6.4. Shown by tests/trace/svg_rules_test.cpp and layers_test.cpp.
#include "trace/svg_style.h"

#include "wording/words.h"

namespace arrisline {

SvgStyle::SvgStyle(std::string_view name, const Attributes& attributes, const StyleRules& rules)
    : name_(name),
      attributes_(attributes),
      rules_(rules),
      style_(attributes("style")),
      id_(attributes("id")),
      classes_(attributes("class")) {}

std::optional<std::string> SvgStyle::said(const char* property) const {
  const auto text = [](const std::optional<Passage>& passage) {
    return passage ? passage->text : std::string_view();
  };
  const std::optional<Declared> own = declared(text(style_), property);
  const Declared* const sheet = rules_.find(property, name_, text(id_), text(classes_));
  if (sheet != nullptr && (!own || (sheet->important && !own->important))) return sheet->value;
  if (own) return own->value;
  const std::optional<Passage> attribute = attributes_(property);
  if (!attribute) return std::nullopt;
  return lower(attribute->text);
}

bool SvgStyle::is(const char* property, std::string_view value, bool otherwise) const {
  const std::optional<std::string> found = said(property);
  return found && *found != "inherit" ? *found == value : otherwise;
}

}  // namespace arrisline
