// Why a profile cannot be cut, in words.
#pragma once

#include <string>
#include <vector>

#include "arrisline/report.h"
#include "report/page.h"

namespace arrisline {

/// Writes each reason, and then what would do.
void write_reasons(Page& page, const Plan& plan, const ReportOptions& options);

/// How a plan's profile is called on the page: its name, or "this profile".
std::string profile_name(const Plan& plan);

}  // namespace arrisline
