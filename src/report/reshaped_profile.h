// A moulding made larger or smaller, or for a slope, as a profile file that says what was changed.
#pragma once

#include <string>
#include <vector>

#include "section/reshaped.h"

namespace arrisline {

/// The text of the profile, with the factor, the greatest departure from plain scaling, and against each
/// stroke that departs what was meant. `kit` names the planes whose radii were taken, where any were.
/// `more` are remarks besides.
std::string scaled_profile(const Scaled& scaled, const std::string& from, double fillet, const Kit* kit,
                           const std::vector<std::string>& more = {});

/// The text of the raked profile, with what it mitres with and how near its arcs lie. `more` are remarks
/// besides.
std::string raked_profile(const Raked& raked, const RakeOptions& options, const std::string& from,
                          const std::vector<std::string>& more);

}  // namespace arrisline
