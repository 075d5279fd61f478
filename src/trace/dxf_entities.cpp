// Entities as curves, by the DXF reference. Shown by tests/trace/dxf_test.cpp.
#include "trace/dxf_entities.h"

#include <charconv>
#include <cmath>
#include <string>
#include <utility>

namespace arrisline {

/// An extrusion this near to the z axis is along it.
static constexpr double kUpright = 1e-6;

const Group* find_group(const Entity& one, int code) {
  for (const Group& group : one.groups) {
    if (group.code == code) return &group;
  }
  return nullptr;
}

int whole_of(const Group& group) {
  int value = 0;
  std::from_chars(group.value.data(), group.value.data() + group.value.size(), value);
  return value;
}

std::string_view layer_of(const Entity& entity) {
  const Group* const group = find_group(entity, 8);
  return group ? group->value : "0";
}

int flags_of(const Entity& entity) {
  const Group* const group = find_group(entity, 70);
  return group ? whole_of(*group) : 0;
}

static std::optional<double> number(const Entity& one, int code, const char* meaning, Faults& faults) {
  if (const Group* group = find_group(one, code)) return number_of(*group, faults);
  faults.error(one.where, "this " + std::string(one.type) + " has no group " + std::to_string(code) + ", " +
                              meaning + std::string(kSaveDxfAgain));
  return std::nullopt;
}

static std::optional<double> number(const Entity& one, int code, double otherwise, Faults& faults) {
  const Group* group = find_group(one, code);
  return group ? number_of(*group, faults) : otherwise;
}

static void refuse_askew(const Entity& one, Faults& faults) {
  faults.error(one.where,
               "this " + std::string(one.type) + " lies askew in space; draw the line flat, seen from above");
}

/// Whether it rises or falls on its way.
static bool climbs(Point from, double from_z, Point to, double to_z) {
  return std::fabs(to_z - from_z) > kUpright * (distance(from, to) + std::fabs(to_z - from_z));
}

/// From the entity's own frame to the drawing's: the arbitrary axis algorithm, for the two ways in which a
/// flat drawing can lie.
static std::optional<Affine> plane(const Entity& one, Faults& faults) {
  const std::optional<double> x = number(one, 210, 0.0, faults);
  const std::optional<double> y = number(one, 220, 0.0, faults);
  const std::optional<double> z = number(one, 230, 1.0, faults);
  if (!x || !y || !z) return std::nullopt;
  if (*z == 0 || std::fabs(*x) > kUpright * std::fabs(*z) || std::fabs(*y) > kUpright * std::fabs(*z)) {
    refuse_askew(one, faults);
    return std::nullopt;
  }
  return *z < 0 ? Affine{-1, 0, 0, 1, 0, 0} : Affine{};
}

std::optional<DrawnPath> line_stroke(const Entity& one, Faults& faults) {
  const std::optional<double> x = number(one, 10, "x of its start", faults);
  const std::optional<double> y = number(one, 20, "y of its start", faults);
  const std::optional<double> to_x = number(one, 11, "x of its end", faults);
  const std::optional<double> to_y = number(one, 21, "y of its end", faults);
  const std::optional<double> z = number(one, 30, 0.0, faults);
  const std::optional<double> to_z = number(one, 31, 0.0, faults);
  if (!x || !y || !to_x || !to_y || !z || !to_z) return std::nullopt;
  if (climbs({*x, *y}, *z, {*to_x, *to_y}, *to_z)) {
    refuse_askew(one, faults);
    return std::nullopt;
  }
  Curve curve;
  curve.to = {*to_x, *to_y};
  curve.at = one.where.at;
  return DrawnPath{{*x, *y}, {curve}, one.where.at};
}

std::optional<DrawnPath> arc_stroke(const Entity& one, Faults& faults) {
  const std::optional<double> x = number(one, 10, "x of its centre", faults);
  const std::optional<double> y = number(one, 20, "y of its centre", faults);
  const std::optional<double> r = number(one, 40, "its radius", faults);
  const std::optional<double> from = number(one, 50, "the angle where it begins", faults);
  const std::optional<double> to = number(one, 51, "the angle where it ends", faults);
  const std::optional<Affine> map = plane(one, faults);
  if (!x || !y || !r || !from || !to || !map) return std::nullopt;
  if (!(*r > 0)) {
    faults.error(find_group(one, 40)->where, "the radius of an arc is more than 0; leave this arc out");
    return std::nullopt;
  }
  // Counter-clockwise, and at least a little of it; equal angles are a whole turn.
  double swept = std::fmod(*to - *from, 360.0);
  if (swept <= 0) swept += 360;
  Curve curve;
  curve.kind = Curve::Kind::arc;
  curve.centre = {*x, *y};
  curve.a = {*r, 0};
  curve.b = {0, *r};
  curve.from = to_radians(std::fmod(*from, 360.0));
  curve.until = curve.from + to_radians(swept);
  curve.at = one.where.at;
  const auto at = [&](double angle) {
    return curve.centre + Point{*r * std::cos(angle), *r * std::sin(angle)};
  };
  const Point start = at(curve.from);
  curve.to = swept < 360 ? at(curve.until) : start;
  return DrawnPath{(*map)(start), {mapped(curve, *map)}, one.where.at};
}

static std::optional<DrawnPath> stroke_of(const std::vector<Vertex>& points, bool closed, const Affine& map) {
  if (points.size() < 2) return std::nullopt;
  DrawnPath stroke;
  stroke.from = map(points.front().at);
  stroke.at = points.front().byte;
  for (std::size_t i = 0; i + (closed ? 0 : 1) < points.size(); ++i) {
    const Vertex& next = points[i + 1 < points.size() ? i + 1 : 0];
    Curve curve = mapped(bulged(points[i].at, next.at, points[i].bulge), map);
    curve.at = points[i].byte;
    stroke.curves.push_back(curve);
  }
  return stroke;
}

std::optional<DrawnPath> light_polyline_stroke(const Entity& one, Faults& faults) {
  const std::optional<Affine> map = plane(one, faults);
  std::vector<Vertex> points;
  bool sound = map.has_value();
  bool has_y = true;
  for (const Group& group : one.groups) {
    if (group.code != 10 && group.code != 20 && group.code != 42) continue;
    if (group.code != 10 && points.empty()) {
      faults.error(group.where, "group " + std::to_string(group.code) +
                                    " comes before the first vertex, group 10" + std::string(kSaveDxfAgain));
      return std::nullopt;
    }
    const std::optional<double> value = number_of(group, faults);
    sound = sound && value;
    if (group.code == 10) {
      if (!has_y) break;
      has_y = false;
      points.push_back({{value.value_or(0), 0}, 0, group.where.at});
    } else if (group.code == 20) {
      has_y = true;
      points.back().at.y = value.value_or(0);
    } else {
      points.back().bulge = value.value_or(0);
    }
  }
  if (!has_y) {
    faults.error({points.back().byte, 1}, "this vertex has no group 20, its y" + std::string(kSaveDxfAgain));
    return std::nullopt;
  }
  if (!sound) return std::nullopt;
  const Group* const count = find_group(one, 90);
  if (count && static_cast<std::size_t>(std::max(0, whole_of(*count))) != points.size()) {
    faults.error(count->where, "this LWPOLYLINE is to have " + std::string(count->value) + " vertices, and " +
                                   std::to_string(points.size()) + " follow" + std::string(kSaveDxfAgain));
    return std::nullopt;
  }
  return stroke_of(points, (flags_of(one) & 1) != 0, *map);
}

std::optional<Vertex> vertex_of(const Entity& one, Faults& faults) {
  // The frame of a curve that was fitted is no part of it.
  if ((flags_of(one) & 16) != 0) return std::nullopt;
  const std::optional<double> x = number(one, 10, "its x", faults);
  const std::optional<double> y = number(one, 20, "its y", faults);
  const std::optional<double> bulge = number(one, 42, 0.0, faults);
  const std::optional<double> z = number(one, 30, 0.0, faults);
  if (!x || !y || !bulge || !z) return std::nullopt;
  return Vertex{{*x, *y}, *bulge, one.where.at, *z};
}

std::optional<DrawnPath> polyline_stroke(const Entity& one, const std::vector<Vertex>& vertices,
                                         Faults& faults) {
  const int kind = flags_of(one);
  if ((kind & (16 | 64)) != 0) {
    faults.warn(one.where, "a POLYLINE that is a mesh is not read; draw the line as a flat one");
    return std::nullopt;
  }
  const std::optional<Affine> map = plane(one, faults);
  if (!map) return std::nullopt;
  for (std::size_t i = 1; i < vertices.size(); ++i) {
    if (!climbs(vertices[i - 1].at, vertices[i - 1].z, vertices[i].at, vertices[i].z)) continue;
    refuse_askew(one, faults);
    return std::nullopt;
  }
  return stroke_of(vertices, (kind & 1) != 0, *map);
}

Affine Insert::map(std::size_t row, std::size_t column) const {
  return frame *
         Affine{
             across, 0, 0, up, static_cast<double>(column) * spacing.x, static_cast<double>(row) * spacing.y};
}

std::optional<Insert> insert_of(const Entity& one, Faults& faults) {
  const Group* const name = find_group(one, 2);
  if (!name) {
    faults.error(one.where, "this INSERT has no group 2, the name of its block" + std::string(kSaveDxfAgain));
    return std::nullopt;
  }
  const std::optional<double> x = number(one, 10, 0.0, faults);
  const std::optional<double> y = number(one, 20, 0.0, faults);
  const std::optional<double> across = number(one, 41, 1.0, faults);
  const std::optional<double> up = number(one, 42, 1.0, faults);
  const std::optional<double> degrees = number(one, 50, 0.0, faults);
  const std::optional<double> apart = number(one, 44, 0.0, faults);
  const std::optional<double> above = number(one, 45, 0.0, faults);
  const std::optional<Affine> space = plane(one, faults);
  if (!x || !y || !across || !up || !degrees || !apart || !above || !space) return std::nullopt;
  for (const int code : {41, 42}) {
    const Group* const scale = find_group(one, code);
    if (!scale || (code == 41 ? *across : *up) != 0) continue;
    faults.error(scale->where, "a scale of 0 leaves nothing of the block; leave this INSERT out");
    return std::nullopt;
  }
  const auto count = [&](int code) {
    const Group* const group = find_group(one, code);
    return group ? static_cast<std::size_t>(std::max(1, whole_of(*group))) : std::size_t{1};
  };
  const double turn = to_radians(std::fmod(*degrees, 360.0));
  const double c = std::cos(turn);
  const double s = std::sin(turn);
  return Insert{name->value,     *space * Affine{c, s, -s, c, *x, *y}, *across, *up, count(70), count(71),
                {*apart, *above}};
}

}  // namespace arrisline
