// The section at any scale with its dimensions: fillets, levels, radii and centres.
#pragma once

#include "arrisline/plan.h"
#include "sheet/drawing.h"

namespace arrisline {

/// The whole section with the finished line, levels from the edge and from the face where each of its corners
/// and ends of arcs lies, radii, and crosses at the centres of arcs. As wide and as high as it needs at this
/// scale (paper over wood). No label overlaps another; a section of
/// more than some 200 corners has only its size told.
Picture dimensioned_picture(const Section& section, Unit unit, double scale);

}  // namespace arrisline
