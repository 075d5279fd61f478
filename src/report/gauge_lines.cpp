// Which lines to strike, and on which side. Shown by tests/report.
#include "report/gauge_lines.h"

#include <algorithm>
#include <cmath>

namespace arrisline {
namespace {

constexpr double kSameLine = 1e-6;  // mm; lines are printed alike far above this

Side struck_on(const Cut& cut, Side from) {
  const bool across = from == Side::edge || from == Side::back;
  if (across) return is_underside_up(cut.lies) ? Side::underside : Side::face;
  return back_edge_free(cut.lies) ? Side::back : Side::edge;
}

bool same(const StruckLine& struck, const Cut& cut, const GaugeLine& line) {
  return struck.from == line.from && std::fabs(struck.set - line.set) < kSameLine &&
         struck.on == struck_on(cut, line.from);
}

constexpr double kInside = 1e-3;  // mm: a hair inside the wood

/// The line's place on the blank's own surface, a hair inside the wood.
Point place_of(const Section& section, const StruckLine& line) {
  Point p;
  switch (line.from) {
    case Side::edge:
      p.x = line.set;
      break;
    case Side::back:
      p.x = section.width - line.set;
      break;
    case Side::face:
      p.y = line.set;
      break;
    case Side::underside:
      p.y = section.thickness - line.set;
      break;
  }
  switch (line.on) {
    case Side::face:
      p.y = kInside;
      break;
    case Side::underside:
      p.y = section.thickness - kInside;
      break;
    case Side::edge:
      p.x = kInside;
      break;
    case Side::back:
      p.x = section.width - kInside;
      break;
  }
  return p;
}

bool takes(const Cut& cut, Point p) {
  return std::any_of(cut.set.begin(), cut.set.end(), [&](const Pose& pose) {
    const Point uv = to_sole_frame(pose, p);
    return std::fabs(uv.x) < cut.plane.width / 2 && uv.y > sole_height(cut.plane, uv.x);
  });
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

/// The last cut before `cut` that takes the surface at the line's place farther down, since a line struck
/// before it would go with the shavings; 0 where none does.
int struck_after(const Plan& plan, const Cut& cut, const StruckLine& line) {
  constexpr double kStep = 0.02;  // mm
  Point p = place_of(plan.section, line);
  int after = 0;
  for (const Cut& earlier : plan.cuts) {
    if (earlier.number >= cut.number) break;
    while (takes(earlier, p) && p.x > 0 && p.y > 0 && p.x < plan.section.width &&
           p.y < plan.section.thickness) {
      after = earlier.number;
      p = p + kStep * inward(line.on);
    }
  }
  return after;
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
      const std::size_t at = find_line(out, cut, line);
      if (at == out.size()) {
        StruckLine struck{line.from, line.set, struck_on(cut, line.from), line.fine, 0};
        struck.after = struck_after(plan, cut, struck);
        out.push_back(struck);
      } else {
        out[at].fine = out[at].fine || line.fine;
      }
    }
  }
  return out;
}

std::size_t find_line(const std::vector<StruckLine>& lines, const Cut& cut, const GaugeLine& line) {
  const auto found = std::find_if(lines.begin(), lines.end(),
                                  [&](const StruckLine& struck) { return same(struck, cut, line); });
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
