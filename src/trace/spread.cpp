// Principal axes of points near each other. Shown by tests/trace/order_test.cpp.
#include "trace/spread.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

namespace arrisline {

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

Point span_of(const std::vector<Point>& points) {
  Point low = points.front();
  Point high = low;
  for (const Point& p : points) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return high - low;
}

double size_of(const std::vector<Point>& points) {
  return norm(span_of(points));
}

Spread spread_of(const std::vector<Point>& points, const std::vector<double>& weights) {
  Spread out;
  double sum = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    sum += weights[i];
    out.mean = out.mean + weights[i] * points[i];
  }
  out.mean = (1 / sum) * out.mean;
  double xx = 0, xy = 0, yy = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point p = points[i] - out.mean;
    xx += weights[i] * p.x * p.x, xy += weights[i] * p.x * p.y, yy += weights[i] * p.y * p.y;
  }
  xx /= sum, xy /= sum, yy /= sum;
  const double angle = std::atan2(2 * xy, xx - yy) / 2;
  out.along = {std::cos(angle), std::sin(angle)};
  const double half = (xx + yy) / 2;
  const double apart = std::hypot((xx - yy) / 2, xy);
  out.long_ = std::sqrt(half + apart);
  out.across = std::sqrt(std::max(0.0, half - apart));
  return out;
}

double variance_about_parabola(const Point* points, std::size_t count) {
  const std::vector<Point> all(points, points + count);
  const Spread axes = spread_of(all, std::vector<double>(count, 1));
  Eigen::Matrix3d normal = Eigen::Matrix3d::Zero();
  Eigen::Vector3d right = Eigen::Vector3d::Zero();
  double squares = 0;
  for (const Point& point : all) {
    const Point p = point - axes.mean;
    const double u = dot(p, axes.along);
    const double v = cross(axes.along, p);
    const Eigen::Vector3d row(1, u, u * u);
    normal += row * row.transpose();
    right += v * row;
    squares += v * v;
  }
  const Eigen::Vector3d solution = normal.ldlt().solve(right);
  return std::max(0.0, squares - solution.dot(right)) / static_cast<double>(count - 3);
}

Density density_of(const std::vector<Point>& points, const NearPoints& near) {
  constexpr std::size_t kLooked = 250;  // places that are looked at
  constexpr double kLong = 12;          // times as long as it scatters wide is a line and no cloud
  constexpr std::size_t kFewest = 7;
  const std::size_t step = std::max<std::size_t>(1, points.size() / kLooked);
  const double root12 = std::sqrt(12.0);  // a stretch is so many of its standard deviations long
  Density out;
  for (std::size_t count = std::min(kFewest, points.size());; count = count * 3 / 2) {
    std::vector<double> variances, lengths;
    for (std::size_t i = 0; i < points.size(); i += step) {
      std::vector<Point> stretch;
      for (const std::size_t k : near.nearest(points[i], count)) stretch.push_back(points[k]);
      lengths.push_back(root12 * spread_of(stretch, std::vector<double>(stretch.size(), 1)).long_);
      if (count > 3) variances.push_back(variance_about_parabola(stretch.data(), stretch.size()));
    }
    out.scatter = std::sqrt(median(variances));
    const double length = median(lengths);
    out.spacing = length / static_cast<double>(count);
    if (length >= kLong * out.scatter || count * 3 / 2 > points.size() / 4) return out;
  }
}

std::vector<Point> on_ridge(const std::vector<Point>& points, double width, int rounds,
                            std::vector<Point>& along) {
  const NearPoints near(points, 2 * width);
  std::vector<Point> out = points;
  along.assign(points.size(), {});
  std::vector<Point> around;
  std::vector<double> weights;
  for (std::size_t i = 0; i < points.size(); ++i) {
    for (int round = 0; round <= rounds; ++round) {
      around.clear();
      weights.clear();
      near.within(out[i], 3 * width, [&](std::size_t k) {
        const double d = distance(points[k], out[i]) / width;
        around.push_back(points[k]);
        weights.push_back(std::exp(-d * d / 2));
      });
      if (around.size() < 3) break;
      const Spread here = spread_of(around, weights);
      const double all = here.long_ * here.long_ + here.across * here.across;
      if (!(all > 0)) break;
      along[i] = ((here.long_ * here.long_ - here.across * here.across) / all) * here.along;
      if (round == rounds) break;
      const Point step = here.mean - out[i];
      out[i] = out[i] + cross(here.along, step) * Point{-here.along.y, here.along.x};
    }
  }
  return out;
}

}  // namespace arrisline
