// Worst of each element, the settings by what they do, and whether each hollow and round still rides. Shown
// by tests/report/gauge_error_test.cpp.
#include "report/gauge_error_words.h"

#include <algorithm>
#include <cmath>

#include "report/figures.h"

namespace arrisline {
namespace {

constexpr double kSameFigure = 1e-6;  // mm

std::string element_words(const Section& section, int element) {
  const auto index = static_cast<std::size_t>(element);
  if (element < 0 || index >= section.elements.size()) return "an element";
  return shorten(describe(section.elements[index]), 60);
}

/// Too little to be worth a word.
bool slight(double mm, Unit unit) {
  const std::string words = thickness(mm, unit);
  return words == "nothing" || words.rfind("less", 0) == 0;
}

std::string most(double mm, Unit unit) {
  return (slight(mm, unit) ? "" : "up to ") + thickness(mm, unit);
}

const Cut* cut_numbered(const Plan& plan, int number) {
  const auto found =
      std::find_if(plan.cuts.begin(), plan.cuts.end(), [&](const Cut& cut) { return cut.number == number; });
  return found == plan.cuts.end() ? nullptr : &*found;
}

/// "Line A, 3/8 in from the edge, in cut 1": by the letters of the list of lines.
std::string setting_words(const Plan& plan, const SettingOff& setting, const CutContext& context) {
  std::vector<std::string> letters, cuts;
  for (const int number : setting.cuts) {
    cuts.push_back(std::to_string(number));
    const Cut* cut = cut_numbered(plan, number);
    if (cut == nullptr) continue;
    for (const GaugeLine& line : cut->lines) {
      if (line.from != setting.from || std::fabs(line.at - setting.at) >= kSameFigure) continue;
      const std::string letter = line_letter(find_line(context.lines, *cut, line));
      if (std::find(letters.begin(), letters.end(), letter) == letters.end()) letters.push_back(letter);
    }
  }
  return (letters.size() > 1 ? "Lines " : "Line ") + listed(letters) + ", " +
         exact(setting.set, context.unit) + " from the " + word(setting.from) +
         (cuts.size() > 1 ? ", in cuts " : ", in cut ") + listed(cuts);
}

std::string does_alone(const Plan& plan, const SettingOff& setting, const CutContext& context) {
  std::vector<std::string> parts;
  const std::string more = thickness(setting.moves, context.unit);
  if (setting.element >= 0 && !slight(setting.moves, context.unit))
    parts.push_back((setting.lost ? "takes " + more + " too much off " : "leaves " + more + " more on ") +
                    element_words(plan.section, setting.element));
  if (!setting.loses.empty()) {
    std::vector<std::string> cuts;
    for (const int number : setting.loses) cuts.push_back(std::to_string(number));
    parts.push_back(std::string("takes an arris from ") + (cuts.size() > 1 ? "cuts " : "cut ") +
                    listed(cuts));
  } else if (!slight(setting.aside, context.unit)) {
    parts.push_back("sets a plane down " + thickness(setting.aside, context.unit) + " beside its place");
  }
  if (parts.empty()) return ": that alone does nothing to speak of.";
  return ": that alone " + listed(parts) + ".";
}

std::string ride_words(const Plan& plan, const RideOff& ride, Unit unit) {
  const Cut* cut = cut_numbered(plan, ride.cut);
  const std::string lead =
      "Cut " + std::to_string(ride.cut) + (cut == nullptr ? "" : ", " + shorten(cut->plane.label, 60)) + ": ";
  if (ride.rail_lost)
    return lead +
           "at worst one of its arrises stands too low to bear. Try the plane, and ease the other till it "
           "bears on both.";
  return lead + "still rides on both arrises, at worst " + plain(100 * ride.imbalance, 0) +
         " % of the sole's width off centre" +
         (slight(ride.aside, unit)
              ? "."
              : " and set down " + thickness(ride.aside, unit) + " beside where it is drawn.");
}

}  // namespace

void write_gauge_error(Page& page, const Plan& plan, const GaugeError& error, const CutContext& context) {
  page.heading("If each gauge setting is off by " + exact(error.error, context.unit));
  if (error.settings.empty()) {
    page.line(2, "Nothing: no cut is laid out with the gauge.");
    return;
  }
  page.line(
      2, error.every_sign
             ? "Every setting too much or too little, as is worst for each element, beside the lines as set."
             : "Every setting too much or too little, beside the lines as set; the worst for each "
               "element was looked for, since there are too many combinations to try them all.");
  const bool curved =
      std::any_of(plan.cuts.begin(), plan.cuts.end(), [](const Cut& cut) { return cut.plane.is_curved(); });
  if (curved)
    page.line(
        2,
        "Hollows and rounds are brought down to the drawn arc by eye; what a flat sole took below it is "
        "gone.");
  for (const ElementOff& off : error.elements) {
    std::string lead = element_words(plan.section, off.element);
    if (lead.front() == 'e') lead.front() = 'E';
    page.line(2, lead + ": " + most(off.lost, context.unit) + " lost below the line, " +
                     most(off.left, context.unit) + " left above it.");
  }
  page.blank();
  page.line(2, "Where care pays, the most first:");
  for (std::size_t i = 0; i < error.settings.size(); ++i) {
    const SettingOff& setting = error.settings[i];
    page.item(2, number_lead(i + 1),
              setting_words(plan, setting, context) + does_alone(plan, setting, context));
  }
  if (!error.rides.empty()) page.blank();
  for (const RideOff& ride : error.rides) page.line(2, ride_words(plan, ride, context.unit));
}

}  // namespace arrisline
