// A length as it is often written elsewhere, in the signs that the files take.
#pragma once

#include <string>
#include <string_view>

namespace arrisline {

/// What all lengths that are expected are shown by; right whatever the unit of the file.
inline constexpr std::string_view kSuchLength = "such as 3/8in or 9.5mm";

/// "; write '3/4'" for "¾", "3⁄4", "3/4in." or "“3/4”", "; write '1-1/2'" for "1–1/2", "; write '12mm'" for
/// "1.2cm"; nothing where no length comes of it, or where the word is one already.
std::string as_written_here(std::string_view word);

/// "; write the decimal mark as a full stop: '9.5'" for "9" and "5" that a comma parts.
std::string without_comma(std::string_view whole, std::string_view part);

}  // namespace arrisline
