// What every command takes, in one table: the parser's suggestions, the completions and the manual go by it.
#pragma once

#include <string_view>
#include <vector>

namespace arrisline {

/// What stands after an option, or in a place of its own; a completion offers accordingly.
enum class Takes {
  nothing,
  text,     // a figure, or anything else that is not one of few
  profile,  // files, by their endings
  kit,
  job,
  plan,
  tracing,
  any_of_ours,  // a profile, a kit or a job
  sheet,        // a file to be written, by its ending
  output,       // a file to be written
  folder,
  unit,  // one of few words, see words_of()
  paper,
  prefer,
  side,
  shell,
  kind_of_file,
  word,  // of the file formats
};

/// The words that may stand there; none where it is anything, a file or a word of the file formats.
const std::vector<std::string_view>& words_of(Takes takes);
/// The endings of the files that may stand there, without the full stop; none where any will do.
const std::vector<std::string_view>& endings_of(Takes takes);

struct OptionRow {
  std::string_view name;  // "--kit"
  Takes takes = Takes::nothing;
  std::string_view what;           // in a few words, for completions
  std::string_view in_short = {};  // "-o"
};

struct CommandRow {
  std::string_view name;
  std::string_view what;           // in a few words
  Takes place = Takes::nothing;    // what stands without an option
  bool many = false;               // any number of it
  std::vector<OptionRow> options;  // all but --help
};

const std::vector<CommandRow>& command_table();
/// The row of a command that is in the table.
const CommandRow& command_row(std::string_view name);
/// The names of all commands, in order.
const std::vector<std::string_view>& command_names();

}  // namespace arrisline
