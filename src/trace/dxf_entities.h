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

/// A block put in its place, once or in rows and columns.
struct Insert {
  std::string_view block;
  Affine frame;  // from the insert's own frame, turned, with its origin where the block goes
  double across = 1;
  double up = 1;
  std::size_t columns = 1;
  std::size_t rows = 1;
  Point spacing;

  /// Where the block goes whose base point is the origin. Rows and columns turn with it, and keep their
  /// distance whatever its scale.
  Affine map(std::size_t row, std::size_t column) const;
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
std::optional<Insert> insert_of(const Entity& entity, Faults& faults);

}  // namespace arrisline
