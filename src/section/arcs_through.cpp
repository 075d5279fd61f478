// Biarcs: two arcs that join two points, with a given direction at each. One figure is free, how much of the
// turn the first arc takes; it is chosen so that the pair keeps nearest to the curve. Shown by
// tests/section/arcs_through_test.cpp.
#include "section/arcs_through.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace arrisline {
namespace {

constexpr std::size_t kSteps = 2048;  // points of the curve, and where a pair may end
constexpr std::size_t kGlances = 24;  // points of a pair looked at while its ends are sought
constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kMostTurn = 0.9 * kPi;  // of a pair: beyond, its arcs are ill determined
constexpr double kLeastShare = 0.1;      // of a pair's turn: an arc that takes less is none to plane
constexpr double kSameRadius = 1e-9;     // of the radius

struct Sample {
  Point at;
  Point along;      // unit
  double turn = 0;  // radians from the beginning, growing
};

struct Table {
  std::vector<Sample> samples;
  double sense = 1;  // of the turn: 1 left, −1 right
};

struct Pair {
  std::size_t first = 0;  // samples
  std::size_t last = 0;
  Point centre[2];
  double r[2] = {0, 0};
  Point joint;
  Point along;  // the direction of both arcs there
  double off = kNever;
};

Table table_of(const SmoothCurve& curve) {
  Table out;
  for (std::size_t i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / static_cast<double>(kSteps);
    const Point along = curve.direction(t);
    out.samples.push_back({curve.at(t), (1 / norm(along)) * along, 0});
  }
  double turn = 0;
  for (std::size_t i = 1; i <= kSteps; ++i) {
    const Point a = out.samples[i - 1].along;
    const Point b = out.samples[i].along;
    turn += std::atan2(cross(a, b), dot(a, b));
    out.samples[i].turn = turn;
  }
  out.sense = turn < 0 ? -1 : 1;
  for (Sample& sample : out.samples) sample.turn *= out.sense;
  return out;
}

Point left_of(Point p) {
  return {-p.y, p.x};
}

/// The pair over these samples whose first arc takes so much of the turn; `off` stays as it is where the arcs
/// would have to run backward.
Pair pair_of(const Table& table, std::size_t first, std::size_t last, double split) {
  Pair out;
  out.first = first;
  out.last = last;
  const Sample& a = table.samples[first];
  const Sample& b = table.samples[last];
  const double whole = b.turn - a.turn;
  const Point inward = table.sense * left_of(a.along);
  const Point chord = b.at - a.at;
  // What an arc of radius 1 moves along and inward, for each of the two.
  const Point one{std::sin(split), 1 - std::cos(split)};
  const Point other{std::sin(whole) - std::sin(split), std::cos(split) - std::cos(whole)};
  const Point move{dot(chord, a.along), dot(chord, inward)};
  const double det = cross(one, other);
  if (!(det > 0)) return out;
  out.r[0] = cross(move, other) / det;
  out.r[1] = cross(one, move) / det;
  if (!(out.r[0] > 0) || !(out.r[1] > 0)) return out;
  out.joint = a.at + (out.r[0] * one.x) * a.along + (out.r[0] * one.y) * inward;
  out.along = std::cos(split) * a.along + std::sin(split) * inward;
  out.centre[0] = a.at + out.r[0] * inward;
  out.centre[1] = b.at + (out.r[1] * table.sense) * left_of(b.along);
  out.off = 0;
  return out;
}

/// How far the samples lie from the pair, each `step`th looked at. The line through both centres and
/// the joint parts what the one arc is nearest to from what the other is.
double off(const Table& table, const Pair& pair, std::size_t step) {
  if (pair.off == kNever) return kNever;
  double worst = 0;
  for (std::size_t i = pair.first; i <= pair.last; i += step) {
    const Sample& sample = table.samples[i];
    const bool second = dot(sample.at - pair.joint, pair.along) > 0;
    worst = std::max(worst, std::abs(distance(sample.at, pair.centre[second]) - pair.r[second]));
  }
  return worst;
}

Pair best_pair(const Table& table, std::size_t first, std::size_t last) {
  const double whole = table.samples[last].turn - table.samples[first].turn;
  Pair best;
  best.first = first;
  best.last = last;
  if (!(whole > 0) || whole > kMostTurn) return best;
  const std::size_t step = std::max<std::size_t>(1, (last - first) / kGlances);
  auto tried = [&](double share) {
    Pair pair = pair_of(table, first, last, share * whole);
    pair.off = off(table, pair, step);
    if (pair.off < best.off) best = pair;
    return pair.off;
  };
  constexpr int kCoarse = 8;
  double least = kNever;
  double at = 0.5;
  for (int i = 1; i < kCoarse; ++i) {
    const double share = static_cast<double>(i) / kCoarse;
    const double here = tried(share);
    if (here < least) {
      least = here;
      at = share;
    }
  }
  double low = std::max(kLeastShare, at - 1.0 / kCoarse);
  double high = std::min(1 - kLeastShare, at + 1.0 / kCoarse);
  for (int i = 0; i < 16; ++i) {
    const double a = low + (high - low) / 3;
    const double b = high - (high - low) / 3;
    (tried(a) < tried(b) ? high : low) = tried(a) < tried(b) ? b : a;
  }
  best.off = off(table, best, 1);
  return best;
}

/// Pairs one after another, each as long as the tolerance lets it; at most `most`, nothing where those do not
/// reach the end.
std::vector<Pair> greedy(const Table& table, double tolerance, std::size_t most) {
  std::vector<Pair> out;
  std::size_t first = 0;
  while (first < kSteps) {
    if (out.size() == most) return {};
    Pair best = best_pair(table, first, kSteps);
    if (best.off > tolerance) {
      std::size_t good = first + 1;
      std::size_t bad = kSteps;
      best = best_pair(table, first, good);
      while (bad - good > 1) {
        const std::size_t middle = good + (bad - good) / 2;
        const Pair pair = best_pair(table, first, middle);
        if (pair.off <= tolerance) {
          best = pair;
          good = middle;
        } else {
          bad = middle;
        }
      }
    }
    first = best.last;
    out.push_back(best);
  }
  return out;
}

void add(const Edge& arc, std::vector<Edge>& edges) {
  if (!edges.empty()) {
    Edge& before = edges.back();
    const double r = radius(arc);
    if (std::abs(radius(before) - r) < kSameRadius * r &&
        distance(before.centre, arc.centre) < kSameRadius * r) {
      before.to = arc.to;
      return;
    }
  }
  edges.push_back(arc);
}

}  // namespace

FittedArcs arcs_through(const SmoothCurve& curve, double tolerance) {
  const Table table = table_of(curve);
  std::vector<Pair> pairs = greedy(table, tolerance, kSteps);
  double low = 0;
  double high = tolerance;
  for (int i = 0; i < 8; ++i) {
    const double middle = (low + high) / 2;
    std::vector<Pair> tighter = greedy(table, middle, pairs.size());
    (tighter.empty() ? low : high) = middle;
    if (!tighter.empty()) pairs = std::move(tighter);
  }
  FittedArcs out;
  const Turn turn = table.sense > 0 ? Turn::left : Turn::right;
  for (const Pair& pair : pairs) {
    add({table.samples[pair.first].at, pair.joint, pair.centre[0], turn}, out.edges);
    add({pair.joint, table.samples[pair.last].at, pair.centre[1], turn}, out.edges);
    out.greatest = std::max(out.greatest, pair.off);
  }
  return out;
}

}  // namespace arrisline
