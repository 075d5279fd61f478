// Walks the text once without building anything, so that a hostile file costs no memory and no stack.
// Shown by tests/replay.
#include "report/plan_json_syntax.h"

#include <nlohmann/json.hpp>
#include <set>
#include <vector>

namespace arrisline {

// A plan of the most cuts allowed takes about 5 MiB.
static constexpr std::size_t kMostBytes = 64u << 20;
// A plan nests seven deep (cuts, cut, plane, sole, edge, to).
static constexpr std::size_t kDeepest = 32;
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

class Walker : public nlohmann::json_sax<nlohmann::json> {
 public:
  explicit Walker(std::string_view text) : text_(text) {}

  bool null() override { return true; }
  bool boolean(bool) override { return true; }
  bool number_integer(number_integer_t) override { return true; }
  bool number_unsigned(number_unsigned_t) override { return true; }
  bool number_float(number_float_t, const string_t&) override { return true; }
  bool string(string_t&) override { return true; }
  bool binary(binary_t&) override { return true; }
  bool start_object(std::size_t) override { return enter(); }
  bool start_array(std::size_t) override { return enter(); }
  bool end_object() override { return leave(); }
  bool end_array() override { return leave(); }
  bool key(string_t& name) override {
    if (names_.back().insert(name).second) return true;
    fault.append("\"").append(visible(name)).append("\" is given twice in one object");
    return false;
  }
  bool parse_error(std::size_t read, const std::string& word, const nlohmann::detail::exception&) override {
    fault = place(text_, read) + ": this is not JSON";
    if (!word.empty()) fault += ", near '" + visible(word) + "'";
    return false;
  }

  std::string fault;

 private:
  bool enter() {
    names_.emplace_back();
    if (names_.size() <= kDeepest) return true;
    fault = "nested deeper than " + std::to_string(kDeepest) + " levels";
    return false;
  }
  bool leave() {
    names_.pop_back();
    return true;
  }

  std::string_view text_;
  std::vector<std::set<std::string>> names_;
};

}  // namespace

std::optional<std::string> json_fault(std::string_view text) {
  if (text.size() > kMostBytes) return "larger than " + std::to_string(kMostBytes >> 20) + " MiB";
  Walker walker(text);
  if (nlohmann::json::sax_parse(text.begin(), text.end(), &walker)) return std::nullopt;
  return walker.fault;
}

}  // namespace arrisline
