// Fitting a whole line: its joints and bulges are moved until the samples lie nearest to it, with what is
// held as equations of great weight. Shown by tests/trace/round_trip_test.cpp.
#include "trace/chain.h"

#include <Eigen/Dense>
#include <algorithm>
#include <array>
#include <cmath>

namespace arrisline {
namespace {

constexpr double kHeld = 1e4;     // weight of what is held, against 1 for a sample
constexpr double kTie = 0.3;      // weight that keeps the line's two ends beside the first and last sample
constexpr double kPlace = 0.01;   // weight that keeps a joint beside the sample where its links meet
constexpr double kFilled = 0.02;  // weight of a sample that was filled in
constexpr double kFlat = 1e-5;    // a bulge under this is none
constexpr int kRounds = 12;

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

// The figures of a line in one vector: x and y of each joint, then the bulges.
Vector figures_of(const FlatsAndArcs& line) {
  const auto joints = static_cast<Eigen::Index>(line.joints.size());
  Vector out(2 * joints + static_cast<Eigen::Index>(line.size()));
  for (Eigen::Index i = 0; i < joints; ++i) {
    out(2 * i) = line.joints[static_cast<std::size_t>(i)].x;
    out(2 * i + 1) = line.joints[static_cast<std::size_t>(i)].y;
  }
  for (std::size_t i = 0; i < line.size(); ++i)
    out(2 * joints + static_cast<Eigen::Index>(i)) = line.bulges[i];
  return out;
}

FlatsAndArcs line_of(const Vector& figures, std::size_t links) {
  FlatsAndArcs out;
  for (std::size_t i = 0; i <= links; ++i) {
    const auto at = static_cast<Eigen::Index>(2 * i);
    out.joints.push_back({figures(at), figures(at + 1)});
  }
  for (std::size_t i = 0; i < links; ++i)
    out.bulges.push_back(figures(static_cast<Eigen::Index>(2 * (links + 1) + i)));
  return out;
}

/// The sums of least squares, filled row by row.
class Sums {
 public:
  explicit Sums(Eigen::Index figures)
      : normal(Matrix::Zero(figures, figures)), right(Vector::Zero(figures)) {}

  template <std::size_t N>
  void add(const std::array<Eigen::Index, N>& at, const std::array<double, N>& slope, double value,
           double weight) {
    const double w = weight * weight;
    for (std::size_t i = 0; i < N; ++i) {
      right(at[i]) -= w * slope[i] * value;
      for (std::size_t j = 0; j < N; ++j) normal(at[i], at[j]) += w * slope[i] * slope[j];
    }
  }

  Matrix normal;
  Vector right;
};

/// Everything that a fit makes small.
class Problem {
 public:
  Problem(const Samples& samples, const std::vector<std::size_t>& from, const FlatsAndArcs& start,
          const Held& held, double weight)
      : samples_(samples), from_(from), held_(held), weight_(weight), links_(start.size()) {
    for (const double bulge : start.bulges) arc_.push_back(std::abs(bulge) > kFlat);
  }

  /// The cost, and the sums for the next step where they are wanted.
  double cost(const Vector& figures, Sums* sums) const {
    FlatsAndArcs line = line_of(figures, links_);
    double total = 0;
    for (std::size_t i = 0; i < links_; ++i) total += of_link(line, i, sums);
    for (std::size_t i = 0; i < links_; ++i) total += of_held_link(line, i, sums);
    for (std::size_t i = 0; i <= links_; ++i) total += of_joint(line, i, sums);
    total += of_end(line, 0, samples_.points.front(), sums);
    total += of_end(line, links_ - 1, samples_.points.back(), sums);
    return total;
  }

 private:
  Eigen::Index x(std::size_t joint) const { return static_cast<Eigen::Index>(2 * joint); }
  Eigen::Index y(std::size_t joint) const { return x(joint) + 1; }
  Eigen::Index b(std::size_t link) const { return static_cast<Eigen::Index>(2 * (links_ + 1) + link); }

  /// A link with each of its five figures a little more, and a little less.
  struct Beside {
    std::array<Edge, 5> ahead, behind;
  };
  static constexpr double kStep = 1e-6;

  static Beside beside(FlatsAndArcs& line, std::size_t i) {
    Beside out;
    const std::array<double*, 5> figures = {&line.joints[i].x, &line.joints[i].y, &line.joints[i + 1].x,
                                            &line.joints[i + 1].y, &line.bulges[i]};
    for (std::size_t k = 0; k < 5; ++k) {
      const double kept = *figures[k];
      *figures[k] = kept + kStep;
      out.ahead[k] = edge_of(line, i);
      *figures[k] = kept - kStep;
      out.behind[k] = edge_of(line, i);
      *figures[k] = kept;
    }
    return out;
  }

  /// Adds a row whose value is a function of one link, slopes taken by differences.
  template <class Value>
  void add_row(const Beside& near, std::size_t i, double here, double weight, Sums& sums,
               const Value& value) const {
    std::array<double, 5> slope{};
    for (std::size_t k = 0; k < (arc_[i] ? 5U : 4U); ++k)
      slope[k] = (value(near.ahead[k]) - value(near.behind[k])) / (2 * kStep);
    sums.add(std::array<Eigen::Index, 5>{x(i), y(i), x(i + 1), y(i + 1), b(i)}, slope, here, weight);
  }

  template <class Value>
  double add_of_link(FlatsAndArcs& line, std::size_t i, double weight, Sums* sums, const Value& value) const {
    const double here = value(edge_of(line, i));
    if (sums) add_row(beside(line, i), i, here, weight, *sums, value);
    return weight * weight * here * here;
  }

  double of_link(FlatsAndArcs& line, std::size_t i, Sums* sums) const {
    const Edge here = edge_of(line, i);
    const Beside near = sums ? beside(line, i) : Beside{};  // the same for every sample
    double total = 0;
    for (std::size_t s = from_[i]; s < from_[i + 1]; ++s) {
      const double weight = samples_.filled[s] ? kFilled : samples_.weights.empty() ? 1 : samples_.weights[s];
      const Point p = samples_.points[s];
      const double value = offset_from(here, p);
      total += weight * weight * value * value;
      if (sums) add_row(near, i, value, weight, *sums, [p](const Edge& e) { return offset_from(e, p); });
    }
    return total;
  }

  double of_held_link(FlatsAndArcs& line, std::size_t i, Sums* sums) const {
    double total = 0;
    if (held_.axis[i] == Held::Axis::level)
      total += add_of_link(line, i, weight_, sums, [](const Edge& e) { return e.to.y - e.from.y; });
    if (held_.axis[i] == Held::Axis::upright)
      total += add_of_link(line, i, weight_, sums, [](const Edge& e) { return e.to.x - e.from.x; });
    if (held_.radius[i] && arc_[i]) {
      const double r = *held_.radius[i];
      total += add_of_link(line, i, weight_, sums,
                           [r](const Edge& e) { return (e.is_arc() ? radius(e) : 1e6) - r; });
    }
    if (held_.chord[i]) {
      const double chord = *held_.chord[i];
      total += add_of_link(line, i, weight_, sums,
                           [chord](const Edge& e) { return distance(e.from, e.to) - chord; });
    }
    return total;
  }

  double of_joint(FlatsAndArcs& line, std::size_t j, Sums* sums) const {
    double total = 0;
    if (held_.x[j]) {
      const double value = line.joints[j].x - *held_.x[j];
      if (sums) sums->add(std::array<Eigen::Index, 1>{x(j)}, {1.0}, value, weight_);
      total += weight_ * weight_ * value * value;
    }
    if (held_.y[j]) {
      const double value = line.joints[j].y - *held_.y[j];
      if (sums) sums->add(std::array<Eigen::Index, 1>{y(j)}, {1.0}, value, weight_);
      total += weight_ * weight_ * value * value;
    }
    if (j > 0 && j < links_) total += of_place(line, j, sums);
    if (held_.smooth[j] && j > 0 && j < links_) total += of_smooth(line, j, sums);
    return total;
  }

  /// Where two links run nearly the same way the samples hardly say where they meet; it is not to run off.
  double of_place(const FlatsAndArcs& line, std::size_t j, Sums* sums) const {
    const Point off = line.joints[j] - samples_.points[from_[j]];
    if (sums) {
      sums->add(std::array<Eigen::Index, 1>{x(j)}, {1.0}, off.x, kPlace);
      sums->add(std::array<Eigen::Index, 1>{y(j)}, {1.0}, off.y, kPlace);
    }
    return kPlace * kPlace * dot(off, off);
  }

  double of_smooth(FlatsAndArcs& line, std::size_t j, Sums* sums) const {
    constexpr double kArm = 5;  // mm: the turn is weighed as what it departs over such a length
    auto turn = [&] {
      return kArm * cross(direction_at(edge_of(line, j - 1), 1), direction_at(edge_of(line, j), 0));
    };
    const double here = turn();
    if (sums) {
      const std::array<double*, 8> figures = {
          &line.joints[j - 1].x, &line.joints[j - 1].y, &line.joints[j].x,   &line.joints[j].y,
          &line.joints[j + 1].x, &line.joints[j + 1].y, &line.bulges[j - 1], &line.bulges[j]};
      std::array<double, 8> slope{};
      for (std::size_t k = 0; k < 8; ++k) {
        if ((k == 6 && !arc_[j - 1]) || (k == 7 && !arc_[j])) continue;
        const double kept = *figures[k];
        *figures[k] = kept + kStep;
        const double ahead = turn();
        *figures[k] = kept - kStep;
        const double behind = turn();
        *figures[k] = kept;
        slope[k] = (ahead - behind) / (2 * kStep);
      }
      sums->add(
          std::array<Eigen::Index, 8>{x(j - 1), y(j - 1), x(j), y(j), x(j + 1), y(j + 1), b(j - 1), b(j)},
          slope, here, weight_);
    }
    return weight_ * weight_ * here * here;
  }

  double of_end(FlatsAndArcs& line, std::size_t link, Point sample, Sums* sums) const {
    const bool first = link == 0 && sample == samples_.points.front();
    return add_of_link(line, link, kTie, sums, [&](const Edge& e) {
      const Point along = direction_at(e, first ? 0 : 1);
      return dot(sample - (first ? e.from : e.to), along);
    });
  }

  const Samples& samples_;
  const std::vector<std::size_t>& from_;
  const Held& held_;
  double weight_;  // of what is held
  std::size_t links_;
  std::vector<bool> arc_;
};

/// Lets every sample follow the nearer of the two links that meet near it.
bool deal_out(const Samples& samples, const FlatsAndArcs& line, const Held& held,
              std::vector<std::size_t>& from) {
  bool changed = false;
  for (std::size_t j = 1; j < line.size(); ++j) {
    if (held.parted[j]) continue;
    const Edge before = edge_of(line, j - 1);
    const Edge after = edge_of(line, j);
    // The break with the least sum of squares between the links' own middles.
    const std::size_t low = (from[j - 1] + from[j]) / 2;
    const std::size_t high = (from[j] + from[j + 1] + 1) / 2;
    double sum = 0;
    double least = 0;
    std::size_t best = low;
    for (std::size_t s = low; s < high; ++s) {
      const double a = distance(samples.points[s], before);
      const double b = distance(samples.points[s], after);
      sum += a * a - b * b;
      if (sum < least) least = sum, best = s + 1;
    }
    best = std::clamp(best, from[j - 1] + 1, from[j + 1] - 1);
    if (best != from[j]) changed = true, from[j] = best;
  }
  return changed;
}

FlatsAndArcs settled(const Samples& samples, const std::vector<std::size_t>& from, const FlatsAndArcs& start,
                     const Held& held) {
  Vector figures = figures_of(start);
  // What is held is let in by degrees: at its full weight at once the way there is too narrow to follow.
  for (const double weight : {kHeld / 1000, kHeld / 30, kHeld}) {
    const Problem problem(samples, from, start, held, weight);
    double damping = 1e-4;
    double now = problem.cost(figures, nullptr);
    for (int round = 0; round < 40; ++round) {
      Sums sums(figures.size());
      problem.cost(figures, &sums);
      bool better = false;
      for (int attempt = 0; attempt < 8 && !better; ++attempt) {
        Matrix damped = sums.normal;
        damped.diagonal().array() += damping;
        const Vector step = damped.ldlt().solve(sums.right);
        if (!step.allFinite()) break;
        const Vector next = figures + step;
        const double cost = problem.cost(next, nullptr);
        if (cost < now) {
          better = now - cost > 1e-9 * now + 1e-14;
          figures = next;
          now = cost;
          damping = std::max(damping / 5, 1e-9);
          break;
        }
        damping = damping * 10 + 1e-9;
      }
      if (!better) break;
    }
  }
  return line_of(figures, start.size());
}

void measure(const Samples& samples, const Allowed& allowed, Fitted& fitted) {
  fitted.worst = 0;
  fitted.squares = 0;
  for (std::size_t i = 0; i < fitted.line.size(); ++i) {
    const std::vector<double> distances = distances_of(samples, fitted, i);
    fitted.worst = std::max(fitted.worst, share_of(distances, allowed));
    for (const double d : distances) fitted.squares += d * d;
  }
}

}  // namespace

Edge edge_of(const FlatsAndArcs& line, std::size_t link) {
  Edge out;
  out.from = line.joints[link];
  out.to = line.joints[link + 1];
  const double bulge = line.bulges[link];
  if (std::abs(bulge) < kFlat) return out;
  out.turn = bulge > 0 ? Turn::left : Turn::right;
  const Point chord = out.to - out.from;
  const Point left = {-chord.y, chord.x};
  // The centre lies on the left of a left turn, from the middle of the chord by (1 − b²) / 4b of its length.
  out.centre = 0.5 * (out.from + out.to) + ((1 - bulge * bulge) / (4 * bulge)) * left;
  return out;
}

Reach extent_of(const FlatsAndArcs& line) {
  Reach out{line.joints.front(), line.joints.front()};
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Reach reach = reach_of(edge_of(line, i));
    out.low = {std::min(out.low.x, reach.low.x), std::min(out.low.y, reach.low.y)};
    out.high = {std::max(out.high.x, reach.high.x), std::max(out.high.y, reach.high.y)};
  }
  return out;
}

double bulge_of(const Edge& edge) {
  return edge.is_arc() ? std::tan(sweep(edge) / 4) : 0;
}

double turn_at(const FlatsAndArcs& line, std::size_t joint) {
  const Point in = direction_at(edge_of(line, joint - 1), 1);
  const Point on = direction_at(edge_of(line, joint), 0);
  return std::abs(to_degrees(std::atan2(cross(in, on), dot(in, on))));
}

double offset_from(const Edge& edge, Point p) {
  if (!edge.is_arc()) {
    const Point along = edge.to - edge.from;
    const double length = norm(along);
    return length > 0 ? cross(along, p - edge.from) / length : distance(p, edge.from);
  }
  const double outside = norm(p - edge.centre) - radius(edge);
  return edge.turn == Turn::left ? -outside : outside;
}

std::vector<double> distances_of(const Samples& samples, const Fitted& fitted, std::size_t link) {
  const Edge edge = edge_of(fitted.line, link);
  std::vector<double> out;
  for (std::size_t s = fitted.from[link]; s < fitted.from[link + 1]; ++s)
    if (!samples.filled[s]) out.push_back(offset_from(edge, samples.points[s]));
  return out;
}

Fitted joined(const Samples& samples, const std::vector<Segment>& segments) {
  Fitted out;
  auto nearest = [&](const Segment& s, Point p) {
    if (!s.arc || s.radius <= 0) return p;
    const Point spoke = p - s.centre;
    const double length = norm(spoke);
    return length > 0 ? s.centre + (s.radius / length) * spoke : p;
  };
  const std::vector<Point>& points = samples.points;
  for (std::size_t i = 0; i < segments.size(); ++i) {
    const Segment& s = segments[i];
    out.from.push_back(s.first);
    out.line.joints.push_back(i == 0 ? nearest(s, points[s.first])
                                     : 0.5 * (points[s.first - 1] + points[s.first]));
  }
  out.from.push_back(points.size());
  out.line.joints.push_back(nearest(segments.back(), points.back()));
  for (std::size_t i = 0; i < segments.size(); ++i) {
    const Segment& s = segments[i];
    double bulge = 0;
    if (s.arc) {
      // The sense of the arc and its sweep from the samples themselves, which may go more than half way
      // round.
      double turned = 0;
      const std::size_t step = std::max<std::size_t>(1, (s.end - s.first) / 16);
      Point before = points[s.first] - s.centre;
      for (std::size_t k = s.first + step; k < s.end; k += step) {
        const Point spoke = points[k] - s.centre;
        turned += std::atan2(cross(before, spoke), dot(before, spoke));
        before = spoke;
      }
      const Point last = points[s.end - 1] - s.centre;
      turned += std::atan2(cross(before, last), dot(before, last));
      bulge = std::tan(std::clamp(turned, -1.9 * kPi, 1.9 * kPi) / 4);
    }
    out.line.bulges.push_back(bulge);
  }
  return out;
}

Fitted fit(const Samples& samples, Fitted start, const Held& held, const Allowed& allowed) {
  for (int round = 0; round < kRounds; ++round) {
    start.line = settled(samples, start.from, start.line, held);
    if (!deal_out(samples, start.line, held, start.from)) break;
  }
  measure(samples, allowed, start);
  return start;
}

}  // namespace arrisline
