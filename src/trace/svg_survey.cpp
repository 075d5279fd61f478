// Two runs over the text before the one that draws: the first for style sheets and for what `use` names, the
// second for what has those names, which may stand before or after. Shown by tests/trace/svg_use_test.cpp.
#include "trace/svg_survey.h"

#include <expat.h>

#include <memory>
#include <new>
#include <set>

#include "arrisline/limits.h"
#include "trace/svg_elements.h"
#include "trace/xml_memory.h"

namespace arrisline {

std::size_t SvgNode::bytes() const {
  std::size_t bytes = sizeof(SvgNode) + name.size();
  for (const auto& [key, value] : attributes) bytes += 2 * sizeof(std::string) + key.size() + value.size();
  return bytes;
}

const char* href_of(const char** given) {
  const char* const plain = given_value(given, "href");
  return plain != nullptr ? plain : given_value(given, "http://www.w3.org/1999/xlink href");
}

namespace {

struct Run {
  std::string_view text;
  SvgSurvey& survey;
  std::set<std::string, std::less<>>& wanted;
  bool keeping;  // the second run
  std::size_t& room;
  XML_Parser parser = nullptr;
  // The first run.
  bool in_sheet = false;
  std::string sheet = {};
  Span sheet_at = {};
  // The second one.
  std::vector<std::size_t> open = {};  // nodes
  std::size_t depth = 0;
  std::size_t undrawn = 0;  // the depth of what draws nothing by itself; 0 outside

  std::size_t at() const {
    const XML_Index index = XML_GetCurrentByteIndex(parser);
    return index < 0 ? 0 : std::min(static_cast<std::size_t>(index), text.size());
  }
  bool take(std::size_t bytes) {
    if (bytes > room) {
      survey.too_large = true;
      XML_StopParser(parser, XML_FALSE);
      return false;
    }
    room -= bytes;
    return true;
  }

  void look(std::string_view name, const char** given) {
    if (name == "use") {
      const char* const href = href_of(given);
      if (href == nullptr || *href != '#' || wanted.count(std::string_view(href + 1)) > 0) return;
      std::string id(href + 1);
      if (take(4 * sizeof(std::string) + id.size())) wanted.insert(std::move(id));
    } else if (name == "style") {
      const char* const type = given_value(given, "type");
      const char* const media = given_value(given, "media");
      const std::string_view shown_on = media == nullptr ? "all" : media;
      in_sheet = (type == nullptr || std::string_view(type) == "text/css") &&
                 (shown_on.find("all") != std::string_view::npos ||
                  shown_on.find("screen") != std::string_view::npos);
      sheet.clear();
      sheet_at = {at(), name.size() + 1};
    }
  }
  void end_sheet() {
    const bool had_unread = survey.rules.has_unread();
    if (!survey.rules.add(sheet, room)) take(room + 1);
    if (!had_unread && survey.rules.has_unread()) survey.unread_sheet = sheet_at;
    in_sheet = false;
  }

  void keep(std::string_view full, const char** given) {
    ++depth;
    const char* const id = given_value(given, "id");
    const bool named = id != nullptr && wanted.count(std::string_view(id)) > 0 && survey.by_id.count(id) == 0;
    if (named || !open.empty()) {
      SvgNode node;
      node.name = full;
      for (const char** one = given; *one != nullptr; one += 2) node.attributes.emplace_back(one[0], one[1]);
      node.at = at();
      node.apart = undrawn > 0;
      if (!take(node.bytes())) return;
      if (named) survey.by_id.emplace(id, survey.nodes.size());
      open.push_back(survey.nodes.size());
      survey.nodes.push_back(std::move(node));
    }
    if (undrawn == 0 && draws_nothing(svg_name(full))) undrawn = depth;
  }
  void end_kept() {
    if (undrawn == depth) undrawn = 0;
    if (depth > 0) --depth;
    if (open.empty()) return;
    survey.nodes[open.back()].end = survey.nodes.size();
    open.pop_back();
  }
};

void XMLCALL on_start(void* data, const XML_Char* name, const XML_Char** given) {
  Run& run = *static_cast<Run*>(data);
  if (run.survey.too_large) return;
  run.keeping ? run.keep(name, given) : run.look(svg_name(name), given);
}

void XMLCALL on_end(void* data, const XML_Char* name) {
  Run& run = *static_cast<Run*>(data);
  if (run.survey.too_large) return;
  if (run.keeping) {
    run.end_kept();
  } else if (run.in_sheet && svg_name(name) == "style") {
    run.end_sheet();
  }
}

void XMLCALL on_words(void* data, const XML_Char* words, int size) {
  Run& run = *static_cast<Run*>(data);
  if (!run.in_sheet || run.survey.too_large || !run.take(static_cast<std::size_t>(size))) return;
  run.sheet.append(words, static_cast<std::size_t>(size));
}

void parse(Run run) {
  const std::unique_ptr<XML_ParserStruct, decltype(&XML_ParserFree)> parser(
      XML_ParserCreate_MM(nullptr, bounded_memory(), &kBetween), &XML_ParserFree);
  if (!parser) throw std::bad_alloc();
  run.parser = parser.get();
  XML_SetUserData(parser.get(), &run);
  XML_SetElementHandler(parser.get(), on_start, on_end);
  if (!run.keeping) XML_SetCharacterDataHandler(parser.get(), on_words);
  XML_Parse(parser.get(), run.text.data(), static_cast<int>(run.text.size()), XML_TRUE);
  // Where the text is broken, what is open ends there.
  while (!run.open.empty()) run.end_kept();
}

}  // namespace

SvgSurvey survey_of(std::string_view text) {
  SvgSurvey survey;
  std::set<std::string, std::less<>> wanted;
  std::size_t room = kMaxXmlBytes;
  parse({text, survey, wanted, false, room});
  if (!wanted.empty() && !survey.too_large) parse({text, survey, wanted, true, room});
  return survey;
}

}  // namespace arrisline
