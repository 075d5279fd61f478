// A fitted line on its blank.
#pragma once

#include <optional>
#include <string>

#include "arrisline/trace.h"
#include "trace/chain.h"
#include "trace/ends.h"
#include "trace/snap.h"

namespace arrisline {

/// Why no section comes of a line.
struct NoSection {
  std::string why;
  bool of_the_fit = false;  // it is these flats and arcs that will not do: others may
};

/// The section whose worked part is this line. The line lies as lay() has left it: an open one runs from the
/// face to the working edge, the underside or back to the face, any of which may be part of it. `out` is
/// given back with section and fits. `drawn`: it is not of measured points.
std::optional<FittedProfile> to_section(Samples samples, Fitted fitted, Reached reached,
                                        const SnapOptions& snapping, const FitOptions& options,
                                        const Allowed& allowed, bool drawn, FittedProfile out, NoSection& no);

}  // namespace arrisline
