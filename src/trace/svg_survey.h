// What has to be known of an SVG before any of it is drawn: its style sheets, and what it copies.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "trace/faults.h"
#include "trace/svg_rules.h"

namespace arrisline {

/// An element that is copied somewhere, or within one, as Expat gives it.
struct SvgNode {
  std::string name;
  std::vector<std::pair<std::string, std::string>> attributes;
  std::size_t at = 0;   // byte of the text where it begins
  std::size_t end = 0;  // the node after all that is in it
  bool apart = false;   // in something that draws nothing by itself, as defs

  std::size_t bytes() const;
};

struct SvgSurvey {
  StyleRules rules;
  std::optional<Span> unread_sheet;                       // one with rules that are not read
  std::vector<SvgNode> nodes;                             // each before those within it
  std::map<std::string, std::size_t, std::less<>> by_id;  // of nodes, those that a `use` names
  bool too_large = false;                                 // all of it takes more than kMaxXmlBytes
};

/// Of an SVG that is broken, what comes before that.
SvgSurvey survey_of(std::string_view text);

/// What a `use` names: "#id", or another place; null where it names nothing.
const char* href_of(const char** given);

}  // namespace arrisline
