// An ASCII DXF drawing: the entities that make a line, and the unit. Shown by tests/trace/dxf_test.cpp; any
// bytes: tests/fuzz/dxf.cpp.
#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "arrisline/limits.h"
#include "trace/drawings.h"
#include "trace/dxf_entities.h"
#include "trace/layers.h"
#include "trace/one_line.h"
#include "wording/words.h"

namespace arrisline {

namespace {

/// Layers that are off, at most: what their names take in memory. Further ones are read like others.
constexpr std::size_t kMostLayersOff = 400;

struct Drawing {
  Groups groups;
  Faults& faults;
  Layers layers;
  std::vector<DrawnPath> strokes = {};
  std::string_view section = {};
  std::string_view variable = {};  // of the header
  std::optional<int> insert_units = {};
  std::optional<int> measurement = {};
  Entity entity = {};
  bool in_polyline = false;
  Entity polyline = {};
  std::vector<Vertex> vertices = {};
  std::size_t curves = 0;
  bool too_many = false;
  bool paper_warned = false;
  std::set<std::string> off = {};  // layers that are not shown
  struct Unread {
    Span first;
    std::size_t count = 0;
  };
  std::map<std::string_view, Unread> unread = {};

  void read();
  void read_group(const Group& group);
  void finish_entity();
  void read_layer(const Entity& one);
  bool is_apart(const Entity& one);
  void draw(const Entity& one);
  void end_polyline();
  void add(std::optional<DrawnPath> stroke);
  void keep(const Group& group);
  void refuse_more(std::size_t byte);
};

void Drawing::refuse_more(std::size_t byte) {
  if (!too_many) {
    faults.error({byte, 1}, "with this entity the drawing has more than " + std::to_string(kMaxDrawnPoints) +
                                " lines and arcs; draw the line with fewer" + to_raise("kMaxDrawnPoints"));
  }
  too_many = true;
}

void Drawing::add(std::optional<DrawnPath> stroke) {
  if (!stroke) return;
  curves += stroke->curves.size();
  if (curves > kMaxDrawnPoints) return refuse_more(stroke->at);
  if (!stroke->curves.empty()) strokes.push_back(std::move(*stroke));
}

/// Keeps a group of an entity that is read: a vertex has three of them at the most.
void Drawing::keep(const Group& group) {
  static constexpr std::array kRead = {2,  8,  10, 11, 20, 21, 30, 31,  40,  42,
                                       50, 51, 60, 62, 67, 70, 90, 210, 220, 230};
  if (std::find(kRead.begin(), kRead.end(), group.code) == kRead.end()) return;
  if (group.code == 40 && entity.type != "ARC") return;  // the width of a polyline, many times
  if (entity.groups.size() >= 3 * kMaxDrawnPoints + kRead.size()) return refuse_more(entity.where.at);
  entity.groups.push_back(group);
}

void Drawing::end_polyline() {
  in_polyline = false;
  if (!is_apart(polyline)) add(polyline_stroke(polyline, vertices, faults));
  vertices.clear();
}

/// Whether an entity is not shown, is on a layer that is not wanted, or lies in paper space, where drawings
/// are laid out for print.
bool Drawing::is_apart(const Entity& one) {
  const Group* const hidden = find_group(one, 60);
  if (hidden && whole_of(*hidden) == 1) return true;
  if (layers.is_one() ? !layers.is(layer_of(one)) : off.count(lower(layer_of(one))) > 0) return true;
  const Group* const space = find_group(one, 67);
  if (!space || whole_of(*space) != 1) return false;
  if (!paper_warned)
    faults.warn(
        one.where,
        "what lies on a layout sheet is not read; draw it in model space where it is part of the line");
  paper_warned = true;
  return true;
}

void Drawing::draw(const Entity& one) {
  if (one.type == "LINE") return add(line_stroke(one, faults));
  if (one.type == "ARC") return add(arc_stroke(one, faults));
  if (one.type == "LWPOLYLINE") return add(light_polyline_stroke(one, faults));
  if (unread.size() > kMaxTraceMistakes && unread.find(one.type) == unread.end()) return;
  Unread& other = unread[one.type];
  if (other.count++ == 0) other.first = one.where;
}

/// An entry of the table of layers: off where its colour is less than 0, frozen by its first flag.
void Drawing::read_layer(const Entity& one) {
  const Group* const name = find_group(one, 2);
  const Group* const colour = find_group(one, 62);
  const bool shown = (flags_of(one) & 1) == 0 && !(colour && whole_of(*colour) < 0);
  if (name && !shown && off.size() < kMostLayersOff) off.insert(lower(name->value));
}

void Drawing::finish_entity() {
  Entity one = std::move(entity);
  entity = {};
  if (one.type.empty()) return;
  if (one.type == "LAYER") return read_layer(one);
  if (in_polyline) {
    if (one.type == "VERTEX") {
      if (const std::optional<Vertex> vertex = vertex_of(one, faults)) vertices.push_back(*vertex);
      return;
    }
    if (one.type == "SEQEND") return end_polyline();
    faults.error(one.where, "here is " + quoted(one.type) +
                                "; expected VERTEX or SEQEND, since a POLYLINE goes on" +
                                std::string(kSaveDxfAgain));
    in_polyline = false;
    vertices.clear();
  }
  if (one.type == "POLYLINE") {
    in_polyline = true;
    polyline = std::move(one);
    return;
  }
  if (!is_apart(one)) draw(one);
}

/// A group that begins nothing, within a section.
void Drawing::read_group(const Group& group) {
  if (section == "HEADER") {
    if (group.code == 9) {
      variable = group.value;
    } else if (group.code == 70 && variable == "$INSUNITS") {
      insert_units = whole_of(group);
    } else if (group.code == 70 && variable == "$MEASUREMENT") {
      measurement = whole_of(group);
    }
  } else if (!entity.type.empty()) {
    keep(group);
  }
}

void Drawing::read() {
  bool ended = false;
  bool any = false;
  while (!ended && !faults.full() && !too_many) {
    const std::optional<Group> group = groups.next();
    if (!group) break;
    if (!any && (group->code != 0 || group->value != "SECTION")) {
      faults.error(group->where, "a DXF drawing begins with group 0, SECTION" + std::string(kSaveDxfAgain));
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
      } else if (section == "ENTITIES" || (section == "TABLES" && group->value == "LAYER")) {
        entity = {group->value, group->where, {}};
      }
    } else if (section.empty()) {
      if (group->code == 2) section = group->value;
    } else {
      read_group(*group);
    }
  }
  if (faults.errors > 0) return;
  if (!any) {
    faults.error({}, "the drawing is empty" + std::string(kSaveDxfAgain));
  } else if (!ended || in_polyline) {
    faults.error({groups.text.size(), 1},
                 std::string(in_polyline ? "the drawing breaks off: a POLYLINE has no SEQEND"
                                         : "the drawing breaks off: group 0, EOF, is missing") +
                     std::string(kSaveDxfAgain));
  }
}

/// What to do about an entity that is not read.
const char* advice(std::string_view type) {
  if (type == "INSERT") return "; take the block apart where it is part of the line";
  if (type == "SPLINE" || type == "ELLIPSE") return "; turn it into a polyline where it is part of the line";
  return "; draw it with these where it is part of the line";
}

}  // namespace

std::optional<Tracing> read_dxf(std::string_view text, const TracingOptions& options, Faults& faults) {
  Drawing drawing{{text, faults}, faults, Layers(options.layer)};
  drawing.read();
  if (faults.errors == 0) drawing.layers.check(faults);
  for (const auto& [type, other] : drawing.unread) {
    faults.warn(other.first, quoted(type) + " is not read, only LINE, ARC, POLYLINE and LWPOLYLINE" +
                                 (other.count > 1 ? " (" + std::to_string(other.count) + " of them)" : "") +
                                 advice(type));
  }
  if (faults.errors > 0) return std::nullopt;
  std::optional<double> unit = mm_of_insert_unit(drawing.insert_units.value_or(0));
  if (!unit && drawing.insert_units.value_or(0) == 0 && drawing.measurement)
    unit = *drawing.measurement == 1 ? 1.0 : kMmPerInch;
  return one_line(drawing.strokes, Upward::y_up, unit, options, faults);
}

}  // namespace arrisline
