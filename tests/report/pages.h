// Looking for sentences on a printed page.
#pragma once

#include <string>

namespace arrisline::test {

inline bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// Folds the page back into running text, so that a sentence can be looked for wherever it was broken.
inline std::string running(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n';
    if (space && !out.empty() && out.back() == ' ') continue;
    out += space ? ' ' : c;
  }
  return out;
}

}  // namespace arrisline::test
