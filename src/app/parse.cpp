// Parsing with CLI11, and the messages of what it does not understand. Shown by tests/cli.
#include "app/parse.h"

#include <algorithm>
#include <stdexcept>

#include "app/help.h"
#include "app/inputs.h"
#include "app/options.h"
#include "text/words.h"

namespace arrisline {

// The options of the table. One that the parser does not know, or knows besides, would be a fault of ours
// that every use of the command shows.
static std::vector<std::string_view> options_of(const CLI::App& parser, const std::string& command) {
  std::vector<std::string_view> names;
  for (const OptionRow& option : command_row(command).options) names.push_back(option.name);
  std::size_t known = 0;
  for (const CLI::Option* option : parser.get_options()) {
    if (option->get_lnames().empty() || option->check_lname("help")) continue;
    ++known;
    const std::string name = "--" + option->get_lnames().front();
    if (std::find(names.begin(), names.end(), name) == names.end())
      throw std::logic_error(name + " of " + command + " is not in the table of options");
  }
  if (known != names.size())
    throw std::logic_error("the table has options that " + command + " does not know");
  names.push_back("--help");
  return names;
}

Outcome bad_usage(const std::string& command, const std::string& message) {
  const std::string where = command.empty() ? "" : " " + command;
  return {kBadInput, "", usage_error(command, message) + "see: arrisline" + where + " --help\n"};
}

std::optional<Outcome> parse(CLI::App& parser, const std::string& command, int argc,
                             const char* const* argv) {
  const std::vector<std::string_view> options = options_of(parser, command);
  parser.allow_extras();
  parser.set_help_flag("-h,--help");
  try {
    parser.parse(argc, argv);
  } catch (const CLI::CallForHelp&) {
    return Outcome{kDone, help_text(command), ""};
  } catch (const CLI::ArgumentMismatch& error) {
    const std::string words =
        error.what();  // "--kit: 1 required TEXT missing", "--kit: At Most 1 required …"
    const bool lacking = words.find("missing") != std::string::npos;
    return bad_usage(command, words.substr(0, words.find(':')) +
                                  (lacking ? " needs a value" : " is given more than once"));
  } catch (const CLI::ParseError& error) {
    return bad_usage(command, error.what());
  }
  const std::vector<std::string> extras = parser.remaining();
  if (extras.empty()) return std::nullopt;
  for (const std::string& extra : extras) {
    if (extra.size() < 2 || extra.front() != '-') continue;
    const std::string name = extra.substr(0, extra.find('='));
    return bad_usage(command, "there is no option " + arrisline::quoted(name) + suggestion(name, options));
  }
  return bad_usage(
      command, "what is " + arrisline::quoted(extras.front()) + " for? everything it takes was given before");
}

std::optional<Outcome> missing(const std::string& command, const std::vector<Wanted>& wanted) {
  for (const Wanted& one : wanted)
    if (!one.given) return bad_usage(command, one.name + " is missing");
  return std::nullopt;
}

}  // namespace arrisline
