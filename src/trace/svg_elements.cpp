// Names of SVG 1.1, and attributes found again in the text that Expat has read. Shown by
// tests/trace/svg_test.cpp.
#include "trace/svg_elements.h"

#include <algorithm>
#include <array>

namespace arrisline {

namespace {

constexpr std::string_view kSvg = "http://www.w3.org/2000/svg";

constexpr std::array<std::string_view, 4> kGroups = {"g", "a", "svg", "switch"};
constexpr std::array<std::string_view, 21> kUndrawn = {
    "defs",      "symbol",         "clipPath", "mask",
    "marker",    "pattern",        "metadata", "title",
    "desc",      "style",          "script",   "linearGradient",
    "filter",    "radialGradient", "cursor",   "font",
    "view",      "animate",        "set",      "animateTransform",
    "solidColor"};
struct Unread {
  std::string_view name;
  const char* advice;
};
constexpr std::array<Unread, 3> kUnread = {{
    {"text", "words are not read; turn them into paths where they are part of the line"},
    {"image", "pictures are not read; draw the line over it, and leave it out"},
    {"foreignObject", "what is no SVG is not read; draw it as a path where it is part of the line"},
}};

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// The value of an attribute as written in a tag that begins at a byte; nothing where it is not found there.
std::optional<Passage> as_written(std::string_view text, std::size_t at, std::string_view name) {
  if (at >= text.size() || text[at] != '<') return std::nullopt;
  while (at < text.size() && !is_space(text[at]) && text[at] != '>') ++at;
  while (at < text.size()) {
    while (at < text.size() && is_space(text[at])) ++at;
    const std::size_t from = at;
    while (at < text.size() && !is_space(text[at]) && text[at] != '=' && text[at] != '>') ++at;
    const std::string_view found = text.substr(from, at - from);
    while (at < text.size() && is_space(text[at])) ++at;
    if (at >= text.size() || text[at] != '=') return std::nullopt;
    ++at;
    while (at < text.size() && is_space(text[at])) ++at;
    if (at >= text.size()) return std::nullopt;
    const std::size_t end = text.find(text[at], at + 1);
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view value = text.substr(at + 1, end - at - 1);
    if (found == name) return Passage{value, at + 1, value.find('&') == std::string_view::npos};
    at = end + 1;
  }
  return std::nullopt;
}

}  // namespace

std::string_view svg_name(std::string_view full) {
  const std::size_t gap = full.find(kBetween);
  if (gap == std::string_view::npos) return full;
  return full.substr(0, gap) == kSvg ? full.substr(gap + 1) : std::string_view();
}

bool is_svg_group(std::string_view name) {
  return std::find(kGroups.begin(), kGroups.end(), name) != kGroups.end();
}

bool draws_nothing(std::string_view name) {
  return std::find(kUndrawn.begin(), kUndrawn.end(), name) != kUndrawn.end();
}

const char* unread_advice(std::string_view name) {
  for (const Unread& unread : kUnread) {
    if (name == unread.name) return unread.advice;
  }
  return nullptr;
}

const char* given_value(const char** given, std::string_view name) {
  for (; *given != nullptr; given += 2) {
    if (given[0] == name) return given[1];
  }
  return nullptr;
}

std::optional<Passage> given_passage(std::string_view text, const char** given, std::size_t from,
                                     const char* name) {
  const char* const value = given_value(given, name);
  if (value == nullptr) return std::nullopt;
  std::optional<Passage> passage = as_written(text, from, name);
  if (passage && passage->as_written) return passage;
  return Passage{value, passage ? passage->at : from, false};
}

}  // namespace arrisline
