// Rounding and writing of lengths, never through the locale. Shown by tests/report/figures_test.cpp.
#include "wording/figures.h"

#include <charconv>
#include <cmath>
#include <numeric>
#include <string_view>

#include "arrisline/geometry.h"

namespace arrisline {

namespace {

constexpr double kLargest = 1e12;  // beyond this, steps would not fit a whole number

}  // namespace

const char* unit_word(Unit unit) {
  return unit == Unit::inch ? " in" : " mm";
}

std::string fraction(double steps, long long denominator) {
  const bool negative = steps < 0;
  const auto total = static_cast<long long>(std::fabs(steps));
  const long long whole = total / denominator;
  const long long rest = total % denominator;
  std::string out = negative && total != 0 ? "-" : "";
  if (whole != 0 || rest == 0) out += std::to_string(whole);
  if (rest != 0) {
    const long long common = std::gcd(rest, denominator);
    if (whole != 0) out += ' ';
    out += std::to_string(rest / common) + '/' + std::to_string(denominator / common);
  }
  return out;
}

std::string fixed(double value, int decimals) {
  char buffer[400];
  const auto [end, error] =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  return error == std::errc() ? std::string(buffer, end) : "?";
}

std::string plain(double value, int decimals) {
  std::string out = fixed(value, decimals);
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

std::string exact(double mm, Unit unit) {
  if (unit == Unit::inch && std::fabs(mm) < kLargest) {
    for (const long long denominator : {1LL, 2LL, 4LL, 8LL, 16LL, 32LL, 64LL, 128LL}) {
      const double steps = std::round(mm / kMmPerInch * static_cast<double>(denominator));
      if (std::fabs(steps / static_cast<double>(denominator) * kMmPerInch - mm) < kSameLength)
        return fraction(steps, denominator) + unit_word(unit);
    }
  }
  return plain(unit == Unit::inch ? mm / kMmPerInch : mm, 3) + unit_word(unit);
}

std::string about(double mm, Unit unit) {
  constexpr double kNear = 0.06;  // mm: less than the thinnest shaving of a moulding plane
  if (unit == Unit::mm) return plain(mm, 2) + unit_word(unit);
  const double steps = std::round(mm / kMmPerInch * 64);
  const double off = std::fabs(steps / 64 * kMmPerInch - mm);
  if (steps < 1 || off > kNear || !(steps < kLargest)) return exact(mm, unit);
  return (off < kSameLength ? "" : "about ") + fraction(steps, 64) + unit_word(unit);
}

std::string thickness(double mm, Unit unit) {
  if (mm < kSameLength) return "nothing";
  const int decimals = unit == Unit::inch ? 3 : 2;
  const std::string figure = plain(unit == Unit::inch ? mm / kMmPerInch : mm, decimals);
  if (figure == "0") return unit == Unit::inch ? "less than 0.001 in" : "less than 0.01 mm";
  return figure + unit_word(unit);
}

std::pair<std::string, std::string> told_apart(double a, double b, Unit unit) {
  std::pair<std::string, std::string> out = {thickness(a, unit), thickness(b, unit)};
  const double one = unit == Unit::inch ? kMmPerInch : 1;
  const auto alike = [&] {
    return out.first == out.second || out.first.starts_with("less") || out.second.starts_with("less");
  };
  for (int decimals = unit == Unit::inch ? 4 : 3; decimals <= 6 && alike(); ++decimals)
    out = {plain(a / one, decimals) + unit_word(unit), plain(b / one, decimals) + unit_word(unit)};
  return out;
}

std::pair<std::string, std::string> about_each(double a, double b, Unit unit) {
  constexpr std::size_t kAbout = std::string_view("about ").size();
  const std::pair<std::string, std::string> out = {about(a, unit), about(b, unit)};
  const auto figure = [](std::string_view text) {
    return text.starts_with("about ") ? text.substr(kAbout) : text;
  };
  return figure(out.first) == figure(out.second) ? told_apart(a, b, unit) : out;
}

std::string no_more_than(double mm, Unit unit) {
  const double step = unit == Unit::inch ? kMmPerInch / 1000 : 0.01;
  return thickness(std::ceil((mm - kSameLength) / step) * step, unit);
}

}  // namespace arrisline
