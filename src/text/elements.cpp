// What may follow the word of each element, and what must. One table says it for reading and for messages.
// Shown by tests/section/shapes_test.cpp and tests/text/element_mistakes_test.cpp.
#include "text/elements.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

namespace {

/// Moves that differ by less than this are the same, in mm: rounding of inches to millimetres, no more.
constexpr double kEqual = 1e-6;

enum class Need { no, may, must };

struct Rule {
  std::string_view word;
  Shape shape;
  Need size;      // one length right after the word
  Need sideways;  // out or in
  Need upright;   // down or up
  bool arc;       // radius
  bool large;
  bool out_and_down_only;
  std::string_view example;
};

constexpr std::array<Rule, 16> kRules = {{
    {"step", Shape::step, Need::no, Need::no, Need::must, false, false, false, "step down 1/8"},
    {"fillet", Shape::fillet, Need::no, Need::must, Need::no, false, false, false, "fillet out 1/8"},
    {"bevel", Shape::bevel, Need::no, Need::must, Need::must, false, false, false, "bevel out 1/4 down 1/8"},
    {"bead", Shape::bead, Need::no, Need::may, Need::may, true, true, false, "bead out 3/8 down 3/8"},
    {"cove", Shape::cove, Need::no, Need::may, Need::may, true, true, false, "cove out 3/8 down 3/8"},
    {"ovolo", Shape::ovolo, Need::must, Need::no, Need::no, false, false, false, "ovolo 3/8"},
    {"cavetto", Shape::cavetto, Need::must, Need::no, Need::no, false, false, false, "cavetto 3/8"},
    {"ogee", Shape::ogee, Need::no, Need::must, Need::must, true, false, false, "ogee out 3/4 down 3/4"},
    {"reverse-ogee", Shape::reverse_ogee, Need::no, Need::must, Need::must, true, false, false,
     "reverse-ogee out 3/4 down 3/4"},
    {"torus", Shape::torus, Need::must, Need::no, Need::no, false, false, false, "torus 3/8"},
    {"astragal", Shape::astragal, Need::must, Need::no, Need::no, false, false, false, "astragal 1/4"},
    {"chamfer", Shape::chamfer, Need::must, Need::no, Need::no, false, false, false, "chamfer 1/4"},
    {"scotia", Shape::scotia, Need::must, Need::no, Need::no, false, false, false, "scotia 1/2"},
    {"quirk", Shape::quirk, Need::may, Need::may, Need::may, false, false, true, "quirk 1/8"},
    {"thumbnail", Shape::thumbnail, Need::may, Need::may, Need::may, false, false, true, "thumbnail 3/8"},
    {"curve", Shape::curve, Need::no, Need::must, Need::must, false, false, false,
     "curve bead out 1/2 down 3/4 ellipse"},
}};

/// What those of one size are called where the two moves differ.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kTwoSizes = {{
    {"ovolo", "bead out 3/8 down 1/2 radius 1/2"},
    {"cavetto", "cove out 3/8 down 1/2 radius 1/2"},
    {"chamfer", "bevel out 1/4 down 1/8"},
}};

const Rule& rule_of(std::string_view word) {
  return *std::find_if(kRules.begin(), kRules.end(), [&](const Rule& rule) { return rule.word == word; });
}

const std::vector<std::string_view> kCurveWords = {"bead", "cove", "ellipse", "parabola"};

/// The words that may follow, for messages.
std::vector<std::string_view> clauses_of(const Rule& rule) {
  std::vector<std::string_view> words;
  if (rule.sideways != Need::no) words.push_back("out");
  if (rule.sideways != Need::no && !rule.out_and_down_only) words.push_back("in");
  if (rule.upright != Need::no) words.push_back("down");
  if (rule.upright != Need::no && !rule.out_and_down_only) words.push_back("up");
  if (rule.arc) words.push_back("radius");
  if (rule.large) words.push_back("large");
  if (rule.shape == Shape::curve) words.insert(words.end(), kCurveWords.begin(), kCurveWords.end());
  return words;
}

const std::vector<std::string_view> kAllClauses = {"out",   "in",   "down", "up",      "radius",
                                                   "large", "bead", "cove", "ellipse", "parabola"};

struct Clauses {
  std::optional<double> sideways;
  std::optional<double> upright;
  std::optional<double> radius;
  bool large = false;
  std::optional<bool> convex;
  std::optional<bool> parabola;
  Place radius_place;
};

/// "in" after a length and before anything but a length was meant as a unit.
bool is_stray_inch(const Statement& statement) {
  if (!at_word(statement, "in") || statement.next < 2) return false;
  const bool after_number = looks_like_number(statement.tokens[statement.next - 1].text);
  const bool before_number = statement.next + 1 < statement.tokens.size() &&
                             looks_like_number(statement.tokens[statement.next + 1].text);
  return after_number && !before_number;
}

void fail_stray_inch(Statement& statement) {
  const Token& number = statement.tokens[statement.next - 1];
  const Token& in = statement.token();
  fail(statement, in.place,
       "'in' standing alone is the direction; write it against its number where it is a unit: " +
           quoted(std::string(number.text) + std::string(in.text)));
  ++statement.next;
}

void fail_clause(Statement& statement, const Rule& rule) {
  const Token& token = statement.token();
  const std::vector<std::string_view> fitting = clauses_of(rule);
  std::string message;
  if (looks_like_number(token.text) && statement.next > 1) {
    --statement.next;  // the comma of "9,5" was read over as one between clauses
    const Token& mark = statement.token();
    const std::string comma = decimal_comma(statement);
    ++statement.next;
    if (!comma.empty()) {
      fail(statement, spanning(mark, token), "the line is complete before " + quoted(mark.text) + comma);
      ++statement.next;
      return;
    }
  }
  if (at_any(statement, kAllClauses)) {
    message = quoted(token.text) + " does not belong to " + std::string(rule.word);
  } else if (looks_like_number(token.text)) {
    message = "the length " + quoted(token.text) + " has no word before it";
  } else {
    message = "unknown word " + quoted(token.text);
  }
  if (fitting.empty()) {
    message += "; expected only a length, as in " + quoted(rule.example);
  } else {
    message += "; expected " + either(fitting);
    if (!at_any(statement, kAllClauses)) message += suggestion(token.text, fitting);
  }
  fail(statement, token.place, message);
  // The length that goes with a mistaken word says nothing new; the next word may be another mistake.
  do {
    ++statement.next;
  } while (!statement.done() && looks_like_number(statement.token().text));
}

void fail_twice(Statement& statement, std::string_view word, std::string_view other) {
  std::string message = quoted(word);
  if (!other.empty()) message += " (or " + quoted(other) + ")";
  fail(statement, statement.token().place, message + " is given twice; leave one of them out");
}

/// Reads one of a pair of opposite directions, `first` counting as negative. False where neither comes next.
bool read_direction(Statement& statement, std::string_view first, std::string_view second,
                    std::optional<double>& move) {
  const bool negative = at_word(statement, first);
  if (!negative && !at_word(statement, second)) return false;
  const std::string_view word = negative ? first : second;
  const bool twice = move.has_value();
  if (twice) fail_twice(statement, word, negative ? second : first);
  ++statement.next;
  const std::optional<double> length = read_length(statement, "a length after " + quoted(word));
  if (!length) skip_to(statement, kAllClauses);
  // A placeholder after a mistake keeps the move from being called missing as well.
  if (!twice) move = length ? (negative ? -*length : *length) : 1.0;
  return true;
}

/// Reads one of two words, the second counting as yes. False where neither comes next.
bool read_choice(Statement& statement, std::string_view no, std::string_view yes,
                 std::optional<bool>& choice) {
  const bool is_yes = at_word(statement, yes);
  if (!is_yes && !at_word(statement, no)) return false;
  if (choice) fail_twice(statement, is_yes ? yes : no, is_yes ? no : yes);
  choice = is_yes;
  ++statement.next;
  return true;
}

Clauses read_clauses(Statement& statement, const Rule& rule) {
  Clauses clauses;
  const std::vector<std::string_view> fitting = clauses_of(rule);
  while (!statement.done() && statement.faults <= kMaxFaults) {
    accept_comma(statement);
    if (statement.done()) break;
    if (is_stray_inch(statement)) {
      fail_stray_inch(statement);
      continue;
    }
    if (!at_any(statement, fitting)) {
      fail_clause(statement, rule);
      continue;
    }
    if (read_direction(statement, "out", "in", clauses.sideways)) continue;
    if (read_direction(statement, "up", "down", clauses.upright)) continue;
    if (read_choice(statement, "cove", "bead", clauses.convex)) continue;
    if (read_choice(statement, "ellipse", "parabola", clauses.parabola)) continue;
    if (at_word(statement, "radius")) {
      if (clauses.radius) fail_twice(statement, "radius", "");
      const std::size_t first = ++statement.next;
      clauses.radius = read_length(statement, "a length after 'radius'");
      if (clauses.radius) clauses.radius_place = read_since(statement, first);
      if (!clauses.radius) skip_to(statement, kAllClauses);
    } else {
      if (clauses.large) fail_twice(statement, "large", "");
      ++statement.next;
      clauses.large = true;
    }
  }
  return clauses;
}

std::string directions(bool sideways, const Rule& rule) {
  if (rule.out_and_down_only) return sideways ? "'out' and a length" : "'down' and a length";
  return sideways ? "'out' or 'in' and a length" : "'down' or 'up' and a length";
}

void check_complete(Statement& statement, const Rule& rule, const Clauses& clauses, bool sized) {
  const std::string example = ", as in " + quoted(rule.example);
  const std::string word(rule.word);
  if (sized) {
    if (clauses.sideways || clauses.upright) {
      fail(statement, place_of(statement),
           word + " takes one length or 'out' and 'down', not both; leave one of them out");
    }
    return;
  }
  const bool either_form = rule.size == Need::may;
  const bool no_sideways = (rule.sideways == Need::must || either_form) && !clauses.sideways;
  const bool no_upright = (rule.upright == Need::must || either_form) && !clauses.upright;
  if (either_form && no_sideways && no_upright) {
    fail(statement, end_of(statement), word + " needs a length" + example);
    return;
  }
  if (no_sideways) fail(statement, end_of(statement), word + " needs " + directions(true, rule) + example);
  if (no_upright) fail(statement, end_of(statement), word + " needs " + directions(false, rule) + example);
  if (rule.sideways == Need::may && !either_form && !clauses.sideways && !clauses.upright) {
    fail(statement, end_of(statement),
         word + " needs a move 'out' or 'in', 'down' or 'up', or both" + example);
  }
}

void check_arc(Statement& statement, const Rule& rule, const Clauses& clauses) {
  const Point move{clauses.sideways.value_or(0), clauses.upright.value_or(0)};
  const std::string word(rule.word);
  if (clauses.radius) {
    const double least = smallest_radius(rule.shape, move);
    if (*clauses.radius >= least - kEqual) return;
    fail(statement, clauses.radius_place,
         "a radius of " + show(*clauses.radius, statement.unit) + " does not reach; write " +
             show(least, statement.unit, true) + " or more");
  } else if (rule.large || rule.shape == Shape::bead) {
    if (!clauses.sideways || !clauses.upright) {
      fail(statement, end_of(statement),
           word + " in one direction needs a radius, as in " + quoted(word + " down 3/8 radius 1/4"));
    } else if (std::abs(std::abs(move.x) - std::abs(move.y)) > kEqual) {
      fail(statement, place_of(statement),
           word +
               " without a radius is a quadrant, and its two moves must be equal; expected equal moves, or a "
               "radius of "
               "at least " +
               show(norm(move) / 2, statement.unit, true));
    }
  }
}

void check_curve(Statement& statement, const Clauses& clauses) {
  if (!clauses.convex) {
    fail(statement, end_of(statement),
         "curve needs 'bead' or 'cove', as in 'curve bead out 1/2 down 3/4 ellipse'");
  }
  const double a = std::abs(*clauses.sideways);
  const double b = std::abs(*clauses.upright);
  if (std::max(a, b) > kMostCurveRatio * std::min(a, b) + kEqual)
    fail(statement, place_of(statement),
         "neither move of a curve may be more than 20 times the other; make the shorter one longer");
}

}  // namespace

/// "ovolo out 3/8 down 1/2": a shape of one size, its word followed by a move as those of two sizes are.
static void fail_one_size(Statement& statement, const Rule& rule) {
  std::string message = std::string(rule.word) + " has one size, as in " + quoted(rule.example);
  const auto other = std::find_if(kTwoSizes.begin(), kTwoSizes.end(),
                                  [&](const auto& pair) { return pair.first == rule.word; });
  if (other != kTwoSizes.end())
    message += "; where it goes farther one way than the other, write " + quoted(other->second);
  fail(statement, statement.token().place, message);
}

const std::vector<std::string_view>& element_words() {
  static const std::vector<std::string_view> words = [] {
    std::vector<std::string_view> list;
    for (const Rule& rule : kRules) list.push_back(rule.word);
    return list;
  }();
  return words;
}

std::optional<ElementText> read_element(Statement& statement) {
  const Rule& rule = rule_of(lower(statement.tokens.front().text));
  ElementText element;
  element.name = rule.word;
  element.shape = rule.shape;
  bool sized = false;
  if (rule.size == Need::must && at_any(statement, kAllClauses)) {
    fail_one_size(statement, rule);
    return std::nullopt;
  }
  if (rule.size == Need::must ||
      (rule.size == Need::may && !statement.done() && looks_like_number(statement.token().text))) {
    const std::optional<double> size = read_length(statement, "a length after " + quoted(rule.word));
    if (size) element.dimensions.size = *size;
    if (!size) return std::nullopt;
    sized = true;
  }
  const Clauses clauses = read_clauses(statement, rule);
  if (!statement.failed) check_complete(statement, rule, clauses, sized);
  if (!statement.failed) check_arc(statement, rule, clauses);
  if (!statement.failed && rule.shape == Shape::curve) check_curve(statement, clauses);
  const bool thumbnail = rule.shape == Shape::thumbnail && clauses.sideways && clauses.upright;
  if (!statement.failed && thumbnail && -*clauses.sideways < *clauses.upright * 4 / 5 - kEqual) {
    fail(statement, place_of(statement),
         "thumbnail must go out at least four fifths as far as it goes down; make 'out' longer or 'down' "
         "shorter");
  }
  if (statement.failed) return std::nullopt;
  element.dimensions.move = {clauses.sideways.value_or(0), clauses.upright.value_or(0)};
  element.dimensions.radius = clauses.radius.value_or(0);
  element.dimensions.large = clauses.large;
  element.dimensions.convex = clauses.convex.value_or(true);
  element.dimensions.parabola = clauses.parabola.value_or(false);
  return element;
}

}  // namespace arrisline
