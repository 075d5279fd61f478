// What a kit makes, as a list with pictures.
#pragma once

#include <string>
#include <vector>

#include "arrisline/reach.h"
#include "arrisline/report.h"

namespace arrisline {

/// Each moulding: its size, how many cuts with which planes. `pictures` has one for each, lines of
/// characters. At most 80 columns wide. The stock is `width` wide and `thickness` thick, in mm.
std::string reach_list(const std::vector<Made>& made, const std::vector<std::vector<std::string>>& pictures,
                       const Kit& kit, double width, double thickness, const ReportOptions& options);

/// Each plane to add and how many mouldings it brings, the first few by name.
std::string additions_list(const std::vector<Addition>& additions, const ReportOptions& options);

/// Both as one JSON object; `planes` only where they were asked for.
std::string reach_json(const std::vector<Made>& made, const std::vector<Addition>* planes);

}  // namespace arrisline
