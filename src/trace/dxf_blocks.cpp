// Blocks by the DXF reference: BLOCK and INSERT. Shown by tests/trace/dxf_blocks_test.cpp.
#include "trace/dxf_blocks.h"

#include <utility>

#include "arrisline/limits.h"
#include "wording/words.h"

namespace arrisline {

void DxfBlocks::refuse(Span where, std::string message) {
  if (!too_many_) faults_.error(where, std::move(message));
  too_many_ = true;
}

void DxfBlocks::refuse_more(std::size_t byte) {
  refuse({byte, 1}, "with this entity the drawing has more than " + std::to_string(kMaxDrawnPoints) +
                        " lines and arcs; draw the line with fewer" + to_raise("kMaxDrawnPoints"));
}

void DxfBlocks::add(std::string_view name, Span where, std::size_t at) {
  if (blocks_.size() >= kMaxDxfBlocks) {
    refuse(where, "the drawing has more than " + std::to_string(kMaxDxfBlocks) +
                      " blocks; draw the line in a drawing of its own" + to_raise("kMaxDxfBlocks"));
    return;
  }
  Block block;
  block.at = at;
  blocks_.emplace(lower(name), std::move(block));
}

void DxfBlocks::read_head(const Entity& head, const std::string& name, Block& block) {
  const auto number = [&](int code) {
    const Group* const group = find_group(head, code);
    return group ? number_of(*group, faults_).value_or(0) : 0.0;
  };
  block.base = {number(10), number(20)};
  // Flags 4 and 8: it stands in a file of its own.
  if ((flags_of(head) & (4 | 8)) != 0)
    faults_.warn(head.where, "block " + quoted(name) +
                                 " lies in another drawing, which is not read; take it into this one where "
                                 "it is part of the line");
}

void DxfBlocks::read(const std::string& name, Block& block) {
  block.is_read = true;
  Groups groups{text_, faults_, block.at};
  std::optional<Group> group = groups.next();
  if (!group) return;
  Entity head{group->value, group->where, {}};
  while ((group = groups.next()) && group->code != 0) {
    if (group->code == 10 || group->code == 20 || group->code == 70) head.groups.push_back(*group);
    if (head.groups.size() > kMaxDrawnPoints) return refuse_more(head.where.at);
  }
  read_head(head, name, block);
  const auto take = [&](DrawnItem item) {
    kept_ += item.weight();
    if (kept_ > kMaxDrawnPoints) return refuse_more(item.where.at);
    block.items.push_back(std::move(item));
  };
  ItemReader reader{layers_, unread_, faults_, true, take, [&](std::size_t byte) { refuse_more(byte); }};
  for (; group && !faults_.full() && !too_many_; group = groups.next()) {
    if (group->code != 0) {
      reader.add(*group);
      continue;
    }
    reader.begin(*group);
    if (group->value == "ENDBLK" || group->value == "ENDSEC" || group->value == "EOF") break;
  }
  // A POLYLINE that goes on is a mistake; by itself the end draws nothing.
  if (reader.in_polyline) reader.finish();
}

bool DxfBlocks::has_room(const DrawnItem& item, const Block& block) {
  const std::size_t cells = item.insert->columns * item.insert->rows;
  placed_ += cells > kMaxPlacedItems ? cells : cells * (1 + block.items.size());
  if (placed_ <= kMaxPlacedItems) return true;
  refuse(item.where, "with this INSERT the blocks of the drawing come to more than " +
                         std::to_string(kMaxPlacedItems) + " lines and arcs; draw the line without blocks" +
                         to_raise("kMaxPlacedItems"));
  return false;
}

void DxfBlocks::place_block(const DrawnItem& item, const Affine& map, std::string_view layer,
                            std::size_t depth) {
  const Insert& insert = *item.insert;
  const std::string name = lower(insert.block);
  const auto found = blocks_.find(name);
  if (found == blocks_.end()) {
    if (missing_.size() <= kMaxTraceMistakes && missing_.insert(name).second)
      faults_.warn(item.where, "there is no block " + quoted(insert.block) + " in this drawing" +
                                   std::string(kSaveDxfAgain));
    return;
  }
  Block& block = found->second;
  if (block.open)
    return refuse(item.where,
                  "block " + quoted(insert.block) + " is put into itself here; take this INSERT out of it");
  if (depth >= kMaxBlockDepth)
    return refuse(item.where, "blocks lie more than " + std::to_string(kMaxBlockDepth) +
                                  " deep within one another here; take them apart" +
                                  to_raise("kMaxBlockDepth"));
  if (!block.is_read) read(std::string(insert.block), block);
  if (faults_.full() || too_many_ || block.items.empty() || !has_room(item, block)) return;
  block.open = true;
  for (std::size_t row = 0; row < insert.rows; ++row) {
    for (std::size_t column = 0; column < insert.columns; ++column) {
      const Affine cell = map * insert.map(row, column) * Affine{1, 0, 0, 1, -block.base.x, -block.base.y};
      for (const DrawnItem& part : block.items) {
        if (too_many_) break;
        place(part, cell, layer, depth + 1);
      }
    }
  }
  block.open = false;
}

void DxfBlocks::place(const DrawnItem& item, const Affine& map, std::string_view around, std::size_t depth) {
  // What is drawn on layer 0 of a block goes onto the layer of its INSERT.
  const std::string_view layer = item.layer == "0" ? around : item.layer;
  if (item.insert) {
    if (!layers_.freezes(layer)) place_block(item, map, layer, depth);
    return;
  }
  if (!layers_.shows(layer)) return;
  curves_ += item.weight();
  if (curves_ > kMaxDrawnPoints) return refuse_more(item.stroke->at);
  strokes_.push_back(mapped(*item.stroke, map));
}

}  // namespace arrisline
