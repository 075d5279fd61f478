// Shown by tests/cli/plan_allow*.golden.
#include "report/redrawn_words.h"

#include "report/page.h"
#include "report/plain.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

const char* word(const Redrawn& change) {
  switch (change.what) {
    case Redrawn::What::start:
      return "starts at";
    case Redrawn::What::radius:
      return "radius";
    case Redrawn::What::across:
      return change.back ? "in" : "out";
    case Redrawn::What::down:
      return change.back ? "up" : "down";
  }
  return "";
}

}  // namespace

std::string redrawn_words(const Section& drawn, const Redrawing& redrawing, const ReportOptions& options) {
  const Substitute& substitute = *redrawing.nearest;
  Page page;
  page.heading("Redrawn");
  page.line(
      2, "These planes cannot cut the profile as it is drawn. The nearest found that they can lies at most " +
             no_more_than(substitute.departure, options.unit) + " from the drawn line. Other than drawn:");
  for (std::size_t i = 0; i < substitute.changes.size(); ++i) {
    const Redrawn& change = substitute.changes[i];
    if (i > 0 && substitute.changes[i - 1].element == change.element) continue;
    std::string text = capital(describe(drawn.elements[static_cast<std::size_t>(change.element)])) + ":";
    for (std::size_t k = i; k < substitute.changes.size() && substitute.changes[k].element == change.element;
         ++k) {
      const Redrawn& one = substitute.changes[k];
      const auto [now, drawn_as] = about_each(one.now, one.drawn, options.unit);
      text += std::string(k > i ? ", " : " ") + word(one) + " " + now + ", drawn " + drawn_as;
    }
    page.item(4, "- ", text + ".");
  }
  if (redrawing.left_off)
    page.line(2,
              "The search was left off before everything was tried; with a longer --limit one may be found "
              "that lies nearer.");
  page.line(2, "The cut list is that of the redrawn profile; plan --redrawn FILE keeps it.");
  return laid_out(page.take(), options.plain, options.colour) + (options.plain ? "" : "\n");
}

std::string none_redrawn_words(double allow, bool left_off, const ReportOptions& options) {
  Page page;
  if (left_off) {
    page.line(5,
              "The search for a profile within " + thickness(allow, options.unit) +
                  " of the drawing that they can was left off before it found one; give a longer --limit.");
    return laid_out(page.take(), options.plain, false);
  }
  page.line(5, "Nor is any profile found within " + thickness(allow, options.unit) +
                   " of the drawing that they can.");
  return laid_out(page.take(), options.plain, false);
}

std::string not_redrawn_words(const ReportOptions& options) {
  Page page;
  page.line(5, "No redrawing was looked for, since it may go as it is drawn.");
  return laid_out(page.take(), options.plain, false);
}

}  // namespace arrisline
