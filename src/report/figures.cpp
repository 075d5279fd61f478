// Rounding and writing of figures, never through the locale. Shown by tests/report.
#include "report/figures.h"

#include <charconv>
#include <cmath>
#include <numeric>

#include "arrisline/report.h"

namespace arrisline {
namespace {

// Two lengths closer than this print alike: far below any gauge, far above the noise of the arithmetic.
constexpr double kSameLength = 1e-5;
// A quotient this near to a half is a tie: the noise of one division and one product is below 1e-12.
constexpr double kTie = 1e-9;

double round_to_even(double value) {
  const double below = std::floor(value);
  const double over = value - below;
  if (std::fabs(over - 0.5) < kTie) return std::fmod(below, 2.0) == 0 ? below : below + 1;
  return over < 0.5 ? below : below + 1;
}

const char* unit_word(Unit unit) {
  return unit == Unit::inch ? " in" : " mm";
}

// steps / denominator in lowest terms, as a mixed number.
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

// How many divisions go to the inch, or 0 where that is no whole number.
long long divisions_to_the_inch(double division_mm) {
  const double n = kMmPerInch / division_mm;
  const double whole = std::round(n);
  if (whole < 1 || whole > 100000 || std::fabs(n - whole) > 1e-6 * whole) return 0;
  return static_cast<long long>(whole);
}

constexpr double kLargest = 1e12;  // beyond this, steps would not fit a whole number

}  // namespace

std::string plain(double value, int decimals) {
  char buffer[400];
  const auto [end, error] =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  if (error != std::errc()) return "?";
  std::string out(buffer, end);
  if (out.find('.') != std::string::npos) {
    while (out.back() == '0') out.pop_back();
    if (out.back() == '.') out.pop_back();
  }
  return out == "-0" ? "0" : out;
}

double gauge_division(const Shop& shop, Unit unit) {
  if (shop.gauge) return *shop.gauge;
  return unit == Unit::inch ? kMmPerInch / 32 : 0.5;
}

std::string show_length(double mm, Unit unit, double division_mm) {
  const double steps = round_to_even(mm / division_mm);
  if (!(std::fabs(steps) < kLargest)) return plain(unit == Unit::inch ? mm / kMmPerInch : mm, 3);
  if (unit == Unit::mm) return plain(steps * division_mm, 3);
  const long long to_the_inch = divisions_to_the_inch(division_mm);
  if (to_the_inch == 0) return plain(steps * division_mm / kMmPerInch, 3);
  return fraction(steps, to_the_inch);
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

std::string nearest(double mm, Unit unit, double division_mm) {
  return show_length(mm, unit, division_mm) + unit_word(unit);
}

std::string thickness(double mm, Unit unit) {
  if (mm < kSameLength) return "nothing";
  const int decimals = unit == Unit::inch ? 3 : 2;
  const std::string figure = plain(unit == Unit::inch ? mm / kMmPerInch : mm, decimals);
  if (figure == "0") return unit == Unit::inch ? "less than 0.001 in" : "less than 0.01 mm";
  return figure + unit_word(unit);
}

std::string degrees(double value) {
  const std::string figure = plain(value, 1);
  return figure + (figure == "1" ? " degree" : " degrees");
}

std::string share(double part, double whole) {
  return plain(whole > 0 ? 100 * part / whole : 0, 0) + " %";
}

}  // namespace arrisline
