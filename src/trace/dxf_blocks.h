// The blocks of a DXF drawing, and what it draws with them.
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "trace/dxf_items.h"

namespace arrisline {

/// A block is read where it is first put somewhere, so that mistakes in one that is nowhere do not matter.
class DxfBlocks {
 public:
  DxfBlocks(std::string_view text, DxfLayers& layers, DxfUnread& unread, Faults& faults)
      : text_(text), layers_(layers), unread_(unread), faults_(faults) {}

  /// A block of this name, whose group 0 begins at a byte. Of two with one name the first is it.
  void add(std::string_view name, Span where, std::size_t at);
  /// Appends the strokes that an item of the drawing comes to.
  void place(const DrawnItem& item) { place(item, Affine{}, item.layer, 0); }
  /// A mistake: with what begins at a byte there are more lines and arcs than a drawing may have.
  void refuse_more(std::size_t byte);

  const std::vector<DrawnPath>& strokes() const { return strokes_; }
  /// Whether a limit was passed: nothing more is taken.
  bool too_many() const { return too_many_; }

 private:
  struct Block {
    std::size_t at = 0;
    bool is_read = false;
    bool open = false;  // being put in its place just now
    Point base;
    std::vector<DrawnItem> items;
  };

  void read(const std::string& name, Block& block);
  void read_head(const Entity& head, const std::string& name, Block& block);
  void place(const DrawnItem& item, const Affine& map, std::string_view around, std::size_t depth);
  void place_block(const DrawnItem& item, const Affine& map, std::string_view layer, std::size_t depth);
  bool has_room(const DrawnItem& item, const Block& block);
  void refuse(Span where, std::string message);

  std::string_view text_;
  DxfLayers& layers_;
  DxfUnread& unread_;
  Faults& faults_;
  std::map<std::string, Block> blocks_;
  std::set<std::string> missing_;
  std::vector<DrawnPath> strokes_;
  std::size_t curves_ = 0;  // of the strokes
  std::size_t kept_ = 0;    // by weight, of the items of blocks
  std::size_t placed_ = 0;  // items of blocks, each time that one is put in its place
  bool too_many_ = false;
};

}  // namespace arrisline
