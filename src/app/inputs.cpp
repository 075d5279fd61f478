// Options that are lengths and units. Shown by tests/cli.
#include "app/inputs.h"

#include "arrisline/report.h"
#include "text/words.h"

namespace arrisline {

std::string usage_error(const std::string& command, const std::string& message) {
  return "arrisline" + (command.empty() ? "" : " " + command) + ": error: " + visible(message) + "\n";
}

std::optional<Unit> unit_option(const std::optional<std::string>& word, Unit otherwise,
                                const std::string& command, std::string& messages) {
  if (!word) return otherwise;
  const std::string small = lower(*word);
  if (small == "inch") return Unit::inch;
  if (small == "mm") return Unit::mm;
  messages +=
      usage_error(command, "--unit is inch or mm, not " + quoted(*word) + suggestion(small, {"inch", "mm"}));
  return std::nullopt;
}

std::optional<double> length_option(const std::string& name, const std::optional<std::string>& text,
                                    Unit unit, double otherwise, const std::string& command,
                                    std::string& messages) {
  if (!text) return otherwise;
  std::string why;
  const std::optional<double> length = parse_length(*text, unit, &why);
  if (!length) messages += usage_error(command, name + " " + quoted(*text) + ": " + why);
  return length;
}

}  // namespace arrisline
