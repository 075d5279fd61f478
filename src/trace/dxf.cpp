// An ASCII DXF drawing: its sections, the layers that are off, and the unit. Shown by
// tests/trace/dxf_test.cpp; any bytes: tests/fuzz/dxf.cpp.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>

#include "trace/drawings.h"
#include "trace/dxf_blocks.h"
#include "trace/one_line.h"

namespace arrisline {

namespace {

struct Drawing {
  Groups groups;
  Faults& faults;
  DxfLayers layers;
  DxfUnread unread = {};
  DxfBlocks blocks = {groups.text, layers, unread, faults};
  ItemReader items = {layers,
                      unread,
                      faults,
                      false,
                      [this](const DrawnItem& item) { blocks.place(item); },
                      [this](std::size_t byte) { blocks.refuse_more(byte); }};
  std::string_view section = {};
  std::string_view variable = {};  // of the header
  std::optional<int> insert_units = {};
  std::optional<int> measurement = {};
  Entity layer = {};                      // of the table, while its groups come
  std::optional<std::size_t> block = {};  // where the one begins whose name comes
  int decimals = 0;                       // of the figure that has the most

  void read();
  void begin(const Group& group, std::size_t at);
  void add(const Group& group);
};

/// A group 0 but the ends of sections.
void Drawing::begin(const Group& group, std::size_t at) {
  if (section == "ENTITIES") items.begin(group);
  if (section == "TABLES" && group.value == "LAYER") layer = {group.value, group.where, {}};
  if (section == "BLOCKS" && group.value == "BLOCK") block = at;
}

/// How many decimals a figure is written with.
int decimals_of(std::string_view figure) {
  constexpr int kMany = 16;  // what is written with an exponent has all that there are
  if (figure.find_first_of("eE") != std::string_view::npos) return kMany;
  const std::size_t point = figure.find('.');
  return point == std::string_view::npos
             ? 0
             : static_cast<int>(std::min<std::size_t>(kMany, figure.size() - point - 1));
}

/// A group that begins nothing, within a section.
void Drawing::add(const Group& group) {
  // The x and y of places, and radii.
  const bool figure = (group.code >= 10 && group.code < 30) || group.code == 40;
  if (figure && (section == "ENTITIES" || section == "BLOCKS"))
    decimals = std::max(decimals, decimals_of(group.value));
  if (section == "HEADER") {
    if (group.code == 9) {
      variable = group.value;
    } else if (group.code == 70 && variable == "$INSUNITS") {
      insert_units = whole_of(group);
    } else if (group.code == 70 && variable == "$MEASUREMENT") {
      measurement = whole_of(group);
    }
  } else if (section == "ENTITIES") {
    items.add(group);
  } else if (!layer.type.empty()) {
    const bool read = group.code == 2 || group.code == 62 || group.code == 70;
    if (read && !find_group(layer, group.code)) layer.groups.push_back(group);
  } else if (block && group.code == 2) {
    blocks.add(group.value, group.where, *block);
    block.reset();
  }
}

void Drawing::read() {
  bool ended = false;
  bool any = false;
  while (!ended && !faults.full() && !blocks.too_many()) {
    const std::size_t at = groups.pos;
    const std::optional<Group> group = groups.next();
    if (!group) break;
    if (!any && (group->code != 0 || group->value != "SECTION")) {
      faults.error(group->where, "a DXF drawing begins with group 0, SECTION" + std::string(kSaveDxfAgain));
      return;
    }
    any = true;
    if (group->code == 0) {
      items.finish();
      if (!layer.type.empty()) layers.read_entry(layer);
      layer = {};
      block.reset();
      variable = {};
      if (group->value == "EOF") {
        ended = true;
      } else if (group->value == "SECTION" || group->value == "ENDSEC") {
        section = {};
      } else {
        begin(*group, at);
      }
    } else if (section.empty()) {
      if (group->code == 2) section = group->value;
    } else {
      add(*group);
    }
  }
  if (faults.errors > 0) return;
  if (!any) {
    faults.error({}, "the drawing is empty" + std::string(kSaveDxfAgain));
  } else if (!ended || items.in_polyline) {
    faults.error({groups.text.size(), 1},
                 std::string(items.in_polyline ? "the drawing breaks off: a POLYLINE has no SEQEND"
                                               : "the drawing breaks off: group 0, EOF, is missing") +
                     std::string(kSaveDxfAgain));
  }
}

}  // namespace

std::optional<Tracing> read_dxf(std::string_view text, const TracingOptions& options, Faults& faults) {
  Drawing drawing{{text, faults}, faults, DxfLayers(options.layer)};
  drawing.read();
  if (faults.errors == 0) drawing.layers.check(faults);
  drawing.unread.warn(faults);
  if (faults.errors > 0) return std::nullopt;
  std::optional<double> unit = mm_of_insert_unit(drawing.insert_units.value_or(0));
  if (!unit && drawing.insert_units.value_or(0) == 0 && drawing.measurement)
    unit = *drawing.measurement == 1 ? 1.0 : kMmPerInch;
  return one_line(drawing.blocks.strokes(), Upward::y_up, unit, options, faults,
                  std::pow(10, -drawing.decimals));
}

}  // namespace arrisline
