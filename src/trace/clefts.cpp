// Places set close along the line, each looked about. Shown by tests/trace/clefts_test.cpp.
#include "trace/clefts.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>

#include "trace/near_points.h"

namespace arrisline {
namespace {

constexpr double kWay = 3;           // times as long as the gap is the way round: less is a corner
constexpr double kApart = 3;         // mm of the line between two clefts: nearer they are one
constexpr double kMostPlaces = 2e4;  // a narrower gap than these show in no line that was measured

struct Worked {
  std::vector<Point> places;
  std::vector<double> way;  // of each along the line, mm
};

/// The runs of worked edges, one after the other; a gap in the work is as good as a long way.
Worked worked(const Section& section, double step) {
  Worked out;
  double way = 0;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& edge = section.target[i];
    const double long_ = length(edge);
    if (section.source[i] >= 0) {
      const auto parts = static_cast<std::size_t>(std::ceil(long_ / step)) + 1;
      for (std::size_t k = 0; k < parts; ++k) {
        const double share = static_cast<double>(k) / static_cast<double>(parts);
        out.places.push_back(point_at(edge, share));
        out.way.push_back(way + share * long_);
      }
    }
    way += long_;
  }
  return out;
}

}  // namespace

std::vector<Cleft> clefts_of(const Section& section, double gap) {
  double whole = 0;
  for (const Edge& edge : section.target) whole += length(edge);
  if (!(gap > 0) || !(whole > 0)) return {};
  const Worked line = worked(section, std::max(gap / 4, whole / kMostPlaces));
  if (line.places.empty()) return {};
  const NearPoints near(line.places, gap);
  std::vector<Cleft> out;
  double last = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < line.places.size(); ++i) {
    std::optional<Cleft> here;
    near.within(line.places[i], gap, [&](std::size_t k) {
      const double d = distance(line.places[i], line.places[k]);
      if (k < i || line.way[k] - line.way[i] <= kWay * gap) return;
      if (!here || d < here->gap) here = Cleft{0.5 * (line.places[i] + line.places[k]), d};
    });
    if (!here) continue;
    if (line.way[i] - last > kApart) {
      out.push_back(*here);
    } else if (here->gap < out.back().gap) {
      out.back() = *here;
    }
    last = line.way[i];
  }
  return out;
}

}  // namespace arrisline
