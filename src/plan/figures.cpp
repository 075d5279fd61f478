// Shown by tests/plan/figures_test.cpp.
#include "plan/figures.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {

namespace {

constexpr double kParallel = 1e-9;

bool in_blank(const Section& section, Point p) {
  return p.x > -kLine && p.x < section.width + kLine && p.y > -kLine && p.y < section.thickness + kLine;
}

}  // namespace

Flanks flanks_of(const Loop& blank) {
  Flanks out;
  for (const Edge& edge : blank) out.lines.push_back({edge.from, direction_at(edge, 0)});
  return out;
}

Flanks flanks_of(const std::vector<Sweep>& poses) {
  Flanks out;
  for (const Sweep& sweep : poses) {
    const bool flat = sweep.plane().is_flat();
    const bool upright = std::abs(sweep.a().x) < kAlong || (flat && std::abs(sweep.e().x) < kAlong);
    const bool level = std::abs(sweep.a().y) < kAlong || (flat && std::abs(sweep.e().y) < kAlong);
    if (flat) out.lines.push_back({sweep.pose().at, sweep.e()});
    for (const double u : {-sweep.half(), sweep.half()}) {
      const Point corner = sweep.pose().at + u * sweep.e();
      out.lines.push_back({corner, sweep.a()});
      if (upright) out.upright.push_back(corner.x);
      if (level) out.level.push_back(corner.y);
    }
  }
  return out;
}

std::vector<MaybeFigure> figures_alone(const Section& section, const Loop& blank,
                                       const std::vector<Sweep>& slanted) {
  std::vector<MaybeFigure> out;
  for (const Sweep& sweep : slanted) {
    for (const double u : {-sweep.half(), sweep.half()}) {
      const Point corner = sweep.pose().at + u * sweep.e();
      if (in_blank(section, corner)) out.push_back({Side::edge, gauged(section, Side::edge, corner), -1});
    }
  }
  std::sort(out.begin(), out.end());
  add_figures(section, slanted, flanks_of(blank), -1, out);
  return out;
}

void add_figures(const Section& section, const std::vector<Sweep>& slanted, const Flanks& flanks, int by,
                 std::vector<MaybeFigure>& figures) {
  const auto middle = static_cast<std::ptrdiff_t>(figures.size());
  const Sweep& first = slanted.front();
  const double tilt = first.pose().tilt;
  const double reach = 2 * first.half() * static_cast<double>(slanted.size());
  for (const Flanks::Line& flank : flanks.lines) {
    const Side side = side_along(flank.along, tilt).value_or(Side::edge);
    // No line is struck outside the blank, beyond the sole, or on a side below it.
    const auto meet = [&](Point at, Point along, double from, double to) {
      const double turn = cross(along, flank.along);
      if (std::abs(turn) < kParallel) return;
      const double far = cross(flank.at - at, flank.along) / turn;
      const Point p = at + far * along;
      if (far > from - kLine && far < to + kLine && in_blank(section, p))
        figures.push_back({side, gauged(section, side, p), by});
    };
    meet(first.pose().at, first.e(), -reach, reach);
    for (const Sweep& sweep : slanted) {
      for (const double u : {-sweep.half(), sweep.half()})
        meet(sweep.pose().at + u * sweep.e(), sweep.a(), 0, std::numeric_limits<double>::infinity());
    }
  }
  std::sort(figures.begin() + middle, figures.end());
  std::inplace_merge(figures.begin(), figures.begin() + middle, figures.end());
}

bool stands_at(const Section& section, const Flanks& flanks, const MaybeFigure& figure) {
  const bool upright = figure.from == Side::edge || figure.from == Side::back;
  const std::vector<double>& all = upright ? flanks.upright : flanks.level;
  // Where the line lies in the section: gauged() is its own inverse.
  const double line = gauged(section, figure.from, {figure.at, figure.at});
  return std::any_of(all.begin(), all.end(), [&](double at) { return std::abs(at - line) < 2 * kLine; });
}

bool share_a_figure(const std::vector<MaybeFigure>& of_i, int i, const std::vector<MaybeFigure>& of_j,
                    int j) {
  auto from = of_j.begin();
  for (const MaybeFigure& mine : of_i) {
    if (mine.by == j) continue;
    while (from != of_j.end() && *from < MaybeFigure{mine.from, mine.at - kOneFigure, 0}) ++from;
    for (auto its = from; its != of_j.end() && its->from == mine.from && its->at <= mine.at + kOneFigure;
         ++its) {
      if (its->by != i) return true;
    }
  }
  return false;
}

}  // namespace arrisline
