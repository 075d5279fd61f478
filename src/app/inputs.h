// What the commands have in common in reading their arguments and files.
#pragma once

#include <optional>
#include <string>

#include "app/commands.h"
#include "arrisline/plan.h"
#include "arrisline/read.h"
#include "text/load.h"

namespace arrisline {

/// The value of a reading, if there is one; its diagnostics are added to `messages`.
template <class T>
std::optional<T> take(Reading<T> reading, std::string& messages) {
  for (const Diagnostic& diagnostic : reading.diagnostics) messages += format(diagnostic);
  return std::move(reading.value);
}

/// What messages call an argument that is a file, or "-" for standard input.
std::string input_name(const std::string& path);

/// The text of such an argument. Only commands ask for it that read nothing else from standard input.
Loaded load_input(const std::string& path);

/// What `read` makes of it.
template <class T, class Read>
Reading<T> read_input(const std::string& path, const Read& read) {
  return read_loaded<T>(load_input(path), input_name(path), read);
}

/// The unit named by --unit, or `otherwise` where it is absent; a word that is no unit adds to `messages`.
std::optional<Unit> unit_option(const std::optional<std::string>& word, Unit otherwise,
                                const std::string& command, std::string& messages);

/// The length given to an option in mm, or `otherwise` where it is absent; one that cannot be read adds to
/// `messages`.
std::optional<double> length_option(const std::string& name, const std::optional<std::string>& text,
                                    Unit unit, double otherwise, const std::string& command,
                                    std::string& messages);

/// Width and thickness of a stock in mm.
struct StockSize {
  double width = 0;
  double thickness = 0;
};

/// A stock given to --stock as "2 x 3/4" (width, thickness), or zeros where it is absent; one that cannot be
/// read adds to `messages`.
std::optional<StockSize> stock_option(const std::optional<std::string>& text, Unit unit,
                                      const std::string& command, std::string& messages);

/// Seconds a search may take, more than 0, or 10 where the option is absent; anything else adds to
/// `messages`.
std::optional<double> limit_option(const std::optional<std::string>& text, const std::string& command,
                                   std::string& messages);

/// Lets a search go on for so many seconds, minding the hands outside.
void bound_search(double seconds, const Outside& outside, PlanOptions& options);

/// The code to end with: that of an interruption where there was one, but for a fault of ours.
int code_after(const Outside& outside, int code);

/// What --prefer names, or the least effort where it is absent.
std::optional<Prefer> prefer_option(const std::optional<std::string>& word, const std::string& command,
                                    std::string& messages);

/// Whether the file named by --output, or by another option, can be written, as far as can be seen, or is
/// absent; one that cannot adds to `messages`.
bool output_option(const std::optional<std::string>& path, const std::string& command, std::string& messages,
                   const std::string& option = "--output");

/// The name of a file without its folders, fit for a page.
std::string file_name(const std::string& path);

/// A mistake of a whole file, at 1:1, with the line's end.
std::string refusal(const std::string& file, const std::string& why);

/// Gives out the text of a profile made from `file`, where it reads without a mistake; else `why` and what
/// the reader says of it.
void give_profile(const std::string& text, const std::string& file, const std::string& why,
                  const std::optional<std::string>& output, Outcome& outcome);

/// "arrisline plan: error: …", with the line's end.
std::string usage_error(const std::string& command, const std::string& message);

}  // namespace arrisline
