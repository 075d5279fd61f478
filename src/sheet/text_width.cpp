// How wide words are, without asking for a font. Shown by tests/sheet/text_width_test.cpp.
#include <algorithm>
#include <array>
#include <cstddef>

#include "sheet/drawing.h"

namespace arrisline {
namespace {

// Advance widths in thousandths of the size, ' ' to '~', of one of the widest sans-serif types in common use
// (measured); others take less. What is wider than any of these is counted as kOther.
constexpr std::array<int, 95> kAdvance = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838};
constexpr double kOther = 1.07;
constexpr double kBold = 1.17;

/// Bytes of the character that begins at `at`. REQUIRES: UTF-8.
std::size_t bytes_at(const std::string& words, std::size_t at) {
  std::size_t end = at + 1;
  while (end < words.size() && (static_cast<unsigned char>(words[end]) & 0xc0U) == 0x80U) ++end;
  return end - at;
}

double advance(char c) {
  const auto code = static_cast<unsigned char>(c);
  if (code >= 32 && code < 127) return kAdvance[code - 32U] / 1000.0;
  return kOther;
}

/// Bytes of the longest beginning of the words no wider than this; at least one character.
std::size_t fitting(const std::string& words, double size, double width) {
  double used = 0;
  std::size_t at = 0;
  while (at < words.size()) {
    used += advance(words[at]) * size;
    if (used > width && at > 0) break;
    at += bytes_at(words, at);
  }
  return at;
}

}  // namespace

double text_width(const std::string& words, double size, bool bold) {
  double out = 0;
  for (std::size_t at = 0; at < words.size(); at += bytes_at(words, at)) out += advance(words[at]);
  return out * size * (bold ? kBold : 1);
}

std::vector<std::string> wrapped(const std::string& words, double size, double width) {
  std::vector<std::string> out;
  std::string line;
  std::size_t at = 0;
  while (at < words.size()) {
    std::size_t end = words.find(' ', at);
    if (end == std::string::npos) end = words.size();
    std::string word = words.substr(at, end - at);
    at = end + 1;
    if (!line.empty() && text_width(line + ' ' + word, size) <= width) {
      line += ' ' + word;
      continue;
    }
    if (!line.empty()) out.push_back(std::move(line));
    while (text_width(word, size) > width) {
      const std::size_t bytes = fitting(word, size, width);
      if (bytes == word.size()) break;
      out.push_back(word.substr(0, bytes));
      word.erase(0, bytes);
    }
    line = std::move(word);
  }
  if (!line.empty()) out.push_back(std::move(line));
  return out;
}

std::string fitted(const std::string& words, double size, double width) {
  if (text_width(words, size) <= width) return words;
  const std::string dots = "...";
  return words.substr(0, fitting(words, size, std::max(0.0, width - text_width(dots, size)))) + dots;
}

Box box_of(const Label& label) {
  // Ascenders and descenders of the same type, with a hair over.
  constexpr double kAscent = 0.80, kDescent = 0.24;
  const double width = text_width(label.words, label.size, label.bold);
  const double left = label.anchor == Anchor::start    ? label.at.x
                      : label.anchor == Anchor::middle ? label.at.x - width / 2
                                                       : label.at.x - width;
  return {left, label.at.y - kAscent * label.size, left + width, label.at.y + kDescent * label.size};
}

std::vector<Edge> Placing::chain(const std::vector<Edge>& edges) const {
  std::vector<Edge> out;
  out.reserve(edges.size());
  for (const Edge& e : edges) out.push_back(edge(e));
  return out;
}

}  // namespace arrisline
