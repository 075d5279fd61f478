// An SVG drawing by Expat: which elements are drawn, by which map, and how large. Shown by
// tests/trace/svg_test.cpp; any bytes: tests/fuzz/svg.cpp.
#include <expat.h>

#include <algorithm>
#include <memory>
#include <set>
#include <string>
#include <utility>

#include "arrisline/limits.h"
#include "trace/drawings.h"
#include "trace/layers.h"
#include "trace/one_line.h"
#include "trace/svg_elements.h"
#include "trace/svg_shapes.h"
#include "trace/svg_style.h"
#include "trace/svg_survey.h"
#include "trace/xml_memory.h"
#include "wording/words.h"

namespace arrisline {

namespace {

/// mm in a unit of a drawing, and the other way round, at most: far more than sizes that mean something.
constexpr double kLargestUnit = 1e9;

struct Level {
  Affine map;
  bool drawn = true;
  bool chosen = true;  // on the layer that is read
  bool filled = true;
  bool stroked = true;
  bool hidden = false;  // what is in it may be shown all the same
  Point viewport;       // in the user units in here; 0 where it is not known
};

/// Whether an element is shown, and whether what is in it is filled and stroked, where that is said.
void look_up_style(const SvgStyle& style, Level& level) {
  if (style.is("display", "none", false)) level.drawn = false;
  level.hidden =
      style.is("visibility", "hidden", level.hidden) || style.is("visibility", "collapse", level.hidden);
  level.filled = !style.is("fill", "none", !level.filled);
  level.stroked = !style.is("stroke", "none", !level.stroked);
}

/// Whether an element has the id of the layer that is read, or a label, as drawing programs write of their
/// own, that says the same.
bool is_on(Layers& layers, const char** given) {
  bool found = false;
  for (; *given != nullptr; given += 2) {
    const std::string_view name = given[0];
    if (name == "id" || name.ends_with(" label")) found = layers.is(given[1]) || found;
  }
  return found;
}

/// A viewBox, of size 0 where there is none, and how it is fitted into its viewport.
struct View {
  ViewBox box;
  Aspect aspect;
};

View view_of(const Attributes& attributes, Faults& faults) {
  View view;
  if (const std::optional<Passage> box = attributes("viewBox"))
    view.box = view_box_of(*box, faults).value_or(ViewBox{});
  if (const std::optional<Passage> aspect = attributes("preserveAspectRatio"))
    view.aspect = aspect_of(*aspect, faults).value_or(Aspect{});
  return view;
}

/// An element as it is drawn: where it stands, or as a copy.
struct Copied {
  const SvgNode* node = nullptr;          // null where it stands
  const Attributes* target_of = nullptr;  // those of the `use` that names it
};

struct Document {
  std::string_view text;
  Faults& faults;
  XML_Parser parser;
  Layers layers;
  const SvgSurvey& survey;
  std::vector<std::size_t> copying = {};  // the nodes that are being copied just now
  std::size_t copied = 0;                 // bytes of nodes
  std::vector<Level> levels = {};
  std::vector<DrawnPath> strokes = {};
  std::optional<double> mm_per_unit = {};
  std::set<std::string, std::less<>> warned = {};
  std::size_t entities = 0;
  std::size_t curves = 0;
  std::size_t counted = 0;  // strokes of which the curves are counted
  bool stopped = false;

  std::size_t at() const {
    const XML_Index index = XML_GetCurrentByteIndex(parser);
    return index < 0 ? 0 : std::min(static_cast<std::size_t>(index), text.size());
  }
  void stop() {
    stopped = true;
    XML_StopParser(parser, XML_FALSE);
  }

  void start(std::string_view full, const char** given, std::size_t from, Copied copy);
  void copy(std::string_view name, const Attributes& attributes, const char** given, std::size_t from);
  void draw_copy(std::size_t first, const Attributes& use);
  void open_root(std::string_view name, const Attributes& attributes, std::size_t from);
  void open_viewport(const Attributes& attributes, const Attributes* use, Level& level);
  void warn_unread(std::string_view name, std::size_t from);
  /// Warns of the name of an element at a byte, once for each key.
  void warn_once(std::string_view key, std::string_view name, std::size_t from, std::string message) {
    if (warned.size() <= kMaxTraceMistakes && warned.emplace(key).second)
      faults.warn({from, name.size() + 1}, std::move(message));
  }
  void count_curves(std::size_t from);
};

void Document::open_root(std::string_view name, const Attributes& attributes, std::size_t from) {
  if (name != "svg") {
    faults.error(
        {from, name.size() + 1},
        "this is " + quoted(name) + "; expected the drawing to be an 'svg'" + std::string(kSaveSvgAgain));
    return stop();
  }
  const auto size = [&](const char* side) -> std::optional<SvgLength> {
    const std::optional<Passage> passage = attributes(side);
    if (!passage || passage->text == "auto") return std::nullopt;
    std::optional<SvgLength> length = length_of(*passage, faults);
    if (length && length->number <= 0) {
      faults.error(passage->span(0, passage->text.size()), "the drawing has no size; give its page one");
      return std::nullopt;
    }
    return length;
  };
  const std::optional<SvgLength> wide = size("width");
  const std::optional<SvgLength> high = size("height");
  const View view = view_of(attributes, faults);
  // 0 stands for a side that is not said, or not in a unit of length.
  const double mm_wide = wide ? wide->mm.value_or(0) : 0;
  const double mm_high = high ? high->mm.value_or(0) : 0;
  Level level;
  if (view.box.size.x == 0) {
    if (mm_wide > 0 || mm_high > 0) mm_per_unit = kMmPerPx;
    level.viewport = {wide ? wide->px() : 0, high ? high->px() : 0};
  } else {
    level.viewport = view.box.size;
    const double across = mm_wide / view.box.size.x;
    const double down = mm_high / view.box.size.y;
    for (const double mm : {across, down}) {
      if (mm == 0 || (mm >= 1 / kLargestUnit && mm <= kLargestUnit)) continue;
      faults.error(
          {from, name.size() + 1},
          "the size of the drawing and that of its viewBox are too far apart" + std::string(kSaveSvgAgain));
      return stop();
    }
    if (across > 0 && down > 0 && !view.aspect.keep) {
      // Units of two sizes: the points are had in mm.
      mm_per_unit = 1;
      level.map = {across, 0, 0, down, 0, 0};
    } else if (across > 0 && down > 0) {
      mm_per_unit = view.aspect.slice ? std::max(across, down) : std::min(across, down);
    } else if (across > 0 || down > 0) {
      // The side that is not said follows from the other.
      mm_per_unit = std::max(across, down);
    }
  }
  level.chosen = !layers.is_one();
  levels.push_back(level);
}

/// An svg within the drawing, or a symbol that is copied: a `use` that says a size says theirs (5.6).
void Document::open_viewport(const Attributes& attributes, const Attributes* use, Level& level) {
  const auto length = [&](const char* name, double whole, double otherwise) {
    const bool is_size = *name == 'w' || *name == 'h';
    std::optional<Passage> passage = use != nullptr && is_size ? (*use)(name) : std::nullopt;
    if (!passage) passage = attributes(name);
    const std::optional<SvgLength> one = passage ? length_of(*passage, faults) : std::nullopt;
    if (!one) return otherwise;
    return one->percent ? one->number / 100 * whole : one->px();
  };
  const Point outer = level.viewport;
  const Point least{length("x", outer.x, 0), length("y", outer.y, 0)};
  const Point size{length("width", outer.x, outer.x), length("height", outer.y, outer.y)};
  level.map = level.map * Affine{1, 0, 0, 1, least.x, least.y};
  level.viewport = size;
  const View view = view_of(attributes, faults);
  if (view.box.size.x == 0) return;
  level.viewport = view.box.size;
  if (size.x > 0 && size.y > 0) level.map = level.map * view_map(view.box, view.aspect, size);
}

void Document::count_curves(std::size_t from) {
  for (; counted < strokes.size(); ++counted) curves += strokes[counted].curves.size();
  if (curves <= kMaxDrawnPoints) return;
  faults.error({from, 1}, "with this element the drawing has more than " + std::to_string(kMaxDrawnPoints) +
                              " lines and curves; draw the line with fewer" + to_raise("kMaxDrawnPoints"));
  stop();
}

/// Names what would draw something and is not read.
void Document::warn_unread(std::string_view name, std::size_t from) {
  if (const char* const advice = unread_advice(name)) return warn_once(name, name, from, advice);
  if (draws_nothing(name) || warned.count(name) > 0 || warned.size() > kMaxTraceMistakes) return;
  static const std::vector<std::string_view> kDrawn = {"path",   "line",    "polyline", "polygon", "rect",
                                                       "circle", "ellipse", "g",        "svg",     "use"};
  const std::string near = suggestion(name, kDrawn);
  warn_once(name, name, from,
            quoted(name) + " is not read" +
                (near.empty() ? "; draw it as a path where it is part of the line" : near));
}

/// Draws what a `use` names, as if it stood in its place (5.6).
void Document::copy(std::string_view name, const Attributes& attributes, const char** given,
                    std::size_t from) {
  const char* const href = href_of(given);
  if (href == nullptr || *href == '\0')
    return warn_once("use", name, from,
                     "this 'use' names nothing; give it the id of what it copies, as href='#line'");
  if (*href != '#')
    return warn_once(".", name, from,
                     "what lies in another file is not read; take it into this drawing where it is part of "
                     "the line");
  const std::string_view id = href + 1;
  const auto found = survey.by_id.find(id);
  if (found == survey.by_id.end())
    return warn_once(href, name, from,
                     "nothing in this drawing has the id " + quoted(id) + std::string(kSaveSvgAgain));
  if (std::find(copying.begin(), copying.end(), found->second) != copying.end()) {
    faults.error({from, name.size() + 1},
                 quoted(id) + " is copied into itself here; take this 'use' out of it");
    return stop();
  }
  const auto length = [&](const char* side, double whole) {
    const std::optional<Passage> passage = attributes(side);
    const std::optional<SvgLength> one = passage ? length_of(*passage, faults) : std::nullopt;
    if (!one) return 0.0;
    return one->percent ? one->number / 100 * whole : one->px();
  };
  Level& level = levels.back();
  level.map = level.map * Affine{1, 0, 0, 1, length("x", level.viewport.x), length("y", level.viewport.y)};
  copying.push_back(found->second);
  draw_copy(found->second, attributes);
  copying.pop_back();
}

void Document::draw_copy(std::size_t first, const Attributes& use) {
  const std::size_t outside = levels.size();
  const std::size_t last = survey.nodes[first].end;
  std::vector<std::size_t> ends;
  for (std::size_t k = first; k < last && !stopped; ++k) {
    const SvgNode& node = survey.nodes[k];
    while (!ends.empty() && ends.back() <= k) {
      ends.pop_back();
      levels.pop_back();
    }
    copied += node.bytes();
    if (copied > kMaxCopiedBytes) {
      faults.error({node.at, 1}, "with this element what 'use' copies comes to more than " +
                                     std::to_string(kMaxCopiedBytes >> 20) + " MB; draw the line alone" +
                                     to_raise("kMaxCopiedBytes"));
      return stop();
    }
    std::vector<const char*> given;
    for (const auto& [key, value] : node.attributes) {
      given.push_back(key.c_str());
      given.push_back(value.c_str());
    }
    given.push_back(nullptr);
    start(node.name, given.data(), node.at, {&node, k == first ? &use : nullptr});
    ends.push_back(node.end);
  }
  if (!stopped) levels.resize(outside);
}

void Document::start(std::string_view full, const char** given, std::size_t from, Copied copy_of) {
  if (stopped) return;
  const std::string_view name = svg_name(full);
  const std::string_view local = full.substr(full.find(kBetween) + 1);
  const Attributes attributes = [&](const char* wanted) { return given_passage(text, given, from, wanted); };
  if (levels.size() >= kMaxDrawingDepth) {
    faults.error({from, local.size() + 1}, "elements lie more than " + std::to_string(kMaxDrawingDepth) +
                                               " deep within one another here; take the groups apart" +
                                               to_raise("kMaxDrawingDepth"));
    return stop();
  }
  if (levels.empty()) return open_root(local, attributes, from);
  Level level = levels.back();
  const bool symbol = name == "symbol" && copy_of.target_of != nullptr;
  const bool use = name == "use";
  const bool group = is_svg_group(name) || symbol || use;
  const bool shape = is_shape(name);
  if (name.empty()) level.drawn = false;
  if (level.drawn) look_up_style({name, attributes, survey.rules}, level);
  // What stands somewhere by itself has its id there, and its copies that of their `use`.
  const bool has_id = copy_of.node == nullptr || copy_of.node->apart || use;
  if (level.drawn && (group || shape) && has_id && !level.chosen) level.chosen = is_on(layers, given);
  if (level.drawn && !group && !shape) {
    level.drawn = false;
    if (!level.hidden) warn_unread(name, from);
  }
  if (level.drawn) {
    if (const std::optional<Passage> transform = attributes("transform"))
      level.map = level.map * transform_of(*transform, faults).value_or(Affine{});
    if (name == "svg" || symbol) open_viewport(attributes, copy_of.target_of, level);
    if (shape && level.chosen && !level.hidden && (level.filled || level.stroked)) {
      shape_strokes(name, attributes, level.map, from, strokes, faults);
      count_curves(from);
    }
  }
  levels.push_back(level);
  if (use && level.drawn) {
    copy(name, attributes, given, from);
    // Nothing in the `use` itself is drawn.
    if (!stopped) levels.back().drawn = false;
  }
  if (faults.full()) stop();
}

void XMLCALL on_start(void* data, const XML_Char* name, const XML_Char** attributes) {
  Document& document = *static_cast<Document*>(data);
  document.start(name, attributes, document.at(), {});
}

void XMLCALL on_end(void* data, const XML_Char*) {
  Document& document = *static_cast<Document*>(data);
  if (!document.levels.empty()) document.levels.pop_back();
}

void XMLCALL on_entity(void* data, const XML_Char*, int, const XML_Char*, int, const XML_Char*,
                       const XML_Char*, const XML_Char*, const XML_Char*) {
  Document& document = *static_cast<Document*>(data);
  if (document.stopped || ++document.entities <= kMaxSvgEntities) return;
  document.faults.error({document.at(), 1},
                        "the drawing declares more than " + std::to_string(kMaxSvgEntities) +
                            " entities; save it again as plain SVG" + to_raise("kMaxSvgEntities"));
  document.stop();
}

}  // namespace

std::optional<Tracing> read_svg(std::string_view text, const TracingOptions& options, Faults& faults) {
  // Before the parser of the drawing: they have so much memory together.
  const SvgSurvey survey = survey_of(text);
  const std::unique_ptr<XML_ParserStruct, decltype(&XML_ParserFree)> parser(
      XML_ParserCreate_MM(nullptr, bounded_memory(), &kBetween), &XML_ParserFree);
  if (!parser) throw std::bad_alloc();
  Document document{text, faults, parser.get(), Layers(options.layer), survey};
  XML_SetUserData(parser.get(), &document);
  XML_SetElementHandler(parser.get(), on_start, on_end);
  XML_SetEntityDeclHandler(parser.get(), on_entity);
  const XML_Status status = XML_Parse(parser.get(), text.data(), static_cast<int>(text.size()), XML_TRUE);
  const bool broken = status == XML_STATUS_ERROR && !document.stopped;
  const XML_Error error = XML_GetErrorCode(parser.get());
  if (survey.too_large || (broken && error == XML_ERROR_NO_MEMORY)) {
    faults.error({survey.too_large ? 0 : document.at(), 1},
                 "the names and values in this drawing take more than " + std::to_string(kMaxXmlBytes >> 20) +
                     " MB; draw the line alone" + to_raise("kMaxXmlBytes"));
  } else if (broken) {
    faults.error({document.at(), 1}, "the drawing is broken here (" + std::string(XML_ErrorString(error)) +
                                         ")" + std::string(kSaveSvgAgain));
  }
  if (survey.unread_sheet && faults.errors == 0)
    faults.warn(*survey.unread_sheet,
                "of this style sheet only rules for an element, a class or an id are read; set what else "
                "says whether something is drawn on the elements themselves");
  if (faults.errors == 0) document.layers.check(faults);
  if (faults.errors > 0) return std::nullopt;
  return one_line(document.strokes, Upward::y_down, document.mm_per_unit, options, faults);
}

}  // namespace arrisline
