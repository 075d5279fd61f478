// Which lines to strike, and on which side. Shown by tests/report.
#include "report/gauge_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {
namespace {

constexpr double kSameLine = 1e-6;  // mm; lines are printed alike far above this
constexpr double kInside = 1e-3;    // mm: a hair inside the wood
constexpr double kStep = 0.02;      // mm in which the wood is looked for
constexpr double kSameTilt = 1e-6;  // degrees

bool is_across(Side side) {
  return side == Side::edge || side == Side::back;
}

Side opposite(Side side) {
  switch (side) {
    case Side::face:
      return Side::underside;
    case Side::underside:
      return Side::face;
    case Side::edge:
      return Side::back;
    case Side::back:
      return Side::edge;
  }
  return side;
}

Point inward(Side on) {
  switch (on) {
    case Side::face:
      return {0, 1};
    case Side::underside:
      return {0, -1};
    case Side::edge:
      return {1, 0};
    case Side::back:
      return {-1, 0};
  }
  return {};
}

/// p moved straight to where it lies `deep` mm in from this side of the blank.
Point at_depth(const Section& section, Point p, Side side, double deep) {
  switch (side) {
    case Side::face:
      return {p.x, deep};
    case Side::underside:
      return {p.x, section.thickness - deep};
    case Side::edge:
      return {deep, p.y};
    case Side::back:
      return {section.width - deep, p.y};
  }
  return p;
}

bool takes(const Cut& cut, Point p) {
  return std::any_of(cut.set.begin(), cut.set.end(), [&](const Pose& pose) {
    const Point uv = to_sole_frame(pose, p);
    return std::fabs(uv.x) < cut.plane.width / 2 && uv.y > sole_height(cut.plane, uv.x);
  });
}

/// Where the wood begins, going in from a side of the blank, and the last cut that took the surface there.
struct Surface {
  Point at;  // a hair inside the wood
  int left_by = 0;
};

/// At p, a hair inside that side, before a cut of this number.
Surface surface_before(const Plan& plan, int number, Point p, Side side) {
  const Section& section = plan.section;
  Surface out{p};
  for (const Cut& earlier : plan.cuts) {
    if (earlier.number >= number) break;
    while (takes(earlier, out.at) && out.at.x > 0 && out.at.y > 0 && out.at.x < section.width &&
           out.at.y < section.thickness) {
      out.left_by = earlier.number;
      out.at = out.at + kStep * inward(side);
    }
  }
  return out;
}

/// Where the line runs on that side of the blank when its cut comes.
Surface place_of(const Plan& plan, const Cut& cut, Side from, double set, Side on) {
  const Point p = at_depth(plan.section, at_depth(plan.section, {}, from, set), on, kInside);
  return surface_before(plan, cut.number, p, on);
}

/// What the cut takes there ends at the line.
bool ends_at(const Plan& plan, const Cut& cut, const GaugeLine& line, Side on) {
  constexpr double kAside = 0.05;  // mm
  const Point p = place_of(plan, cut, line.from, line.set, on).at;
  const Point along = kAside * inward(line.from);
  return takes(cut, p + along) != takes(cut, p - along);
}

/// A figure from the face or the underside is struck on the edge that is free, one from an edge on the side
/// that lies up; and where the cut does not come there, on the other.
Side struck_on(const Plan& plan, const Cut& cut, const GaugeLine& line) {
  const Side up = is_underside_up(cut.lies) ? Side::underside : Side::face;
  const Side free = back_edge_free(cut.lies) ? Side::back : Side::edge;
  const Side usual = is_across(line.from) ? up : free;
  return !ends_at(plan, cut, line, usual) && ends_at(plan, cut, line, opposite(usual)) ? opposite(usual)
                                                                                       : usual;
}

bool is_square(const Cut& cut) {
  return std::all_of(cut.set.begin(), cut.set.end(),
                     [](const Pose& pose) { return std::fabs(std::remainder(pose.tilt, 90)) < kSameTilt; });
}

/// The surface that the stock of the gauge comes to bear on, where the line is struck at p: the stock reaches
/// some way in beside the line, and the outermost wood there stops it.
Surface borne_on(const Plan& plan, const Cut& cut, Point p, Side from, Side on) {
  constexpr double kReach = 25;  // mm, of the stock of a common gauge (common practice, no source)
  Surface nearest;
  double least = std::numeric_limits<double>::infinity();
  for (double in = 0; in <= kReach; ++in) {
    const Point beside = at_depth(plan.section, p + in * inward(on), from, kInside);
    if (beside.x < 0 || beside.y < 0 || beside.x > plan.section.width || beside.y > plan.section.thickness)
      break;
    const Surface found = surface_before(plan, cut.number, beside, from);
    if (distance(found.at, beside) >= least) continue;
    least = distance(found.at, beside);
    nearest = found;
  }
  return nearest;
}

/// What the gauge bears on beside the line. Where the cuts before have planed that away, the floor or wall
/// that they left, or else the opposite side of the blank.
StruckLine::Gauged gauged_by(const Plan& plan, const Cut& cut, const StruckLine& line) {
  constexpr double kLeastSet = 2;  // mm that a gauge is easily set to (common practice, no source)
  const StruckLine::Gauged as_set{line.from, line.set, 0};
  if (line.after == 0) return as_set;
  const Section& section = plan.section;
  const Point p = place_of(plan, cut, line.from, line.set, line.on).at;
  const Surface own = borne_on(plan, cut, p, line.from, line.on);
  if (own.left_by == 0) return as_set;
  const auto before = std::find_if(plan.cuts.begin(), plan.cuts.end(),
                                   [&](const Cut& earlier) { return earlier.number == own.left_by; });
  for (const GaugeLine& flat : before->lines) {
    const bool left_it = flat.from == line.from && is_square(*before) &&
                         distance(at_depth(section, own.at, line.from, flat.set), own.at) < 2 * kStep;
    if (left_it && line.set - flat.set >= kLeastSet) return {line.from, line.set - flat.set, own.left_by};
  }
  const Side other = opposite(line.from);
  if (borne_on(plan, cut, p, other, line.on).left_by != 0) return as_set;
  return {other, (is_across(other) ? section.width : section.thickness) - line.set, 0};
}

bool is_at(const StruckLine& struck, const GaugeLine& line) {
  return struck.from == line.from && std::fabs(struck.set - line.set) < kSameLine;
}

}  // namespace

const char* word(Side side) {
  switch (side) {
    case Side::face:
      return "face";
    case Side::edge:
      return "edge";
    case Side::back:
      return "back edge";
    case Side::underside:
      return "underside";
  }
  return "";
}

std::vector<StruckLine> struck_lines(const Plan& plan) {
  std::vector<StruckLine> out;
  for (const Cut& cut : plan.cuts) {
    for (const GaugeLine& line : cut.lines) {
      const Side on = struck_on(plan, cut, line);
      auto struck = std::find_if(out.begin(), out.end(),
                                 [&](const StruckLine& one) { return one.on == on && is_at(one, line); });
      if (struck == out.end()) {
        StruckLine first;
        first.from = line.from;
        first.at = line.at;
        first.set = line.set;
        first.on = on;
        first.after = place_of(plan, cut, line.from, line.set, on).left_by;
        first.gauged = gauged_by(plan, cut, first);
        struck = out.insert(out.end(), std::move(first));
      }
      struck->fine = struck->fine || line.fine;
      struck->rail = struck->rail || (line.fine && !line.close);
      if (line.finer) struck->at = line.at, struck->finer = true;
      struck->cuts.push_back(cut.number);
    }
  }
  return out;
}

std::size_t find_line(const std::vector<StruckLine>& lines, const Cut& cut, const GaugeLine& line) {
  const auto found = std::find_if(lines.begin(), lines.end(), [&](const StruckLine& struck) {
    return is_at(struck, line) &&
           std::find(struck.cuts.begin(), struck.cuts.end(), cut.number) != struck.cuts.end();
  });
  return static_cast<std::size_t>(found - lines.begin());
}

std::string line_letter(std::size_t index) {
  std::string out(1, static_cast<char>('A' + index % 26));
  for (index /= 26; index != 0; index /= 26) {
    --index;
    out.insert(out.begin(), static_cast<char>('A' + index % 26));
  }
  return out;
}

}  // namespace arrisline
