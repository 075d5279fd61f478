// The sides of the blank that the tracing shows, or that its ends must lie on, are held as levels from the
// start; what lies on them is the blank's own outline, the rest is work. Shown by
// tests/trace/round_trip_test.cpp.
#include "trace/to_section.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "section/walk.h"
#include "trace/frame.h"

namespace arrisline {
namespace {

using Axis = Held::Axis;

constexpr double kStub = 3;  // mm of a side that is put to a line's end
constexpr std::size_t kStubSamples = 12;
constexpr double kSpare = 6.35;       // mm of stock beyond work whose far side was not traced
constexpr double kSpareStep = 3.175;  // and rounded up to a multiple of this

struct Extent {
  Point low;
  Point high;
};

Extent extent_of(const FlatsAndArcs& line) {
  Extent out{line.joints.front(), line.joints.front()};
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Reach reach = reach_of(edge_of(line, i));
    out.low = {std::min(out.low.x, reach.low.x), std::min(out.low.y, reach.low.y)};
    out.high = {std::max(out.high.x, reach.high.x), std::max(out.high.y, reach.high.y)};
  }
  return out;
}

/// Whether a link is, by the samples, level or upright.
bool runs(const Samples& samples, const Fitted& fitted, std::size_t link, Axis axis, const Allowed& allowed) {
  const Edge edge = edge_of(fitted.line, link);
  if (edge.is_arc()) return false;
  const Point along = edge.to - edge.from;
  const double off = std::abs(axis == Axis::level ? along.y : along.x);
  const auto count =
      static_cast<double>(std::max<std::size_t>(1, distances_of(samples, fitted, link).size()));
  return off < 0.2 * norm(along) && off < 2 * (allowed.tolerance + 6 * allowed.scatter / std::sqrt(count));
}

/// Puts a piece of a side of the blank before the line, or after it.
void put_stub(Samples& samples, Fitted& fitted, bool before, Point along) {
  const Point end = before ? fitted.line.joints.front() : fitted.line.joints.back();
  std::vector<Point> stub;
  for (std::size_t i = 1; i <= kStubSamples; ++i)
    stub.push_back(end + (kStub * static_cast<double>(i) / static_cast<double>(kStubSamples)) * along);
  if (before) {
    std::reverse(stub.begin(), stub.end());
    samples.points.insert(samples.points.begin(), stub.begin(), stub.end());
    samples.filled.insert(samples.filled.begin(), stub.size(), true);
    for (std::size_t& at : fitted.from) at += stub.size();
    fitted.from.insert(fitted.from.begin(), 0);
    fitted.line.joints.insert(fitted.line.joints.begin(), stub.front());
    fitted.line.bulges.insert(fitted.line.bulges.begin(), 0);
  } else {
    samples.points.insert(samples.points.end(), stub.begin(), stub.end());
    samples.filled.insert(samples.filled.end(), stub.size(), true);
    fitted.from.push_back(samples.points.size());
    fitted.line.joints.push_back(stub.back());
    fitted.line.bulges.push_back(0);
  }
}

/// The figures that are held exactly, as the fit has them to a millionth.
void make_exact(Fitted& fitted, const Held& held) {
  FlatsAndArcs& line = fitted.line;
  for (std::size_t i = 0; i < line.size(); ++i) {
    // A level or upright flat without a held level: both ends at their mean.
    if (held.axis[i] == Axis::level) {
      const double y = held.y[i] ? *held.y[i] : held.y[i + 1] ? *held.y[i + 1] : line.joints[i].y;
      line.joints[i].y = line.joints[i + 1].y = y;
    } else if (held.axis[i] == Axis::upright) {
      const double x = held.x[i] ? *held.x[i] : held.x[i + 1] ? *held.x[i + 1] : line.joints[i].x;
      line.joints[i].x = line.joints[i + 1].x = x;
    }
  }
  for (std::size_t j = 0; j < line.joints.size(); ++j) {
    if (held.x[j]) line.joints[j].x = *held.x[j];
    if (held.y[j]) line.joints[j].y = *held.y[j];
  }
}

/// Link i as an edge of the section; the radius exactly the one that is held.
Edge exact_edge(const FlatsAndArcs& line, const Held& held, std::size_t i) {
  const Edge edge = edge_of(line, i);
  if (!edge.is_arc()) return edge;
  const double r = held.radius[i] ? *held.radius[i] : radius(edge);
  return edge_between(edge.from, edge.to, edge.turn, r, std::abs(sweep(edge)) > kPi);
}

/// As the section has it: its edges run the other way, the wood to their left.
std::string name_of(const Edge& edge) {
  if (edge.is_arc()) return edge.turn == Turn::left ? "bead" : "cove";
  if (edge.from.x == edge.to.x) return "step";
  if (edge.from.y == edge.to.y) return "fillet";
  return "bevel";
}

double rounded_up(double value) {
  return kSpareStep * std::ceil((value + kSpare) / kSpareStep - 1e-9);
}

double greatest_mean(const std::vector<double>& distances, double scatter) {
  if (scatter == 0 || distances.size() < 4) {
    double most = 0;
    for (const double d : distances) most = std::max(most, std::abs(d));
    return most;
  }
  const std::size_t width = std::max<std::size_t>(4, distances.size() / 8);
  double sum =
      std::accumulate(distances.begin(), distances.begin() + static_cast<std::ptrdiff_t>(width), 0.0);
  double most = std::abs(sum);
  for (std::size_t i = width; i < distances.size(); ++i) {
    sum += distances[i] - distances[i - width];
    most = std::max(most, std::abs(sum));
  }
  return most / static_cast<double>(width);
}

}  // namespace

std::optional<FittedProfile> to_section(Samples samples, Fitted fitted, Reached reached,
                                        const SnapOptions& snapping, const FitOptions& options,
                                        const Allowed& allowed, FittedProfile out, std::string* why) {
  const bool closed = reached == Reached::start;
  const bool flute = reached == Reached::face;
  bool face_traced = true, edge_traced = true;
  bool from_back = false, to_underside = false;
  if (!closed) {
    const Extent extent = extent_of(fitted.line);
    const double slack = 2 * allowed.tolerance + 4 * allowed.scatter;
    from_back = !flute && extent.low.y < fitted.line.joints.front().y - slack;
    to_underside = !flute && extent.low.x < fitted.line.joints.back().x - slack;
    const Edge first = edge_of(fitted.line, 0);
    const Edge last = edge_of(fitted.line, fitted.line.size() - 1);
    face_traced = fitted.line.size() > 1 && !from_back && runs(samples, fitted, 0, Axis::level, allowed) &&
                  first.to.x < first.from.x;
    edge_traced = fitted.line.size() > 1 && !to_underside &&
                  runs(samples, fitted, fitted.line.size() - 1, Axis::upright, allowed) &&
                  last.to.y > last.from.y;
    if (!face_traced) put_stub(samples, fitted, true, from_back ? Point{0, -1} : Point{1, 0});
    if (!edge_traced)
      put_stub(samples, fitted, false, to_underside ? Point{1, 0} : flute ? Point{-1, 0} : Point{0, 1});
  }

  const std::size_t links = fitted.line.size();
  Held held(links);
  if (closed) {
    held.axis[0] = std::abs(fitted.line.joints[1].x - fitted.line.joints[0].x) >
                           std::abs(fitted.line.joints[1].y - fitted.line.joints[0].y)
                       ? Axis::level
                       : Axis::upright;
    held.axis[links - 1] = held.axis[0] == Axis::level ? Axis::upright : Axis::level;
  } else {
    held.axis[0] = from_back ? Axis::upright : Axis::level;
    held.axis[links - 1] = to_underside || flute ? Axis::level : Axis::upright;
  }
  fitted = fit(samples, fitted, held, allowed);
  const Extent extent = extent_of(fitted.line);
  const bool short_of_edge = flute && !edge_traced;
  const Point origin = {short_of_edge                     ? fitted.line.joints[links - 1].x - kSpare
                        : closed || flute || to_underside ? extent.low.x
                                                          : fitted.line.joints.back().x,
                        closed || from_back ? extent.low.y : fitted.line.joints.front().y};
  shift(samples, fitted, {-origin.x, -origin.y});
  if (closed) {
    // The corner where the line begins and ends, by the two flats that meet there.
    const Point one = fitted.line.joints.front();
    const Point other = fitted.line.joints.back();
    const bool level = held.axis[0] == Axis::level;
    held.x[0] = held.x[links] = level ? other.x : one.x;
    held.y[0] = held.y[links] = level ? one.y : other.y;
  } else {
    if (!from_back) held.y[0] = held.y[1] = 0;
    if (flute) held.y[links] = held.y[links - 1] = 0;
    if (!to_underside && !flute) held.x[links] = held.x[links - 1] = 0;
  }
  snap(samples, fitted, held, snapping, allowed);
  make_exact(fitted, held);

  // The blank.
  const Extent whole = extent_of(fitted.line);
  const FlatsAndArcs& line = fitted.line;
  Section& section = out.section;
  out.traced_width = closed || face_traced || from_back;
  out.traced_thickness = closed || to_underside || (edge_traced && !flute);
  auto to_division = [&](double value) {
    if (snapping.division <= 0) return value;
    const double near = snapping.division * std::round(value / snapping.division);
    return std::abs(near - value) <= allowed.tolerance + allowed.scatter ? near : value;
  };
  const double right = closed        ? whole.high.x
                       : from_back   ? line.joints.front().x
                       : face_traced ? whole.high.x
                                     : line.joints[1].x;
  const double below = closed         ? whole.high.y
                       : to_underside ? line.joints.back().y
                       : edge_traced  ? whole.high.y
                                      : line.joints[links - 1].y;
  section.width = options.width      ? *options.width
                  : out.traced_width ? std::max(to_division(right), right)
                                     : rounded_up(right);
  section.thickness = options.thickness      ? *options.thickness
                      : out.traced_thickness ? std::max(to_division(below), below)
                                             : rounded_up(below);
  if (right > section.width + kOnOutline || below > section.thickness + kOnOutline) {
    *why = "the tracing is larger than the stock given";
    return std::nullopt;
  }
  const double width = section.width;
  const double thickness = section.thickness;

  auto on_side = [&](const Edge& e) {
    const bool upright = e.from.x == e.to.x && (e.from.x == 0 || e.from.x == width);
    const bool level = e.from.y == e.to.y && (e.from.y == 0 || e.from.y == thickness);
    return !e.is_arc() && (upright || level);
  };
  const std::size_t first = closed ? 0 : 1;
  const std::size_t end = closed ? links : links - 1;
  for (std::size_t i = first; i < end; ++i) {
    const Edge edge = exact_edge(line, held, i);
    if (distance(edge.from, edge.to) < 1e-6) continue;
    int source = -1;
    if (!on_side(edge)) {
      source = static_cast<int>(section.elements.size());
      section.elements.push_back({source + 1, 0, Chain::face, name_of(reversed(edge)), 0});
      const std::vector<double> distances = distances_of(samples, fitted, i);
      FitOfElement element;
      element.element = source;
      element.points = distances.size();
      element.greatest = greatest_mean(distances, allowed.scatter);
      const double squares = std::inner_product(distances.begin(), distances.end(), distances.begin(), 0.0);
      if (!distances.empty())
        element.mean_square = std::sqrt(squares / static_cast<double>(distances.size()));
      out.fits.push_back(element);
    }
    section.target.push_back(edge);
    section.source.push_back(source);
  }
  if (out.fits.empty()) {
    *why = "there is no moulding in it: what is traced is flat";
    return std::nullopt;
  }
  std::reverse(section.target.begin(), section.target.end());
  std::reverse(section.source.begin(), section.source.end());
  for (Edge& edge : section.target) edge = reversed(edge);
  if (!closed) {
    const Point begin = section.target.front().from;
    std::vector<Point> corners;
    if (!from_back) corners.push_back({width, 0});
    corners.push_back({width, thickness});
    if (!to_underside) corners.push_back({0, thickness});
    if (flute) corners.push_back({0, 0});
    corners.push_back(begin);
    for (const Point corner : corners) {
      const Point from = section.target.back().to;
      if (distance(from, corner) < 1e-6) continue;
      section.target.push_back({from, corner, {}, Turn::straight});
      section.source.push_back(-1);
    }
  }
  return out;
}

}  // namespace arrisline
