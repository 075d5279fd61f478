// Lays JSON out in lines. Shown by tests/replay.
#include "report/json_text.h"

#include <charconv>
#include <cmath>

namespace arrisline {

// As much as fits beside the deepest indent without the eye losing the line.
static constexpr std::size_t kLineWidth = 110;

static std::string number_text(double value) {
  if (!std::isfinite(value)) return "null";  // JSON has no such number, and the reader refuses it
  if (value == 0) return "0";                // never "-0"
  char buffer[40];
  const std::to_chars_result end =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::general, 17);
  return std::string(buffer, end.ptr);
}

static std::string quoted(const std::string& text) {
  // Bytes that are not UTF-8 become U+FFFD.
  return Json(text).dump(-1, ' ', false, Json::error_handler_t::replace);
}

static std::string flat(const Json& value) {
  if (value.is_number_float()) return number_text(value.get<double>());
  if (value.is_string()) return quoted(value.get_ref<const std::string&>());
  if (value.is_array()) {
    std::string out = "[";
    for (std::size_t i = 0; i < value.size(); ++i) {
      if (i > 0) out += ", ";
      out += flat(value[i]);
    }
    return out + "]";
  }
  if (value.is_object()) {
    std::string out = "{ ";
    for (auto it = value.begin(); it != value.end(); ++it) {
      if (it != value.begin()) out += ", ";
      out += quoted(it.key());
      out += ": ";
      out += flat(it.value());
    }
    return out + " }";
  }
  return value.dump();
}

static void lay_out(const Json& value, std::size_t indent, std::size_t used, std::string& out) {
  const bool nests = value.is_structured() && !value.empty();
  if (indent > 0 || !nests) {
    const std::string line = flat(value);
    if (!nests || indent + used + line.size() <= kLineWidth) {
      out += line;
      return;
    }
  }
  const std::string margin(indent + 2, ' ');
  out += value.is_array() ? "[" : "{";
  for (auto it = value.begin(); it != value.end(); ++it) {
    out += it == value.begin() ? "\n" : ",\n";
    out += margin;
    std::string name;
    if (value.is_object()) name = quoted(it.key()).append(": ");
    out += name;
    lay_out(it.value(), indent + 2, name.size(), out);
  }
  out += '\n';
  out.append(indent, ' ');
  out += value.is_array() ? ']' : '}';
}

std::string json_line(const Json& value) {
  return flat(value) + "\n";
}

std::string json_text(const Json& value) {
  std::string text;
  lay_out(value, 0, 0, text);
  return text + "\n";
}

void ObjectText::add(const std::string& name, const Json& value) {
  text_ += first_ ? "\n" : ",\n";
  first_ = false;
  const std::string lead = quoted(name) + ": ";
  text_.append(indent_, ' ').append(lead);
  lay_out(value, indent_, lead.size(), text_);
}

void ObjectText::open(const std::string& name) {
  text_ += first_ ? "\n" : ",\n";
  text_.append(indent_, ' ').append(quoted(name)).append(": {");
  indent_ += 2;
  first_ = true;
}

void ObjectText::close() {
  indent_ -= 2;
  if (!first_) text_.append("\n").append(indent_, ' ');
  text_ += '}';
  first_ = false;
}

std::string ObjectText::take() {
  return std::move(text_) + "\n}\n";
}

}  // namespace arrisline
