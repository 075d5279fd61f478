// Lengths: whole numbers, decimals, fractions and mixed numbers, with a unit written against them or without.
// Shown by tests/wording/length_test.cpp.
#include "wording/length.h"

#include <charconv>
#include <cmath>
#include <system_error>

#include "arrisline/geometry.h"
#include "wording/source.h"
#include "wording/spelling.h"
#include "wording/words.h"

namespace arrisline {

/// Digits in one number; more than any length needs, and few enough never to overflow.
static constexpr std::size_t kMostDigits = 40;

static bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// The run of digits, with at most the points written in it, at the front.
static std::string_view digits_at(std::string_view text) {
  std::size_t size = 0;
  while (size < text.size() && (is_digit(text[size]) || text[size] == '.')) ++size;
  return text.substr(0, size);
}

static bool is_whole(std::string_view digits) {
  return !digits.empty() && digits.find('.') == std::string_view::npos;
}

static double value_of(std::string_view digits) {
  double value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
  return value;
}

/// The minus sign that typesetters use, U+2212.
static bool starts_with_minus(std::string_view word) {
  return word.substr(0, 3) == "\u2212";
}

bool looks_like_number(std::string_view word) {
  if (word.empty()) return false;
  const std::size_t sign = word.front() == '-' || word.front() == '+' ? 1 : starts_with_minus(word) ? 3 : 0;
  word.remove_prefix(sign);
  if (word.empty()) return false;
  return is_digit(word.front()) || word.front() == '/' ||
         (word.front() == '.' && word.size() > 1 && is_digit(word[1]));
}

std::optional<Number> scan_number(std::string_view word, std::string& why) {
  const auto refuse = [&](std::string reason) {
    why = quoted(word) + std::move(reason);
    return std::nullopt;
  };
  if (word.empty()) return refuse(" is empty");
  const bool sign = word.front() == '-' || word.front() == '+' || starts_with_minus(word);
  if (sign) return refuse(" has a sign, and numbers here have none; leave it out");
  const std::string_view first = digits_at(word);
  std::string_view rest = word.substr(first.size());
  if (first.empty() && rest.substr(0, 1) == "/") return refuse(": write a fraction without blanks, as 3/8");
  if (first.empty() || first == ".") return refuse(" is not a number; write one such as 3/8 or 9.5");
  if (first.size() > kMostDigits) return refuse(" has more than 40 digits; round it");
  if (first.find('.') != first.rfind('.'))
    return refuse(" has more than one decimal point; leave one, as in 1.5");
  Number number;
  number.value = value_of(first);
  number.whole = is_whole(first);

  double units = 0;
  std::string_view upper = first;
  if (rest.substr(0, 1) == "-" && rest.size() > 1 && is_digit(rest[1])) {
    if (!number.whole) return refuse(": only a whole number has a fraction joined to it, as 1-1/2");
    units = number.value;
    upper = digits_at(rest.substr(1));
    rest.remove_prefix(1 + upper.size());
    if (rest.substr(0, 1) != "/") return refuse(": after the hyphen a fraction is expected, as 1-1/2");
    if (upper.size() > kMostDigits) return refuse(" has more than 40 digits; round it");
  } else if (rest.substr(0, 1) != "/") {
    number.suffix = rest;
    return number;
  }
  rest.remove_prefix(1);
  const std::string_view under = digits_at(rest);
  if (under.empty()) return refuse(": write a fraction without blanks, as 3/8");
  if (under.size() > kMostDigits) return refuse(" has more than 40 digits; round it");
  if (!is_whole(upper) || !is_whole(under)) return refuse(": a fraction is of two whole numbers, as 3/8");
  if (value_of(under) == 0) return refuse(": a fraction cannot have 0 below the line; write one such as 3/8");
  number.fraction = upper.data() == first.data();
  number.value = units + value_of(upper) / value_of(under);
  number.whole = false;
  number.suffix = rest.substr(under.size());
  return number;
}

std::optional<double> unit_length(std::string_view suffix) {
  const std::string unit = lower(suffix);
  if (unit == "in" || unit == "\"" || unit == "\u2033" || unit == "\u201D") return kMmPerInch;
  if (unit == "mm") return 1.0;
  if (unit == "ft") return 12 * kMmPerInch;
  return std::nullopt;
}

bool is_unit_word(std::string_view word) {
  const std::string unit = lower(word);
  for (const std::string_view known : {"mm", "ft", "inch", "inches", "cm", "\"", "\u2033", "\u201D"}) {
    if (unit == known) return true;
  }
  return false;
}

static bool is_exponent(std::string_view suffix) {
  if (suffix.size() < 2 || (suffix[0] != 'e' && suffix[0] != 'E')) return false;
  suffix.remove_prefix(1);
  if (suffix.size() > 1 && (suffix[0] == '-' || suffix[0] == '+')) suffix.remove_prefix(1);
  return is_digit(suffix.front());
}

std::optional<double> length_of(std::string_view word, std::string_view fraction, Unit unit,
                                std::string& why) {
  std::optional<Number> number = scan_number(word, why);
  if (!number) {
    const std::string better = as_written_here(word);
    if (!better.empty()) why = quoted(word) + " is not a number" + better;
    return std::nullopt;
  }
  if (!fraction.empty()) {
    const double units = number->value;
    number = scan_number(fraction, why);
    if (!number) return std::nullopt;
    number->value += units;
  }
  const std::string shown =
      fraction.empty() ? quoted(word) : quoted(std::string(word) + " " + std::string(fraction));
  double in_mm = unit == Unit::inch ? kMmPerInch : 1;
  if (!number->suffix.empty()) {
    const std::optional<double> written = unit_length(number->suffix);
    if (!written && is_exponent(number->suffix)) {
      why = shown + " is short for a longer number; write it out in full, as 0.005";
      return std::nullopt;
    }
    if (!written) {
      why = shown + ": " + quoted(number->suffix) + " is not a unit; expected in, mm or ft" +
            as_written_here(word);
      return std::nullopt;
    }
    in_mm = *written;
  }
  const double mm = number->value * in_mm;
  // A nominal 10 m written in inches may come out a hair over.
  if (mm > kLongest * (1 + 1e-12)) {
    why = shown + " is over 10 m, the longest that is read; check the figure and its unit";
    return std::nullopt;
  }
  return mm;
}

std::string show(double mm, Unit unit, bool up) {
  const int places = unit == Unit::inch ? 4 : 3;
  double value = unit == Unit::inch ? mm / kMmPerInch : mm;
  const double scale = unit == Unit::inch ? 1e4 : 1e3;
  if (up) value = std::ceil(value * scale - 1e-6) / scale;
  char buffer[64];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, places).ptr;
  std::string text(buffer, end);
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text + (unit == Unit::inch ? "in" : "mm");
}

std::optional<double> parse_length(std::string_view text, Unit unit, std::string* why) {
  std::string reason;
  std::optional<double> mm;
  const std::vector<Token> tokens = tokenise(text, 1);
  const auto whole = [](std::string_view word) {
    std::string ignored;
    const auto number = scan_number(word, ignored);
    return number && number->whole && number->suffix.empty();
  };
  if (tokens.empty()) {
    reason = "expected a length, such as 3/8, 1 1/2, .375 or 9.5mm";
  } else if (tokens.size() == 1) {
    mm = length_of(tokens[0].text, {}, unit, reason);
  } else if (tokens.size() == 3 && tokens[1].text == "," && text.find(' ') == std::string_view::npos &&
             looks_like_number(tokens[0].text) && looks_like_number(tokens[2].text)) {
    reason = "a comma parts the number" + without_comma(tokens[0].text, tokens[2].text);
  } else {
    std::string ignored;
    const auto fraction = scan_number(tokens[1].text, ignored);
    if (tokens.size() == 2 && whole(tokens[0].text) && fraction && fraction->fraction) {
      mm = length_of(tokens[0].text, tokens[1].text, unit, reason);
    } else if (tokens.size() == 2 && (is_unit_word(tokens[1].text) || lower(tokens[1].text) == "in")) {
      reason =
          "write a unit against its number: " + std::string(tokens[0].text) + std::string(tokens[1].text);
    } else {
      reason = "expected one length, such as 3/8, 1 1/2, .375 or 9.5mm";
    }
  }
  if (!mm && why != nullptr) *why = reason;
  return mm;
}

}  // namespace arrisline
