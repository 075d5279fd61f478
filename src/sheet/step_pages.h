// The pages with a picture of each cut, and those with the list.
#pragma once

#include <vector>

#include "arrisline/plan.h"
#include "report/listing.h"
#include "sheet/pages.h"

namespace arrisline {

/// Pictures two across, each over what the list says of its cut; where that is long, its first sentences.
/// REQUIRES: a plan with cuts, and its own listing.
void write_steps(Pages& pages, const Plan& plan, const Listing& listing, Unit unit);

/// The whole list, each cut on one page.
void write_list(Pages& pages, const Listing& listing);

}  // namespace arrisline
