// The slow twin of Wood: the same cuts on flattened arcs with the Clipper library.
#pragma once

#include <clipper.hpp>
#include <cmath>

#include "arrisline/geometry.h"
#include "plan/sweep.h"

namespace arrisline::test {

class ClipperTwin {
 public:
  explicit ClipperTwin(const Loop& base) { paths_.push_back(flatten(base)); }

  double cut(const Sweep& sweep) {
    ClipperLib::Path region = flatten(sweep.boundary(400));
    ClipperLib::Clipper clipper;
    clipper.AddPaths(paths_, ClipperLib::ptSubject, true);
    clipper.AddPath(region, ClipperLib::ptClip, true);
    ClipperLib::Paths out;
    clipper.Execute(ClipperLib::ctDifference, out, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    const double before = area();
    paths_ = out;
    return before - area();
  }

  double area() const {
    double sum = 0;
    for (const auto& path : paths_) sum += ClipperLib::Area(path);
    return sum / (kScale * kScale);
  }

 private:
  static constexpr double kScale = 1e6;  // units in a mm
  static constexpr double kChordError = 0.0005;

  static ClipperLib::Path flatten(const std::vector<Edge>& edges) {
    ClipperLib::Path path;
    for (const Edge& edge : edges) {
      int steps = 1;
      if (edge.is_arc()) {
        const double step = 2 * std::acos(1 - kChordError / std::max(kChordError, radius(edge)));
        steps = std::max(1, static_cast<int>(std::ceil(std::abs(arrisline::sweep(edge)) / step)));
      }
      for (int i = 0; i <= steps; ++i) {
        const Point p = point_at(edge, static_cast<double>(i) / steps);
        path.push_back({std::llround(p.x * kScale), std::llround(p.y * kScale)});
      }
    }
    return path;
  }

  ClipperLib::Paths paths_;
};

}  // namespace arrisline::test
