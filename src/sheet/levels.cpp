// Rows and columns of figures. Shown by tests/sheet/full_size_test.cpp.
#include "sheet/levels.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace arrisline {
namespace {

// mm of paper.
constexpr double kLow = -1;          // a figure above may stand so far before the left side of the blank
constexpr double kPost = 1.7;        // between the lines of flags
constexpr double kFlag = 0.6;        // from a line to its figure
constexpr double kGap = 1.6;         // after a figure
constexpr double kShort = 0.7;       // by which a line stops short of the place it measures
constexpr double kStraight = 1;      // a line runs on straight past the side before it bends
constexpr double kStraightTo = 0.2;  // a place pushed less than this keeps a straight line

double taken(const Level& level) {
  return kFlag + text_width(level.words, kLevelType) + kGap;
}

/// Places of flags where the k-th of n in turn stands one row nearer than the one before it.
std::vector<double> in_turns(const std::vector<Level>& levels, std::size_t n) {
  std::vector<double> out(levels.size());
  const auto row = [n](std::size_t k) { return n - 1 - k % n; };
  for (std::size_t k = 0; k < levels.size(); ++k) {
    out[k] = std::max(levels[k].at, kLow);
    for (std::size_t j = 0; j < k; ++j)
      out[k] = std::max(out[k], out[j] + (row(k) >= row(j) ? taken(levels[j]) : kPost));
  }
  return out;
}

double farthest(const std::vector<Level>& levels, const std::vector<double>& places) {
  double out = 0;
  for (std::size_t k = 0; k < levels.size(); ++k) out = std::max(out, std::fabs(places[k] - levels[k].at));
  return out;
}

/// The lowest rows in which no line meets a figure: a line that rises within another's figure is lower.
std::vector<std::size_t> lowest_rows(const std::vector<Level>& levels, const std::vector<double>& places) {
  std::vector<std::size_t> rows(levels.size(), 0);
  for (std::size_t k = levels.size(); k-- > 0;) {
    for (std::size_t j = k + 1; j < levels.size(); ++j)
      if (places[j] < places[k] + taken(levels[k]) - 1e-9) rows[k] = std::max(rows[k], rows[j] + 1);
  }
  return rows;
}

/// How far the lines lean over: flat enough to save room, steep enough to be followed.
double lean(double pushed) {
  return pushed < kStraightTo ? 0 : std::clamp(0.5 * pushed, 1.5, 7.0);
}

void add_flags(Picture& picture, const std::vector<Level>& levels, double edge, double clear, double down) {
  std::vector<double> places;
  double best = std::numeric_limits<double>::infinity();
  const std::size_t most = std::min<std::size_t>(levels.size(), 12);
  for (std::size_t n = 1; n <= most; ++n) {
    std::vector<double> with = in_turns(levels, n);
    const double cost = farthest(levels, with) + kLevelRow * 0.6 * static_cast<double>(n);
    if (cost >= best) continue;
    best = cost;
    places = std::move(with);
  }
  const std::vector<std::size_t> rows = lowest_rows(levels, places);
  const double bend = std::max(lean(farthest(levels, places)), clear - kStraight - kFlag);
  for (std::size_t k = 0; k < levels.size(); ++k) {
    const double start = edge + down * kStraight;
    const double foot = start + down * bend;
    const double top = foot + down * (static_cast<double>(rows[k]) * kLevelRow + kFlag + kLevelType * 0.75);
    const double baseline = down < 0 ? top + kLevelType * 0.75 : top;
    const double from = levels[k].from + down * kShort;
    const double x = places[k];
    // Where the place lies beyond the side already, the line starts at the side.
    picture.shapes.push_back({Role::leader,
                              {{line({levels[k].at, from}, {levels[k].at, start}),
                                line({levels[k].at, start}, {x, foot}), line({x, foot}, {x, top})}},
                              false,
                              false});
    picture.labels.push_back({{x + kFlag, baseline}, levels[k].words, kLevelType, Anchor::start, false});
  }
}

void add_column(Picture& picture, const std::vector<Level>& levels, double edge, double clear, double right) {
  std::vector<double> wanted;
  for (const Level& level : levels) wanted.push_back(level.at);
  const std::vector<double> places = stand_apart(wanted, kLevelRow, -1e9);
  const double bend = std::max(lean(farthest(levels, places)), clear - kStraight - kFlag);
  for (std::size_t k = 0; k < levels.size(); ++k) {
    const double y = levels[k].at;
    const double start = edge + right * kStraight;
    const double foot = start + right * bend;
    picture.shapes.push_back(
        {Role::leader,
         {{line({levels[k].from + right * kShort, y}, {start, y}), line({start, y}, {foot, places[k]})}},
         false,
         false});
    picture.labels.push_back({{foot + right * kFlag, places[k] + 0.36 * kLevelType},
                              levels[k].words,
                              kLevelType,
                              right > 0 ? Anchor::start : Anchor::end,
                              false});
  }
}

}  // namespace

std::vector<double> stand_apart(const std::vector<double>& wanted, double apart, double low) {
  // Runs of places that touch, each with its mean where its own places want it.
  struct Run {
    double start = 0;  // of its first place
    std::size_t count = 0;
    double sum = 0;  // of where its members want the run to start
  };
  std::vector<Run> runs;
  for (const double at : wanted) {
    Run run{std::max(at, low), 1, at};
    while (!runs.empty() && runs.back().start + static_cast<double>(runs.back().count) * apart > run.start) {
      Run& before = runs.back();
      const auto n = static_cast<double>(before.count);
      before.sum += run.sum - static_cast<double>(run.count) * n * apart;
      before.count += run.count;
      before.start = std::max(before.sum / static_cast<double>(before.count), low);
      run = before;
      runs.pop_back();
    }
    runs.push_back(run);
  }
  std::vector<double> out;
  for (const Run& run : runs)
    for (std::size_t i = 0; i < run.count; ++i) out.push_back(run.start + static_cast<double>(i) * apart);
  return out;
}

void add_levels(Picture& picture, const std::vector<Level>& levels, Beside beside, double edge,
                double clear) {
  if (levels.empty()) return;
  switch (beside) {
    case Beside::above:
      return add_flags(picture, levels, edge, clear, -1);
    case Beside::below:
      return add_flags(picture, levels, edge, clear, 1);
    case Beside::left:
      return add_column(picture, levels, edge, clear, -1);
    case Beside::right:
      return add_column(picture, levels, edge, clear, 1);
  }
}

}  // namespace arrisline
