// Points are dealt into runs that lie straight, from corner to corner. Shown by tests/trace/corners_test.cpp.
#include "trace/corners.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "section/walk.h"

namespace arrisline {
namespace {

constexpr double kLeastTurn = 20;  // degrees; less is a curve, or points that scatter
constexpr double kMostTurn = 135;  // sharper than an undercut; points in no order turn back
constexpr double kCurveTurn = 60;  // three such corners one after the other may as well lie on an arc
constexpr double kSquare = 15;     // degrees by which a corner is square
constexpr double kLeastArm = 4;    // tolerances, beside a corner: shorter, and scatter turns it
constexpr std::size_t kTells = 3;  // points between the corners of each flat tell scatter and corners apart
constexpr std::size_t kMany = 12;  // points to a flat

struct Corner {
  std::size_t at = 0;  // index of its point
  double turn = 0;     // degrees
};

double turn_at(const std::vector<Point>& points, std::size_t i) {
  const Point in = points[i] - points[i - 1];
  const Point on = points[i + 1] - points[i];
  return to_degrees(std::atan2(cross(in, on), dot(in, on)));
}

bool is_square(const Corner& corner) {
  return std::abs(std::abs(corner.turn) - 90) <= kSquare;
}

/// Whether a flat runs with another, or square to it.
bool agree(Point along, Point other) {
  constexpr double kOff = 5;  // degrees
  const double degrees = to_degrees(std::atan2(cross(other, along), dot(other, along)));
  return std::abs(degrees - 90 * std::round(degrees / 90)) < kOff;
}

/// The way, or square to it, that the most of the line runs.
Point main_way(const std::vector<Point>& line) {
  Point out;
  double most = 0;
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    const Point way = line[k + 1] - line[k];
    double sum = 0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      if (agree(line[i + 1] - line[i], way)) sum += distance(line[i], line[i + 1]);
    if (sum > most) most = sum, out = way;
  }
  return out;
}

/// Whether a row of corners may lie on an arc: three or more that turn the same way and little, or one
/// between two flats that run neither with the rest nor square to it, all without points between.
bool may_be_arc(const std::vector<Point>& line, const std::vector<Corner>& corners) {
  const Point way = main_way(line);
  for (std::size_t k = 0; k < corners.size(); ++k) {
    const auto turns_on = [&](std::size_t i) {
      return std::abs(corners[i].turn) < kCurveTurn && corners[i].turn * corners[k].turn > 0;
    };
    if (k > 1 && turns_on(k - 2) && turns_on(k - 1) && turns_on(k)) return true;
    if (k == 0 || k + 1 == corners.size() || !turns_on(k)) continue;
    const bool bare = corners[k].at == corners[k - 1].at + 1 && corners[k + 1].at == corners[k].at + 1;
    if (bare && !agree(line[k + 1] - line[k], way) && !agree(line[k + 2] - line[k + 1], way)) return true;
  }
  return false;
}

/// Two corners with nothing between, no farther apart than the points beside them are: of points set along
/// the line those to either side of one corner lie so.
bool may_be_cut_off(const std::vector<Point>& points, const std::vector<Corner>& corners) {
  constexpr double kAsFar = 1.1;
  for (std::size_t k = 0; k + 1 < corners.size(); ++k) {
    const Corner& one = corners[k];
    const Corner& other = corners[k + 1];
    if (other.at != one.at + 1 || is_square(one) || is_square(other) || one.turn * other.turn < 0) continue;
    const std::size_t before = k == 0 ? 0 : corners[k - 1].at;
    const std::size_t after = k + 2 == corners.size() ? points.size() - 1 : corners[k + 2].at;
    if (one.at - before < 2 || after - other.at < 2) continue;
    const double beside = std::min(distance(points[one.at - 1], points[one.at]),
                                   distance(points[other.at], points[other.at + 1]));
    if (distance(points[one.at], points[other.at]) <= kAsFar * beside) return true;
  }
  return false;
}

bool cross_each_other(Point a, Point b, Point c, Point d) {
  const auto sides = [](Point from, Point to, Point p, Point q) {
    return cross(to - from, p - from) * cross(to - from, q - from);
  };
  return sides(a, b, c, d) < 0 && sides(c, d, a, b) < 0;
}

bool crosses_itself(const std::vector<Point>& line) {
  for (std::size_t j = 3; j < line.size(); ++j)
    for (std::size_t i = 1; i + 1 < j; ++i)
      if (cross_each_other(line[i - 1], line[i], line[j - 1], line[j])) return true;
  return false;
}

}  // namespace

bool are_corners(const std::vector<Point>& points, double tolerance) {
  if (points.size() < 3) return false;
  std::vector<Corner> corners;
  for (std::size_t i = 1; i + 1 < points.size(); ++i) {
    if (points[i] == points[i - 1]) return false;
    const double turn = turn_at(points, i);
    if (std::abs(turn) < kLeastTurn) continue;
    const double arm = std::min(distance(points[i - 1], points[i]), distance(points[i], points[i + 1]));
    if (std::abs(turn) > kMostTurn || arm < kLeastArm * tolerance) return false;
    corners.push_back({i, turn});
  }
  if (corners.empty() || points.size() > kMany * (corners.size() + 1)) return false;
  std::vector<Point> line = {points.front()};
  for (const Corner& corner : corners) line.push_back(points[corner.at]);
  line.push_back(points.back());
  std::size_t fewest = points.size();
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    const std::size_t first = k == 0 ? 0 : corners[k - 1].at;
    const std::size_t last = k == corners.size() ? points.size() - 1 : corners[k].at;
    fewest = std::min(fewest, last - first - 1);
    for (std::size_t i = first + 1; i < last; ++i)
      if (distance(points[i], Edge{line[k], line[k + 1], {}, Turn::straight}) > tolerance) return false;
  }
  return fewest < kTells && !may_be_arc(line, corners) && !may_be_cut_off(points, corners) &&
         !crosses_itself(line);
}

}  // namespace arrisline
