// The cut list in parts, for pages of any kind.
#pragma once

#include <vector>

#include "arrisline/report.h"
#include "report/page.h"

namespace arrisline {

struct Listing {
  std::vector<Block> before;             // stock, planes, lines to strike; of a plan that is not feasible all
  std::vector<std::vector<Block>> cuts;  // what is said of each cut
  std::vector<Block> after;              // what is left, effort, notes, cautions
};

/// What cut_list() says. Texts are visible() and may be of any width.
Listing listing_of(const Plan& plan, const Kit& kit, const ReportOptions& options,
                   const GaugeError* gauge_error = nullptr);

}  // namespace arrisline
