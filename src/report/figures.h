// Figures as a maker reads them. Lengths come in mm; the unit is part of what is shown ("3/8 in", "9.5 mm").
#pragma once

#include <string>

#include "arrisline/kit.h"

namespace arrisline {

/// The smallest division printed: the shop's gauge, else 1/32 in or 0.5 mm.
double gauge_division(const Shop& shop, Unit unit);

/// A figure that is already round, shown without rounding it further: a fraction with the least denominator
/// up to 128, else three decimals of an inch; or up to three decimals of a millimetre.
std::string exact(double mm, Unit unit);
/// To the nearest division.
std::string nearest(double mm, Unit unit, double division_mm);
/// A thickness of wood: thousandths of an inch or hundredths of a millimetre; "nothing" for 0.
std::string thickness(double mm, Unit unit);
/// "22.5 degrees": tenths, without a trailing zero.
std::string degrees(double value);
/// A plain number with at most `decimals` places, trailing zeros dropped.
std::string plain(double value, int decimals);
/// The whole per cent nearest to part / whole: "86 %"; "0 %" where whole is 0.
std::string share(double part, double whole);

}  // namespace arrisline
