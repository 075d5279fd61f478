// From the command line to the arguments of `new`, `words`, `fmt` and `completions`. Shown by tests/cli.
#include "app/desk.h"

#include "app/options.h"
#include "app/output.h"
#include "app/parse.h"

namespace arrisline {

Outcome run_new(int argc, const char* const* argv) {
  NewArguments arguments;
  CLI::App parser;
  parser.add_option("KIND", arguments.kind);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("-o,--output", arguments.output);
  const auto stop = parse(parser, "new", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("new", {{"profile, kit or job", parser.count("KIND") > 0}});
  return lacking ? *lacking : new_command(arguments);
}

Outcome run_words(int argc, const char* const* argv) {
  WordsArguments arguments;
  CLI::App parser;
  parser.add_option("WORD", arguments.word);
  parser.add_flag("--ascii", arguments.ascii);
  const auto stop = parse(parser, "words", argc, argv);
  if (stop) return *stop;
  arguments.ascii = arguments.ascii || !utf8_welcome();
  return words_command(arguments);
}

Outcome run_fmt(int argc, const char* const* argv) {
  FmtArguments arguments;
  CLI::App parser;
  parser.add_option("FILE", arguments.files);
  parser.add_flag("--check", arguments.check);
  parser.add_option("-o,--output", arguments.output);
  const auto stop = parse(parser, "fmt", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("fmt", {{"FILE", !arguments.files.empty()}});
  if (lacking) return *lacking;
  if (arguments.output && arguments.files.size() > 1)
    return bad_usage(
        "fmt", "--output goes with one FILE; give one, or leave --output out and each is tidied where it is");
  if (arguments.output && arguments.check)
    return bad_usage("fmt",
                     "--check writes nothing, and --output names a file to write; leave one of them out");
  return fmt_command(arguments);
}

Outcome run_completions(int argc, const char* const* argv) {
  std::string shell;
  CLI::App parser;
  parser.add_option("SHELL", shell);
  const auto stop = parse(parser, "completions", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("completions", {{"bash, zsh or fish", parser.count("SHELL") > 0}});
  return lacking ? *lacking : completions_command(shell);
}

}  // namespace arrisline
