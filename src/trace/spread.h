// How points lie about the line that they were measured along, whatever order they are in.
#pragma once

#include <cstddef>
#include <vector>

#include "arrisline/geometry.h"
#include "trace/near_points.h"

namespace arrisline {

/// Variance of points about the parabola along them that lies nearest. REQUIRES: more than 3 points.
double variance_about_parabola(const Point* points, std::size_t count);

double median(std::vector<double> values);

/// Width and height of the rectangle about the points, and its diagonal. REQUIRES: a point.
Point span_of(const std::vector<Point>& points);
double size_of(const std::vector<Point>& points);

/// Points about the line through their mean along which they lie spread.
struct Spread {
  Point mean;
  Point along;        // unit vector
  double long_ = 0;   // standard deviation along it
  double across = 0;  // and square to it
};
/// `weights`: of each. REQUIRES: a point of a weight over 0.
Spread spread_of(const std::vector<Point>& points, const std::vector<double>& weights);

struct Density {
  double scatter = 0;  // standard deviation square to the line, mm
  double spacing = 0;  // mm of the line to a point
};
/// REQUIRES: at least 4 points, not all alike.
Density density_of(const std::vector<Point>& points, const NearPoints& near);

/// The points moved square to the line on to its ridge, where they lie densest: what was called "subspace
/// constrained mean shift" (U. Ozertem, D. Erdogmus, J. Machine Learning Research 12, 2011), by points that
/// are weighed by their distance with the standard deviation `width`, mm. Two sides of a cleft stay apart
/// where its gap is over twice the root of the sum of the squares of `width` and the scatter. `along` gets
/// the direction of the ridge at each, longer the more the points about it lie in one line, at most 1.
std::vector<Point> on_ridge(const std::vector<Point>& points, double width, int rounds,
                            std::vector<Point>& along);

}  // namespace arrisline
