// The entities of a section or a block of a DXF drawing, each as what it draws.
#pragma once

#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trace/dxf_entities.h"
#include "trace/layers.h"

namespace arrisline {

/// What an entity draws: a stroke, or a block put in its place.
struct DrawnItem {
  std::string_view layer;
  Span where;
  std::optional<DrawnPath> stroke;
  std::optional<Insert> insert;

  /// What it counts against a limit: its curves, and as much for a block as for one.
  std::size_t weight() const { return stroke ? stroke->curves.size() : 1; }
};

/// Which layers are read: the one asked for, else all but those that are off or frozen.
class DxfLayers {
 public:
  explicit DxfLayers(const std::optional<std::string>& asked) : asked_(asked) {}

  /// An entry of the table of layers.
  void read_entry(const Entity& entry);
  bool shows(std::string_view layer);
  /// Whether blocks that are put on this layer are not shown, whatever is in them: so where it is frozen. One
  /// that is off hides what is on it alone.
  bool freezes(std::string_view layer) const;
  void check(Faults& faults) const;

 private:
  Layers asked_;
  std::map<std::string, bool> off_;  // true: frozen
};

/// What is passed over, to be told once for all of a kind.
class DxfUnread {
 public:
  void add(const Entity& one);
  void add_paper(const Entity& one, Faults& faults);
  void warn(Faults& faults) const;

 private:
  struct Unread {
    Span first;
    std::size_t count = 0;
  };
  std::map<std::string_view, Unread> types_;
  bool paper_warned_ = false;
};

/// Puts the groups of entities together. What lies on layers that are not read makes no item; in a block,
/// what is on layer "0" makes one always, since it goes by where the block is put.
struct ItemReader {
  DxfLayers& layers;
  DxfUnread& unread;
  Faults& faults;
  bool in_block = false;
  /// Takes each item that is sound.
  std::function<void(DrawnItem)> take;
  /// Is told of an entity that is larger than any drawing may be, where it begins.
  std::function<void(std::size_t byte)> refuse;

  Entity entity = {};
  bool in_polyline = false;
  Entity polyline = {};
  std::vector<Vertex> vertices = {};

  /// A group 0: the entity before it has ended.
  void begin(const Group& group);
  /// A group of the entity that has begun.
  void add(const Group& group);
  /// The last entity has ended.
  void finish();

 private:
  bool is_apart(const Entity& one);
  void draw(const Entity& one);
  void take_stroke(const Entity& one, std::optional<DrawnPath> stroke);
  void end_polyline();
};

}  // namespace arrisline
