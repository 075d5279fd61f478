// An ASCII DXF drawing: the entities that make a line, and the unit. Shown by tests/trace/dxf_test.cpp; any
// bytes: tests/fuzz/dxf.cpp.
#include <charconv>
#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "arrisline/limits.h"
#include "text/words.h"
#include "trace/drawings.h"
#include "trace/dxf_groups.h"
#include "trace/one_line.h"

namespace arrisline {

namespace {

/// An extrusion this near to the z axis is along it.
constexpr double kUpright = 1e-6;

struct Entity {
  std::string_view type;
  Span where;
  std::vector<Group> groups;
};

struct Vertex {
  Point at;
  double bulge = 0;
  std::size_t byte = 0;
};

int whole_of(const Group& group) {
  int value = 0;
  std::from_chars(group.value.data(), group.value.data() + group.value.size(), value);
  return value;
}

/// mm in a unit of $INSUNITS; nothing for "no unit" and for what no drawing of a moulding is in.
std::optional<double> insert_unit(int code) {
  switch (code) {
    case 1:
      return kMmPerInch;
    case 2:
      return 12 * kMmPerInch;
    case 4:
      return 1.0;
    case 5:
      return 10.0;
    case 6:
      return 1000.0;
    case 8:
      return kMmPerInch / 1e6;
    case 9:
      return kMmPerInch / 1000;
    case 10:
      return 36 * kMmPerInch;
    case 13:
      return 0.001;
    case 14:
      return 100.0;
    default:
      return std::nullopt;
  }
}

struct Drawing {
  Groups groups;
  Faults& faults;
  std::vector<Stroke> strokes;
  std::string_view section;
  std::string_view variable;  // of the header
  std::optional<int> insert_units;
  std::optional<int> measurement;
  Entity entity;
  bool in_polyline = false;
  Entity polyline;
  std::vector<Vertex> vertices;
  std::size_t curves = 0;
  bool too_many = false;
  bool paper_warned = false;
  struct Unread {
    Span first;
    std::size_t count = 0;
  };
  std::map<std::string_view, Unread> unread;

  void read();
  void finish_entity();
  void draw(const Entity& one);
  void line(const Entity& one);
  void arc(const Entity& one);
  void light_polyline(const Entity& one);
  void vertex(const Entity& one);
  void end_polyline();
  void add_polyline(const Entity& one, const std::vector<Vertex>& points, bool closed, const Affine& map);
  void add(Stroke stroke);

  const Group* find(const Entity& one, int code) const;
  std::optional<double> number(const Entity& one, int code, const char* meaning);
  std::optional<double> number(const Entity& one, int code, double otherwise);
  int flags(const Entity& one) const {
    const Group* group = find(one, 70);
    return group ? whole_of(*group) : 0;
  }
  std::optional<Affine> plane(const Entity& one);
};

const Group* Drawing::find(const Entity& one, int code) const {
  for (const Group& group : one.groups) {
    if (group.code == code) return &group;
  }
  return nullptr;
}

std::optional<double> Drawing::number(const Entity& one, int code, const char* meaning) {
  if (const Group* group = find(one, code)) return number_of(*group, faults);
  faults.error(one.where,
               "this " + std::string(one.type) + " has no group " + std::to_string(code) + ", " + meaning);
  return std::nullopt;
}

std::optional<double> Drawing::number(const Entity& one, int code, double otherwise) {
  const Group* group = find(one, code);
  return group ? number_of(*group, faults) : otherwise;
}

/// From the entity's own frame to the drawing's: the arbitrary axis algorithm, for the two ways in which a
/// flat drawing can lie.
std::optional<Affine> Drawing::plane(const Entity& one) {
  const std::optional<double> x = number(one, 210, 0.0);
  const std::optional<double> y = number(one, 220, 0.0);
  const std::optional<double> z = number(one, 230, 1.0);
  if (!x || !y || !z) return std::nullopt;
  if (*z == 0 || std::fabs(*x) > kUpright * std::fabs(*z) || std::fabs(*y) > kUpright * std::fabs(*z)) {
    faults.error(one.where, "this " + std::string(one.type) +
                                " is drawn in a plane of its own; expected a flat drawing, extruded along z");
    return std::nullopt;
  }
  return *z < 0 ? Affine{-1, 0, 0, 1, 0, 0} : Affine{};
}

void Drawing::add(Stroke stroke) {
  curves += stroke.curves.size();
  if (curves > kMaxDrawnPoints && !too_many) {
    too_many = true;
    faults.error({stroke.at, 1}, "with this entity the drawing has more than " +
                                     std::to_string(kMaxDrawnPoints) + " lines and arcs" +
                                     to_raise("kMaxDrawnPoints"));
  }
  if (!stroke.curves.empty() && !too_many) strokes.push_back(std::move(stroke));
}

void Drawing::line(const Entity& one) {
  const std::optional<double> x = number(one, 10, "x of its start");
  const std::optional<double> y = number(one, 20, "y of its start");
  const std::optional<double> to_x = number(one, 11, "x of its end");
  const std::optional<double> to_y = number(one, 21, "y of its end");
  if (!x || !y || !to_x || !to_y) return;
  Curve curve;
  curve.to = {*to_x, *to_y};
  curve.at = one.where.at;
  add({{*x, *y}, {curve}, one.where.at});
}

void Drawing::arc(const Entity& one) {
  const std::optional<double> x = number(one, 10, "x of its centre");
  const std::optional<double> y = number(one, 20, "y of its centre");
  const std::optional<double> r = number(one, 40, "its radius");
  const std::optional<double> from = number(one, 50, "the angle where it begins");
  const std::optional<double> to = number(one, 51, "the angle where it ends");
  const std::optional<Affine> map = plane(one);
  if (!x || !y || !r || !from || !to || !map) return;
  if (!(*r > 0)) {
    faults.error(find(one, 40)->where, "the radius of an arc is more than 0");
    return;
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
  add({(*map)(start), {mapped(curve, *map)}, one.where.at});
}

void Drawing::add_polyline(const Entity& one, const std::vector<Vertex>& points, bool closed,
                           const Affine& map) {
  if (points.size() < 2) return;
  Stroke stroke;
  stroke.from = map(points.front().at);
  stroke.at = points.front().byte;
  for (std::size_t i = 0; i + (closed ? 0 : 1) < points.size(); ++i) {
    const Vertex& next = points[i + 1 < points.size() ? i + 1 : 0];
    Curve curve = mapped(bulged(points[i].at, next.at, points[i].bulge), map);
    curve.at = points[i].byte;
    stroke.curves.push_back(curve);
  }
  (void)one;
  add(std::move(stroke));
}

void Drawing::light_polyline(const Entity& one) {
  const std::optional<Affine> map = plane(one);
  std::vector<Vertex> points;
  bool sound = map.has_value();
  bool has_y = true;
  for (const Group& group : one.groups) {
    if (group.code != 10 && group.code != 20 && group.code != 42) continue;
    if (group.code != 10 && points.empty()) {
      faults.error(group.where,
                   "group " + std::to_string(group.code) + " comes before the first vertex, group 10");
      return;
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
    faults.error({points.back().byte, 1}, "this vertex has no group 20, its y");
    return;
  }
  if (sound) add_polyline(one, points, (flags(one) & 1) != 0, *map);
}

void Drawing::vertex(const Entity& one) {
  // The frame of a curve that was fitted is no part of it.
  if ((flags(one) & 16) != 0) return;
  const std::optional<double> x = number(one, 10, "its x");
  const std::optional<double> y = number(one, 20, "its y");
  const std::optional<double> bulge = number(one, 42, 0.0);
  if (x && y && bulge) vertices.push_back({{*x, *y}, *bulge, one.where.at});
}

void Drawing::end_polyline() {
  in_polyline = false;
  const int kind = flags(polyline);
  if ((kind & (16 | 64)) != 0) {
    faults.warn(polyline.where, "a POLYLINE that is a mesh is not read");
  } else if (const std::optional<Affine> map = plane(polyline)) {
    add_polyline(polyline, vertices, (kind & 1) != 0, *map);
  }
  vertices.clear();
}

void Drawing::draw(const Entity& one) {
  const Group* const hidden = find(one, 60);
  if (hidden && whole_of(*hidden) == 1) return;
  if (one.type == "LINE") return line(one);
  if (one.type == "ARC") return arc(one);
  if (one.type == "LWPOLYLINE") return light_polyline(one);
  Unread& other = unread[one.type];
  if (other.count++ == 0) other.first = one.where;
}

void Drawing::finish_entity() {
  Entity one = std::move(entity);
  entity = {};
  if (one.type.empty()) return;
  if (in_polyline) {
    if (one.type == "VERTEX") return vertex(one);
    if (one.type == "SEQEND") return end_polyline();
    faults.error(one.where,
                 "here is " + quoted(one.type) + "; expected VERTEX or SEQEND, since a POLYLINE goes on");
    in_polyline = false;
    vertices.clear();
  }
  const Group* const space = find(one, 67);
  if (space && whole_of(*space) == 1) {
    if (!paper_warned) faults.warn(one.where, "what lies in paper space is not read");
    paper_warned = true;
    if (one.type != "POLYLINE") return;
  }
  if (one.type == "POLYLINE") {
    in_polyline = true;
    polyline = std::move(one);
    return;
  }
  draw(one);
}

void Drawing::read() {
  bool ended = false;
  bool any = false;
  while (!ended && !faults.full() && !too_many) {
    const std::optional<Group> group = groups.next();
    if (!group) break;
    if (!any && (group->code != 0 || group->value != "SECTION")) {
      faults.error(group->where, "a DXF drawing begins with group 0, SECTION");
      return;
    }
    any = true;
    if (group->code == 0) {
      finish_entity();
      variable = {};
      if (group->value == "EOF") {
        ended = true;
      } else if (group->value == "SECTION" || group->value == "ENDSEC") {
        section = {};
      } else if (section == "ENTITIES") {
        entity = {group->value, group->where, {}};
      }
    } else if (section.empty()) {
      if (group->code == 2) section = group->value;
    } else if (section == "HEADER") {
      if (group->code == 9) {
        variable = group->value;
      } else if (group->code == 70 && variable == "$INSUNITS") {
        insert_units = whole_of(*group);
      } else if (group->code == 70 && variable == "$MEASUREMENT") {
        measurement = whole_of(*group);
      }
    } else if (!entity.type.empty()) {
      entity.groups.push_back(*group);
    }
  }
  if (faults.errors > 0) return;
  if (!any) {
    faults.error({}, "the drawing is empty; a DXF drawing begins with group 0, SECTION");
  } else if (!ended || in_polyline) {
    faults.error({groups.text.size(), 1}, in_polyline ? "the drawing breaks off: a POLYLINE has no SEQEND"
                                                      : "the drawing breaks off: group 0, EOF, is missing");
  }
}

/// What to do about an entity that is not read.
const char* advice(std::string_view type) {
  if (type == "INSERT") return "; take the block apart where it is part of the line";
  if (type == "SPLINE" || type == "ELLIPSE") return "; turn it into a polyline where it is part of the line";
  return "";
}

}  // namespace

std::optional<Tracing> read_dxf(std::string_view text, const TracingOptions& options, Faults& faults) {
  Drawing drawing{{text, faults}, faults, {}, {}, {}, {}, {}, {}, false, {}, {}, 0, false, false, {}};
  drawing.read();
  for (const auto& [type, other] : drawing.unread) {
    faults.warn(other.first, quoted(type) + " is not read, only LINE, ARC, POLYLINE and LWPOLYLINE" +
                                 (other.count > 1 ? " (" + std::to_string(other.count) + " of them)" : "") +
                                 advice(type));
  }
  if (faults.errors > 0) return std::nullopt;
  std::optional<double> unit = insert_unit(drawing.insert_units.value_or(0));
  if (!unit && drawing.insert_units.value_or(0) == 0 && drawing.measurement)
    unit = *drawing.measurement == 1 ? 1.0 : kMmPerInch;
  return one_line(drawing.strokes, Upward::y_up, unit, options, faults);
}

}  // namespace arrisline
