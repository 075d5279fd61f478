// Of a drawing with more in it than the line: which part is read.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "trace/faults.h"

namespace arrisline {

/// What `--layer` asks for, and the names that there are. Capitals and small letters are alike, as in DXF.
class Layers {
 public:
  explicit Layers(const std::optional<std::string>& asked);

  /// Whether one layer alone is to be read.
  bool is_one() const { return asked_.has_value(); }
  /// Whether this is the layer asked for. Keeps the name, for what is said where none is.
  /// REQUIRES: is_one().
  bool is(std::string_view name);
  /// A mistake where a layer is asked for and no name was it.
  void check(Faults& faults) const;

 private:
  std::optional<std::string> asked_;  // absent: everything is read
  bool found_ = false;
  std::vector<std::string> names_;
  std::size_t more_ = 0;  // names that are not kept
};

}  // namespace arrisline
