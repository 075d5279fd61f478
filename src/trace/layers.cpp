// Shown by tests/trace/layers_test.cpp.
#include "trace/layers.h"

#include <algorithm>

#include "wording/words.h"

namespace arrisline {

/// Names in a message, at most: a drawing may have an id on every path.
static constexpr std::size_t kMostNames = 12;

Layers::Layers(const std::optional<std::string>& asked) : asked_(asked) {}

bool Layers::is(std::string_view name) {
  if (lower(name) == lower(*asked_)) {
    found_ = true;
    return true;
  }
  if (std::find(names_.begin(), names_.end(), name) != names_.end()) return false;
  if (names_.size() < kMostNames) {
    names_.emplace_back(name);
  } else {
    ++more_;
  }
  return false;
}

void Layers::check(Faults& faults) const {
  if (!is_one() || found_) return;
  std::string there;
  for (const std::string& name : names_) there += (there.empty() ? "" : ", ") + quoted(name);
  if (more_ > 0) there += " and others";
  const std::vector<std::string_view> known(names_.begin(), names_.end());
  faults.error({}, "no layer of the drawing is called " + quoted(*asked_) +
                       (names_.empty() ? "; its layers have no names: leave --layer out"
                                       : "; it has " + there + suggestion(*asked_, known)));
}

}  // namespace arrisline
