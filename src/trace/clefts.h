// Where a line comes back close beside itself.
#pragma once

#include <vector>

#include "arrisline/trace.h"

namespace arrisline {

/// The places where the worked line of a section comes within `gap` of itself, after a way more than three
/// times as long: each where it does so for the first time in a run of such places, at its narrowest.
std::vector<Cleft> clefts_of(const Section& section, double gap);

}  // namespace arrisline
