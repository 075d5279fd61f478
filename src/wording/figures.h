// Lengths as a maker reads them, for every layer that words something. They come in mm; the unit is part of
// what is shown ("3/8 in", "9.5 mm").
#pragma once

#include <string>
#include <utility>

#include "arrisline/length.h"

namespace arrisline {

/// Two lengths closer than this print alike: far below any gauge, far above the noise of the arithmetic.
inline constexpr double kSameLength = 1e-5;

const char* unit_word(Unit unit);
/// steps / denominator in lowest terms, as a mixed number. REQUIRES: steps whole, under 1e12.
std::string fraction(double steps, long long denominator);
/// A number with so many places, trailing zeros kept.
std::string fixed(double value, int decimals);
/// A plain number with at most `decimals` places, trailing zeros dropped.
std::string plain(double value, int decimals);
/// A figure that is already round, shown without rounding it further: a fraction with the least denominator
/// up to 128, else three decimals of an inch; or up to three decimals of a millimetre.
std::string exact(double mm, Unit unit);
/// A figure that came out of a drawing: as exact() where it is a fraction of an inch up to 1/64 or whole
/// hundredths of a millimetre; "about 19/64 in" within 0.06 mm of such a fraction; else decimals.
std::string about(double mm, Unit unit);
/// A thickness of wood: thousandths of an inch or hundredths of a millimetre; "nothing" for 0.
std::string thickness(double mm, Unit unit);
/// Two thicknesses, or lengths up to 1e-6 in, with as many more decimals as it takes to tell them apart.
std::pair<std::string, std::string> told_apart(double a, double b, Unit unit);
/// Two lengths as about() tells them; where these would be one division, or about it, in decimals.
std::pair<std::string, std::string> about_each(double a, double b, Unit unit);
/// A thickness, rounded up: what lies no farther than that.
std::string no_more_than(double mm, Unit unit);

}  // namespace arrisline
