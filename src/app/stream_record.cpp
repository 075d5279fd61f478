// A line of JSON as a record. Shown by tests/app/stream_record_test.cpp.
#include "app/stream_record.h"

#include <algorithm>
#include <vector>

#include "report/json_text.h"
#include "report/plan_json_syntax.h"
#include "wording/words.h"

namespace arrisline {
namespace {

const std::vector<std::string_view> kMembers = {"id", "profile", "kit"};

constexpr const char* kExpectedRecord =
    "expected an object, such as {\"id\": 1, \"profile\": \"table-edge.profile\"}";

/// The fault of the text as JSON; a record is all one line, so that is left out.
std::optional<std::string> not_json(std::string_view line) {
  const std::optional<JsonFault> fault = json_fault(line);
  if (!fault) return std::nullopt;
  constexpr std::string_view kFirst = "line 1, ";
  const bool placed = fault->text.rfind(kFirst, 0) == 0;  // and so it is no JSON at all
  return fault->text.substr(placed ? kFirst.size() : 0) +
         (placed ? std::string("; ") + kExpectedRecord : std::string());
}

/// What the member says, or the fault of it.
std::optional<TextOrPath> read_member(const Json& object, const char* name, std::string& fault) {
  const auto at = object.find(name);
  if (at == object.end()) return std::nullopt;
  TextOrPath out;
  if (at->is_string()) out.words = at->get<std::string>();
  out.is_text = out.words.find('\n') != std::string::npos;
  if (!at->is_string()) {
    fault = std::string("\"") + name + "\" is not a string; put quotation marks about it";
  } else if (out.words.empty()) {
    fault = std::string("\"") + name + "\" is empty; expected a text of several lines, or a path to one";
  } else if (!out.is_text && out.words.find('\0') != std::string::npos) {
    fault = std::string("\"") + name + "\" is no path; name a file";
  } else {
    return out;
  }
  return std::nullopt;
}

}  // namespace

StreamRecord read_record(std::string_view line) {
  StreamRecord out;
  if (const auto fault = not_json(line)) {
    out.fault = *fault;
    return out;
  }
  const Json object = Json::parse(line);
  if (!object.is_object()) {
    out.fault = kExpectedRecord;
    return out;
  }
  for (const auto& [name, value] : object.items()) {
    if (std::find(kMembers.begin(), kMembers.end(), name) != kMembers.end()) continue;
    if (out.fault.empty())
      out.fault = "unknown word " + arrisline::quoted(name) + "; expected id, profile or kit" +
                  suggestion(name, kMembers);
  }
  if (const auto id = object.find("id"); id != object.end()) {
    if (id->is_string() || id->is_number_integer() || id->is_null()) {
      out.id = id->dump();
    } else {
      out.fault = "\"id\" is a string or a whole number, such as 1";
    }
  }
  if (!out.fault.empty()) return out;
  std::optional<TextOrPath> profile = read_member(object, "profile", out.fault);
  if (out.fault.empty() && !profile)
    out.fault = "\"profile\" is missing; add it, such as \"profile\": \"table-edge.profile\"";
  if (out.fault.empty()) out.kit = read_member(object, "kit", out.fault);
  if (out.fault.empty()) out.profile = std::move(*profile);
  return out;
}

bool is_blank(std::string_view line) {
  return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

}  // namespace arrisline
