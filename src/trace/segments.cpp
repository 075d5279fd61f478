// Every stretch between two places is tried as a flat and as an arc; a shortest path over the places then has
// the fewest of those that follow. Shown by tests/trace/round_trip_test.cpp.
#include "trace/segments.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

namespace arrisline {
namespace {

constexpr std::size_t kPlaces = 400;
constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();

/// Sums over a run of points, taken about its first point so that short runs keep their figures.
class Moments {
 public:
  explicit Moments(Point about) : about_(about) {}

  void add(Point p) {
    const double x = p.x - about_.x;
    const double y = p.y - about_.y;
    const double z = x * x + y * y;
    n_ += 1;
    x_ += x, y_ += y, z_ += z;
    xx_ += x * x, xy_ += x * y, yy_ += y * y;
    xz_ += x * z, yz_ += y * z, zz_ += z * z;
  }

  /// The straight line of least squared distance: a point of it and its unit normal.
  void line(Point& through, Point& normal) const {
    const double mx = x_ / n_;
    const double my = y_ / n_;
    const double angle =
        std::atan2(2 * (xy_ / n_ - mx * my), (xx_ / n_ - mx * mx) - (yy_ / n_ - my * my)) / 2;
    through = {about_.x + mx, about_.y + my};
    normal = {-std::sin(angle), std::cos(angle)};
  }

  /// The circle by Taubin's measure (G. Taubin, IEEE PAMI 13, 1991), which is all but free of the bias toward
  /// small radii on short noisy arcs. Nothing where the points are straight.
  bool circle(Point& centre, double& radius) const {
    const double mx = x_ / n_;
    const double my = y_ / n_;
    const double xx = xx_ / n_ - mx * mx;
    const double xy = xy_ / n_ - mx * my;
    const double yy = yy_ / n_ - my * my;
    const double zm = xx + yy;  // the mean of z about the mean point
    if (!(zm > 0)) return false;
    // z, moved to the mean point: z' = z − 2 mx x − 2 my y + mx² + my²
    const double mm = mx * mx + my * my;
    const double xz = (xz_ - 2 * mx * xx_ - 2 * my * xy_) / n_ + mm * mx - mx * (zm);
    const double yz = (yz_ - 2 * mx * xy_ - 2 * my * yy_) / n_ + mm * my - my * (zm);
    const double zz = (zz_ + 4 * mx * mx * xx_ + 4 * my * my * yy_ - 4 * mx * xz_ - 4 * my * yz_ +
                       8 * mx * my * xy_ + 2 * mm * z_ - 4 * mm * mx * x_ - 4 * mm * my * y_) /
                          n_ +
                      mm * mm - zm * zm;
    const double scale = 1 / (2 * std::sqrt(zm));
    Eigen::Matrix3d matrix;
    matrix << zz * scale * scale, xz * scale, yz * scale,  //
        xz * scale, xx, xy,                                //
        yz * scale, xy, yy;
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix3d> solver(matrix);
    if (solver.info() != Eigen::Success) return false;
    const Eigen::Vector3d v = solver.eigenvectors().col(0);
    const double a = v(0) * scale;
    if (std::abs(a) < 1e-12) return false;
    const double d = -zm * a;
    const double x = -v(1) / (2 * a);
    const double y = -v(2) / (2 * a);
    radius = std::sqrt(x * x + y * y - d / a);
    centre = {about_.x + mx + x, about_.y + my + y};
    return std::isfinite(radius) && std::isfinite(x) && std::isfinite(y);
  }

 private:
  Point about_;
  double n_ = 0, x_ = 0, y_ = 0, z_ = 0, xx_ = 0, xy_ = 0, yy_ = 0, xz_ = 0, yz_ = 0, zz_ = 0;
};

bool is_corner(const Samples& samples, std::size_t i) {
  const Point in = samples.points[i] - samples.points[i - 1];
  const Point on = samples.points[i + 1] - samples.points[i];
  return std::abs(std::atan2(cross(in, on), dot(in, on))) > kDrawnCorner;
}

/// Places where a segment may end, as indices into the samples, 0 and their number included.
std::vector<std::size_t> places_of(const Samples& samples) {
  const std::size_t count = samples.points.size();
  std::vector<std::size_t> out;
  const double step = std::max(1.0, static_cast<double>(count) / kPlaces);
  for (double at = 0; at < static_cast<double>(count); at += step)
    out.push_back(static_cast<std::size_t>(at));
  if (samples.scatter == 0) {
    for (std::size_t i = 1; i + 1 < count; ++i) {
      if (is_corner(samples, i)) out.push_back(i), out.push_back(i + 1);
    }
  }
  for (std::size_t i = 1; i < count; ++i)
    if (samples.filled[i] != samples.filled[i - 1]) out.push_back(i);
  out.push_back(count);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

struct Found {
  Segment segment;
  double cost = 0;  // of its distances, its figures and, for samples that scatter, its break
};

/// How far points stray that no segment with this run in it can follow: the run is not grown further.
constexpr double kHopeless = 2;

// What is hardly longer than it scatters wide is a cloud. A small circle in it lies nearer to its points than
// the line that they scatter about.
constexpr double kShortestArc = 10;  // standard deviations
constexpr double kLeastRadius = 5;

class Stretches {
 public:
  Stretches(const Samples& samples, const Allowed& allowed, bool any_length)
      : samples_(samples),
        allowed_(allowed),
        unit_(any_length ? 0 : allowed.scatter),
        variance_(variance_of(allowed)),
        figure_(figure_cost(samples.points.size())) {}

  /// The flat, else the arc, that follows the run; `stray` is the least greatest distance of either.
  std::optional<Found> best(const Moments& moments, std::size_t first, std::size_t end, double& stray) {
    const double long_ = static_cast<double>(end - first) * samples_.spacing;
    Point through, normal;
    moments.line(through, normal);
    std::optional<Found> found;
    stray = std::numeric_limits<double>::infinity();
    if (const auto squares = measure(first, end, stray, [&](Point p) { return dot(p - through, normal); })) {
      found = Found{{first, end, false, {}, 0}, *squares / variance_ + 2 * figure_};
    }
    Point centre;
    double radius = 0;
    if (end - first < 4 || long_ < kShortestArc * unit_ || !moments.circle(centre, radius) ||
        radius < kLeastRadius * unit_)
      return found;
    const auto squares = measure(first, end, stray, [&](Point p) { return norm(p - centre) - radius; });
    if (!squares) return found;
    const double cost = *squares / variance_ + 3 * figure_;
    if (found && found->cost <= cost) return found;
    return Found{{first, end, true, centre, radius}, cost};
  }

 private:
  template <class Distance>
  std::optional<double> measure(std::size_t first, std::size_t end, double& stray, const Distance& of) {
    distances_.clear();
    double squares = 0;
    double most = 0;
    for (std::size_t i = first; i < end; ++i) {
      const double d = of(samples_.points[i]);
      most = std::max(most, std::abs(d));
      if (samples_.filled[i]) continue;
      distances_.push_back(d);
      squares += d * d;
    }
    stray = std::min(stray, most);
    if (most > allowed_.single() || !follows(distances_, allowed_)) return std::nullopt;
    return squares;
  }

  const Samples& samples_;
  Allowed allowed_;
  double unit_;  // of the shortest lengths, mm
  double variance_;
  double figure_;
  std::vector<double> distances_;
};

}  // namespace

double Allowed::mean_of(std::size_t count) const {
  return tolerance + kScatters * scatter / std::sqrt(static_cast<double>(count));
}

std::size_t corners_of(const Samples& samples) {
  std::size_t out = 0;
  for (std::size_t i = 1; i + 1 < samples.points.size(); ++i) out += is_corner(samples, i) ? 1 : 0;
  return out;
}

double figure_cost(std::size_t samples) {
  return std::log(static_cast<double>(samples));
}

double variance_of(const Allowed& allowed) {
  const double half = allowed.tolerance / 2;
  return allowed.scatter * allowed.scatter + half * half;
}

double chance_of(double figures, std::size_t samples, const Allowed& allowed) {
  return 1.5 * figures * figure_cost(samples) * variance_of(allowed);
}

double share_of(const std::vector<double>& distances, const Allowed& allowed) {
  double most = 0;
  for (const double d : distances) most = std::max(most, std::abs(d) / allowed.single());
  if (allowed.scatter == 0) return most;
  // Over stretches of a quarter of the segment and less the scatter averages out, and what stays is a
  // departure.
  for (std::size_t width = distances.size() / 4; width >= 4; width /= 2) {
    const double limit = allowed.mean_of(width) * static_cast<double>(width);
    double sum =
        std::accumulate(distances.begin(), distances.begin() + static_cast<std::ptrdiff_t>(width), 0.0);
    most = std::max(most, std::abs(sum) / limit);
    for (std::size_t i = width; i < distances.size(); ++i) {
      sum += distances[i] - distances[i - width];
      most = std::max(most, std::abs(sum) / limit);
    }
  }
  return most;
}

bool follows(const std::vector<double>& distances, const Allowed& allowed) {
  return share_of(distances, allowed) <= 1;
}

namespace {

constexpr std::size_t kEnough = 700;  // samples that segments are looked for in

/// The middle one of each so many samples.
Samples each_middle(const Samples& samples, std::size_t group) {
  Samples out;
  out.scatter = samples.scatter;
  out.spacing = samples.spacing * static_cast<double>(group);
  for (std::size_t i = 0; i < samples.points.size(); i += group) {
    const std::size_t middle = std::min(i + group / 2, samples.points.size() - 1);
    out.points.push_back(samples.points[middle]);
    out.filled.push_back(samples.filled[middle]);
  }
  return out;
}

Samples means(const Samples& samples, std::size_t group) {
  Samples out;
  out.scatter = samples.scatter / std::sqrt(static_cast<double>(group));
  out.spacing = samples.spacing * static_cast<double>(group);
  for (std::size_t i = 0; i < samples.points.size(); i += group) {
    const std::size_t end = std::min(samples.points.size(), i + group);
    Point sum;
    std::size_t filled = 0;
    for (std::size_t k = i; k < end; ++k) {
      sum = sum + samples.points[k];
      filled += samples.filled[k] ? 1 : 0;
    }
    out.points.push_back((1 / static_cast<double>(end - i)) * sum);
    out.filled.push_back(2 * filled > end - i);
  }
  return out;
}

std::vector<Segment> shortest_path(const Samples& samples, const Allowed& allowed, bool any_length) {
  const std::vector<std::size_t> places = places_of(samples);
  struct Best {
    std::size_t count = kNone;
    double cost = 0;
    std::size_t before = 0;
    Segment last;
  };
  std::vector<Best> best(places.size());
  best[0].count = 0;
  Stretches stretches(samples, allowed, any_length);
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    if (best[i].count == kNone) continue;
    Moments moments(samples.points[places[i]]);
    for (std::size_t j = i + 1; j < places.size(); ++j) {
      for (std::size_t p = places[j - 1]; p < places[j]; ++p) moments.add(samples.points[p]);
      if (places[j] - places[i] < 2 && places.size() > 2) continue;
      double stray = 0;
      const std::optional<Found> found = stretches.best(moments, places[i], places[j], stray);
      if (found) {
        Best& to = best[j];
        const std::size_t count = best[i].count + 1;
        const double cost = best[i].cost + found->cost + figure_cost(samples.points.size());
        const bool fewer = allowed.scatter == 0 && count != to.count;
        if (to.count == kNone || (fewer ? count < to.count : cost < to.cost))
          to = {count, cost, i, found->segment};
      } else if (stray > kHopeless * allowed.single()) {
        break;
      }
    }
  }
  std::vector<Segment> out;
  for (std::size_t at = places.size() - 1; at > 0 && best[at].count != kNone; at = best[at].before)
    out.push_back(best[at].last);
  std::reverse(out.begin(), out.end());
  return out;
}

}  // namespace

std::vector<Segment> fewest_segments(const Samples& samples, const Allowed& allowed) {
  // Of many samples the means of some neighbours tell as much, and scatter less.
  const std::size_t group = samples.scatter > 0 ? (samples.points.size() + kEnough - 1) / kEnough : 1;
  // Those of neighbours on both sides of a corner lie beside the line: where there is next to no scatter to
  // take off, and that is farther than the line may lie, one of the neighbours tells more.
  constexpr double kLittle = 0.2;  // of the tolerance
  const double cut = samples.spacing * static_cast<double>(group) / 4;
  const bool one = samples.scatter < kLittle * allowed.tolerance && cut > kLittle * allowed.tolerance;
  const Samples fewer = group == 1 ? samples : one ? each_middle(samples, group) : means(samples, group);
  const Allowed for_fewer{allowed.tolerance, fewer.scatter, allowed.rounded};
  std::vector<Segment> out = shortest_path(fewer, for_fewer, false);
  if (out.empty()) out = shortest_path(fewer, for_fewer, true);
  for (Segment& segment : out) {
    segment.first = std::min(segment.first * group, samples.points.size());
    segment.end = std::min(segment.end * group, samples.points.size());
  }
  return out;
}

}  // namespace arrisline
