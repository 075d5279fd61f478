// The shop's own figures, and the sticking board. Shown by tests/text/kit_test.cpp and kit_mistakes_test.cpp.
#include "text/kit_shop.h"

#include <algorithm>

#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {

namespace {

constexpr double kGreatestWeight = 1e6;
constexpr double kMostStrokes = 1000;
constexpr int kMostFacets = 1000;

const std::vector<std::string_view> kFields = {"shaving", "weight", "deep", "strokes", "gauge", "facets"};
const std::vector<std::string_view> kShavings = {"rebate", "curved"};
const std::vector<std::string_view> kWeights = {"change", "cut",  "setting", "stroke",
                                                "wear",   "slow", "slant",   "uneven"};
const std::vector<std::string_view> kBoardClauses = {"stops", "screw", "clear"};

void fail_word(Statement& statement, const std::vector<std::string_view>& fitting, const std::string& after,
               const std::vector<std::string_view>& resume) {
  if (statement.done()) {
    fail_expected(statement, either(fitting) + after);
    return;
  }
  const Token& token = statement.token();
  fail(statement, token.place,
       "expected " + either(fitting) + after + ", found " + quoted(token.text) +
           suggestion(token.text, fitting));
  ++statement.next;
  skip_to(statement, resume);
}

void note(Statement& statement, std::set<std::string>& given, const std::string& field) {
  if (given.insert(field).second) return;
  fail(statement, statement.tokens[statement.next - 1].place,
       quoted(field) + " is given twice; leave one of them out");
}

void read_shavings(Statement& statement, Shop& shop, std::set<std::string>& given) {
  if (!at_any(statement, kShavings)) fail_word(statement, kShavings, " after 'shaving'", kFields);
  while (at_any(statement, kShavings)) {
    const bool curved = at_word(statement, "curved");
    const std::string field = curved ? "shaving curved" : "shaving rebate";
    ++statement.next;
    note(statement, given, field);
    const std::optional<double> thick = read_length(statement, "a thickness after " + quoted(field));
    if (!thick) skip_to(statement, kFields);
    if (thick) (curved ? shop.shaving_curved : shop.shaving_rebate) = *thick;
  }
}

void read_weights(Statement& statement, Shop& shop, std::set<std::string>& given) {
  if (!at_any(statement, kWeights)) fail_word(statement, kWeights, " after 'weight'", kFields);
  while (at_any(statement, kWeights)) {
    const std::string word = lower(statement.token().text);
    const std::string field = "weight " + word;
    ++statement.next;
    note(statement, given, field);
    const std::optional<double> weight =
        read_number(statement, "a number after " + quoted(field), kGreatestWeight);
    if (!weight) {
      skip_to(statement, kFields);
      return;
    }
    if (*weight < 1 && (word == "slow" || word == "slant")) {
      fail(statement, statement.tokens[statement.next - 1].place,
           quoted(field) + " must be at least 1, such as 2");
    }
    double& place = word == "change"    ? shop.weight_change
                    : word == "cut"     ? shop.weight_cut
                    : word == "setting" ? shop.weight_setting
                    : word == "stroke"  ? shop.weight_stroke
                    : word == "wear"    ? shop.weight_wear
                    : word == "slow"    ? shop.weight_slow
                    : word == "slant"   ? shop.weight_slant
                                        : shop.weight_uneven;
    place = *weight;
  }
}

void read_stops(Statement& statement, Board& board) {
  if (!accept(statement, "at")) {
    fail_word(statement, {"at"}, " after 'stops'", kBoardClauses);
    return;
  }
  while (!statement.done() && !at_any(statement, kBoardClauses)) {
    accept_comma(statement);
    if (statement.done() || at_any(statement, kBoardClauses)) break;
    const std::size_t first = statement.next;
    const std::optional<double> stop = read_length(statement, "a distance from the fence");
    if (!stop) {
      skip_to(statement, kBoardClauses);
      return;
    }
    if (board.stops.size() == kMaxStops) {
      fail(statement, read_since(statement, first),
           "a board has at most " + std::to_string(kMaxStops) + " stops; leave some out" +
               to_raise("kMaxStops"));
      skip_to(statement, {});
      return;
    }
    board.stops.push_back(*stop);
  }
  if (board.stops.empty() && !statement.failed)
    fail_expected(statement, "a distance from the fence after 'stops at'");
}

}  // namespace

void read_shop(Statement& statement, Shop& shop, std::set<std::string>& given) {
  if (statement.done()) fail_word(statement, kFields, " after 'shop'", kFields);
  while (!statement.done() && statement.faults <= kMaxFaults) {
    if (statement.next > 1) accept_comma(statement);
    if (statement.done()) break;
    const std::string field = lower(statement.token().text);
    if (!at_any(statement, kFields)) {
      fail_word(statement, kFields, "", kFields);
      continue;
    }
    ++statement.next;
    if (field == "shaving") {
      read_shavings(statement, shop, given);
    } else if (field == "weight") {
      read_weights(statement, shop, given);
    } else if (field == "deep") {
      note(statement, given, field);
      const auto deep = read_length(statement, "a thickness of wood after 'deep'", Zero::allowed);
      if (!deep) skip_to(statement, kFields);
      if (deep) shop.deep = *deep;
    } else if (field == "strokes") {
      note(statement, given, field);
      const auto strokes = read_number(statement, "strokes a minute after 'strokes'", kMostStrokes);
      if (!strokes) skip_to(statement, kFields);
      if (strokes && !(*strokes > 0)) {
        fail(statement, statement.tokens[statement.next - 1].place,
             "strokes a minute must be more than 0, such as 20");
      }
      if (strokes) shop.strokes_per_minute = *strokes;
    } else if (field == "gauge") {
      note(statement, given, field);
      shop.gauge = read_length(statement, "the smallest division after 'gauge'");
      if (!shop.gauge) skip_to(statement, kFields);
    } else {
      note(statement, given, field);
      const auto facets = read_whole(statement, "the most flats to an arc", 0, kMostFacets);
      if (!facets) skip_to(statement, kFields);
      if (facets) shop.facets = *facets;
    }
  }
}

std::optional<Board> read_board(Statement& statement) {
  Board board;
  bool stops = false;
  bool screw = false;
  bool clear = false;
  while (!statement.done() && statement.faults <= kMaxFaults) {
    if (statement.next > 1) accept_comma(statement);
    if (statement.done()) break;
    if (!at_any(statement, kBoardClauses)) {
      fail_word(statement, kBoardClauses, "", kBoardClauses);
      continue;
    }
    const std::string word = lower(statement.token().text);
    bool& given = word == "stops" ? stops : word == "screw" ? screw : clear;
    if (given)
      fail(statement, statement.token().place, quoted(word) + " is given twice; leave one of them out");
    given = true;
    ++statement.next;
    if (word == "stops") {
      read_stops(statement, board);
      continue;
    }
    const Zero zero = word == "clear" ? Zero::allowed : Zero::refused;
    const std::optional<double> length = read_length(statement, "a length after " + quoted(word), zero);
    if (!length) skip_to(statement, kBoardClauses);
    if (length) (word == "clear" ? board.clear : board.screw) = *length;
  }
  if (!stops && !statement.failed) {
    fail(statement, end_of(statement), "board needs its stops, as in 'board stops at 1/2, 1, 2'");
  }
  if (statement.failed) return std::nullopt;
  return board;
}

}  // namespace arrisline
