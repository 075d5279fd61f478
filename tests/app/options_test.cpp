// The table of commands and options against the help texts: what one has, the other has.
#include "app/options.h"

#include <algorithm>
#include <regex>
#include <set>

#include "app/app.h"
#include "app/help.h"
#include "catch.h"

using namespace arrisline;

TEST_CASE("the help of each command tells of the options in the table, and of no others", "[app][options]") {
  const std::regex told("\n  (?:(-[a-z]), )?(--[a-z-]+)");
  std::size_t options = 0;
  for (const CommandRow& command : command_table()) {
    CAPTURE(std::string(command.name));
    const std::string help = help_text(command.name);
    CHECK(help.rfind("arrisline " + std::string(command.name) + ":", 0) == 0);
    std::set<std::string> in_help;
    for (std::sregex_iterator it(help.begin(), help.end(), told), none; it != none; ++it)
      in_help.insert((*it)[2].str() + (*it)[1].str());
    std::set<std::string> in_table = {"--help-h"};
    for (const OptionRow& option : command.options) {
      in_table.insert(std::string(option.name) + std::string(option.in_short));
      // An option with a value has its name in capitals, or the words to choose from, beside it.
      const std::regex with_value("\n  (?:-[a-z], )?" + std::string(option.name) +
                                  " (\"?[A-Z]+|[a-z0-9]+\\|)");
      CHECK(std::regex_search(help, with_value) == (option.takes != Takes::nothing));
      ++options;
    }
    CHECK(in_help == in_table);
    for (const OptionRow& option : command.options)
      for (const std::string_view word : words_of(option.takes)) CHECK(help.find(word) != std::string::npos);
    CHECK(help_text("").find("\n  " + std::string(command.name) + " ") != std::string::npos);
  }
  CHECK(options >= 40);
}
