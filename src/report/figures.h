// Figures of a report besides the lengths that every layer writes (wording/figures.h).
#pragma once

#include <string>

#include "arrisline/kit.h"
#include "wording/figures.h"

namespace arrisline {

/// The smallest division printed: the shop's gauge, else 1/32 in or 0.5 mm.
double gauge_division(const Shop& shop, Unit unit);

/// To the nearest division.
std::string nearest(double mm, Unit unit, double division_mm);
/// "22.5 degrees": tenths, without a trailing zero.
std::string degrees(double value);
/// The whole per cent nearest to part / whole: "86 %"; "0 %" where whole is 0.
std::string share(double part, double whole);

}  // namespace arrisline
