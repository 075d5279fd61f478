// From the words of a command line to the arguments of a command.
#pragma once

#include <CLI/CLI.hpp>
#include <optional>
#include <string>
#include <vector>

#include "app/commands.h"

namespace arrisline {

/// A command line that is not understood: what is wrong, and where the help is.
Outcome bad_usage(const std::string& command, const std::string& message);

/// Parses the arguments of one command; an outcome means that there is nothing left to run. REQUIRES: the
/// parser knows the options that the table has for the command, and no others.
std::optional<Outcome> parse(CLI::App& parser, const std::string& command, int argc, const char* const* argv);

/// What a command cannot do without.
struct Wanted {
  std::string name;
  bool given;
};
/// A command line that lacks one of them.
std::optional<Outcome> missing(const std::string& command, const std::vector<Wanted>& wanted);

}  // namespace arrisline
