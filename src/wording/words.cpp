// Quoting and the nearest known word. Shown by tests/wording/words_test.cpp.
#include "wording/words.h"

#include <algorithm>
#include <array>
#include <utility>

#include "wording/source.h"

namespace arrisline {

/// Longest word quoted or compared, in bytes; no known word comes near it.
static constexpr std::size_t kLongestWord = 40;

/// Names that others in the trade have for what is known here by another: common practice, no source.
static constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kOtherNames = {
    {{"plow", "plough"}, {"rabbet", "rebate"}, {"cyma", "ogee"}, {"r", "radius"}}};

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

std::string quoted(std::string_view word) {
  std::string out = "'";
  if (word.size() <= kLongestWord) return out.append(word).append("'");
  std::size_t end = 0;
  while (end < kLongestWord) end += std::max<std::size_t>(1, utf8_length(word.substr(end)));
  return out.append(word.substr(0, end)).append("…'");
}

std::string either(const std::vector<std::string_view>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += words[i];
  }
  return out;
}

int edit_distance(std::string_view a, std::string_view b) {
  const std::size_t columns = b.size() + 1;
  std::vector<int> table((a.size() + 1) * columns);
  const auto at = [&](std::size_t i, std::size_t j) -> int& { return table[i * columns + j]; };
  for (std::size_t i = 0; i <= a.size(); ++i) at(i, 0) = static_cast<int>(i);
  for (std::size_t j = 0; j <= b.size(); ++j) at(0, j) = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int same = a[i - 1] == b[j - 1] ? 0 : 1;
      at(i, j) = std::min({at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + same});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) at(i, j) = std::min(at(i, j), at(i - 2, j - 2) + 1);
    }
  }
  return at(a.size(), b.size());
}

std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known) {
  if (word.size() > kLongestWord) return {};
  const std::string small = lower(word);
  for (const auto& [other, ours] : kOtherNames) {
    const auto found = std::find(known.begin(), known.end(), ours);
    if (small == other && found != known.end()) return *found;
  }
  const int allowed = small.size() < 5 ? 1 : static_cast<int>(std::max<std::size_t>(2, small.size() / 3));
  std::string_view best;
  int best_distance = allowed + 1;
  for (const std::string_view candidate : known) {
    const int apart = edit_distance(small, candidate);
    const bool same_start =
        !best.empty() && best.front() != small.front() && candidate.front() == small.front();
    if (apart < best_distance || (apart == best_distance && same_start)) {
      best = candidate;
      best_distance = apart;
    }
  }
  if (!best.empty() || small.size() < 3) return best;
  for (const std::string_view candidate : known) {
    if (candidate.substr(0, small.size()) == small) return candidate;
  }
  return {};
}

std::string suggestion(std::string_view word, const std::vector<std::string_view>& known) {
  const std::string_view near = nearest_word(word, known);
  return near.empty() ? "" : "; did you mean " + quoted(near) + "?";
}

}  // namespace arrisline
