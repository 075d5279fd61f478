// A line of flats and arcs joined end to end, fitted as a whole to samples of it.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "arrisline/geometry.h"
#include "section/walk.h"
#include "trace/samples.h"
#include "trace/segments.h"

namespace arrisline {

/// joints[i] and joints[i + 1] are the ends of link i, whose bulge is the tangent of a quarter of its sweep,
/// positive to the left; 0 for a flat. The joints may be anywhere, so every value is a line without gaps.
struct FlatsAndArcs {
  std::vector<Point> joints;
  std::vector<double> bulges;

  std::size_t size() const { return bulges.size(); }
};

Edge edge_of(const FlatsAndArcs& line, std::size_t link);
double bulge_of(const Edge& edge);
/// By how much the line turns at an inner joint, either way, in degrees.
double turn_at(const FlatsAndArcs& line, std::size_t joint);
/// The least and the greatest that the line reaches.
Reach extent_of(const FlatsAndArcs& line);
/// Signed distance of p from the endless line or the whole circle of the edge, positive to its left.
double offset_from(const Edge& edge, Point p);

/// What a fit has to keep to; for each link or joint.
struct Held {
  enum class Axis : unsigned char { free, level, upright };
  std::vector<Axis> axis;    // of each link; flats only
  std::vector<bool> smooth;  // of each joint: no corner there; the first and last never
  std::vector<bool> parted;  // of each joint: the samples stay with the links that they follow
  std::vector<std::optional<double>> radius;  // of each link; arcs only
  std::vector<std::optional<double>> chord;   // of each link: from end to end
  std::vector<std::optional<double>> x, y;    // of each joint

  explicit Held(std::size_t links)
      : axis(links, Axis::free),
        smooth(links + 1, false),
        parted(links + 1, false),
        radius(links),
        chord(links),
        x(links + 1),
        y(links + 1) {}
};

/// A line and the samples that each of its links follows: from[i] up to, but without, from[i + 1].
struct Fitted {
  FlatsAndArcs line;
  std::vector<std::size_t> from;
  double worst =
      0;  // greatest share of what is allowed that a link takes up; over 1 where one does not follow
  double squares = 0;  // sum of the squared distances, mm²
};

/// The line through segments as they were found, each fitted by itself: where the fit as a whole begins.
Fitted joined(const Samples& samples, const std::vector<Segment>& segments);

/// The line nearest to the samples (least squares, by Gauss and Newton with damping) that keeps to `held`.
Fitted fit(const Samples& samples, Fitted start, const Held& held, const Allowed& allowed);

/// Signed distances of the samples of a link from it, those filled in left out.
std::vector<double> distances_of(const Samples& samples, const Fitted& fitted, std::size_t link);

}  // namespace arrisline
