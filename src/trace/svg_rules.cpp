// Style sheets as drawing programs write them, by CSS 2.1 and SVG 1.1, chapter 6. Shown by
// tests/trace/svg_rules_test.cpp.
#include "trace/svg_rules.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "wording/words.h"

namespace arrisline {

namespace {

constexpr std::string_view kSpace = " \t\r\n\f";
/// Of a value, at most: those that are looked for are shorter.
constexpr std::size_t kMostValue = 16;

std::string_view trimmed(std::string_view part) {
  part.remove_prefix(std::min(part.find_first_not_of(kSpace), part.size()));
  return part.substr(0, part.find_last_not_of(kSpace) + 1);
}

/// Passes what comes before a character, and the character.
std::string_view pass_to(std::string_view& text, char c) {
  const std::string_view before = text.substr(0, text.find(c));
  text.remove_prefix(std::min(text.size(), before.size() + 1));
  return before;
}

std::string without_comments(std::string_view sheet) {
  std::string out;
  while (!sheet.empty()) {
    const std::size_t begin = sheet.find("/*");
    out += sheet.substr(0, begin);
    if (begin == std::string_view::npos) break;
    out += ' ';
    const std::size_t end = sheet.find("*/", begin + 2);
    sheet.remove_prefix(end == std::string_view::npos ? sheet.size() : end + 2);
  }
  return out;
}

bool is_name(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || byte >= 0x80;
  });
}

/// A selector as it is kept: NAME, .CLASS, #ID, NAME.CLASS, NAME#ID or *. Nothing for one that is not read.
std::optional<std::string_view> selector_of(std::string_view text) {
  text = trimmed(text);
  if (text == "*") return text;
  if (text.substr(0, 2) == "*." || text.substr(0, 2) == "*#") text.remove_prefix(1);
  const std::size_t mark = text.find_first_of(".#");
  if (mark == std::string_view::npos) return is_name(text) ? std::optional(text) : std::nullopt;
  const bool sound = (mark == 0 || is_name(text.substr(0, mark))) && is_name(text.substr(mark + 1));
  return sound ? std::optional(text) : std::nullopt;
}

/// Passes a rule that begins with @, and its block. Whether it may hold rules that matter.
bool pass_at_rule(std::string_view& sheet) {
  const std::string_view head = sheet.substr(0, sheet.find_first_of(";{"));
  const bool matters = head.substr(0, 6) == "@media" || head.substr(0, 7) == "@import";
  sheet.remove_prefix(head.size());
  std::size_t depth = 0;
  while (!sheet.empty()) {
    const char c = sheet.front();
    sheet.remove_prefix(1);
    if (c == '{') ++depth;
    if (c == '}' && depth > 0) --depth;
    if (depth == 0 && (c == '}' || c == ';')) break;
  }
  return matters;
}

}  // namespace

std::optional<Declared> declared(std::string_view declarations, std::string_view property) {
  std::optional<Declared> found;
  while (!declarations.empty()) {
    std::string_view said = pass_to(declarations, ';');
    if (lower(trimmed(pass_to(said, ':'))) != property) continue;
    const std::string_view value = trimmed(pass_to(said, '!'));
    const bool important = lower(trimmed(said)) == "important";
    if (found && found->important && !important) continue;
    found = Declared{lower(value.substr(0, kMostValue)), important};
  }
  return found;
}

bool StyleRules::add_rule(std::string_view selectors, std::string_view declarations, std::size_t& room) {
  Rule said;
  bool any = false;
  ++count_;
  for (std::size_t k = 0; k < kStyleProperties.size(); ++k) {
    said.said[k] = declared(declarations, kStyleProperties[k]);
    said.order[k] = count_;
    any = any || said.said[k];
  }
  while (any && !selectors.empty()) {
    const std::optional<std::string_view> selector = selector_of(pass_to(selectors, ','));
    if (!selector) {
      unread_ = true;
      continue;
    }
    auto rule = rules_.find(*selector);
    if (rule == rules_.end()) {
      const std::size_t takes = sizeof(Rule) + 2 * sizeof(std::string) + selector->size();
      if (takes > room) return false;
      room -= takes;
      rule = rules_.emplace(*selector, Rule{}).first;
    }
    for (std::size_t k = 0; k < kStyleProperties.size(); ++k) {
      std::optional<Declared>& old = rule->second.said[k];
      if (!said.said[k] || (old && old->important && !said.said[k]->important)) continue;
      old = said.said[k];
      rule->second.order[k] = said.order[k];
    }
  }
  return true;
}

bool StyleRules::add(std::string_view text, std::size_t& room) {
  const std::string plain = without_comments(text);
  std::string_view sheet = plain;
  while (!(sheet = trimmed(sheet)).empty()) {
    if (sheet.front() == '@') {
      unread_ = pass_at_rule(sheet) || unread_;
      continue;
    }
    const std::string_view selectors = pass_to(sheet, '{');
    if (!add_rule(selectors, pass_to(sheet, '}'), room)) return false;
  }
  return true;
}

const Declared* StyleRules::find(std::string_view property, std::string_view name, std::string_view id,
                                 std::string_view classes) const {
  if (rules_.empty()) return nullptr;
  const std::size_t k = static_cast<std::size_t>(
      std::find(kStyleProperties.begin(), kStyleProperties.end(), property) - kStyleProperties.begin());
  if (k == kStyleProperties.size()) return nullptr;
  const Declared* best = nullptr;
  std::tuple<bool, int, std::size_t> best_rank;
  const auto look = [&](const std::string& selector, int specificity) {
    const auto rule = rules_.find(selector);
    if (rule == rules_.end() || !rule->second.said[k]) return;
    const std::tuple rank(rule->second.said[k]->important, specificity, rule->second.order[k]);
    if (best != nullptr && rank < best_rank) return;
    best = &*rule->second.said[k];
    best_rank = rank;
  };
  look("*", 0);
  look(std::string(name), 1);
  while (!(classes = trimmed(classes)).empty()) {
    const std::string_view one = classes.substr(0, classes.find_first_of(kSpace));
    classes.remove_prefix(one.size());
    look("." + std::string(one), 10);
    look(std::string(name) + "." + std::string(one), 11);
  }
  if (!id.empty()) {
    look("#" + std::string(id), 100);
    look(std::string(name) + "#" + std::string(id), 101);
  }
  return best;
}

}  // namespace arrisline
