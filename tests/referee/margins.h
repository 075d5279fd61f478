// How near to a limit the judge does not decide, and words for its findings.
#pragma once

#include <cmath>
#include <cstdio>
#include <string>

namespace arrisline::referee {

// Margins: within these of a limit the judge does not decide. Each is a few times what product and judge may
// measure apart (0.0005 mm chord error, 0.002 mm inside a groove), and no more than a tenth of the limit.
inline constexpr double kDepthMargin = 0.001;
inline constexpr double kHeightMargin = 0.003;
inline constexpr double kStatedHeightMargin = 0.001;
inline constexpr double kAreaMargin = 0.005;
inline constexpr double kNothingMargin = 0.002;
inline constexpr double kImbalanceMargin = 0.002;
inline constexpr double kDegreesMargin = 0.5;
inline constexpr double kShareMargin = 0.03;
inline constexpr double kPlaceMargin = 0.001;
// Figures exactly at a limit are within it, but for rounding.
inline constexpr double kRounding = 1e-6;

inline std::string shown(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.5g", value);
  return text;
}

inline std::string of_cut(std::size_t cut, const char* what) {
  return "cut " + std::to_string(cut + 1) + ": " + what;
}

inline double degrees_between(double a, double b) {
  return std::abs(std::remainder(a - b, 360));
}

}  // namespace arrisline::referee
