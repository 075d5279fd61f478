// Entities by the DXF reference: which are shown, and what they draw. Shown by tests/trace/dxf_test.cpp and
// layers_test.cpp.
#include "trace/dxf_items.h"

#include <algorithm>
#include <array>
#include <utility>

#include "arrisline/limits.h"
#include "wording/words.h"

namespace arrisline {

/// Layers that are off, at most: what their names take in memory. Further ones are read like others.
static constexpr std::size_t kMostLayersOff = 400;

/// Off where its colour is less than 0, frozen by its first flag.
void DxfLayers::read_entry(const Entity& entry) {
  const Group* const name = find_group(entry, 2);
  const Group* const colour = find_group(entry, 62);
  const bool frozen = (flags_of(entry) & 1) != 0;
  const bool off = frozen || (colour && whole_of(*colour) < 0);
  if (name && off && off_.size() < kMostLayersOff) off_.emplace(lower(name->value), frozen);
}

bool DxfLayers::shows(std::string_view layer) {
  return asked_.is_one() ? asked_.is(layer) : off_.count(lower(layer)) == 0;
}

bool DxfLayers::freezes(std::string_view layer) const {
  if (asked_.is_one()) return false;
  const auto found = off_.find(lower(layer));
  return found != off_.end() && found->second;
}

void DxfLayers::check(Faults& faults) const {
  asked_.check(faults);
}

void DxfUnread::add(const Entity& one) {
  if (types_.size() > kMaxTraceMistakes && types_.find(one.type) == types_.end()) return;
  Unread& other = types_[one.type];
  if (other.count++ == 0) other.first = one.where;
}

void DxfUnread::add_paper(const Entity& one, Faults& faults) {
  if (!paper_warned_)
    faults.warn(
        one.where,
        "what lies on a layout sheet is not read; draw it in model space where it is part of the line");
  paper_warned_ = true;
}

/// What to do about an entity that is not read.
static const char* advice(std::string_view type) {
  if (type == "SPLINE" || type == "ELLIPSE") return "; turn it into a polyline where it is part of the line";
  return "; draw it with these where it is part of the line";
}

void DxfUnread::warn(Faults& faults) const {
  for (const auto& [type, other] : types_) {
    faults.warn(other.first,
                quoted(type) + " is not read, only LINE, ARC, POLYLINE, LWPOLYLINE and blocks of them" +
                    (other.count > 1 ? " (" + std::to_string(other.count) + " of them)" : "") + advice(type));
  }
}

/// Keeps a group of an entity that is read: a vertex has three of them at the most.
void ItemReader::add(const Group& group) {
  static constexpr std::array kRead = {8, 10, 11, 20, 21, 30, 31, 42, 50, 51, 60, 67, 70, 90, 210, 220, 230};
  static constexpr std::array kOfInserts = {2, 41, 44, 45, 71};
  const auto among = [&](const auto& codes) {
    return std::find(codes.begin(), codes.end(), group.code) != codes.end();
  };
  if (entity.type.empty()) return;
  // 40, 41 and the like are the widths of a polyline elsewhere, many times.
  if (!among(kRead) && !(entity.type == "INSERT" && among(kOfInserts)) &&
      !(entity.type == "ARC" && group.code == 40))
    return;
  if (entity.groups.size() >= 3 * kMaxDrawnPoints + kRead.size()) return refuse(entity.where.at);
  entity.groups.push_back(group);
}

/// Whether an entity is not shown, is on a layer that is not wanted, or lies in paper space, where drawings
/// are laid out for print.
bool ItemReader::is_apart(const Entity& one) {
  const Group* const hidden = find_group(one, 60);
  if (hidden && whole_of(*hidden) == 1) return true;
  const std::string_view layer = layer_of(one);
  // What is in a block has layers of its own.
  if (one.type != "INSERT" && !(in_block && layer == "0") && !layers.shows(layer)) return true;
  const Group* const space = find_group(one, 67);
  if (!space || whole_of(*space) != 1) return false;
  unread.add_paper(one, faults);
  return true;
}

void ItemReader::take_stroke(const Entity& one, std::optional<DrawnPath> stroke) {
  if (stroke && !stroke->curves.empty()) take({layer_of(one), one.where, std::move(stroke), std::nullopt});
}

void ItemReader::draw(const Entity& one) {
  if (one.type == "LINE") return take_stroke(one, line_stroke(one, faults));
  if (one.type == "ARC") return take_stroke(one, arc_stroke(one, faults));
  if (one.type == "LWPOLYLINE") return take_stroke(one, light_polyline_stroke(one, faults));
  if (one.type == "INSERT") {
    if (std::optional<Insert> insert = insert_of(one, faults))
      take({layer_of(one), one.where, std::nullopt, insert});
    return;
  }
  // The ends of a block and of what is written into an INSERT, and the forms for that: none draws anything.
  if (one.type == "ENDBLK" || one.type == "SEQEND" || one.type == "ATTDEF") return;
  unread.add(one);
}

void ItemReader::end_polyline() {
  in_polyline = false;
  if (!is_apart(polyline)) take_stroke(polyline, polyline_stroke(polyline, vertices, faults));
  vertices.clear();
}

void ItemReader::begin(const Group& group) {
  finish();
  entity = {group.value, group.where, {}};
}

void ItemReader::finish() {
  Entity one = std::move(entity);
  entity = {};
  if (one.type.empty()) return;
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

}  // namespace arrisline
