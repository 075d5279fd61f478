// Lengths and plain numbers, as a maker writes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "arrisline/length.h"

namespace arrisline {

/// The longest length that is read, in mm.
inline constexpr double kLongest = 10000;

/// A number as written: 3, .375, 3/8, 1-3/8, or (of two words) 1 3/8.
struct Number {
  double value = 0;
  bool whole = false;       // digits alone, so that a fraction may follow
  bool fraction = false;    // 3/8, without a whole number
  std::string_view suffix;  // what is written against it
};

/// Reads the number at the front of a word. Nothing, and why, where there is none or a malformed one.
std::optional<Number> scan_number(std::string_view word, std::string& why);

/// Whether the word starts as a number does, well or badly formed.
bool looks_like_number(std::string_view word);

/// mm in one of the unit written against a number ("in", "mm", "ft", an inch mark), or nothing.
std::optional<double> unit_length(std::string_view suffix);

/// Whether the word standing alone names a unit of length, known here or not.
bool is_unit_word(std::string_view word);

/// A length from one word, or from two where the second is the fraction of a mixed number (else empty).
std::optional<double> length_of(std::string_view word, std::string_view fraction, Unit unit,
                                std::string& why);

/// A length in a message, in the file's unit: "0.375in", "9.525mm"; rounded up where `up` is set.
std::string show(double mm, Unit unit, bool up = false);

}  // namespace arrisline
