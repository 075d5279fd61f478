// Short forms for the tests of the readers.
#pragma once

#include <string>

#include "arrisline/read.h"

namespace arrisline::testing {

/// All diagnostics as they are shown, for a file of the name given.
template <class T>
std::string shown(const Reading<T>& reading) {
  std::string out;
  for (const Diagnostic& diagnostic : reading.diagnostics) out += format(diagnostic);
  return out;
}

/// The messages alone: "line:column: message" a line.
template <class T>
std::string messages(const Reading<T>& reading) {
  std::string out;
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    out += std::to_string(diagnostic.line) + ":" + std::to_string(diagnostic.column) + ": ";
    if (diagnostic.severity == Severity::warning) out += "warning: ";
    out += diagnostic.message + "\n";
  }
  return out;
}

inline std::string profile_messages(const std::string& text) {
  return messages(read_profile(text, "test.profile"));
}

/// What is said of one statement in an otherwise sound profile: "column+length: message" a line.
inline std::string element_messages(const std::string& statement) {
  const auto reading =
      read_profile("stock 100in wide, 100in thick\nstart face 50in\n" + statement + "\n", "test.profile");
  std::string out;
  for (const Diagnostic& diagnostic : reading.diagnostics) {
    if (diagnostic.line != 3 || diagnostic.message.find("the chain ends inside") == 0) continue;
    out += std::to_string(diagnostic.column) + "+" + std::to_string(diagnostic.length) + ": " +
           diagnostic.message + "\n";
  }
  return out;
}

inline std::string kit_messages(const std::string& text) {
  return messages(read_kit(text, "test.kit"));
}

}  // namespace arrisline::testing
