// Remarks on what was done to a moulding. Shown by tests/cli.
#include "report/reshaped_profile.h"

#include <algorithm>
#include <cmath>

#include "section/one_chain.h"
#include "text/write_profile.h"
#include "wording/figures.h"
#include "wording/length.h"

namespace arrisline {
namespace {

std::string size_words(const Drawing& drawing) {
  const Point size = extent_of(drawing);
  const std::size_t chains = drawing.chains.size();
  return "height " + about(size.y, drawing.unit) + ", projection " + about(size.x, drawing.unit) +
         (chains > 1 ? ", over all of its " + std::to_string(chains) + " chains" : "");
}

/// A line that is no arc, and stands there as arcs already.
bool has_curve(const Drawing& drawing) {
  return std::any_of(drawing.elements.begin(), drawing.elements.end(),
                     [](const Element& element) { return element.name.starts_with("curve"); });
}

std::string change_words(const Change& change, Unit unit) {
  if (change.too_far) return "none of the kit's planes is near; " + change.plane->label + " is the nearest";
  if (change.plane)
    return "radius " + about(change.meant, unit) + " by scale; that of " + change.plane->label;
  return about(change.meant, unit) + " by scale; kept wider";
}

}  // namespace

std::string scaled_profile(const Scaled& scaled, const std::string& from, double fillet, const Kit* kit,
                           const std::vector<std::string>& more) {
  const Unit unit = scaled.drawing.unit;
  std::vector<std::string> remarks;
  remarks.push_back("Scaled from " + from + " by " + plain(scaled.factor, 4) + ": " +
                    size_words(scaled.drawing) + ".");
  if (scaled.plainly) {
    remarks.push_back(
        "The stock is scaled too: the work is not one chain from the face to edge or underside.");
  } else {
    remarks.push_back(
        "The wood behind the moulding stays; the stock is of a usual thickness where it may be.");
    const auto count =
        std::count_if(scaled.changes.begin(), scaled.changes.end(),
                      [](const std::optional<Change>& change) { return change && !change->too_far; });
    if (count == 0) {
      remarks.push_back("Every member is to scale.");
    } else {
      std::string rule = "Not to scale: flats kept at " + about(fillet, unit) + " at least";
      if (kit) rule += ", radii of the kit's planes";
      remarks.push_back(rule + "; a corner lies at most " + show(scaled.greatest, unit, true) +
                        " from where scale alone puts it.");
    }
  }
  remarks.insert(remarks.end(), more.begin(), more.end());
  std::vector<std::string> of_strokes;
  for (const std::optional<Change>& change : scaled.changes)
    of_strokes.push_back(change ? change_words(*change, unit) : "");
  return profile_text(scaled.drawing, remarks, of_strokes);
}

std::string raked_profile(const Raked& raked, const RakeOptions& options, const std::string& from,
                          const std::vector<std::string>& more) {
  const Unit unit = raked.drawing.unit;
  std::vector<std::string> remarks;
  remarks.push_back("Raked from " + from + " for a slope of " + plain(options.slope, 3) +
                    " degrees: " + size_words(raked.drawing) + ".");
  remarks.push_back("It mitres with the level moulding at the " +
                    std::string(options.at == ReturnAt::foot ? "foot" : "head") + ", round a corner of " +
                    plain(options.corner, 3) + " degrees; the face looks " +
                    (options.face == Face::down ? "down." : "up."));
  remarks.push_back(raked.greatest < kSameLength
                        ? "Its members are true."
                        : "Its arcs lie within " + show(raked.greatest, unit, true) + " of the true curves" +
                              (has_curve(raked.drawing)
                                   ? ", those for a 'curve' of the arcs that the level one has for it."
                                   : "."));
  if (raked.step > kSameLength)
    remarks.push_back("The first member would rise over the face: a step of " + about(raked.step, unit) +
                      " comes before it.");
  remarks.insert(remarks.end(), more.begin(), more.end());
  return profile_text(raked.drawing, remarks);
}

}  // namespace arrisline
