// Signs of books, of word processors and of other lands, one after the other turned into ours; what comes out
// counts only where it reads as a length. Shown by tests/wording/spelling_test.cpp.
#include "wording/spelling.h"

#include <array>
#include <optional>
#include <utility>

#include "wording/figures.h"
#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

constexpr std::array<Pair, 15> kFractions = {{{"½", "1/2"},
                                              {"⅓", "1/3"},
                                              {"⅔", "2/3"},
                                              {"¼", "1/4"},
                                              {"¾", "3/4"},
                                              {"⅕", "1/5"},
                                              {"⅖", "2/5"},
                                              {"⅗", "3/5"},
                                              {"⅘", "4/5"},
                                              {"⅙", "1/6"},
                                              {"⅚", "5/6"},
                                              {"⅛", "1/8"},
                                              {"⅜", "3/8"},
                                              {"⅝", "5/8"},
                                              {"⅞", "7/8"}}};

// Longer ones first: two single marks are an inch, one is a foot.
constexpr std::array<Pair, 16> kSigns = {{{"\u2044", "/"},  // the slash of fractions
                                          {"\u2215", "/"},  // the one of mathematics
                                          {"\u2010", "-"},  // a hyphen
                                          {"\u2011", "-"},  // one that holds a line together
                                          {"\u2012", "-"},  // dashes
                                          {"\u2013", "-"},
                                          {"\u2014", "-"},
                                          {"\u2212", "-"},   // minus
                                          {"\u201C", ""},    // quotation marks before
                                          {"\u201D", "\""},  // and after, or inches
                                          {"\u2033", "\""},  // a sign of inches
                                          {"\u2032\u2032", "\""},
                                          {"\u2019\u2019", "\""},
                                          {"''", "\""},
                                          {"\u2032", "'"},
                                          {"\u2019", "'"}}};

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

void spell_out_fractions(std::string& text) {
  for (const auto& [sign, figures] : kFractions) {
    for (std::size_t at = text.find(sign); at != std::string::npos; at = text.find(sign, at)) {
      const bool after_whole = at > 0 && is_digit(text[at - 1]);
      text.replace(at, sign.size(), (after_whole ? "-" : "") + std::string(figures));
    }
  }
}

/// The unit as it is written here, its number with it.
void spell_unit(std::string& text) {
  const auto instead = [&](std::string_view from, std::string_view to) {
    if (!lower(text).ends_with(from)) return false;
    text.replace(text.size() - from.size(), from.size(), to);
    return true;
  };
  if (instead("inches", "in") || instead("inch", "in") || instead("\"", "in")) return;
  if (instead("feet", "ft") || instead("foot", "ft")) return;
  // A single mark is feet, but nobody measures fractions of them: behind one it is short of a second mark.
  if (instead("'", text.find('/') == std::string::npos ? "ft" : "in")) return;
  if (!lower(text).ends_with("cm")) return;
  std::string why;
  const std::optional<Number> centimetres =
      scan_number(std::string_view(text).substr(0, text.size() - 2), why);
  if (centimetres && centimetres->suffix.empty()) text = plain(centimetres->value * 10, 6) + "mm";
}

bool is_length(std::string_view text) {
  std::string why;
  const std::optional<Number> number = scan_number(text, why);
  return number && (number->suffix.empty() || unit_length(number->suffix));
}

}  // namespace

std::string as_written_here(std::string_view word) {
  constexpr std::size_t kLongestWord = 40;  // bytes; no length comes near it
  if (word.empty() || word.size() > kLongestWord || is_length(word)) return "";
  std::string text(word);
  const bool in_marks =
      text.front() == '"' || text.front() == '\'' || text.starts_with("\u201C") || text.starts_with("\u2018");
  spell_out_fractions(text);
  replace_all(text, "\u2018", "");
  for (const auto& [sign, ours] : kSigns) replace_all(text, sign, ours);
  while (!text.empty() && std::string_view(".;:,").find(text.back()) != std::string_view::npos)
    text.pop_back();
  if (in_marks) {
    if (!text.empty() && (text.front() == '"' || text.front() == '\'')) text.erase(0, 1);
    if (!text.empty() && (text.back() == '"' || text.back() == '\'')) text.pop_back();
  }
  spell_unit(text);
  return text != word && is_length(text) ? "; write " + quoted(text) : "";
}

std::string without_comma(std::string_view whole, std::string_view part) {
  const std::string point = std::string(whole) + "." + std::string(part);
  // "1,000" is a thousand to some and one to others.
  constexpr std::size_t kThousand = 3;
  if (part.size() == kThousand && whole.size() <= kThousand && whole != "0" && !whole.ends_with("."))
    return "; write it without a comma: " + quoted(point) + " or " +
           quoted(std::string(whole) + std::string(part));
  return "; write the decimal mark as a full stop: " + quoted(point);
}

}  // namespace arrisline
