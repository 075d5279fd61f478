// Remarks on what was traced, and one against each element. Shown by tests/cli.
#include "report/traced_profile.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "section/drawing_of.h"
#include "section/nearest_plane.h"
#include "text/write_profile.h"
#include "wording/figures.h"

namespace arrisline {
namespace {

/// "within 0.02 mm", rounded up, so that it holds; or "within less than 0.01 mm".
std::string within(double mm, Unit unit) {
  const std::string least = thickness(mm, unit);
  return "within " + (least.starts_with("less") ? least : no_more_than(mm, unit));
}

double in_unit(double mm, Unit unit) {
  return unit == Unit::inch ? mm / kMmPerInch : mm;
}

std::string on_radius(const FitOfElement& fit, const Stroke& stroke, const TracedFrom& from) {
  if (stroke.turn == Turn::straight) return "";
  std::string out;
  if (from.kit) {
    const PlaneKind kind = stroke.turn == Turn::right ? PlaneKind::hollow : PlaneKind::round;
    const char* const word = kind == PlaneKind::hollow ? "hollow" : "round";
    const Plane* plane = nearest_plane(*from.kit, kind, stroke.radius);
    if (!plane) {
      out = std::string("; the kit has no ") + word;
    } else if (std::abs(plane->radius - stroke.radius) < 1e-6) {
      out = "; the radius of " + plane->label;
    } else {
      out = "; no " + std::string(word) + " of the kit fits, the nearest is " + plane->label + ", " +
            exact(plane->radius, from.unit);
    }
  }
  if (fit.free_radius && std::abs(*fit.free_radius - stroke.radius) > 0.01) {
    out += "; radius " + plain(in_unit(*fit.free_radius, from.unit), from.unit == Unit::inch ? 3 : 2);
    out += unit_word(from.unit);
    out += fit.free_greatest >= fit.greatest ? " would be no nearer"
           : fit.free_greatest < kSameLength
               ? ", by itself, would be on the tracing"
               : ", by itself, would be " + within(fit.free_greatest, from.unit);
  }
  return out;
}

std::vector<std::string> remarks(const FittedProfile& fitted, const TracedFrom& from) {
  std::size_t points = 0;
  double farthest = 0;
  for (const FitOfElement& fit : fitted.fits) {
    points += fit.points;
    farthest = std::max(farthest, fit.farthest);
  }
  std::vector<std::string> out;
  out.push_back("Traced from " + from.file + ", tolerance " + thickness(from.tolerance, from.unit) +
                "; beside each element how near it lies" + (fitted.scatter > 0 ? ", scatter apart." : "."));
  if (!from.unit_remark.empty()) out.push_back(from.unit_remark);
  if (fitted.scatter > 0) {
    std::string line = std::to_string(points) + " points, which scatter by " +
                       thickness(fitted.scatter, from.unit) + " about the line";
    if (farthest > fitted.scatter)
      line += "; the farthest lies " + thickness(farthest, from.unit) + " from it";
    out.push_back(line + ".");
  }
  if (fitted.step > 0)
    out.push_back("Its figures go in steps of " + plain(in_unit(fitted.step, from.unit), 4) +
                  unit_word(from.unit) + ": what that rounds off is reckoned as scatter" +
                  (fitted.step / 2 > from.tolerance ? ", and half a step is the tolerance." : "."));
  if (fitted.joined > 0)
    out.push_back(std::to_string(fitted.joined) +
                  " points, too few to tell how they scatter: taken for corners, and joined straight.");
  for (const Point stray : fitted.strays)
    out.push_back("Left out: the point " + plain(stray.x, 4) + ", " + plain(stray.y, 4) +
                  " as the file has it, which lies alone beside the line.");
  if (fitted.put_in_order) out.push_back("Its points stood in no order along the line, and were put in one.");
  for (const Cleft& cleft : fitted.unclear)
    out.push_back("Not sure: the cleft " + thickness(cleft.at.x, from.unit) + " from the working edge and " +
                  thickness(cleft.at.y, from.unit) +
                  " from the face, too narrow to tell its sides apart by points in no order; trace them "
                  "there one after the other along the line.");
  if (std::abs(fitted.turned) > 0.05)
    out.push_back("The tracing lay " + plain(std::abs(fitted.turned), 1) + " degrees askew.");
  if (fitted.mirrored) out.push_back("Its working edge was at the right.");
  if (fitted.may_be_mirrored)
    out.push_back("Its working edge was taken to be at the left; if it is at the right: --edge right.");
  if (!fitted.traced_width || !fitted.traced_thickness) {
    const char* const which = fitted.traced_width       ? "how thick the stock is"
                              : fitted.traced_thickness ? "how wide the stock is"
                                                        : "how wide and thick the stock is";
    out.push_back(std::string("It does not show ") + which + ": see to the line 'stock'.");
  }
  return out;
}

}  // namespace

std::string traced_profile(const FittedProfile& fitted, const TracedFrom& from) {
  std::vector<int> sources;
  Drawing drawing = drawing_of(fitted.section, from.unit, &sources);
  std::vector<std::optional<FitOfElement>> fit_of(sources.size());
  for (std::size_t i = 0; i < sources.size(); ++i) {
    for (const FitOfElement& fit : fitted.fits)
      if (fit.element == sources[i]) fit_of[i] = fit;
  }
  std::size_t index = 0;
  std::vector<std::string> of_elements;
  for (const DrawnChain& chain : drawing.chains) {
    for (const Stroke& stroke : chain.strokes) {
      std::string remark;
      if (const std::optional<FitOfElement>& fit = fit_of[index++]) {
        remark = fit->points == 0              ? "not traced: it bridges a gap"
                 : fit->greatest < kSameLength ? "on the tracing"
                                               : within(fit->greatest, from.unit);
        if (fit->points > 0) remark += on_radius(*fit, stroke, from);
      }
      of_elements.push_back(remark);
    }
  }
  return profile_text(drawing, remarks(fitted, from), of_elements);
}

}  // namespace arrisline
