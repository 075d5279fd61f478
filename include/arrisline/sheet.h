// Pictures a maker can work from: sheets as SVG, PDF and HTML, and the section drawn with characters.
#pragma once

#include <string>

#include "arrisline/job_plan.h"
#include "arrisline/report.h"

namespace arrisline {

enum class Paper { a4, letter };

struct SheetOptions {
  ReportOptions report;  // its colour is not minded
  Paper paper = Paper::a4;
  const GaugeError* gauge_error = nullptr;  // of a plan, where it is to be told
};

/// One SVG 1.1 document in mm: the section with its dimensions, then a picture of each cut. Arcs are arcs.
/// Names from files are escaped and their control bytes made visible. The same input gives the same bytes.
std::string svg_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options);
std::string svg_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options);

/// A PDF of A4 or Letter pages: the section at true size, with rules to check the printer by; a picture of
/// each cut; the list. A section larger than a page goes over several, with marks to join them at. The same
/// input gives the same bytes with the same fonts and the same Cairo; the date is that of SOURCE_DATE_EPOCH,
/// or else always one and the same. Throws std::runtime_error where Cairo fails.
std::string pdf_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options);
std::string pdf_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options);

/// One HTML file that needs nothing else: pictures beside the list, stepped through by buttons, keys or a
/// swipe; without scripts all of them are shown.
std::string html_sheet(const Plan& plan, const Kit& kit, const SheetOptions& options);
std::string html_sheet(const Job& job, const JobPlan& plan, const SheetOptions& options);

struct CharacterOptions {
  bool ascii = false;        // else Unicode
  bool steps = false;        // a picture of each cut too
  std::size_t columns = 80;  // no line of a picture is wider; at least 40
  Unit unit = Unit::inch;    // of the rule beside it
};

/// The section of a plan drawn with characters, words before it and a key after it: the wood that stays, the
/// waste, and the finished line between them, told apart without colour.
std::string drawn_in_characters(const Plan& plan, const CharacterOptions& options);

}  // namespace arrisline
