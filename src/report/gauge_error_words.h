// What the cut list says of a gauge that is set a little wrong.
#pragma once

#include "arrisline/slips.h"
#include "report/cut_words.h"
#include "report/page.h"

namespace arrisline {

void write_gauge_error(Page& page, const Plan& plan, const GaugeError& error, const CutContext& context);

}  // namespace arrisline
