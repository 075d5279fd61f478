// Each stroke by one factor, but for flats that would become too narrow and arcs that take a plane's radius.
// Shown by tests/section/scaled_test.cpp.
#include <algorithm>
#include <cmath>

#include "section/nearest_plane.h"
#include "section/one_chain.h"
#include "section/reshaped.h"
#include "section/walk.h"

namespace arrisline {
namespace {

constexpr double kLeast = 1e-6;  // mm

/// The width of a flat along the face or square to it; 0 for any other stroke.
double flat_width(const Stroke& stroke) {
  if (stroke.turn != Turn::straight || (stroke.move.x != 0 && stroke.move.y != 0)) return 0;
  return norm(stroke.move);
}

double kept_width(const Stroke& stroke, const ScaleOptions& options, double factor) {
  const double width = flat_width(stroke);
  return std::max(factor * width, std::min(width, options.fillet));
}

Stroke times(Stroke stroke, double factor) {
  stroke.move = factor * stroke.move;
  stroke.radius *= factor;
  return stroke;
}

/// The chain by this factor, its flats kept.
std::vector<Stroke> by_factor(const std::vector<Stroke>& strokes, const ScaleOptions& options,
                              double factor) {
  std::vector<Stroke> out;
  for (const Stroke& stroke : strokes) {
    const double width = flat_width(stroke);
    out.push_back(times(stroke, width > 0 ? kept_width(stroke, options, factor) / width : factor));
  }
  return out;
}

Point sum(const std::vector<Stroke>& strokes) {
  Point out;
  for (const Stroke& stroke : strokes) out = out + stroke.move;
  return out;
}

/// Height or projection, whichever was asked for.
double asked(Point extent, const ScaleOptions& options) {
  return options.height ? extent.y : extent.x;
}

std::optional<double> factor_for(const Drawing& drawing, const ScaleOptions& options, std::string* why) {
  if (options.by) return options.by;
  const std::vector<Stroke>& strokes = drawing.chains.front().strokes;
  const double wanted = options.height ? *options.height : *options.projection;
  const double has = asked(extent_of(drawing), options);
  const std::string what = options.height ? "height" : "projection";
  if (has < kLeast) {
    *why = "its members have no " + what + "; give --by instead";
    return std::nullopt;
  }
  if (!is_one_chain(drawing)) return wanted / has;  // nothing keeps its size
  double low = 0;
  double high = std::max(1.0, 2 * wanted / has);
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (asked(extent_of(by_factor(strokes, options, middle)), options) < wanted ? low : high) = middle;
  }
  // Flats that go back up or in may take the rest past what was asked; only what truly gives it will do.
  if (std::abs(asked(extent_of(by_factor(strokes, options, high)), options) - wanted) > kLeast ||
      high < 1e-4) {
    *why = "its flats alone, kept as wide as --fillet says, do not leave room for the rest in that " + what +
           "; give a smaller --fillet";
    return std::nullopt;
  }
  return high;
}

Scaled all_alike(const Drawing& drawing, double factor) {
  Scaled out;
  out.drawing = drawing;
  out.factor = factor;
  out.plainly = true;
  out.drawing.width *= factor;
  out.drawing.thickness *= factor;
  for (DrawnChain& chain : out.drawing.chains) {
    chain.start *= factor;
    for (Stroke& stroke : chain.strokes) stroke = times(stroke, factor);
    out.changes.resize(out.changes.size() + chain.strokes.size());
  }
  return out;
}

}  // namespace

double usual_thickness(double mm, Unit unit) {
  constexpr double kRounding = 1e-6;
  if (unit == Unit::inch) {
    const double inches = mm / kMmPerInch - kRounding;
    const double division = inches <= 1 ? 0.125 : inches <= 2 ? 0.25 : inches <= 4 ? 0.5 : 1;
    return std::ceil(inches / division) * division * kMmPerInch;
  }
  for (const double usual : {6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0})
    if (mm <= usual + kRounding) return usual;
  const double division = mm <= 50 + kRounding ? 5 : 10;
  return std::ceil((mm - kRounding) / division) * division;
}

bool is_one_chain(const Drawing& drawing) {
  if (drawing.chains.size() != 1) return false;
  const DrawnChain& chain = drawing.chains.front();
  if (chain.side != Chain::face || chain.from_back) return false;
  const Point end = Point{chain.start, 0} + sum(chain.strokes);
  return std::abs(end.x) < kLeast || std::abs(end.y - drawing.thickness) < kLeast;
}

static void add(const Reach& reach, Reach& out) {
  out.low = {std::min(out.low.x, reach.low.x), std::min(out.low.y, reach.low.y)};
  out.high = {std::max(out.high.x, reach.high.x), std::max(out.high.y, reach.high.y)};
}

Reach reach_of(const std::vector<Stroke>& strokes) {
  Reach out;
  Point at;
  for (const Stroke& stroke : strokes) {
    const Edge edge = edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large);
    add(reach_of(edge), out);
    at = edge.to;
  }
  return out;
}

Point extent_of(const std::vector<Stroke>& strokes) {
  const Reach reach = reach_of(strokes);
  return reach.high - reach.low;
}

Point extent_of(const Drawing& drawing) {
  std::optional<Reach> out;
  for (const DrawnChain& chain : drawing.chains) {
    Point at = chain.from_back ? Point{drawing.width, chain.start} : Point{chain.start, 0};
    for (const Stroke& stroke : chain.strokes) {
      const Edge edge = edge_between(at, at + stroke.move, stroke.turn, stroke.radius, stroke.large);
      const Reach reach = reach_of(turned_round(drawing.width, drawing.thickness, chain.side, edge));
      if (!out) out = reach;
      add(reach, *out);
      at = edge.to;
    }
  }
  return out ? out->high - out->low : Point{};
}

bool ends_on_underside(const Drawing& drawing) {
  return std::abs(sum(drawing.chains.front().strokes).y - drawing.thickness) < kLeast;
}

std::optional<Scaled> scaled(const Drawing& drawing, const ScaleOptions& given, std::string* why) {
  ScaleOptions options = given;
  const std::vector<Stroke>& before = drawing.chains.front().strokes;
  const bool one = is_one_chain(drawing);
  if (!one) options.fillet = 0;
  const std::optional<double> factor = factor_for(drawing, options, why);
  if (!factor) return std::nullopt;
  if (!one) return all_alike(drawing, *factor);

  Scaled out;
  out.drawing = drawing;
  out.factor = *factor;
  DrawnChain& chain = out.drawing.chains.front();
  chain.strokes = by_factor(before, options, *factor);
  Point meant;
  Point made;
  for (std::size_t i = 0; i < before.size(); ++i) {
    Stroke& stroke = chain.strokes[i];
    std::optional<Change> change;
    const double width = flat_width(before[i]);
    if (width > 0 && norm(stroke.move) > *factor * width + kLeast)
      change = Change{*factor * width, norm(stroke.move), nullptr};
    if (options.kit && stroke.turn != Turn::straight) {
      const Plane* plane = nearest_plane(
          *options.kit, stroke.turn == Turn::right ? PlaneKind::hollow : PlaneKind::round, stroke.radius);
      if (plane && std::abs(plane->radius - stroke.radius) > kFarthestRadius * stroke.radius + kLeast) {
        change = Change{stroke.radius, stroke.radius, plane, true};
      } else if (plane && std::abs(plane->radius - stroke.radius) > kLeast) {
        change = Change{stroke.radius, plane->radius, plane};
        stroke = times(stroke, plane->radius / stroke.radius);
      }
    }
    out.changes.push_back(change);
    meant = meant + *factor * before[i].move;
    made = made + stroke.move;
    out.greatest = std::max(out.greatest, distance(meant, made));
  }
  const DrawnChain& old = drawing.chains.front();
  // An undercut reaches farther back than where the work begins.
  const auto farthest_back = [](const std::vector<Stroke>& strokes) {
    return std::max(0.0, reach_of(strokes).high.x);
  };
  const double behind = drawing.width - old.start - farthest_back(before);
  const double left = old.start + sum(before).x;  // from where it ends to the working edge
  chain.start = std::max(0.0, *factor * left) - made.x;
  // An arc that grew to a plane's radius may bulge past the working edge: the whole moves in.
  if (ends_on_underside(drawing)) chain.start += std::max(0.0, -chain.start - reach_of(chain.strokes).low.x);
  out.drawing.width = chain.start + farthest_back(chain.strokes) + behind;
  out.drawing.thickness =
      ends_on_underside(drawing)
          ? made.y
          : usual_thickness(made.y + *factor * (drawing.thickness - sum(before).y), drawing.unit);
  return out;
}

}  // namespace arrisline
