// What the maker reads: the cut list and the answers of `check`.
#pragma once

#include <string>
#include <vector>

#include "arrisline/plan.h"

namespace arrisline {

struct ReportOptions {
  Unit unit = Unit::inch;
  bool colour = false;
  double tolerance = 0.2;
  double scrape = 0.4;
};

/// The numbered cut list, at most 80 columns wide.
std::string cut_list(const Plan& plan, const Kit& kit, const ReportOptions& options);

/// A length as the maker reads it: a fraction in lowest terms at `division` ("1 3/8") or decimal mm ("9.5"),
/// rounded to the nearest.
std::string show_length(double mm, Unit unit, double division_mm);

}  // namespace arrisline
