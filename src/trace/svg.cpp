// An SVG drawing by Expat: which elements are drawn, by which map, and how large. Shown by
// tests/trace/svg_test.cpp; any bytes: tests/fuzz/svg.cpp.
#include <expat.h>

#include <array>
#include <memory>
#include <set>
#include <string>
#include <utility>

#include "arrisline/limits.h"
#include "trace/drawings.h"
#include "trace/layers.h"
#include "trace/one_line.h"
#include "trace/svg_shapes.h"
#include "trace/svg_style.h"
#include "trace/xml_memory.h"
#include "wording/words.h"

namespace arrisline {

namespace {

constexpr std::string_view kSvg = "http://www.w3.org/2000/svg";
constexpr char kBetween = ' ';  // of namespace and name, as Expat gives them

/// mm in a unit of a drawing, and the other way round, at most: far more than sizes that mean something.
constexpr double kLargestUnit = 1e9;

constexpr std::array<std::string_view, 4> kGroups = {"g", "a", "svg", "switch"};
/// Elements that draw nothing by themselves.
constexpr std::array<std::string_view, 21> kUndrawn = {
    "defs",      "symbol",         "clipPath", "mask",
    "marker",    "pattern",        "metadata", "title",
    "desc",      "style",          "script",   "linearGradient",
    "filter",    "radialGradient", "cursor",   "font",
    "view",      "animate",        "set",      "animateTransform",
    "solidColor"};
/// Elements that draw what is not read, and what to do about it.
struct Unread {
  std::string_view name;
  const char* advice;
};
constexpr std::array<Unread, 4> kUnread = {{
    {"text", "words are not read; turn them into paths where they are part of the line"},
    {"image", "pictures are not read; draw the line over it, and leave it out"},
    {"use", "copies made by 'use' are not read; turn them into paths where they are part of the line"},
    {"foreignObject", "what is no SVG is not read; draw it as a path where it is part of the line"},
}};

template <class List>
bool among(const List& list, std::string_view name) {
  return std::find(list.begin(), list.end(), name) != list.end();
}

struct Level {
  Affine map;
  bool drawn = true;
  bool chosen = true;  // on the layer that is read
  bool filled = true;
  bool stroked = true;
  Point viewport;  // in the user units in here; 0 where it is not known
};

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// The value of an attribute as written in a tag that begins at a byte; nothing where it is not found there.
std::optional<Passage> as_written(std::string_view text, std::size_t at, std::string_view name) {
  if (at >= text.size() || text[at] != '<') return std::nullopt;
  while (at < text.size() && !is_space(text[at]) && text[at] != '>') ++at;
  while (at < text.size()) {
    while (at < text.size() && is_space(text[at])) ++at;
    const std::size_t from = at;
    while (at < text.size() && !is_space(text[at]) && text[at] != '=' && text[at] != '>') ++at;
    const std::string_view found = text.substr(from, at - from);
    while (at < text.size() && is_space(text[at])) ++at;
    if (at >= text.size() || text[at] != '=') return std::nullopt;
    ++at;
    while (at < text.size() && is_space(text[at])) ++at;
    if (at >= text.size()) return std::nullopt;
    const std::size_t end = text.find(text[at], at + 1);
    if (end == std::string_view::npos) return std::nullopt;
    const std::string_view value = text.substr(at + 1, end - at - 1);
    if (found == name) return Passage{value, at + 1, value.find('&') == std::string_view::npos};
    at = end + 1;
  }
  return std::nullopt;
}

/// Whether an element is shown, and whether what is in it is filled and stroked, where that is said.
void look_up_style(const Attributes& attributes, Level& level) {
  const SvgStyle style(attributes);
  if (style.is("display", "none", false) || style.is("visibility", "hidden", false)) level.drawn = false;
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

struct Document {
  std::string_view text;
  Faults& faults;
  XML_Parser parser;
  Layers layers;
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

  void start(std::string_view full, const char** given);
  void open_root(std::string_view name, const Attributes& attributes, std::size_t from);
  void open_viewport(const Attributes& attributes, Level& level);
  void warn_once(std::string_view name, std::size_t from, std::string message) {
    if (warned.size() <= kMaxTraceMistakes && warned.emplace(name).second)
      faults.warn({from, name.size() + 1}, std::move(message));
  }
  void count_curves(std::size_t from);
};

/// Absent in the tag where it comes from an entity or from what a document type declares.
std::optional<Passage> attribute(const Document& document, const char** given, std::size_t from,
                                 const char* name) {
  for (; *given != nullptr; given += 2) {
    if (std::string_view(given[0]) != name) continue;
    std::optional<Passage> passage = as_written(document.text, from, name);
    if (passage && passage->as_written) return passage;
    return Passage{given[1], passage ? passage->at : from, false};
  }
  return std::nullopt;
}

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

/// An svg within the drawing.
void Document::open_viewport(const Attributes& attributes, Level& level) {
  const auto length = [&](const char* name, double whole, double otherwise) {
    const std::optional<Passage> passage = attributes(name);
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

void Document::start(std::string_view full, const char** given) {
  if (stopped) return;
  const std::size_t from = at();
  const std::size_t gap = full.find(kBetween);
  const std::string_view space = gap == std::string_view::npos ? "" : full.substr(0, gap);
  const std::string_view name = gap == std::string_view::npos ? full : full.substr(gap + 1);
  const Attributes attributes = [&](const char* wanted) { return attribute(*this, given, from, wanted); };
  if (levels.size() >= kMaxDrawingDepth) {
    faults.error({from, name.size() + 1}, "elements lie more than " + std::to_string(kMaxDrawingDepth) +
                                              " deep within one another here; take the groups apart" +
                                              to_raise("kMaxDrawingDepth"));
    return stop();
  }
  if (levels.empty()) return open_root(name, attributes, from);
  Level level = levels.back();
  const bool group = among(kGroups, name);
  const bool shape = is_shape(name);
  if (!space.empty() && space != kSvg) level.drawn = false;
  if (level.drawn) look_up_style(attributes, level);
  if (level.drawn && (group || shape) && !level.chosen) level.chosen = is_on(layers, given);
  if (level.drawn && !group && !shape) {
    level.drawn = false;
    for (const Unread& unread : kUnread) {
      if (name == unread.name) warn_once(name, from, unread.advice);
    }
    const bool known = among(kUndrawn, name) || warned.count(name) > 0;
    if (!known && warned.size() <= kMaxTraceMistakes) {
      static const std::vector<std::string_view> kDrawn = {"path",   "line",    "polyline", "polygon", "rect",
                                                           "circle", "ellipse", "g",        "svg"};
      const std::string near = suggestion(name, kDrawn);
      warn_once(name, from,
                quoted(name) + " is not read" +
                    (near.empty() ? "; draw it as a path where it is part of the line" : near));
    }
  }
  if (level.drawn) {
    if (const std::optional<Passage> transform = attributes("transform"))
      level.map = level.map * transform_of(*transform, faults).value_or(Affine{});
    if (name == "svg") open_viewport(attributes, level);
    if (shape && level.chosen && (level.filled || level.stroked)) {
      shape_strokes(name, attributes, level.map, from, strokes, faults);
      count_curves(from);
    }
  }
  levels.push_back(level);
  if (faults.full()) stop();
}

void XMLCALL on_start(void* data, const XML_Char* name, const XML_Char** attributes) {
  static_cast<Document*>(data)->start(name, attributes);
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
  const std::unique_ptr<XML_ParserStruct, decltype(&XML_ParserFree)> parser(
      XML_ParserCreate_MM(nullptr, bounded_memory(), &kBetween), &XML_ParserFree);
  if (!parser) throw std::bad_alloc();
  Document document{text, faults, parser.get(), Layers(options.layer)};
  XML_SetUserData(parser.get(), &document);
  XML_SetElementHandler(parser.get(), on_start, on_end);
  XML_SetEntityDeclHandler(parser.get(), on_entity);
  const XML_Status status = XML_Parse(parser.get(), text.data(), static_cast<int>(text.size()), XML_TRUE);
  if (status == XML_STATUS_ERROR && !document.stopped) {
    const XML_Error error = XML_GetErrorCode(parser.get());
    faults.error({document.at(), 1}, error == XML_ERROR_NO_MEMORY
                                         ? "the names and values in this drawing take more than " +
                                               std::to_string(kMaxXmlBytes >> 20) +
                                               " MB; draw the line alone" + to_raise("kMaxXmlBytes")
                                         : "the drawing is broken here (" +
                                               std::string(XML_ErrorString(error)) + ")" +
                                               std::string(kSaveSvgAgain));
  }
  if (faults.errors == 0) document.layers.check(faults);
  if (faults.errors > 0) return std::nullopt;
  return one_line(document.strokes, Upward::y_down, document.mm_per_unit, options, faults);
}

}  // namespace arrisline
