#include "arrisline/sheet.h"
namespace arrisline {
std::string html_sheet(const Plan&, const Kit&, const SheetOptions&) {
  return "";
}
std::string html_sheet(const Job&, const JobPlan&, const SheetOptions&) {
  return "";
}
}  // namespace arrisline
