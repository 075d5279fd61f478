// Which lines to strike, and on which side. Shown by tests/report.
#include "report/gauge_lines.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

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

/// Where the sole or a side of a slanted cut lies at the line; nothing for a square one.
std::optional<Point> met_at(const Section& section, const Cut& cut, const GaugeLine& line) {
  const Pose& first = cut.set.front();
  const double half = cut.plane.width / 2;
  const Point on_line = at_depth(section, first.at, line.from, line.set);
  // Along that way from `start`, where the figure is the line's.
  const auto along = [&](Point start, Point way) -> std::optional<double> {
    constexpr double kLeast = 1e-6;
    const double per = is_across(line.from) ? way.x : way.y;
    if (std::fabs(per) < kLeast) return std::nullopt;
    return (is_across(line.from) ? on_line.x - start.x : on_line.y - start.y) / per;
  };
  for (const Pose& pose : cut.set) {
    const std::optional<double> u = along(pose.at, across(pose.tilt));
    if (u && std::fabs(*u) < half + kStep) return pose.at + *u * across(pose.tilt);
  }
  for (const double side : {-half, half}) {
    const Point corner = first.at + side * across(first.tilt);
    const std::optional<double> v = along(corner, outward(first.tilt));
    if (v && *v > 0 && *v < section.thickness) return corner + *v * outward(first.tilt);
  }
  return std::nullopt;
}

/// What a cut has left at a place.
struct Bound {
  bool any = false;
  bool corner = false;  // of its sole and its side
};

Bound bound_at(const Cut& cut, Point p) {
  const double half = cut.plane.width / 2;
  Bound out;
  for (const Pose& pose : cut.set) {
    const Point uv = to_sole_frame(pose, p);
    const bool sole = std::fabs(uv.x) < half + kStep && std::fabs(uv.y) < kStep;
    const bool side = std::fabs(std::fabs(uv.x) - half) < kStep && uv.y > -kStep;
    out.any = out.any || sole || side;
    out.corner = out.corner || (sole && side);
  }
  return out;
}

/// The wood about a place before a cut: where a line can be struck there, or what there is in its stead.
struct About {
  enum class Is { nothing, upright, level, corner } is = Is::nothing;
  Side open = Side::edge;  // of a surface: the side it looks to
  int left_by = 0;         // the last earlier cut that left it; 0: it is the blank's own
};

About about_place(const Plan& plan, const Cut& cut, Point p) {
  constexpr double kAbout = 0.05;  // mm
  const Section& section = plan.section;
  const auto is_wood = [&](double x, double y) {
    const Point q = p + kAbout * Point{x, y};
    return q.x > 0 && q.y > 0 && q.x < section.width && q.y < section.thickness &&
           std::none_of(plan.cuts.begin(), plan.cuts.end(),
                        [&](const Cut& earlier) { return earlier.number < cut.number && takes(earlier, q); });
  };
  const bool near_face = is_wood(-1, -1), far_face = is_wood(1, -1);
  const bool near_under = is_wood(-1, 1), far_under = is_wood(1, 1);
  About out;
  int corner_by = 0;  // the last that left a corner: both sides of it are its own
  for (const Cut& earlier : plan.cuts) {
    if (earlier.number >= cut.number) continue;
    const Bound bound = bound_at(earlier, p);
    if (bound.any) out.left_by = earlier.number;
    if (bound.corner && is_square(earlier)) corner_by = earlier.number;
  }
  const int wood = near_face + far_face + near_under + far_under;
  if (wood == 3 && corner_by != 0) {
    out.is = About::Is::corner;
    out.left_by = corner_by;
  } else if (wood == 2 && near_face == near_under) {
    out.is = About::Is::upright;
    out.open = near_face ? Side::back : Side::edge;
  } else if (wood == 2 && near_face == far_face) {
    out.is = About::Is::level;
    out.open = near_face ? Side::underside : Side::face;
  }
  return out;
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
StruckLine::Gauged gauged_by(const Plan& plan, const Cut& cut, const StruckLine& line, Point p) {
  constexpr double kLeastSet = 2;  // mm that a gauge is easily set to (common practice, no source)
  const StruckLine::Gauged as_set{line.from, line.set, 0};
  if (line.after == 0) return as_set;
  const Section& section = plan.section;
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

/// Where a line of the cut is struck.
struct Struck {
  Side on = Side::edge;
  Surface place;
  int wall_of = 0, corner = 0;  // as of StruckLine
};

Struck struck_at(const Plan& plan, const Cut& cut, const GaugeLine& line) {
  constexpr double kThere = 0.1;  // mm
  Struck out;
  out.on = struck_on(plan, cut, line);
  out.place = place_of(plan, cut, line.from, line.set, out.on);
  if (cut.set.empty() || is_square(cut)) return out;
  const std::optional<Point> p = met_at(plan.section, cut, line);
  if (!p) return out;
  const About about = about_place(plan, cut, *p);
  if (about.is == About::Is::corner) out.corner = about.left_by;
  if (about.is != (is_across(line.from) ? About::Is::level : About::Is::upright)) return out;
  // From outside the blank another surface may come before that which the cut ends at.
  for (const Side on : {out.on, about.open}) {
    const Surface seen = place_of(plan, cut, line.from, line.set, on);
    if (distance(seen.at, *p) > kThere) continue;
    out.on = on;
    out.place = seen;
    return out;
  }
  if (about.left_by == 0) return out;
  out.on = about.open;
  out.place = {*p + kInside * inward(about.open), about.left_by};
  out.wall_of = about.left_by;
  return out;
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
      const Struck at = struck_at(plan, cut, line);
      auto struck = std::find_if(out.begin(), out.end(), [&](const StruckLine& one) {
        return (at.corner != 0 || (one.on == at.on && one.wall_of == at.wall_of)) && is_at(one, line);
      });
      if (struck == out.end()) {
        StruckLine first;
        first.from = line.from;
        first.at = line.at;
        first.set = line.set;
        first.on = at.on;
        first.wall_of = at.wall_of;
        first.after = at.wall_of != 0 ? at.wall_of : at.place.left_by;
        first.gauged = gauged_by(plan, cut, first, at.place.at);
        struck = out.insert(out.end(), std::move(first));
      }
      struck->fine = struck->fine || line.fine;
      struck->rail = struck->rail || (line.fine && !line.close);
      if (line.finer) {
        struck->at = line.at;
        struck->finer = true;
      }
      struck->cuts.push_back(cut.number);
      if (at.corner != 0) struck->corners.push_back({cut.number, at.corner});
    }
  }
  return out;
}

int corner_of(const StruckLine& line, const Cut& cut) {
  for (const StruckLine::AtCorner& at : line.corners)
    if (at.cut == cut.number) return at.left_by;
  return 0;
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
