// Whether the statements of a job fit together.
#pragma once

#include <optional>
#include <vector>

#include "text/job_lines.h"

namespace arrisline {

/// The moulding with its section on the ripped width, or nothing where that cannot be; `profile` is the
/// section as its file has it.
std::optional<Mould> settle_mould(const MouldText& text, const Section& profile, const SawText& saw,
                                  Unit unit, Mistakes& mistakes);

/// Every moulding can come out of some blank, by itself, and a length to set up by out of one of those.
/// Stocks that serve none are warned of.
void check_blanks(const Job& job, const std::vector<MouldText>& texts, const std::vector<StockText>& stocks,
                  const std::optional<SpareText>& spare, Mistakes& mistakes);

}  // namespace arrisline
