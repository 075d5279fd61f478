// Basic shapes of SVG 1.1, chapter 9, as the path data they stand for. Shown by tests/trace/svg_test.cpp.
#include "trace/svg_shapes.h"

#include <array>
#include <cmath>

#include "arrisline/limits.h"
#include "trace/svg_path.h"

namespace arrisline {

namespace {

constexpr std::array<std::string_view, 7> kShapes = {"path", "line",   "polyline", "polygon",
                                                     "rect", "circle", "ellipse"};

struct Shape {
  const Attributes& attributes;
  const Affine& map;
  std::size_t at;
  std::vector<DrawnPath>& strokes;
  Faults& faults;
  bool sound = true;

  /// An attribute that is a length, in user units; nothing where it is absent.
  std::optional<double> length(const char* name) {
    const std::optional<Passage> passage = attributes(name);
    if (!passage) return std::nullopt;
    const std::optional<SvgLength> length = length_of(*passage, faults);
    sound = sound && length;
    if (!length) return std::nullopt;
    if (!length->mm) {
      faults.error(passage->span(0, std::max<std::size_t>(1, passage->text.size())),
                   "this unit is not read; expected mm, cm, in, pt, pc, px or none");
      sound = false;
    }
    return length->px();
  }

  /// A size: 0 where it is absent, and a mistake where it is negative.
  double size(const char* name) {
    const double value = length(name).value_or(0);
    if (value >= 0) return value;
    const std::optional<Passage> passage = attributes(name);
    faults.error(passage->span(0, std::max<std::size_t>(1, passage->text.size())),
                 "a size is not negative; write it without the minus");
    sound = false;
    return 0;
  }

  void begin(Point from) {
    strokes.push_back({});
    strokes.back().from = map(from);
    strokes.back().at = at;
  }
  void add(Curve curve) {
    curve = mapped(curve, map);
    curve.at = at;
    strokes.back().curves.push_back(curve);
  }
  void line(Point to) {
    Curve curve;
    curve.to = to;
    add(curve);
  }

  void points(bool closed) {
    const std::optional<Passage> passage = attributes("points");
    if (!passage) return;
    const std::optional<std::vector<double>> numbers = numbers_of(*passage, 2 * kMaxDrawnPoints, faults);
    if (!numbers) return;
    if (numbers->size() % 2 != 0) {
      faults.error(passage->span(passage->text.size(), 1),
                   "points are pairs of numbers, and the last one here has no y; add it, or leave the x out");
      return;
    }
    if (numbers->size() < 4) return;
    begin({(*numbers)[0], (*numbers)[1]});
    for (std::size_t i = 2; i < numbers->size(); i += 2) line({(*numbers)[i], (*numbers)[i + 1]});
    if (closed) line({(*numbers)[0], (*numbers)[1]});
  }

  void ellipse(double rx, double ry) {
    const Point centre{length("cx").value_or(0), length("cy").value_or(0)};
    if (!sound || rx == 0 || ry == 0) return;
    const Point first = centre + Point{rx, 0};
    begin(first);
    Curve curve;
    curve.kind = Curve::Kind::arc;
    curve.to = first;
    curve.a = {rx, 0};
    curve.b = {0, ry};
    curve.centre = centre;
    curve.until = 2 * kPi;
    add(curve);
  }

  void rectangle() {
    const Point least{length("x").value_or(0), length("y").value_or(0)};
    const Point extent{size("width"), size("height")};
    std::optional<double> rx = length("rx");
    std::optional<double> ry = length("ry");
    if (!sound || extent.x == 0 || extent.y == 0) return;
    // One radius stands for both, and neither is more than half the side.
    const double round_x = std::min(std::fabs(rx ? *rx : ry.value_or(0)), extent.x / 2);
    const double round_y = std::min(std::fabs(ry ? *ry : rx.value_or(0)), extent.y / 2);
    const bool round = round_x > 0 && round_y > 0;
    const double dx = round ? round_x : 0;
    const double dy = round ? round_y : 0;
    const Point most = least + extent;
    Point current{least.x + dx, least.y};
    begin(current);
    const auto corner = [&](Point from, Point to) {
      if (from != current) line(from);
      if (round) add(elliptical_arc(from, to, dx, dy, 0, false, true));
      current = to;
    };
    corner({most.x - dx, least.y}, {most.x, least.y + dy});
    corner({most.x, most.y - dy}, {most.x - dx, most.y});
    corner({least.x + dx, most.y}, {least.x, most.y - dy});
    corner({least.x, least.y + dy}, {least.x + dx, least.y});
  }
};

}  // namespace

bool is_shape(std::string_view name) {
  return std::find(kShapes.begin(), kShapes.end(), name) != kShapes.end();
}

void shape_strokes(std::string_view name, const Attributes& attributes, const Affine& map, std::size_t at,
                   std::vector<DrawnPath>& strokes, Faults& faults) {
  Shape shape{attributes, map, at, strokes, faults};
  if (name == "path") {
    if (const std::optional<Passage> data = attributes("d")) read_path(*data, map, strokes, faults);
  } else if (name == "line") {
    const Point from{shape.length("x1").value_or(0), shape.length("y1").value_or(0)};
    const Point to{shape.length("x2").value_or(0), shape.length("y2").value_or(0)};
    if (!shape.sound) return;
    shape.begin(from);
    shape.line(to);
  } else if (name == "polyline" || name == "polygon") {
    shape.points(name == "polygon");
  } else if (name == "rect") {
    shape.rectangle();
  } else if (name == "circle") {
    const double r = shape.size("r");
    shape.ellipse(r, r);
  } else {
    const double rx = shape.size("rx");
    shape.ellipse(rx, shape.size("ry"));
  }
}

}  // namespace arrisline
