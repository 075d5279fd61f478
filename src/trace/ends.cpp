// Shown by tests/trace/round_trip_test.cpp.
#include "trace/ends.h"

#include <algorithm>
#include <cmath>

#include "section/walk.h"

namespace arrisline {

namespace {

using Axis = Held::Axis;

constexpr double kStub = 3;  // mm of a side that is put to a line's end
constexpr std::size_t kStubSamples = 12;

/// Puts a piece of a side of the blank before the line, or after it.
void put_stub(Samples& samples, Fitted& fitted, bool before, Point along) {
  const Point end = before ? fitted.line.joints.front() : fitted.line.joints.back();
  std::vector<Point> stub;
  // From the end on, so that the joint is held where the line ends: an arc that meets the side smoothly would
  // slide along it.
  for (std::size_t i = 0; i <= kStubSamples; ++i)
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

}  // namespace

bool runs(const Samples& samples, const Fitted& fitted, std::size_t link, Held::Axis axis,
          const Allowed& allowed) {
  const Edge edge = edge_of(fitted.line, link);
  if (edge.is_arc()) return false;
  const Point along = edge.to - edge.from;
  const double off = std::abs(axis == Axis::level ? along.y : along.x);
  const auto count =
      static_cast<double>(std::max<std::size_t>(1, distances_of(samples, fitted, link).size()));
  return off < 0.2 * norm(along) && off < 2 * (allowed.tolerance + 6 * allowed.scatter / std::sqrt(count));
}

TracedEnds ends_of(const Samples& samples, const Fitted& fitted, Reached reached, const Allowed& allowed) {
  TracedEnds out;
  out.closed = reached == Reached::start;
  out.flute = reached == Reached::face;
  if (out.closed) return out;
  const Reach extent = extent_of(fitted.line);
  const double slack = 2 * allowed.tolerance + 4 * allowed.scatter;
  out.from_back = !out.flute && extent.low.y < fitted.line.joints.front().y - slack;
  out.to_underside = !out.flute && extent.low.x < fitted.line.joints.back().x - slack;
  const std::size_t last = fitted.line.size() - 1;
  const Edge begin = edge_of(fitted.line, 0);
  const Edge end = edge_of(fitted.line, last);
  out.face_traced = last > 0 && !out.from_back && runs(samples, fitted, 0, Axis::level, allowed) &&
                    begin.to.x < begin.from.x;
  const bool level = out.flute || out.to_underside;
  const bool onward = out.to_underside ? end.to.x > end.from.x
                      : out.flute      ? end.to.x < end.from.x
                                       : end.to.y > end.from.y;
  out.edge_traced =
      last > 0 && onward && runs(samples, fitted, last, level ? Axis::level : Axis::upright, allowed);
  return out;
}

void put_stubs(Samples& samples, Fitted& fitted, const TracedEnds& ends) {
  if (ends.closed) return;
  if (!ends.face_traced) put_stub(samples, fitted, true, ends.from_back ? Point{0, -1} : Point{1, 0});
  if (!ends.edge_traced)
    put_stub(samples, fitted, false,
             ends.to_underside ? Point{1, 0}
             : ends.flute      ? Point{-1, 0}
                               : Point{0, 1});
}

void close_round(Section& section, const TracedEnds& ends) {
  const Point begin = section.target.front().from;
  std::vector<Point> corners;
  if (!ends.from_back) corners.push_back({section.width, 0});
  corners.push_back({section.width, section.thickness});
  if (!ends.to_underside) corners.push_back({0, section.thickness});
  if (ends.flute) corners.push_back({0, 0});
  corners.push_back(begin);
  for (const Point corner : corners) {
    const Point from = section.target.back().to;
    if (distance(from, corner) < 1e-6) continue;
    section.target.push_back({from, corner, {}, Turn::straight});
    section.source.push_back(-1);
  }
}

}  // namespace arrisline
