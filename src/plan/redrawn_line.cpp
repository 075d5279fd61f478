// Shown by tests/plan/substitute_test.cpp.
#include "plan/redrawn_line.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "section/contacts.h"
#include "section/walk.h"

namespace arrisline {

namespace {

constexpr int kPerEdge = 60;  // samples of a drawn edge

/// Greatest distance between two lines, either way round, by some hundred points on each edge. Their first
/// and last edges are only there to be near to.
double departure(const std::vector<Edge>& one, const std::vector<Edge>& other) {
  constexpr int kPoints = 128;
  double most = 0;
  for (const auto& [from, to] : {std::pair(&one, &other), std::pair(&other, &one)}) {
    for (std::size_t i = 1; i + 1 < from->size(); ++i)
      for (int k = 0; k <= kPoints; ++k)
        most = std::max(most, distance(point_at((*from)[i], static_cast<double>(k) / kPoints), *to));
  }
  return most;
}

}  // namespace

ChainLine line_of(const DrawnChain& chain, double width) {
  ChainLine out;
  out.drawn = chain;
  Point at = chain.from_back ? Point{width, chain.start} : Point{chain.start, 0};
  out.line.joints.push_back(at);
  for (const Stroke& stroke : chain.strokes) {
    const Edge edge = edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large);
    out.from.push_back(out.samples.points.size());
    for (int k = 0; k < kPerEdge; ++k) out.samples.points.push_back(point_at(edge, (k + 0.5) / kPerEdge));
    at = edge.to;
    out.line.joints.push_back(at);
    out.line.bulges.push_back(bulge_of(edge));
  }
  out.from.push_back(out.samples.points.size());
  out.samples.filled.assign(out.samples.points.size(), false);
  return out;
}

std::vector<Edge> with_sides(const FlatsAndArcs& line, double thickness) {
  constexpr double kPiece = 20;  // mm
  const Point from = line.joints.front();
  const Point to = line.joints.back();
  std::vector<Edge> out;
  out.push_back({std::abs(from.y) < kOnOutline ? Point{from.x + kPiece, 0} : Point{from.x, from.y - kPiece},
                 from,
                 {},
                 Turn::straight});
  for (std::size_t i = 0; i < line.size(); ++i) out.push_back(edge_of(line, i));
  Point end = {to.x, to.y + kPiece};
  if (std::abs(to.y) < kOnOutline) end = {to.x - kPiece, to.y};
  if (std::abs(to.y - thickness) < kOnOutline && std::abs(to.x) > kOnOutline) end = {to.x + kPiece, to.y};
  out.push_back({to, end, {}, Turn::straight});
  return out;
}

bool smooth_at(const FlatsAndArcs& line, std::size_t joint) {
  constexpr double kSmooth = 1e-3;  // radians
  const Edge before = edge_of(line, joint - 1);
  const Edge after = edge_of(line, joint);
  if (!before.is_arc() && !after.is_arc()) return false;
  const Point in = direction_at(before, 1);
  const Point out = direction_at(after, 0);
  return std::abs(std::atan2(cross(in, out), dot(in, out))) < kSmooth;
}

Held kept(const ChainLine& chain, double width, double thickness) {
  const FlatsAndArcs& line = chain.line;
  Held out(line.size());
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Edge edge = edge_of(line, i);
    if (edge.is_arc()) {
      out.radius[i] = radius(edge);
    } else if (edge.from.y == edge.to.y || std::abs(edge.from.y - edge.to.y) < kSamePoint) {
      out.axis[i] = Held::Axis::level;
    } else if (std::abs(edge.from.x - edge.to.x) < kSamePoint) {
      out.axis[i] = Held::Axis::upright;
    }
    if (i > 0) out.smooth[i] = smooth_at(line, i);
  }
  // The ends stay on the sides of the stock that they are on.
  for (const std::size_t j : {std::size_t{0}, line.size()}) {
    const Point p = line.joints[j];
    if (std::abs(p.y) < kOnOutline || std::abs(p.y - thickness) < kOnOutline) out.y[j] = p.y;
    if (std::abs(p.x) < kOnOutline || std::abs(p.x - width) < kOnOutline) out.x[j] = p.x;
  }
  return out;
}

void hold_width(const FlatsAndArcs& line, std::size_t i, double width, Held& held) {
  const Point from = line.joints[i];
  const Point to = line.joints[i + 1];
  const bool level = std::abs(from.y - to.y) < kSamePoint;
  auto& levels = level ? held.x : held.y;
  const double a = level ? from.x : from.y;
  const double b = level ? to.x : to.y;
  const double more = (width - std::abs(b - a)) * (b > a ? 1 : -1);
  if (levels[i]) {
    levels[i + 1] = b + more;
  } else if (levels[i + 1]) {
    levels[i] = a - more;
  } else {
    levels[i] = a - more / 2;
    levels[i + 1] = b + more / 2;
  }
}

std::optional<FlatsAndArcs> nearest_line(const ChainLine& chain, const Held& held, double thickness,
                                         double allow, int rounds) {
  // By the weighted mean of the squares no line departs less at most. It bounds the distances along normals
  // of the lines as they are near the drawn one, not the distances themselves, so it is given some room.
  constexpr double kRoom = 1.25;
  constexpr double kSettled = 1.01;
  Fitted start;
  start.line = chain.line;
  start.from = chain.from;
  const Allowed allowed{std::max(allow, 0.01), 0};
  Samples samples = chain.samples;
  samples.weights.assign(samples.points.size(), 1);
  // A radius that is much another is come to in steps, and so is a chord, or the fit loses its way.
  constexpr int kSteps = 4;
  for (int step = 1; step < kSteps; ++step) {
    Held on_the_way = held;
    for (std::size_t i = 0; i < chain.line.size(); ++i) {
      const Edge edge = edge_of(chain.line, i);
      const auto part_of_it = [&](double drawn, std::optional<double>& now) {
        if (now) now = drawn + step * (*now - drawn) / kSteps;
      };
      if (held.radius[i]) part_of_it(radius(edge), on_the_way.radius[i]);
      part_of_it(distance(edge.from, edge.to), on_the_way.chord[i]);
    }
    start = fit(samples, start, on_the_way, allowed);
  }
  std::optional<FlatsAndArcs> best;
  double least = std::numeric_limits<double>::infinity();
  for (int round = 0; round < rounds; ++round) {
    const Fitted next = fit(samples, start, held, allowed);
    if (!keeps(next.line, held)) break;
    const std::vector<Edge> now = with_sides(next.line, thickness);
    std::vector<double> distances;
    double most = 0, squares = 0, weights = 0;
    for (std::size_t i = 0; i < samples.points.size(); ++i) {
      const double d = distance(samples.points[i], now);
      const double weight = samples.weights[i] * samples.weights[i];
      distances.push_back(d);
      most = std::max(most, d);
      squares += weight * d * d;
      weights += weight;
    }
    if (most < least) least = most, best = next.line;
    const double bound = std::sqrt(squares / weights);
    if (bound > kRoom * allow) return std::nullopt;
    if (most < 1e-6 || least < kSettled * bound) break;
    double sum = 0;
    for (std::size_t i = 0; i < distances.size(); ++i) {
      samples.weights[i] *= std::sqrt((distances[i] + 0.02 * most) / most);
      sum += samples.weights[i];
    }
    for (double& weight : samples.weights) weight *= static_cast<double>(distances.size()) / sum;
    start = next;
  }
  if (best) make_exact(*best, held);
  return best;
}

bool keeps(const FlatsAndArcs& line, const Held& held) {
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Edge edge = edge_of(line, i);
    if (length(edge) < 0.05) return false;
    if (held.radius[i] && (!edge.is_arc() || std::abs(radius(edge) - *held.radius[i]) > 1e-3)) return false;
    if (held.chord[i] && std::abs(distance(edge.from, edge.to) - *held.chord[i]) > 1e-3) return false;
  }
  return true;
}

bool put_in_blank(FlatsAndArcs& line, const Held& held, double allow) {
  Held free = held;
  keep_in_blank(line, free, {allow, 0});
  for (std::size_t j = 0; j < line.joints.size(); ++j) {
    const Point p = line.joints[j];
    if ((held.x[j] && std::abs(*held.x[j] - p.x) > kSamePoint) ||
        (held.y[j] && std::abs(*held.y[j] - p.y) > kSamePoint))
      return false;
  }
  // Ends of one flat that are held at two levels would make a level or upright one lean.
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Point along = line.joints[i + 1] - line.joints[i];
    if ((held.axis[i] == Held::Axis::level && std::abs(along.y) > kSamePoint) ||
        (held.axis[i] == Held::Axis::upright && std::abs(along.x) > kSamePoint))
      return false;
  }
  return keeps(line, held);
}

double apart(const FlatsAndArcs& one, const FlatsAndArcs& other, double thickness) {
  return departure(with_sides(one, thickness), with_sides(other, thickness));
}

}  // namespace arrisline
