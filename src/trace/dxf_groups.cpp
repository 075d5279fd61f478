// Groups as the DXF reference of the format's publisher has them. Shown by tests/trace/dxf_test.cpp.
#include "trace/dxf_groups.h"

#include <charconv>
#include <cmath>
#include <string>
#include <system_error>

#include "arrisline/geometry.h"
#include "wording/words.h"

namespace arrisline {

/// Passes one line: the span of what stands on it, without blanks around it.
static Span pass_line(std::string_view text, std::size_t& pos) {
  std::size_t from = pos;
  std::size_t end = std::min(text.find_first_of("\r\n", pos), text.size());
  pos = end;
  if (pos < text.size() && text[pos] == '\r') ++pos;
  if (pos < text.size() && text[pos] == '\n') ++pos;
  const auto blank = [&](std::size_t i) { return text[i] == ' ' || text[i] == '\t'; };
  while (from < end && blank(from)) ++from;
  while (end > from && blank(end - 1)) --end;
  return {from, end - from};
}

std::optional<Group> Groups::next() {
  for (;;) {
    if (pos == 0 && text.substr(0, 3) == "\xEF\xBB\xBF") pos = 3;
    if (text.find_first_not_of(" \t\r\n", pos) == std::string_view::npos) return std::nullopt;
    const Span code_at = pass_line(text, pos);
    const std::string_view code = text.substr(code_at.at, code_at.bytes);
    Group group;
    const auto [rest, error] = std::from_chars(code.data(), code.data() + code.size(), group.code);
    if (code.empty() || error != std::errc() || rest != code.data() + code.size()) {
      faults.error({code_at.at, std::max<std::size_t>(1, code.size())},
                   (code.empty() ? "this line is empty" : quoted(code) + " is no group code") +
                       std::string("; expected a whole number, with its value on the line after it") +
                       std::string(kSaveDxfAgain));
      return std::nullopt;
    }
    if (pos >= text.size()) {
      faults.error(code_at, "the drawing breaks off: the value of group " + std::to_string(group.code) +
                                " is missing" + std::string(kSaveDxfAgain));
      return std::nullopt;
    }
    group.where = pass_line(text, pos);
    group.value = text.substr(group.where.at, group.where.bytes);
    group.where.bytes = std::max<std::size_t>(1, group.where.bytes);
    if (group.code != 999) return group;
  }
}

std::optional<double> number_of(const Group& group, Faults& faults) {
  std::string_view text = group.value;
  if (!text.empty() && text.front() == '+') text.remove_prefix(1);
  const std::string_view digits = text.substr(!text.empty() && text.front() == '-' ? 1 : 0);
  const bool starts =
      !digits.empty() && (digits.front() == '.' || (digits.front() >= '0' && digits.front() <= '9'));
  double value = 0;
  const auto [rest, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (starts && error == std::errc() && rest == text.data() + text.size()) {
    if (std::fabs(value) <= kLargestFigure) return value;
    faults.error(group.where, quoted(group.value) +
                                  " is too large; expected a number up to 1000000000, as on a drawing in mm");
    return std::nullopt;
  }
  faults.error(group.where, quoted(group.value) + " is not a number; group " + std::to_string(group.code) +
                                " is one" + std::string(kSaveDxfAgain));
  return std::nullopt;
}

std::optional<double> mm_of_insert_unit(int code) {
  switch (code) {
    case 1:
      return kMmPerInch;
    case 2:
      return 12 * kMmPerInch;
    case 4:
      return 1.0;
    case 5:
      return 10.0;
    case 6:
      return 1000.0;
    case 8:
      return kMmPerInch / 1e6;
    case 9:
      return kMmPerInch / 1000;
    case 10:
      return 36 * kMmPerInch;
    case 13:
      return 0.001;
    case 14:
      return 100.0;
    default:
      return std::nullopt;
  }
}

}  // namespace arrisline
