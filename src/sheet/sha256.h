// SHA-256, by which a page says which style and script are its own.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace arrisline {

/// FIPS 180-4.
std::array<std::uint8_t, 32> sha256(std::string_view bytes);
/// In base 64, as a Content-Security-Policy wants it.
std::string sha256_base64(std::string_view bytes);

}  // namespace arrisline
