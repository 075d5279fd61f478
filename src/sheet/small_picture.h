// A section in a few characters, beside words.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "arrisline/section.h"

namespace arrisline {

inline constexpr std::size_t kSmallColumns = 24;
inline constexpr std::size_t kSmallRows = 6;

enum class Waste { shown, left_out };

/// At most kSmallRows lines of at most kSmallColumns characters, without blanks at their ends.
std::vector<std::string> small_picture(const Section& section, Waste waste, bool ascii);

}  // namespace arrisline
