// Reading along one statement. Shown by tests/text/profile_mistakes_test.cpp and kit_mistakes_test.cpp.
#include "text/statement.h"

#include <algorithm>
#include <charconv>

#include "wording/length.h"
#include "wording/spelling.h"
#include "wording/words.h"

namespace arrisline {

Place place_of(const Statement& statement) {
  return spanning(statement.tokens.front(), statement.tokens.back());
}

Place end_of(const Statement& statement) {
  const Place last = statement.tokens.back().place;
  return {last.line, last.column + last.length, 1};
}

Place read_since(const Statement& statement, std::size_t first) {
  const std::size_t last = std::max(first, statement.next - 1);
  return spanning(statement.tokens[first], statement.tokens[last]);
}

std::string text_since(const Statement& statement, std::size_t first) {
  std::string out;
  const Token* before = nullptr;
  for (std::size_t i = first; i < statement.next; ++i) {
    const Token& token = statement.tokens[i];
    const bool apart = before != nullptr && before->text.data() + before->text.size() != token.text.data();
    if (apart) out += ' ';
    out += token.text;
    before = &token;
  }
  return out;
}

void fail(Statement& statement, Place place, std::string message) {
  statement.failed = true;
  if (++statement.faults > kMaxFaults) return;
  statement.mistakes.error(place, std::move(message));
}

void fail_expected(Statement& statement, const std::string& what) {
  if (statement.done()) {
    fail(statement, end_of(statement), "expected " + what + ", but the line ends here");
  } else {
    fail(statement, statement.token().place,
         "expected " + what + ", found " + quoted(statement.token().text) +
             as_written_here(statement.token().text));
  }
}

bool at_word(const Statement& statement, std::string_view word) {
  return !statement.done() && lower(statement.token().text) == word;
}

bool at_any(const Statement& statement, const std::vector<std::string_view>& words) {
  if (statement.done()) return false;
  const std::string word = lower(statement.token().text);
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool accept(Statement& statement, std::string_view word) {
  if (!at_word(statement, word)) return false;
  ++statement.next;
  return true;
}

void accept_comma(Statement& statement) {
  if (!accept(statement, ",") || (!statement.done() && !at_word(statement, ","))) return;
  fail(statement, statement.tokens[statement.next - 1].place, "nothing follows this comma; leave it out");
  while (accept(statement, ",")) {
  }
}

void skip_to(Statement& statement, const std::vector<std::string_view>& words) {
  while (!statement.done() && !at_any(statement, words)) ++statement.next;
}

std::string decimal_comma(const Statement& statement) {
  if (!at_word(statement, ",") || statement.next < 1 || statement.next + 1 >= statement.tokens.size())
    return "";
  const std::string_view comma = statement.token().text;
  const std::string_view whole = statement.tokens[statement.next - 1].text;
  const std::string_view part = statement.tokens[statement.next + 1].text;
  const bool in_one_piece = whole.data() + whole.size() == comma.data() && comma.data() + 1 == part.data();
  if (!in_one_piece || !looks_like_number(whole) || !looks_like_number(part)) return "";
  return without_comma(whole, part);
}

void expect_end(Statement& statement) {
  if (statement.done() || statement.failed) return;
  const Token& token = statement.token();
  std::string message = "the line is complete before " + quoted(token.text);
  const bool after_number =
      statement.next > 0 && looks_like_number(statement.tokens[statement.next - 1].text);
  const bool unit = after_number && (is_unit_word(token.text) || lower(token.text) == "in");
  if (unit) message += "; write a unit against its number, as 3/8in";
  const std::string comma = decimal_comma(statement);
  message += !comma.empty() ? comma : unit ? "" : "; leave it out, or put # before it if it is a remark";
  fail(statement, spanning(token, statement.tokens.back()), std::move(message));
}

/// Whether the next word is a fraction that goes with a whole number before it.
static bool at_fraction(const Statement& statement) {
  if (statement.done()) return false;
  std::string ignored;
  const std::optional<Number> number = scan_number(statement.token().text, ignored);
  return number && number->fraction;
}

std::optional<double> read_length(Statement& statement, const std::string& what, Zero zero) {
  if (statement.done() || !looks_like_number(statement.token().text)) {
    const bool known = !statement.done() && !as_written_here(statement.token().text).empty();
    fail_expected(statement, known ? what : what + ", " + std::string(kSuchLength));
    return std::nullopt;
  }
  const std::size_t first = statement.next++;
  const std::string_view word = statement.tokens[first].text;
  std::string why;
  const std::optional<Number> number = scan_number(word, why);
  std::string_view fraction;
  if (number && number->whole && number->suffix.empty() && at_fraction(statement)) {
    fraction = statement.tokens[statement.next++].text;
  }
  const std::optional<double> mm = length_of(word, fraction, statement.unit, why);
  const Place place = read_since(statement, first);
  if (!mm) {
    fail(statement, place, why);
    return std::nullopt;
  }
  if (!(*mm > 0) && zero == Zero::refused) {
    fail(statement, place, what + " must be more than 0, " + std::string(kSuchLength));
    return std::nullopt;
  }
  if (!statement.done() && is_unit_word(statement.token().text)) {
    const std::string written = text_since(statement, first);
    ++statement.next;
    std::string unit = lower(statement.tokens[statement.next - 1].text);
    if (unit == "inch" || unit == "inches") unit = "in";
    std::string message = "write a unit against its number: " + quoted(written + unit);
    if (!unit_length(unit))
      message = quoted(unit) + " is not a unit; expected in, mm or ft, written against the number" +
                as_written_here(written + unit);
    fail(statement, read_since(statement, first), message);
    return std::nullopt;
  }
  return mm;
}

std::optional<double> read_number(Statement& statement, const std::string& what, double most) {
  if (statement.done() || !looks_like_number(statement.token().text)) {
    fail_expected(statement, what);
    return std::nullopt;
  }
  const std::size_t first = statement.next++;
  std::string why;
  std::optional<Number> number = scan_number(statement.tokens[first].text, why);
  if (number && number->whole && number->suffix.empty() && at_fraction(statement)) {
    const double units = number->value;
    number = scan_number(statement.tokens[statement.next++].text, why);
    number->value += units;
  }
  const Place place = read_since(statement, first);
  if (!number) {
    fail(statement, place, why);
    return std::nullopt;
  }
  if (!number->suffix.empty()) {
    fail(statement, place,
         "expected " + what + ", a plain number, found " + quoted(text_since(statement, first)));
    return std::nullopt;
  }
  if (number->value > most) {
    fail(statement, place,
         what + " is at most " + std::to_string(static_cast<long>(most)) + "; write a smaller one");
    return std::nullopt;
  }
  return number->value;
}

std::optional<int> read_whole(Statement& statement, const std::string& what, int least, int most) {
  const std::string range = " from " + std::to_string(least) + " to " + std::to_string(most);
  if (statement.done()) {
    fail_expected(statement, what + ", a whole number" + range);
    return std::nullopt;
  }
  const std::string_view word = statement.token().text;
  int value = 0;
  const auto [end, code] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (code != std::errc() || end != word.data() + word.size() || value < least || value > most) {
    fail_expected(statement, what + ", a whole number" + range);
    return std::nullopt;
  }
  ++statement.next;
  return value;
}

std::optional<std::string> read_name(Statement& statement, const std::string& what) {
  if (statement.done()) {
    fail_expected(statement, what);
    return std::nullopt;
  }
  const std::size_t first = statement.next;
  statement.next = statement.tokens.size();
  std::string name = text_since(statement, first);
  if (name.size() <= kMaxName) return name;
  fail(statement, read_since(statement, first),
       "the name is longer than " + std::to_string(kMaxName) + " letters; shorten it" + to_raise("kMaxName"));
  return std::nullopt;
}

static std::optional<Unit> read_unit(Statement& statement) {
  const std::vector<std::string_view> words = {"inch", "inches", "in", "mm"};
  if (!at_any(statement, words)) {
    if (statement.done()) {
      fail_expected(statement, "inch or mm after 'units'");
    } else {
      const std::string_view word = statement.token().text;
      fail(statement, statement.token().place,
           "expected inch or mm after 'units', found " + quoted(word) + suggestion(word, words));
    }
    return std::nullopt;
  }
  const bool metric = at_word(statement, "mm");
  ++statement.next;
  return metric ? Unit::mm : Unit::inch;
}

bool stood_before(Statement& statement, int& line) {
  const Token& word = statement.tokens.front();
  if (line > 0) {
    fail(statement, word.place,
         "a second " + quoted(lower(word.text)) + "; the first is on line " + std::to_string(line) +
             ": leave one of them out");
    return true;
  }
  line = word.place.line;
  return false;
}

void read_units(Statement& statement, int& units_line, int length_line, Unit& unit) {
  if (!stood_before(statement, units_line) && length_line > 0) {
    fail(statement, statement.tokens.front().place,
         "'units' must come before the first length; put it above line " + std::to_string(length_line));
  }
  unit = read_unit(statement).value_or(unit);
  expect_end(statement);
}

}  // namespace arrisline
