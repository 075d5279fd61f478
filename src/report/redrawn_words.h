// What a redrawn profile has other than the drawing, in words.
#pragma once

#include <string>

#include "arrisline/report.h"
#include "arrisline/substitute.h"

namespace arrisline {

/// That the drawing cannot be cut, what is drawn otherwise, and how far the lines lie apart; to stand above
/// the cut list of the redrawn profile. REQUIRES: one was found.
std::string redrawn_words(const Section& drawn, const Redrawing& redrawing, const ReportOptions& options);

/// That none was found, or that the search was left off before one was.
std::string none_redrawn_words(double allow, bool left_off, const ReportOptions& options);

/// That none was looked for, the search having been left off before it was sure of a no.
std::string not_redrawn_words(const ReportOptions& options);

}  // namespace arrisline
