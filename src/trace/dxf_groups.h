// The groups of a DXF drawing: a code on one line, its value on the next.
#pragma once

#include <optional>
#include <string_view>

#include "trace/faults.h"

namespace arrisline {

struct Group {
  int code = 0;
  std::string_view value;  // without blanks around it
  Span where;              // of the value
};

struct Groups {
  std::string_view text;
  Faults& faults;
  std::size_t pos = 0;

  /// The next group but comments (999), or nothing at the end of the text or after a mistake.
  std::optional<Group> next();
};

/// The value as a number; a mistake, and nothing, where it is none.
std::optional<double> number_of(const Group& group, Faults& faults);

/// mm in a unit of $INSUNITS; nothing for "no unit" and for those that no drawing of a moulding is in.
std::optional<double> mm_of_insert_unit(int code);

}  // namespace arrisline
