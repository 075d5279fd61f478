// The sides of the blank that the tracing shows, or that its ends must lie on, are held as levels from the
// start; what lies on them is the blank's own outline, the rest is work. Shown by
// tests/trace/round_trip_test.cpp.
#include "trace/to_section.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "section/contacts.h"
#include "section/walk.h"
#include "trace/chains.h"
#include "trace/ends.h"
#include "trace/exact.h"
#include "trace/frame.h"
#include "trace/left_out.h"

namespace arrisline {
namespace {

using Axis = Held::Axis;

constexpr double kSpare = 6.35;      // mm of stock beyond work whose far side was not traced
constexpr double kLeastWood = 1;     // that stands beside an undercut
constexpr double kInchStep = 3.175;  // and rounded up to a multiple of this, 1/8 in,
constexpr double kMetricStep = 1;    // or of this, where the gauge has no divisions of an inch

/// With wood to spare, and whole in the inches or millimetres that the gauge has its divisions of.
double stock_for(double work, double division) {
  const double sixty_fourths = division / (kMmPerInch / 64);
  const bool inches = std::abs(sixty_fourths - std::round(sixty_fourths)) < 1e-6;
  const double step = inches ? kInchStep : kMetricStep;
  return step * std::ceil((work + kSpare) / step - 1e-9);
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

/// Lays the line into its section, step by step.
class Placing {
 public:
  Placing(Samples samples, Fitted fitted, Reached reached, const SnapOptions& snapping,
          const Allowed& allowed, bool drawn)
      : samples_(std::move(samples)),
        fitted_(std::move(fitted)),
        snapping_(snapping),
        allowed_(allowed),
        drawn_(drawn),
        ends_(ends_of(samples_, fitted_, reached, allowed)),
        held_(0) {}

  std::optional<FittedProfile> run(const FitOptions& options, FittedProfile out, NoSection& no) {
    put_stubs(samples_, fitted_, ends_);
    held_ = Held(links());
    hold_ends();
    settle();
    shift_to_origin();
    if (ends_.closed) {
      hold_sides();
      if (std::all_of(held_.axis.begin(), held_.axis.end(), [](Axis axis) { return axis == Axis::free; })) {
        no.why =
            "the line is closed, and no flat of it is a side of the stock; draw the whole section, or an "
            "open "
            "line from the face to the working edge";
        return std::nullopt;
      }
    } else {
      hold_levels_of_ends();
    }
    settle();
    const Fitted free = fitted_;
    snap(samples_, fitted_, held_, snapping_, allowed_);
    make_exact(fitted_.line, held_);
    make_as_written(fitted_.line, held_);
    make_half_round(fitted_.line, held_);
    keep_in_blank(fitted_.line, held_, allowed_);
    constexpr double kLeftOut = 2;  // times what a single point may lie off
    if (farthest_off(samples_, fitted_.line) > kLeftOut * allowed_.single()) {
      no.of_the_fit = true;
      no.why = drawn_
                   ? "the flats and arcs that follow it best leave some of the drawing out; give a smaller "
                     "--tolerance"
                   : "the flats and arcs that follow it best leave some of its points out; measure more "
                     "points, and closer";
      return std::nullopt;
    }
    if (!size_blank(options, out, no)) return std::nullopt;
    add_edges(free, out);
    if (out.fits.empty()) {
      no.why = "there is no moulding in it: what is traced is flat; trace the whole line of the section";
      return std::nullopt;
    }
    return out;
  }

 private:
  std::size_t links() const { return fitted_.line.size(); }
  const std::vector<Point>& joints() const { return fitted_.line.joints; }
  void settle() { fitted_ = fit(samples_, fitted_, held_, allowed_); }

  void hold_ends() {
    if (ends_.closed) return;
    held_.axis[0] = ends_.from_back ? Axis::upright : Axis::level;
    held_.axis[links() - 1] = ends_.to_underside || ends_.flute ? Axis::level : Axis::upright;
    // Nothing of a side that was not traced follows it: an arc that runs into it would lose its end to it. At
    // a corner those beside it tell where it lies.
    const auto runs_into_side = [&](std::size_t joint) {
      const Point before = direction_at(edge_of(fitted_.line, joint - 1), 1);
      const Point after = direction_at(edge_of(fitted_.line, joint), 0);
      return dot(before, after) > std::cos(to_radians(45));
    };
    held_.parted[1] = !ends_.face_traced && runs_into_side(1);
    held_.parted[links() - 1] = !ends_.edge_traced && runs_into_side(links() - 1);
  }

  void shift_to_origin() {
    const Reach extent = extent_of(fitted_.line);
    Point origin = {joints().back().x, joints().front().y};
    if (ends_.closed || ends_.from_back) origin.y = extent.low.y;
    if (ends_.closed || ends_.flute || ends_.to_underside) origin.x = extent.low.x;
    if (ends_.flute && !ends_.edge_traced) origin.x = joints()[links() - 1].x - kSpare;
    shift(samples_, fitted_, {-origin.x, -origin.y});
  }

  void hold_levels_of_ends() {
    const std::size_t n = links();
    if (!ends_.from_back) held_.y[0] = held_.y[1] = 0;
    if (ends_.flute) held_.y[n] = held_.y[n - 1] = 0;
    if (!ends_.to_underside && !ends_.flute) held_.x[n] = held_.x[n - 1] = 0;
  }

  /// The flats of a closed line that lie on the rectangle about it are the blank's sides.
  void hold_sides() {
    const Reach extent = extent_of(fitted_.line);
    const double slack = 2 * allowed_.tolerance + 4 * allowed_.scatter;
    const double most = drawn_by_figures(fitted_, allowed_) ? kOffExact + allowed_.rounded
                                                            : allowed_.tolerance + allowed_.scatter;
    const double right = to_division(extent.high.x, most);
    const double below = to_division(extent.high.y, most);
    for (std::size_t i = 0; i < links(); ++i) {
      const Point from = joints()[i];
      const Point to = joints()[i + 1];
      const Point middle = 0.5 * (from + to);
      if (runs(samples_, fitted_, i, Axis::upright, allowed_)) {
        const double side = middle.x < extent.high.x / 2 ? 0 : right;
        if (std::abs(middle.x - side) > slack) continue;
        held_.axis[i] = Axis::upright;
        held_.x[i] = held_.x[i + 1] = side;
      } else if (runs(samples_, fitted_, i, Axis::level, allowed_)) {
        const double side = middle.y < extent.high.y / 2 ? 0 : below;
        if (std::abs(middle.y - side) > slack) continue;
        held_.axis[i] = Axis::level;
        held_.y[i] = held_.y[i + 1] = side;
      }
    }
    // The line ends where it begins, at a division but for rounding.
    const auto begin = [&](double value) { return to_division(value, kOffExact); };
    const std::size_t n = links();
    for (auto* levels : {&held_.x, &held_.y}) {
      std::optional<double>& first = (*levels)[0];
      std::optional<double>& last = (*levels)[n];
      if (!first && !last) first = begin(levels == &held_.x ? joints()[0].x : joints()[0].y);
      if (!first) first = last;
      last = first;
    }
  }

  double to_division(double value, double most) const {
    if (snapping_.division <= 0) return value;
    const double near = snapping_.division * std::round(value / snapping_.division);
    return std::abs(near - value) <= most ? near : value;
  }

  /// A side that was traced up to some point only: to the nearest division, and as far as the work goes.
  double seen(double value, double least) const {
    if (snapping_.division <= 0) return std::max(value, least);
    const double near = snapping_.division * std::round(value / snapping_.division);
    return near >= least - kOnOutline ? std::max(near, least) : near + snapping_.division;
  }

  bool size_blank(const FitOptions& options, FittedProfile& out, NoSection& no) const {
    const Reach whole = extent_of(fitted_.line);
    const std::size_t n = links();
    out.traced_width = ends_.closed || ends_.face_traced || ends_.from_back;
    out.traced_thickness = ends_.closed || ends_.to_underside || (ends_.edge_traced && !ends_.flute);
    Reach work{joints()[1], joints()[1]};
    for (std::size_t i = 1; i + 1 < n; ++i) {
      const Reach reach = reach_of(edge_of(fitted_.line, i));
      work.high = {std::max(work.high.x, reach.high.x), std::max(work.high.y, reach.high.y)};
    }
    // Work that lies undercut as far as a side was traced, or farther, needs wood beyond it.
    const bool undercut = ends_.face_traced && work.high.x > joints()[1].x + allowed_.tolerance &&
                          work.high.x > joints()[0].x - kLeastWood;
    const bool deep = ends_.edge_traced && work.high.y > joints()[n - 1].y + allowed_.tolerance &&
                      work.high.y > joints()[n].y - kLeastWood;
    if (undercut && !ends_.closed && !ends_.from_back) out.traced_width = false;
    if (deep && !ends_.closed && !ends_.to_underside) out.traced_thickness = false;
    double width = stock_for(work.high.x, snapping_.division);
    double thickness = stock_for(work.high.y, snapping_.division);
    if (ends_.closed || ends_.from_back) {
      width = whole.high.x;
    } else if (out.traced_width) {
      width = seen(whole.high.x, work.high.x);
    }
    if (ends_.closed || ends_.to_underside) {
      // An arc that runs into the underside reaches lower than that by less than the edges are told apart by.
      const double underside = joints().back().y;
      thickness = ends_.to_underside && whole.high.y - underside < kSamePoint ? underside : whole.high.y;
    } else if (out.traced_thickness) {
      thickness = seen(whole.high.y, work.high.y);
    }
    Section& section = out.section;
    section.width = options.width.value_or(width);
    section.thickness = options.thickness.value_or(thickness);
    const bool fixed_width = ends_.closed || ends_.from_back;
    const bool fixed_thickness = ends_.closed || ends_.to_underside;
    if ((fixed_width && std::abs(section.width - width) > kOnOutline) ||
        section.width < work.high.x - kOnOutline) {
      no.why =
          "the line shows a stock of another width than the one given; leave --stock out, or give that width";
      return false;
    }
    if ((fixed_thickness && std::abs(section.thickness - thickness) > kOnOutline) ||
        section.thickness < work.high.y - kOnOutline) {
      no.why =
          "the line shows a stock of another thickness than the one given; leave --stock out, or give that "
          "thickness";
      return false;
    }
    return true;
  }

  FitOfElement fit_of(std::size_t link, const Fitted& free) const {
    FitOfElement out;
    const std::vector<double> distances = distances_of(samples_, fitted_, link);
    out.points = distances.size();
    out.greatest = greatest_mean(distances, allowed_.scatter);
    for (const double d : distances) out.farthest = std::max(out.farthest, std::abs(d));
    if (held_.radius[link]) {
      out.free_radius = radius(edge_of(free.line, link));
      out.free_greatest = greatest_mean(distances_of(samples_, free, link), allowed_.scatter);
    }
    return out;
  }

  /// The target: the worked line, backward, and the stock's outline round the rest.
  void add_edges(const Fitted& free, FittedProfile& out) const {
    Section& section = out.section;
    std::vector<FitOfElement> fits;  // of each edge
    const std::size_t first = ends_.closed ? 0 : 1;
    const std::size_t end = ends_.closed ? links() : links() - 1;
    for (std::size_t i = end; i-- > first;) {
      const Edge edge = reversed(exact_edge(fitted_.line, held_, i));
      if (distance(edge.from, edge.to) < 1e-6) continue;
      section.target.push_back(edge);
      section.source.push_back(runs_along_outline(section.width, section.thickness, edge) ? -1 : 0);
      fits.push_back(fit_of(i, free));
    }
    if (section.target.empty()) return;
    if (!ends_.closed) close_round(section, ends_);
    fits.resize(section.target.size());
    number_elements(section);
    for (std::size_t i = 0; i < section.target.size(); ++i) {
      if (section.source[i] < 0) continue;
      fits[i].element = section.source[i];
      out.fits.push_back(fits[i]);
    }
    std::sort(out.fits.begin(), out.fits.end(),
              [](const FitOfElement& a, const FitOfElement& b) { return a.element < b.element; });
  }

  Samples samples_;
  Fitted fitted_;
  SnapOptions snapping_;
  Allowed allowed_;
  bool drawn_;
  TracedEnds ends_;
  Held held_;
};

}  // namespace

std::optional<FittedProfile> to_section(Samples samples, Fitted fitted, Reached reached,
                                        const SnapOptions& snapping, const FitOptions& options,
                                        const Allowed& allowed, bool drawn, FittedProfile out,
                                        NoSection& no) {
  return Placing(std::move(samples), std::move(fitted), reached, snapping, allowed, drawn)
      .run(options, std::move(out), no);
}

}  // namespace arrisline
