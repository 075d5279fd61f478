// Options that are lengths and units. Shown by tests/cli.
#include "app/inputs.h"

#include <charconv>
#include <iostream>

#include "app/output.h"
#include "arrisline/limits.h"
#include "arrisline/report.h"
#include "wording/figures.h"
#include "wording/source.h"
#include "wording/words.h"

namespace arrisline {

std::string usage_error(const std::string& command, const std::string& message) {
  return "arrisline" + (command.empty() ? "" : " " + command) + ": error: " + visible(message) + "\n";
}

std::string file_name(const std::string& path) {
  return visible(path.substr(path.rfind('/') + 1));
}

std::string refusal(const std::string& file, const std::string& why) {
  Diagnostic diagnostic;
  diagnostic.file = file;
  diagnostic.message = why;
  return format(diagnostic);
}

void give_profile(const std::string& text, const std::string& file, const std::string& why,
                  const std::optional<std::string>& output, Outcome& outcome) {
  const Reading<Section> read_back = read_profile(text, stem(file) + ".profile");
  if (!read_back.value) {
    outcome.err += refusal(file, why);
    for (const Diagnostic& diagnostic : read_back.diagnostics) outcome.err += format(diagnostic);
    outcome.code = kBadInput;
    return;
  }
  outcome.out = text;
  outcome.file = output;
}

std::string input_name(const std::string& path) {
  return path == "-" ? "standard input" : path;
}

Loaded load_input(const std::string& path) {
  return path == "-" ? load(std::cin) : load(path);
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

std::optional<StockSize> stock_option(const std::optional<std::string>& text, Unit unit,
                                      const std::string& command, std::string& messages) {
  if (!text) return StockSize{};
  const std::size_t by = text->find_first_of("xX");
  std::string why = "expected a width, x and a thickness, such as '2 x 3/4'";
  if (by != std::string::npos) {
    auto part = [&](std::size_t from, std::size_t end) {
      while (from < end && (*text)[from] == ' ') ++from;
      while (end > from && (*text)[end - 1] == ' ') --end;
      return parse_length(text->substr(from, end - from), unit, &why);
    };
    const std::optional<double> width = part(0, by);
    const std::optional<double> thickness = width ? part(by + 1, text->size()) : std::nullopt;
    if (width && thickness) {
      if (*width > 0 && *thickness > 0) return StockSize{*width, *thickness};
      why = "a stock is more than 0 wide and thick, such as '2 x 3/4'";
    }
  }
  messages += usage_error(command, "--stock " + quoted(*text) + ": " + why);
  return std::nullopt;
}

std::optional<double> limit_option(const std::optional<std::string>& text, const std::string& command,
                                   std::string& messages) {
  constexpr double kUsual = 10;
  if (!text) return kUsual;
  double seconds = 0;
  const char* end = text->data() + text->size();
  const std::from_chars_result read = std::from_chars(text->data(), end, seconds);
  if (read.ec == std::errc{} && read.ptr == end && seconds > 0 && seconds <= kMaxSeconds) return seconds;
  messages += usage_error(command, "--limit is a number of seconds above 0 and at most " +
                                       plain(kMaxSeconds, 0) + ", such as 10 or 0.5, not " + quoted(*text));
  return std::nullopt;
}

void bound_search(double seconds, const Outside& outside, PlanOptions& options) {
  options.limit = seconds;
  options.most_work = std::numeric_limits<std::uint64_t>::max();  // the clock alone
  options.interrupt = outside.interrupt;
  options.progress = outside.progress;
}

int code_after(const Outside& outside, int code) {
  const bool interrupted = outside.interrupt != nullptr && outside.interrupt->load();
  return interrupted && code != kOurFault ? kInterrupted : code;
}

std::optional<Prefer> prefer_option(const std::optional<std::string>& word, const std::string& command,
                                    std::string& messages) {
  if (!word) return Prefer::least_effort;
  for (const Prefer prefer : {Prefer::fewest_planes, Prefer::fewest_cuts, Prefer::least_strokes}) {
    if (lower(*word) == arrisline::word(prefer)) return prefer;
  }
  messages +=
      usage_error(command, "--prefer is fewest-planes, fewest-cuts or least-strokes, not " + quoted(*word) +
                               suggestion(lower(*word), {"fewest-planes", "fewest-cuts", "least-strokes"}));
  return std::nullopt;
}

bool output_option(const std::optional<std::string>& path, const std::string& command, std::string& messages,
                   const std::string& option) {
  const std::optional<std::string> why = path ? unwritable(*path) : std::nullopt;
  if (why) messages += usage_error(command, option + " " + quoted(*path) + " cannot be written: " + *why);
  return !why;
}

}  // namespace arrisline
