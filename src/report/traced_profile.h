// A traced section as a profile file that says how well each element follows the tracing.
#pragma once

#include <string>

#include "arrisline/kit.h"
#include "arrisline/trace.h"

namespace arrisline {

struct TracedFrom {
  std::string file;          // its name, as it may be shown
  std::string unit_remark;   // how its figures were read, where the file does not say; a sentence, or empty
  double tolerance = 0;      // mm
  const Kit* kit = nullptr;  // whose radii were preferred; none where not given
  Unit unit = Unit::inch;    // of the profile
};

/// The text of the profile: what is known of the tracing as remarks, and against each element how far it lies
/// from the tracing, and what a plane's radius costs. It reads back as the section.
std::string traced_profile(const FittedProfile& fitted, const TracedFrom& from);

}  // namespace arrisline
