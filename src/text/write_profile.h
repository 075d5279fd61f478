// A drawing as the text of a profile file.
#pragma once

#include <string>
#include <vector>

#include "section/drawing.h"

namespace arrisline {

/// The text of a profile that reads back as this drawing: every length within 1e-6 mm where it is no fraction
/// of an inch up to 1/64 (or whole hundredths of a millimetre), exactly where it is; each chain ends on the
/// outline. `remarks` come first, as comment lines; `of_strokes`, where given, has one to stand against each
/// stroke, chain by chain, or an empty one. Only plain elements are written (step, fillet, bevel,
/// bead, cove), one for each stroke.
std::string profile_text(const Drawing& drawing, const std::vector<std::string>& remarks = {},
                         const std::vector<std::string>& of_strokes = {});

}  // namespace arrisline
