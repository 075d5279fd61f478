// What is left above the target when the planes have done.
#pragma once

#include "replay/depth.h"
#include "replay/flattened.h"
#include "replay/standing.h"

namespace arrisline::replaying {

/// The greatest distance from wood that is left above the target to the nearest point of the target. `left`
/// is the same wood flattened; `target` an outline with its interior to the left.
Depth thickest_left(const Standing& wood, const Loop& target, const ClipperLib::Paths& left);

}  // namespace arrisline::replaying
