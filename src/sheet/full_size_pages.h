// The pages with the section at true size.
#pragma once

#include "arrisline/plan.h"
#include "sheet/pages.h"

namespace arrisline {

/// The section at scale 1 with its dimensions, rules to check the printer by, cautions; where there is room
/// the section drawn larger. A section for which a page is too small is shown small, with the parts that it
/// is in, and goes over as many pages as it takes.
void write_full_size(Pages& pages, const Plan& plan, const Kit& kit, Unit unit, bool sawing);

/// A rule 100 mm long above one of 4 in, with their figures.
Picture rules_picture();

}  // namespace arrisline
