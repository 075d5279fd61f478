// One statement of a job at a time. Shown by tests/text/job_test.cpp and job_mistakes_test.cpp.
#include "text/job_lines.h"

#include <algorithm>
#include <set>

#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {
namespace {

using Words = std::vector<std::string_view>;

const Words kMouldFields = {"width", "length", "count", "mitre", "spring", "corner", "of", "across"};
const Words kStockFields = {"thick", "wide", "long", "count"};
const Words kSawFields = {"kerf", "allowance", "spring", "corner"};
const Words kRipFields = {"kerf", "true", "hold"};

/// The next field's word, or a mistake, after which the next that is known stands under the finger.
std::optional<std::string> next_field(Statement& statement, const Words& fields,
                                      std::set<std::string>& given) {
  accept_comma(statement);
  if (statement.done()) return std::nullopt;
  const Token token = statement.token();
  const std::string field = lower(token.text);
  if (!at_any(statement, fields)) {
    fail(statement, token.place,
         "expected " + either(fields) + ", found " + quoted(token.text) + suggestion(token.text, fields));
    ++statement.next;
    skip_to(statement, fields);
    return std::nullopt;
  }
  ++statement.next;
  if (!given.insert(field).second)
    fail(statement, token.place, quoted(field) + " is given twice; leave one of them out");
  return field;
}

/// Whether there is anything left to read that is worth a message.
bool goes_on(const Statement& statement) {
  return !statement.done() && statement.faults <= kMaxFaults;
}

std::optional<Stated<double>> read_degrees(Statement& statement, const std::string& field, double most) {
  const std::size_t first = statement.next;
  const std::optional<double> value = read_number(statement, "degrees after " + quoted(field), most);
  if (!value) return std::nullopt;
  return Stated<double>{*value, statement.tokens[first].place};
}

std::optional<Stated<double>> read_spring(Statement& statement) {
  return read_degrees(statement, "spring", 90);
}

std::optional<Stated<double>> read_corner(Statement& statement) {
  std::optional<Stated<double>> out = read_degrees(statement, "corner", 180);
  if (out && !(out->value > 0 && out->value < 180)) {
    fail(statement, out->place, "a corner is more than 0 and less than 180 degrees, such as 90");
    return std::nullopt;
  }
  return out;
}

std::optional<Stated<double>> read_measure(Statement& statement, const std::string& what,
                                           Zero zero = Zero::refused) {
  const std::size_t first = statement.next;
  const std::optional<double> length = read_length(statement, what, zero);
  if (!length) return std::nullopt;
  return Stated<double>{*length, read_since(statement, first)};
}

/// Words up to one of those given, to a number or to the end.
std::optional<Stated<std::string>> read_species(Statement& statement, const Words& until) {
  const std::size_t first = statement.next;
  while (!statement.done() && !at_any(statement, until) && !at_word(statement, ",") &&
         !looks_like_number(statement.token().text))
    ++statement.next;
  if (statement.next == first) return std::nullopt;
  std::string name = text_since(statement, first);
  if (name.size() > 1 && name.front() == '"' && name.back() == '"') name = name.substr(1, name.size() - 2);
  if (name.size() > kMaxName) {
    fail(statement, read_since(statement, first),
         "the name is longer than " + std::to_string(kMaxName) + " letters; shorten it" +
             to_raise("kMaxName"));
    return std::nullopt;
  }
  return Stated<std::string>{name, read_since(statement, first)};
}

void read_mitre(Statement& statement, MouldText& mould) {
  const std::size_t first = statement.next - 1;
  const Words ends = {"left", "right", "both"};
  if (!at_any(statement, ends)) {
    if (statement.done()) {
      fail_expected(statement, "left, right or both after 'mitre'");
    } else {
      fail(statement, statement.token().place,
           "expected left, right or both after 'mitre', found " + quoted(statement.token().text) +
               suggestion(statement.token().text, ends));
      ++statement.next;
      skip_to(statement, kMouldFields);
    }
    return;
  }
  mould.mitre = at_word(statement, "left")    ? Ends::left
                : at_word(statement, "right") ? Ends::right
                                              : Ends::both;
  ++statement.next;
  if (at_any(statement, {"outside", "inside"})) {
    mould.inside = at_word(statement, "inside");
    ++statement.next;
  }
  mould.mitre_place = read_since(statement, first);
}

/// A field's value; where it cannot be read the next field is.
template <class T, class Read>
void take_field(Statement& statement, const Words& fields, T& into, const Read& read) {
  if (auto value = read()) {
    into = *value;
  } else {
    skip_to(statement, fields);
  }
}

void read_mould_field(Statement& statement, const std::string& field, MouldText& mould) {
  const auto length = [&](const std::string& what) {
    return [&statement, what] { return read_measure(statement, what); };
  };
  if (field == "width") {
    take_field(statement, kMouldFields, mould.width, length("the ripped width after 'width'"));
  } else if (field == "length") {
    take_field(statement, kMouldFields, mould.length, length("a length after 'length'"));
  } else if (field == "count") {
    take_field(statement, kMouldFields, mould.count,
               [&] { return read_whole(statement, "how many after 'count'", 1, kMaxPieces); });
  } else if (field == "mitre") {
    read_mitre(statement, mould);
  } else if (field == "spring") {
    take_field(statement, kMouldFields, mould.spring, [&] { return read_spring(statement); });
  } else if (field == "corner") {
    take_field(statement, kMouldFields, mould.corner, [&] { return read_corner(statement); });
  } else if (field == "of") {
    mould.species = read_species(statement, kMouldFields);
    if (!mould.species) fail_expected(statement, "the species after 'of'");
  } else {
    take_field(statement, kMouldFields, mould.across,
               [&] { return read_length(statement, "the width of the side after 'across'"); });
  }
}

}  // namespace

std::optional<Stated<std::string>> read_word(Statement& statement, const std::string& what) {
  if (statement.done()) {
    fail_expected(statement, what);
    return std::nullopt;
  }
  const Token token = statement.tokens[statement.next++];
  std::string_view text = token.text;
  if (text.front() == '"') {
    if (text.size() < 2 || text.back() != '"') {
      fail(statement, token.place, "the quotation marks are not closed; put another \" behind the name");
      return std::nullopt;
    }
    text = text.substr(1, text.size() - 2);
  }
  if (text.empty()) {
    fail(statement, token.place, "expected " + what + ", found nothing between the quotation marks");
    return std::nullopt;
  }
  if (text.size() > kMaxName) {
    fail(statement, token.place,
         "the name is longer than " + std::to_string(kMaxName) + " letters; shorten it" +
             to_raise("kMaxName"));
    return std::nullopt;
  }
  return Stated<std::string>{std::string(text), token.place};
}

std::optional<MouldText> read_mould(Statement& statement) {
  MouldText mould;
  mould.place = place_of(statement);
  const auto name = read_word(statement, "a name after 'mould'");
  const auto profile =
      name ? read_word(statement, "the file of its profile after the name of the moulding") : std::nullopt;
  if (!name || !profile) return std::nullopt;
  mould.name = *name;
  mould.profile = *profile;
  std::set<std::string> given;
  while (goes_on(statement)) {
    if (const auto field = next_field(statement, kMouldFields, given))
      read_mould_field(statement, *field, mould);
  }
  if (given.count("length") == 0 && !statement.failed)
    fail(statement, end_of(statement), "a moulding needs its length, as in 'length 44'");
  mould.sound = !statement.failed;
  return mould;
}

std::optional<StockText> read_stock_line(Statement& statement, bool to_buy) {
  StockText out;
  out.place = place_of(statement);
  out.stock.to_buy = to_buy;
  out.stock.line = out.place.line;
  if (const auto species = read_species(statement, kStockFields)) out.stock.species = species->value;
  std::set<std::string> given;
  while (goes_on(statement)) {
    accept_comma(statement);
    if (statement.done()) break;
    if (accept(statement, "count")) {
      if (!given.insert("count").second)
        fail(statement, statement.tokens[statement.next - 1].place,
             "'count' is given twice; leave one of them out");
      take_field(statement, kStockFields, out.stock.count,
                 [&] { return read_whole(statement, "how many after 'count'", 1, kMaxPieces); });
      continue;
    }
    const std::optional<double> length =
        read_length(statement, "a length before 'thick', 'wide' or 'long', or 'count'");
    if (!length) {
      skip_to(statement, kStockFields);
      if (!statement.done() && !at_word(statement, "count")) ++statement.next;
      continue;
    }
    const Words measures = {"thick", "wide", "long"};
    if (!at_any(statement, measures)) {
      if (statement.done()) {
        fail_expected(statement, "thick, wide or long after the length");
      } else {
        fail(statement, statement.token().place,
             "expected thick, wide or long after the length, found " + quoted(statement.token().text) +
                 suggestion(statement.token().text, measures));
        ++statement.next;
      }
      continue;
    }
    const std::string measure = lower(statement.token().text);
    if (!given.insert(measure).second)
      fail(statement, statement.token().place, quoted(measure) + " is given twice; leave one of them out");
    ++statement.next;
    (measure == "thick"  ? out.stock.thickness
     : measure == "wide" ? out.stock.width
                         : out.stock.length) = *length;
  }
  const bool whole = given.count("thick") + given.count("wide") + given.count("long") == 3;
  if (!whole && !statement.failed)
    fail(statement, end_of(statement),
         "a blank needs its thickness, width and length, as in 'poplar 3/4 thick 5 1/2 wide 96 long'");
  if (!to_buy && !out.stock.count) out.stock.count = 1;
  if (statement.failed) return std::nullopt;
  return out;
}

std::optional<SawText> read_saw(Statement& statement) {
  SawText out;
  std::set<std::string> given;
  while (goes_on(statement)) {
    const auto field = next_field(statement, kSawFields, given);
    if (!field) continue;
    if (*field == "kerf" || *field == "allowance") {
      take_field(statement, kSawFields, *field == "kerf" ? out.saw.kerf : out.saw.allowance,
                 [&] { return read_length(statement, "a length after " + quoted(*field), Zero::allowed); });
    } else {
      const bool spring = *field == "spring";
      const auto degrees = spring ? read_spring(statement) : read_corner(statement);
      if (degrees) (spring ? out.spring : out.corner) = degrees->value;
      if (!degrees) skip_to(statement, kSawFields);
    }
  }
  if (given.empty() && !statement.failed) fail_expected(statement, either(kSawFields) + " after 'saw'");
  if (statement.failed) return std::nullopt;
  return out;
}

std::optional<RippingText> read_rip(Statement& statement) {
  RippingText out;
  std::set<std::string> given;
  while (goes_on(statement)) {
    const auto field = next_field(statement, kRipFields, given);
    if (!field) continue;
    const auto length = read_measure(statement, "a length after " + quoted(*field), Zero::allowed);
    if (!length) {
      skip_to(statement, kRipFields);
    } else if (*field == "kerf") {
      out.kerf = length->value;
    } else if (*field == "true") {
      out.trued = length->value;
    } else {
      out.hold = length;
    }
  }
  if (given.empty() && !statement.failed) fail_expected(statement, either(kRipFields) + " after 'rip'");
  if (statement.failed) return std::nullopt;
  return out;
}

std::optional<SpareText> read_spare(Statement& statement) {
  SpareText out;
  const auto length = read_measure(statement, "a length after 'spare'");
  if (!length) return std::nullopt;
  out.length = *length;
  accept_comma(statement);
  if (accept(statement, "count")) {
    const auto count = read_whole(statement, "how many after 'count'", 1, kMaxPieces);
    if (count) out.count = *count;
  }
  expect_end(statement);
  if (statement.failed) return std::nullopt;
  return out;
}

std::optional<Moisture> read_moisture(Statement& statement) {
  // Green wood holds more; a furniture shop's never does.
  constexpr double kDampest = 30;
  const std::size_t first = statement.next;
  const auto low = read_number(statement, "per cent of moisture at the driest", kDampest);
  if (!low) return std::nullopt;
  accept_comma(statement);
  const auto high = read_number(statement, "per cent of moisture at the dampest", kDampest);
  if (!high) return std::nullopt;
  if (!(*low < *high))
    fail(statement, read_since(statement, first),
         "the driest comes first, and is less, as in 'moisture 7 12'");
  expect_end(statement);
  if (statement.failed) return std::nullopt;
  return Moisture{*low, *high};
}

}  // namespace arrisline
