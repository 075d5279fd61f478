// Walks the text once without building anything, so that a hostile file costs no memory and no stack.
// Shown by tests/replay.
#include "report/plan_json_syntax.h"

#include <nlohmann/json.hpp>
#include <set>
#include <vector>

#include "arrisline/limits.h"

namespace arrisline {

// Of a word quoted in a message.
static constexpr std::size_t kLongestQuote = 40;

static std::string place(std::string_view text, std::size_t read) {
  const std::size_t at = std::min(read > 0 ? read - 1 : 0, text.size());
  std::size_t line = 1, column = 1;
  for (std::size_t i = 0; i < at; ++i) {
    if (text[i] == '\n') {
      ++line;
      column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xC0) != 0x80) {
      ++column;
    }
  }
  return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

// Bytes that a terminal would act on, or that are not ASCII, become '?'.
static std::string visible(std::string_view word) {
  std::string out;
  for (const char c : word.substr(0, kLongestQuote)) out += c >= ' ' && c <= '~' ? c : '?';
  return out + (word.size() > kLongestQuote ? "..." : "");
}

namespace {

/// The text with each blank outside of strings a plain one: what the parser remembers of a megabyte of line
/// ends, to quote it in a message, would be eight.
std::string with_plain_blanks(std::string_view text) {
  std::string out(text);
  bool quoted = false;
  bool escaped = false;
  for (char& c : out) {
    if (!quoted && (c == '\n' || c == '\r' || c == '\t')) c = ' ';
    if (c == '"' && !escaped) quoted = !quoted;
    escaped = quoted && c == '\\' && !escaped;
  }
  return out;
}

class Walker : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit Walker(std::string_view text) : text_(text) {}

  bool null() override { return value(); }
  bool boolean(bool) override { return value(); }
  bool number_integer(number_integer_t) override { return value(); }
  bool number_unsigned(number_unsigned_t) override { return value(); }
  bool number_float(number_float_t, const string_t&) override { return value(); }
  bool string(string_t&) override { return value(); }
  bool binary(binary_t&) override { return value(); }
  bool start_object(std::size_t) override { return enter(); }
  bool start_array(std::size_t) override { return enter(); }
  bool end_object() override { return leave(); }
  bool end_array() override { return leave(); }
  bool key(string_t& name) override {
    if (names_.back().insert(name).second) return true;
    fault.text.append("\"")
        .append(visible(name))
        .append("\" is given twice in one place; leave one of them out");
    return false;
  }
  bool parse_error(std::size_t read, const std::string& word, const nlohmann::detail::exception&) override {
    fault = {place(text_, read) + ": this is not JSON", true};
    if (!word.empty()) fault.text += ", near '" + visible(word) + "'";
    return false;
  }

  JsonFault fault;

 private:
  bool value() {
    if (++values_ <= kMaxJsonValues) return true;
    fault = {"more than " + std::to_string(kMaxJsonValues) + " values" + to_raise("kMaxJsonValues"), true};
    return false;
  }
  bool enter() {
    names_.emplace_back();
    if (names_.size() <= kMaxJsonDepth) return value();
    fault = {"nested deeper than " + std::to_string(kMaxJsonDepth) + " levels" + to_raise("kMaxJsonDepth"),
             true};
    return false;
  }
  bool leave() {
    names_.pop_back();
    return true;
  }

  std::string_view text_;
  std::size_t values_ = 0;
  std::vector<std::set<std::string>> names_;
};

}  // namespace

std::string too_large_a_plan() {
  return "larger than " + std::to_string(kMaxPlanBytes >> 20) + " MiB" + to_raise("kMaxPlanBytes");
}

std::optional<JsonFault> json_fault(std::string_view text) {
  if (text.size() > kMaxPlanBytes) return JsonFault{too_large_a_plan(), true};
  Walker walker(text);
  const std::string plain = with_plain_blanks(text);
  if (nlohmann::json::sax_parse(plain.begin(), plain.end(), &walker)) return std::nullopt;
  return walker.fault;
}

}  // namespace arrisline
