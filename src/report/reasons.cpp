// Reasons and remedies as sentences. Shown by tests/report/cut_list_test.cpp and the goldens.
#include "report/reasons.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "report/cut_words.h"
#include "report/figures.h"

namespace arrisline {
namespace {

std::string element_name(const Section& section, int index) {
  const bool known = index >= 0 && static_cast<std::size_t>(index) < section.elements.size();
  return known ? shorten(describe(section.elements[static_cast<std::size_t>(index)]), 80) : "the whole";
}

std::string plane_words(const Plane& plane, Unit unit) {
  switch (plane.kind) {
    case PlaneKind::scraper:
      return "a scraper";
    case PlaneKind::plough:
      return "a plough iron " + about(plane.width, unit) + " wide";
    case PlaneKind::hollow:
    case PlaneKind::round:
      break;
    default:
      return std::string("a ") + word(plane.kind) + " plane " + about(plane.width, unit) + " wide";
  }
  std::string out = std::string("a ") + word(plane.kind);
  if (plane.number) out += " " + std::to_string(*plane.number);
  return out + " of radius " + about(plane.radius, unit) + " with a sole " + about(plane.width, unit) +
         " wide";
}

// Millimetres in every kit, since that is how small differences are felt; inches beside them.
std::string departure_words(double mm, Unit unit) {
  std::string out = thickness(mm, Unit::mm);
  if (unit == Unit::inch && mm >= 0.0254) out += " (" + thickness(mm, unit) + ")";
  return out;
}

// "element 1 (ogee)" where both arcs of one statement are drawn anew; otherwise each by its name.
std::string redrawn_names(const Section& section, const std::vector<const Remedy::Redrawn*>& arcs) {
  const Element& first = section.elements[static_cast<std::size_t>(arcs.front()->element)];
  const bool one_statement =
      arcs.size() > 1 && std::all_of(arcs.begin(), arcs.end(), [&](const Remedy::Redrawn* r) {
        const Element& e = section.elements[static_cast<std::size_t>(r->element)];
        return e.number == first.number && e.chain == first.chain && e.line == first.line;
      });
  if (one_statement) {
    Element whole = first;
    whole.name = whole.name.substr(0, whole.name.find(" ("));
    return shorten(describe(whole), 80);
  }
  std::vector<std::string> names;
  for (const Remedy::Redrawn* r : arcs) names.push_back(element_name(section, r->element));
  return listed(names);
}

std::string redraw_words(const Section& section, const Remedy& remedy, Unit unit) {
  // Elements of one radius together, in the order of the list.
  std::vector<std::vector<const Remedy::Redrawn*>> by_radius;
  for (const Remedy::Redrawn& one : remedy.redraw) {
    const auto same = std::find_if(by_radius.begin(), by_radius.end(), [&](const auto& group) {
      return std::fabs(group.front()->radius - one.radius) < kSameLength;
    });
    if (same == by_radius.end()) {
      by_radius.push_back({&one});
    } else {
      same->push_back(&one);
    }
  }
  std::vector<std::string> parts;
  for (const auto& group : by_radius)
    parts.push_back(redrawn_names(section, group) + " with a radius of " +
                    about(group.front()->radius, unit));
  return "draw " + listed(parts) + ", the ends where they are; the line then lies " +
         departure_words(remedy.departure, unit) + " from the drawing at most";
}

std::string remedy_words(const Section& section, const Remedy& remedy, Unit unit) {
  if (!remedy.add.empty()) {
    std::vector<std::string> planes;
    for (const Plane& plane : remedy.add) planes.push_back(plane_words(plane, unit));
    return "add " + listed(planes);
  }
  if (!remedy.redraw.empty()) return redraw_words(section, remedy, unit);
  if (remedy.tolerance)
    return "allow " + thickness(*remedy.tolerance, unit) +
           " of wood above the finished line (plan --tolerance)";
  return "leave the scraper up to " + thickness(remedy.scrape.value_or(0), unit) + " (plan --scrape)";
}

}  // namespace

void write_reasons(Page& page, const Plan& plan, const ReportOptions& options) {
  // The two walls of a quirk have one name, and one thing is said of both.
  std::set<std::string> said;
  for (const Reason& reason : plan.reasons) {
    const std::string line =
        capital(element_name(plan.section, reason.element)) + ": " + visible(reason.why) + ".";
    if (said.insert(line).second) page.line(5, line);
  }
  if (plan.undecided) return;
  if (plan.remedies.empty() && plan.remedies_left_off) {
    page.line(5,
              "The search for remedies was left off before it found one or had tried everything; give a "
              "longer --limit.");
    return;
  }
  if (plan.remedies.empty()) {
    page.line(5,
              "No remedy found: none of the planes to add, radii of the kit and tolerances that were tried "
              "led to a plan; draw this part in another way.");
    return;
  }
  page.line(5, "What would do, each by itself:");
  for (const Remedy& remedy : plan.remedies)
    page.item(7, "- ", capital(remedy_words(plan.section, remedy, options.unit)) + ".");
  if (plan.remedies_left_off)
    page.line(5, "The search for remedies was left off before everything was tried; give a longer --limit.");
}

}  // namespace arrisline
