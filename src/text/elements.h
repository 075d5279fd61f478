// The statements of a chain: elements and trade shapes, in profiles and in a kit's shaped planes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "section/shapes.h"
#include "text/statement.h"

namespace arrisline {

/// An element as written, sound by itself.
struct ElementText {
  std::string name;  // "bead", "reverse-ogee"
  Shape shape = Shape::step;
  Dimensions dimensions;
};

/// The words that begin an element.
const std::vector<std::string_view>& element_words();

/// Reads an element whose word is the statement's first. Nothing after a mistake; all mistakes of the line
/// are reported. REQUIRES: the first word is one of element_words().
std::optional<ElementText> read_element(Statement& statement);

}  // namespace arrisline
