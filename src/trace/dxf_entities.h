// The entities of a DXF drawing that make a line.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "trace/curves.h"
#include "trace/dxf_groups.h"

namespace arrisline {

struct Entity {
  std::string_view type;
  Span where;
  std::vector<Group> groups;
};

/// Of a polyline. The bulge is that of the arc to the next vertex: the tangent of a quarter of its sweep,
/// positive to the left.
struct Vertex {
  Point at;
  double bulge = 0;
  std::size_t byte = 0;
  double z = 0;
};

/// The first group of a code, or null.
const Group* find_group(const Entity& entity, int code);
/// The value as a whole number; 0 where it is none.
int whole_of(const Group& group);
/// Group 8: the layer that the entity is on; "0" where it says none.
std::string_view layer_of(const Entity& entity);
/// Group 70; 0 where there is none.
int flags_of(const Entity& entity);

// Nothing, and mistakes, where the entity is not sound; nothing alone where it draws nothing.
std::optional<DrawnPath> line_stroke(const Entity& entity, Faults& faults);
std::optional<DrawnPath> arc_stroke(const Entity& entity, Faults& faults);
std::optional<DrawnPath> light_polyline_stroke(const Entity& entity, Faults& faults);
std::optional<Vertex> vertex_of(const Entity& entity, Faults& faults);
/// Of a POLYLINE, which has its vertices in entities of their own.
std::optional<DrawnPath> polyline_stroke(const Entity& entity, const std::vector<Vertex>& vertices,
                                         Faults& faults);

}  // namespace arrisline
