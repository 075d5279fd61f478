// Planes of a kit: flat soles, ploughs, hollows and rounds. Shown by tests/text/kit_test.cpp and
// kit_mistakes_test.cpp.
#include "text/kit_planes.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

namespace {

constexpr double kMmPerSixteenth = kMmPerInch / 16;
/// How far three measures of one sole may disagree, in mm.
constexpr double kAgree = 0.1;
constexpr int kGreatestNumber = 999;
/// No plan can be written with a narrower sole, in mm.
constexpr double kNarrowest = 1e-6;

const std::vector<std::string_view> kCurvedClauses = {"radius", "width", "arc", "body"};
const std::vector<std::string_view> kFlatClauses = {"body"};
const std::vector<std::string_view> kPloughClauses = {"reach", "deep", "body"};

void fail_clause(Statement& statement, const std::vector<std::string_view>& fitting) {
  const Token& token = statement.token();
  fail(statement, token.place,
       "unknown word " + quoted(token.text) + "; expected " + either(fitting) +
           suggestion(token.text, fitting));
  ++statement.next;
  skip_to(statement, fitting);
}

/// A second plane begins on the line of the first.
void fail_second(Statement& statement, std::string_view kind, std::string_view measure,
                 const std::vector<std::string_view>& fitting) {
  fail(statement, statement.token().place,
       "a " + std::string(kind) + " plane has one " + std::string(measure) +
           "; write each plane on a line of its own");
  ++statement.next;
  skip_to(statement, fitting);
}

void fail_twice(Statement& statement) {
  fail(statement, statement.token().place,
       quoted(lower(statement.token().text)) + " is given twice; leave one of them out");
}

void read_named_length(Statement& statement, std::optional<double>& value,
                       const std::vector<std::string_view>& clauses) {
  if (value) fail_twice(statement);
  const std::string word = lower(statement.token().text);
  ++statement.next;
  value = read_length(statement, "a length after " + quoted(word));
  if (!value) skip_to(statement, clauses);
}

void read_body_clause(Statement& statement, std::optional<Body>& body,
                      const std::vector<std::string_view>& clauses) {
  if (body) fail_twice(statement);
  body = read_body(statement);
  if (!body) skip_to(statement, clauses);
}

/// Degrees, written bare or with a degree sign or `deg` against them.
std::optional<double> read_arc(Statement& statement) {
  const std::string what = "degrees after 'arc'";
  if (statement.done() || !looks_like_number(statement.token().text)) {
    fail_expected(statement, what);
    return std::nullopt;
  }
  const Token& token = statement.tokens[statement.next++];
  std::string why;
  const std::optional<Number> number = scan_number(token.text, why);
  const std::string suffix = number ? lower(number->suffix) : "";
  if (!number || (!suffix.empty() && suffix != "deg" && suffix != "\u00B0")) {
    fail(statement, token.place, number ? "expected " + what + ", found " + quoted(token.text) : why);
    return std::nullopt;
  }
  if (!(number->value > 0) || number->value > 180) {
    fail(statement, token.place, "the arc of a sole is more than 0 and at most 180 degrees, such as 60");
    return std::nullopt;
  }
  return number->value;
}

/// A curved plane's number comes as a whole number right after the word.
bool at_number(const Statement& statement) {
  return !statement.done() && looks_like_number(statement.token().text);
}

}  // namespace

std::optional<Body> read_body(Statement& statement) {
  ++statement.next;
  const std::optional<double> overhang = read_length(statement, "the overhang after 'body'");
  if (!overhang) return std::nullopt;
  if (!accept(statement, "above")) {
    fail_expected(statement, "'above' and the height that the body begins at");
    return std::nullopt;
  }
  const std::optional<double> above = read_length(statement, "a height after 'above'", Zero::allowed);
  if (!above) return std::nullopt;
  return Body{*overhang, *above};
}

std::optional<PlaneText> read_curved(Statement& statement) {
  PlaneText text;
  text.place = place_of(statement);
  text.plane.kind = at_word({statement.tokens, statement.mistakes, statement.unit, 0}, "hollow")
                        ? PlaneKind::hollow
                        : PlaneKind::round;
  text.plane.label = word(text.plane.kind);
  if (at_number(statement)) {
    const std::size_t first = statement.next;
    text.plane.number = read_whole(statement, "the number of the plane", 1, kGreatestNumber);
    if (!text.plane.number) {
      ++statement.next;
      skip_to(statement, kCurvedClauses);
    }
    text.plane.label += ' ';
    text.plane.label += text_since(statement, first);
  }
  const std::size_t first = statement.next;
  std::size_t end_of_measures = first;
  while (!statement.done() && statement.faults <= kMaxFaults) {
    accept_comma(statement);
    if (statement.done()) break;
    if (at_word(statement, "body")) {
      read_body_clause(statement, text.plane.body, kCurvedClauses);
      continue;
    }
    if (at_word(statement, "radius")) {
      read_named_length(statement, text.radius, kCurvedClauses);
    } else if (at_word(statement, "width")) {
      read_named_length(statement, text.width, kCurvedClauses);
    } else if (at_word(statement, "arc")) {
      if (text.arc) fail_twice(statement);
      ++statement.next;
      text.arc = read_arc(statement);
      if (!text.arc) skip_to(statement, kCurvedClauses);
    } else if (text.plane.number && looks_like_number(statement.token().text)) {
      fail_second(statement, word(text.plane.kind), "number", kCurvedClauses);
    } else {
      fail_clause(statement, kCurvedClauses);
    }
    const std::size_t here = statement.next;
    if (end_of_measures == first || here > end_of_measures) end_of_measures = here;
  }
  const int measures = (text.radius ? 1 : 0) + (text.width ? 1 : 0) + (text.arc ? 1 : 0);
  if (!statement.failed && !text.plane.number && !text.radius && measures < 2) {
    fail(statement, end_of(statement),
         text.plane.label + " needs a number or a radius, as in " + quoted(text.plane.label + " 6") + " or " +
             quoted(text.plane.label + " radius 3/8"));
  }
  if (statement.failed) return std::nullopt;
  statement.next = end_of_measures;
  text.measured = text_since(statement, first);
  statement.next = statement.tokens.size();
  if (!text.plane.number) text.plane.label.append(" ").append(text.measured);
  return text;
}

std::vector<PlaneText> read_flat(Statement& statement) {
  PlaneText text;
  text.place = place_of(statement);
  const std::string kind = lower(statement.tokens.front().text);
  text.plane.kind = kind == "rebate" ? PlaneKind::rebate : PlaneKind::bench;
  const std::optional<double> width = read_length(statement, "the width of the sole after " + quoted(kind));
  if (!width) skip_to(statement, kFlatClauses);
  text.plane.width = width.value_or(0);
  text.plane.label = kind + " " + text_since(statement, 1);
  while (!statement.done() && statement.faults <= kMaxFaults) {
    accept_comma(statement);
    if (statement.done()) break;
    if (at_word(statement, "body")) {
      read_body_clause(statement, text.plane.body, kFlatClauses);
    } else if (looks_like_number(statement.token().text)) {
      fail_second(statement, kind, "width", kFlatClauses);
    } else {
      fail_clause(statement, kFlatClauses);
    }
  }
  if (statement.failed) return {};
  return {text};
}

std::vector<PlaneText> read_plough(Statement& statement) {
  std::vector<PlaneText> irons;
  std::optional<double> reach;
  std::optional<double> deep;
  std::optional<Body> body;
  bool list_open = true;
  while (!statement.done() && statement.faults <= kMaxFaults) {
    accept_comma(statement);
    if (statement.done()) break;
    if (list_open && looks_like_number(statement.token().text)) {
      const std::size_t first = statement.next;
      const std::optional<double> width = read_length(statement, "the width of an iron");
      if (!width) {
        skip_to(statement, kPloughClauses);
        continue;
      }
      PlaneText text;
      text.place = read_since(statement, first);
      text.plane.kind = PlaneKind::plough;
      text.plane.width = *width;
      text.plane.label = "plough " + text_since(statement, first);
      if (irons.size() <= kMaxPlanes) irons.push_back(std::move(text));
      continue;
    }
    if (irons.empty() && !statement.failed) fail_expected(statement, "the width of an iron after 'plough'");
    list_open = false;
    if (at_word(statement, "reach")) {
      read_named_length(statement, reach, kPloughClauses);
    } else if (at_word(statement, "deep")) {
      read_named_length(statement, deep, kPloughClauses);
    } else if (at_word(statement, "body")) {
      read_body_clause(statement, body, kPloughClauses);
    } else {
      fail_clause(statement, kPloughClauses);
    }
  }
  if (irons.empty() && !statement.failed) fail_expected(statement, "the width of an iron after 'plough'");
  if (statement.failed) return {};
  for (PlaneText& iron : irons) {
    if (reach) iron.plane.reach = *reach;
    if (deep) iron.plane.deep = *deep;
    iron.plane.body = body;
  }
  return irons;
}

void settle(PlaneText& text, const std::map<int, double>& numbering, Unit unit, Mistakes& mistakes) {
  Plane& plane = text.plane;
  if (!plane.is_curved()) {
    if (plane.width < kNarrowest)
      mistakes.error(text.place, "a sole must be wider than 0.000001mm; check the figure and its unit");
    return;
  }
  std::optional<double> radius = text.radius;
  const std::optional<double> width = text.width;
  const double half_sine = std::sin(to_radians(text.arc.value_or(kUsualArc)) / 2);
  if (!radius && width && text.arc) radius = *width / (2 * half_sine);
  if (!radius && plane.number) {
    const auto entry = numbering.find(*plane.number);
    radius = entry != numbering.end() ? entry->second : *plane.number * kMmPerSixteenth;
  }
  plane.radius = radius.value_or(0);
  plane.width = width.value_or(2 * plane.radius * half_sine);
  // A sole of half a circle may come out wider by rounding alone.
  if (plane.width > 2 * plane.radius && plane.width < 2 * plane.radius + 1e-9) plane.width = 2 * plane.radius;
  if (plane.width < kNarrowest) {
    mistakes.error(text.place, "a sole must be wider than 0.000001mm; check the figure and its unit");
  } else if (plane.radius > kLongest) {
    mistakes.error(text.place,
                   "the radius that follows from these measures is over 10 m; measure the sole again");
  } else if (plane.width > 2 * plane.radius) {
    mistakes.error(text.place, "a sole " + show(plane.width, unit) +
                                   " wide is wider than its whole circle, " + show(2 * plane.radius, unit) +
                                   "; measure both again");
  } else if (width && text.arc && std::abs(*width - 2 * plane.radius * half_sine) > kAgree) {
    mistakes.error(text.place, "radius, width and arc disagree: this radius and arc make a width of " +
                                   show(2 * plane.radius * half_sine, unit) + "; leave one of them out");
  }
}

std::vector<Plane> told_apart(std::vector<PlaneText> planes) {
  std::vector<Plane> out;
  std::set<std::string> taken;
  std::map<std::string, int> counts;
  for (PlaneText& text : planes) {
    std::string label = text.plane.label;
    if (taken.count(label) > 0 && text.plane.number && !text.measured.empty())
      label.append(" ").append(text.measured);
    const std::string plain = label;
    int& count = counts[plain];
    if (count == 0) count = 1;
    while (!taken.insert(label).second) label = plain + " (" + std::to_string(++count) + ")";
    text.plane.label = label;
    out.push_back(std::move(text.plane));
  }
  return out;
}

}  // namespace arrisline
