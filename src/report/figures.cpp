// Rounding and writing of figures, never through the locale. Shown by tests/report.
#include "report/figures.h"

#include <cmath>

#include "arrisline/report.h"

namespace arrisline {
namespace {

// A quotient this near to a half is a tie: the noise of one division and one product is below 1e-12.
constexpr double kTie = 1e-9;

double round_to_even(double value) {
  const double below = std::floor(value);
  const double over = value - below;
  if (std::fabs(over - 0.5) < kTie) return std::fmod(below, 2.0) == 0 ? below : below + 1;
  return over < 0.5 ? below : below + 1;
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

std::string nearest(double mm, Unit unit, double division_mm) {
  return show_length(mm, unit, division_mm) + unit_word(unit);
}

std::string degrees(double value) {
  const std::string figure = plain(value, 1);
  return figure + (figure == "1" ? " degree" : " degrees");
}

std::string share(double part, double whole) {
  return plain(whole > 0 ? 100 * part / whole : 0, 0) + " %";
}

}  // namespace arrisline
