// The least greatest distance, by steps: near a line the distances at points of it and of the drawn one are
// straight functions of the figures that are free, and the step is the one that makes the greatest of these
// least, a long step costing something. Shown by tests/plan/redrawn_nearer_test.cpp.
#include "plan/redrawn_nearer.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <utility>

namespace arrisline {
namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr int kPerEdge = 24;       // points of an edge that are looked at
constexpr int kSteps = 40;         // at most
constexpr double kSmall = 1e-6;    // mm, by which a figure is moved to see what comes of it
constexpr double kSettled = 1e-3;  // share of the departure: a step that promises less is none
constexpr double kExact = 1e-9;    // of what is held
constexpr double kLevel = 1e-3;    // radians: an arc runs level into a side

/// Where a point is looked at: a share of an edge, counted without the sides of the stock.
struct Place {
  std::size_t edge = 0;
  double share = 0;
};

class Nearer {
 public:
  Nearer(const ChainLine& chain, const FlatsAndArcs& line, const Held& held, double thickness, double allow)
      : held_(held),
        thickness_(thickness),
        allow_(allow),
        drawn_(with_sides(chain.line, thickness)),
        line_(line) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      for (int k = 0; k <= kPerEdge; ++k) {
        places_.push_back({i, static_cast<double>(k) / kPerEdge});
        points_.push_back(point_at(drawn_[i + 1], places_.back().share));
      }
    }
    find_level();
    find_free();
  }

  std::optional<FlatsAndArcs> put_to_held() const { return moved_by(Vector::Zero(free_), slopes_of_held()); }

  std::optional<FlatsAndArcs> found() {
    std::optional<FlatsAndArcs> begun = put_to_held();
    if (!begun) return std::nullopt;
    line_ = std::move(*begun);
    double reach = 0;
    std::vector<double> far = distances(line_);
    double most = *std::max_element(far.begin(), far.end());
    if (most == 0 || free_ == 0) return line_;
    for (int step = 0; step < kSteps; ++step) {
      const Matrix slopes = slopes_of_held();
      Eigen::FullPivLU<Matrix> lu(slopes);
      lu.setThreshold(1e-7);
      const Matrix ways = slopes.rows() == 0 ? Matrix::Identity(free_, free_) : orthonormal(lu);
      if (ways.cols() == 0) break;
      std::vector<std::size_t> great;
      for (std::size_t i = 0; i < far.size(); ++i)
        if (far[i] > most / 2) great.push_back(i);
      const Matrix gradients = gradients_of(great, far, ways);
      if (reach == 0) reach = most;
      bool moved = false;
      for (int tries = 0; tries < 8 && !moved; ++tries) {
        const auto [along, promised] = best_step(great, far, gradients, reach);
        if (most - promised < kSettled * most) return line_;
        std::optional<FlatsAndArcs> next = moved_by(ways * along, slopes);
        std::vector<double> then;
        double now = most;
        if (next) {
          then = distances(*next);
          now = *std::max_element(then.begin(), then.end());
        }
        if (most - now > 0.2 * (most - promised)) {
          if (most - now > 0.6 * (most - promised)) reach *= 3;
          line_ = std::move(*next);
          far = std::move(then);
          most = now;
          moved = true;
        } else {
          reach *= 0.3;
        }
      }
      if (!moved) break;
    }
    return line_;
  }

 private:
  /// Which coordinates move as one, and which not at all.
  void find_free() {
    const std::size_t joints = line_.joints.size();
    std::vector<std::size_t> same(2 * joints);
    for (std::size_t i = 0; i < same.size(); ++i) same[i] = i;
    // Ties run from joint to joint, so the first of those tied stands for all.
    for (std::size_t i = 0; i < line_.size(); ++i) {
      if (held_.axis[i] == Held::Axis::level) same[2 * i + 3] = same[2 * i + 1];
      if (held_.axis[i] == Held::Axis::upright) same[2 * i + 2] = same[2 * i];
    }
    std::vector<std::optional<double>> fixed(same.size());
    for (std::size_t j = 0; j < joints; ++j) {
      if (held_.x[j]) fixed[same[2 * j]] = held_.x[j];
      if (held_.y[j]) fixed[same[2 * j + 1]] = held_.y[j];
    }
    for (std::size_t j = 0; j < joints; ++j) {
      if (fixed[same[2 * j]]) line_.joints[j].x = *fixed[same[2 * j]];
      if (fixed[same[2 * j + 1]]) line_.joints[j].y = *fixed[same[2 * j + 1]];
    }
    std::vector<int> number(same.size(), -1);
    for (std::size_t i = 0; i < same.size(); ++i)
      if (same[i] == i && !fixed[i]) number[i] = free_++;
    for (const std::size_t first : same) figure_.push_back(number[first]);
  }

  /// Whether the arc at an end of the line runs level into the side of the stock that it ends on.
  void find_level() {
    for (const bool start : {true, false}) {
      const std::size_t j = start ? 0 : line_.size();
      const Edge edge = edge_of(line_, start ? 0 : line_.size() - 1);
      if (!edge.is_arc()) continue;
      const Point along = direction_at(edge, start ? 0 : 1);
      if (held_.y[j] && std::abs(along.y) < kLevel) level_.push_back({start, true});
      if (held_.x[j] && std::abs(along.x) < kLevel) level_.push_back({start, false});
    }
  }

  FlatsAndArcs line_with(const Vector& by) const {
    FlatsAndArcs out = line_;
    for (std::size_t j = 0; j < out.joints.size(); ++j) {
      if (figure_[2 * j] >= 0) out.joints[j].x += by(figure_[2 * j]);
      if (figure_[2 * j + 1] >= 0) out.joints[j].y += by(figure_[2 * j + 1]);
    }
    for (std::size_t i = 0; i < out.size(); ++i) {
      if (out.bulges[i] == 0 || !held_.radius[i]) continue;
      const double sine = distance(out.joints[i], out.joints[i + 1]) / 2 / *held_.radius[i];
      const double less = 2 * std::asin(std::min(1.0, sine));
      const double swept = std::abs(line_.bulges[i]) > 1 ? 2 * kPi - less : less;
      out.bulges[i] = std::copysign(std::tan(swept / 4), line_.bulges[i]);
    }
    return out;
  }

  /// What has to be 0 besides.
  Vector off_held(const FlatsAndArcs& line) const {
    std::vector<double> out;
    for (std::size_t i = 0; i < line.size(); ++i) {
      const double chord = distance(line.joints[i], line.joints[i + 1]);
      if (held_.chord[i]) out.push_back(chord - *held_.chord[i]);
      // A half-round stays one.
      if (held_.radius[i] && std::abs(std::abs(line_.bulges[i]) - 1) < 1e-3)
        out.push_back(chord - 2 * *held_.radius[i]);
      if (i > 0 && held_.smooth[i])
        out.push_back(cross(direction_at(edge_of(line, i - 1), 1), direction_at(edge_of(line, i), 0)));
    }
    for (const auto& [start, face] : level_) {
      const Point along = direction_at(edge_of(line, start ? 0 : line.size() - 1), start ? 0 : 1);
      out.push_back(face ? along.y : along.x);
    }
    return Eigen::Map<const Vector>(out.data(), static_cast<Eigen::Index>(out.size()));
  }

  Matrix slopes_of_held() const {
    const Vector here = off_held(line_);
    Matrix out(here.size(), free_);
    for (int k = 0; k < free_; ++k)
      out.col(k) = (off_held(line_with(kSmall * Vector::Unit(free_, k))) - here) / kSmall;
    return out;
  }

  static Matrix orthonormal(const Eigen::FullPivLU<Matrix>& lu) {
    if (lu.dimensionOfKernel() == 0) return Matrix(lu.cols(), 0);
    const Matrix kernel = lu.kernel();
    return Eigen::HouseholderQR<Matrix>(kernel).householderQ() *
           Matrix::Identity(kernel.rows(), kernel.cols());
  }

  double distance_at(std::size_t i, const FlatsAndArcs& line, const std::vector<Edge>& edges) const {
    if (i < points_.size()) return distance(points_[i], edges);
    const Place& place = places_[i - points_.size()];
    return distance(point_at(edge_of(line, place.edge), place.share), drawn_);
  }

  /// Of the points of the drawn line, then of those of the other.
  std::vector<double> distances(const FlatsAndArcs& line) const {
    const std::vector<Edge> edges = with_sides(line, thickness_);
    std::vector<double> out;
    for (std::size_t i = 0; i < points_.size() + places_.size(); ++i)
      out.push_back(distance_at(i, line, edges));
    return out;
  }

  Matrix gradients_of(const std::vector<std::size_t>& great, const std::vector<double>& far,
                      const Matrix& ways) const {
    Matrix out(ways.cols(), static_cast<Eigen::Index>(great.size()));
    for (Eigen::Index k = 0; k < ways.cols(); ++k) {
      const FlatsAndArcs line = line_with(kSmall * ways.col(k));
      const std::vector<Edge> edges = with_sides(line, thickness_);
      for (std::size_t i = 0; i < great.size(); ++i)
        out(k, static_cast<Eigen::Index>(i)) = (distance_at(great[i], line, edges) - far[great[i]]) / kSmall;
    }
    return out;
  }

  /// The step that makes the greatest distance least, its square over twice the reach added, and that
  /// distance. Its direction is a mean of the gradients; weight goes from those that have it to the one whose
  /// distance is then greatest.
  static std::pair<Vector, double> best_step(const std::vector<std::size_t>& great,
                                             const std::vector<double>& far, const Matrix& gradients,
                                             double reach) {
    const Eigen::Index n = gradients.cols();
    Vector value(n);
    for (Eigen::Index i = 0; i < n; ++i) value(i) = far[great[static_cast<std::size_t>(i)]];
    Vector weights = Vector::Zero(n);
    Eigen::Index top = 0;
    const double most = value.maxCoeff(&top);
    weights(top) = 1;
    Vector step = -reach * gradients.col(top);
    constexpr int kTimes = 400;
    for (int k = 0; k < kTimes; ++k) {
      const Vector then = value + gradients.transpose() * step;
      then.maxCoeff(&top);
      Eigen::Index low = top;
      for (Eigen::Index i = 0; i < n; ++i)
        if (weights(i) > 0 && then(i) < then(low)) low = i;
      const double gap = then(top) - then(low);
      if (gap < 1e-4 * most) break;
      const Vector apart = gradients.col(top) - gradients.col(low);
      const double part = std::min(weights(low), gap / std::max(1e-12, reach * apart.squaredNorm()));
      weights(top) += part;
      weights(low) -= part;
      if (weights(low) < 1e-12) weights(low) = 0;
      step -= reach * part * apart;
    }
    return {step, (value + gradients.transpose() * step).maxCoeff()};
  }

  /// The line moved so, and back to what is held. Nothing where it does not come back to it.
  std::optional<FlatsAndArcs> moved_by(Vector by, const Matrix& slopes) const {
    if (slopes.rows() > 0 && free_ == 0) {
      if (off_held(line_with(by)).cwiseAbs().maxCoeff() > kSmall) return std::nullopt;
    } else if (slopes.rows() > 0) {
      const Eigen::CompleteOrthogonalDecomposition<Matrix> back(slopes);
      bool held = false;
      for (int k = 0; k < 12 && !held; ++k) {
        const Vector off = off_held(line_with(by));
        held = off.cwiseAbs().maxCoeff() < kExact;
        if (!held) by -= back.solve(off);
      }
      if (!held) return std::nullopt;
    }
    FlatsAndArcs out = line_with(by);
    for (std::size_t i = 0; i < out.size(); ++i) {
      const Point before = line_.joints[i + 1] - line_.joints[i];
      const Point after = out.joints[i + 1] - out.joints[i];
      if (dot(before, after) <= 0) return std::nullopt;
    }
    if (!put_in_blank(out, held_, allow_)) return std::nullopt;
    return out;
  }

  const Held& held_;
  double thickness_;
  double allow_;
  std::vector<Edge> drawn_;
  FlatsAndArcs line_;
  std::vector<Place> places_;
  std::vector<Point> points_;  // of the drawn line
  std::vector<int> figure_;    // of each joint's x and y: which free figure it is, or −1
  int free_ = 0;
  std::vector<std::pair<bool, bool>> level_;  // at the start; into the face or the underside
};

}  // namespace

std::optional<FlatsAndArcs> held_line(const ChainLine& chain, const FlatsAndArcs& line, const Held& held,
                                      double thickness, double allow) {
  return Nearer(chain, line, held, thickness, allow).put_to_held();
}

std::optional<FlatsAndArcs> nearer_line(const ChainLine& chain, const FlatsAndArcs& line, const Held& held,
                                        double thickness, double allow) {
  return Nearer(chain, line, held, thickness, allow).found();
}

}  // namespace arrisline
