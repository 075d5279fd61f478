// Lengths as a maker writes them. In the program every length is in mm.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace arrisline {

enum class Unit { inch, mm };

/// A length in mm, as the files write it ("3/8", "1 1/2", "9.5mm"), or nothing and the reason in `why`.
std::optional<double> parse_length(std::string_view text, Unit unit, std::string* why);

}  // namespace arrisline
