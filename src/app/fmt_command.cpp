// `arrisline fmt`: files in tidy form. Shown by tests/cli and tests/text/tidy_test.cpp.
#include <stdexcept>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/output.h"
#include "arrisline/job.h"
#include "arrisline/report.h"
#include "text/load.h"
#include "text/tidy.h"
#include "wording/words.h"

namespace arrisline {
namespace {

std::optional<FileKind> kind_of(const std::string& path) {
  for (const FileKind kind : {FileKind::profile, FileKind::kit, FileKind::job}) {
    const std::string ending = "." + std::string(word(kind));
    if (path.size() > ending.size() && lower(path.substr(path.size() - ending.size())) == ending) return kind;
  }
  return std::nullopt;
}

/// Whether it reads without an error; what there is to say is added to `messages`.
bool reads(const std::string& path, FileKind kind, std::string& messages) {
  switch (kind) {
    case FileKind::profile:
      return take(read_profile_file(path), messages).has_value();
    case FileKind::kit:
      return take(read_kit_file(path), messages).has_value();
    case FileKind::job:
      break;
  }
  return take(read_job_file(path), messages).has_value();
}

}  // namespace

Outcome fmt_command(const FmtArguments& arguments) {
  Outcome outcome;
  bool untidy = false;
  for (const std::string& path : arguments.files) {
    const std::optional<FileKind> kind = kind_of(path);
    if (!kind) {
      outcome.err += usage_error(
          "fmt",
          quoted(path) + " does not say what it is; give it a name that ends in .profile, .kit or .job");
      outcome.code = kBadInput;
      continue;
    }
    const bool writable =
        arguments.check || output_option(arguments.output.value_or(path), "fmt", outcome.err);
    if (!reads(path, *kind, outcome.err) || !writable) {
      outcome.code = kBadInput;
      continue;
    }
    const std::string text = load(path).text;
    const std::string tidy = tidied(text, *kind);
    if (arguments.output) {
      outcome.file = arguments.output;
      outcome.out = tidy;
    } else if (tidy != text) {
      untidy = true;
      outcome.out += visible(path) + "\n";
      if (!arguments.check) outcome.sheets.push_back({path, tidy});
    }
  }
  if (arguments.check && untidy && outcome.code == kDone) outcome.code = kNo;
  return outcome;
}

}  // namespace arrisline
