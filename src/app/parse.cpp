// Parsing with CLI11, and the messages of what it does not understand. Shown by tests/cli.
#include "app/parse.h"

#include <algorithm>
#include <stdexcept>

#include "app/help.h"
#include "app/inputs.h"
#include "app/options.h"
#include "app/output.h"
#include "wording/words.h"

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

/// What to do about a file whose name has blanks: it comes as several words where it stands without quotation
/// marks. Empty where there is none.
static std::string name_in_pieces(int argc, const char* const* argv) {
  for (int i = 1; i + 1 < argc; ++i) {
    std::string name = argv[i];
    if (name.empty() || name.front() == '-' || is_there(name)) continue;
    for (int k = i + 1; k < argc; ++k) {
      name += std::string(" ") + argv[k];
      if (is_there(name))
        return "the name " + arrisline::quoted(name) + " has blanks; put quotation marks about it: \"" +
               name + "\"";
    }
  }
  return "";
}

/// What to do about words that nothing takes.
static std::string left_over(const std::vector<std::string>& extras,
                             const std::vector<std::string_view>& options, int argc,
                             const char* const* argv) {
  std::string in_pieces = name_in_pieces(argc, argv);
  if (!in_pieces.empty()) return in_pieces;
  const std::string& first = extras.front();
  for (const std::string_view dash : {"\u2013", "\u2014", "\u2212", "\u2010", "\u2011"}) {
    if (!first.starts_with(dash)) continue;
    const std::string name = "--" + first.substr(first.find_first_not_of(dash));
    const std::string_view near = nearest_word(name, options);
    return arrisline::quoted(first) +
           " begins with a dash; write hyphens: " + std::string(near.empty() ? std::string_view(name) : near);
  }
  const std::vector<std::string_view> words(argv + 1, argv + argc);
  const auto is_kit = [](std::string_view word) {
    return word.size() > 4 && word.front() != '-' && word.ends_with(".kit");
  };
  const auto kit = std::find_if(words.begin(), words.end(), is_kit);
  const bool named = std::any_of(words.begin(), words.end(),
                                 [](std::string_view word) { return word.starts_with("--kit"); });
  const bool takes_kit = std::find(options.begin(), options.end(), "--kit") != options.end();
  if (takes_kit && !named && kit != words.end())
    return arrisline::quoted(*kit) + " is a kit; put --kit before it: --kit " + std::string(*kit);
  return arrisline::quoted(first) + " is one too many; leave it out";
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
    return bad_usage(command,
                     words.substr(0, words.find(':')) + (lacking ? " needs a value; write one after it"
                                                                 : " is given more than once; give it once"));
  } catch (const CLI::ParseError& error) {
    return bad_usage(command, error.what());
  }
  const std::vector<std::string> extras = parser.remaining();
  if (extras.empty()) {
    const std::string in_pieces = command_row(command).many ? name_in_pieces(argc, argv) : "";
    return in_pieces.empty() ? std::nullopt : std::optional(bad_usage(command, in_pieces));
  }
  for (const std::string& extra : extras) {
    if (extra.size() < 2 || extra.front() != '-') continue;
    const std::string name = extra.substr(0, extra.find('='));
    return bad_usage(command, "there is no option " + arrisline::quoted(name) + suggestion(name, options));
  }
  return bad_usage(command, left_over(extras, options, argc, argv));
}

std::optional<Outcome> missing(const std::string& command, const std::vector<Wanted>& wanted) {
  for (const Wanted& one : wanted)
    if (!one.given) return bad_usage(command, one.name + " is missing; for example: " + example_of(command));
  return std::nullopt;
}

}  // namespace arrisline
