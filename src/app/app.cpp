// Which command, with which arguments; then its outcome is written. Shown by tests/cli.
#include "app/app.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <csignal>
#include <cstring>
#include <exception>
#include <optional>
#include <string>
#include <vector>

#include "app/commands.h"
#include "app/desk.h"
#include "app/help.h"
#include "app/inputs.h"
#include "app/options.h"
#include "app/output.h"
#include "app/parse.h"
#include "app/patient.h"
#include "arrisline/report.h"
#include "text/load.h"
#include "wording/words.h"

namespace arrisline {
namespace {

Outcome not_plain(const std::string& command, const std::string& other) {
  return bad_usage(command, "--plain is to be read aloud, and " + other + " is not; leave one of them out");
}

Outcome run_plan(int argc, const char* const* argv) {
  PlanArguments arguments;
  CLI::App parser;
  parser.add_option("PROFILE", arguments.profile);
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--tolerance", arguments.tolerance);
  parser.add_option("--scrape", arguments.scrape);
  parser.add_option("--gauge-error", arguments.gauge_error);
  parser.add_option("--limit", arguments.limit);
  parser.add_option("--prefer", arguments.prefer);
  parser.add_option("--allow", arguments.allow);
  parser.add_option("--redrawn", arguments.redrawn);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("-o,--output", arguments.output);
  parser.add_option("--sheet", arguments.sheets)->expected(1)->take_all();
  parser.add_option("--paper", arguments.paper);
  parser.add_flag("--json", arguments.json);
  bool picture = false, no_picture = false;
  parser.add_flag("--picture", picture);
  parser.add_flag("--no-picture", no_picture);
  parser.add_flag("--steps", arguments.steps);
  parser.add_flag("--ascii", arguments.ascii);
  parser.add_flag("--plain", arguments.plain);
  const auto stop = parse(parser, "plan", argc, argv);
  if (stop) return *stop;
  const auto lacking =
      missing("plan", {{"PROFILE", parser.count("PROFILE") > 0}, {"--kit KIT", parser.count("--kit") > 0}});
  if (lacking) return *lacking;
  const std::string asked = arguments.steps ? "--steps" : "--picture";
  picture = picture || arguments.steps;
  if (picture && no_picture)
    return bad_usage("plan", asked + " and --no-picture contradict each other; leave one of them out");
  if (picture && arguments.json)
    return bad_usage("plan",
                     asked + " goes with the cut list, and --json prints none; leave one of them out");
  if (arguments.plain && (picture || arguments.json))
    return not_plain("plan", arguments.json ? "--json" : asked);
  arguments.picture = picture || (!no_picture && !arguments.json && !arguments.plain && !arguments.output &&
                                  picture_welcome());
  arguments.ascii = arguments.ascii || !utf8_welcome();
  arguments.colour = !arguments.output && colour_welcome();
  Patient patient;
  arguments.outside = patient.outside();
  return plan_command(arguments);
}

Outcome run_check(int argc, const char* const* argv) {
  CheckArguments arguments;
  CLI::App parser;
  parser.add_option("PROFILE", arguments.profiles);
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--limit", arguments.limit);
  parser.add_option("-o,--output", arguments.output);
  parser.add_flag("--json", arguments.json);
  parser.add_flag("--plain", arguments.plain);
  const auto stop = parse(parser, "check", argc, argv);
  if (stop) return *stop;
  const auto lacking =
      missing("check", {{"PROFILE", !arguments.profiles.empty()}, {"--kit KIT", parser.count("--kit") > 0}});
  if (lacking) return *lacking;
  if (arguments.plain && arguments.json) return not_plain("check", "--json");
  Patient patient;
  arguments.outside = patient.outside();
  return check_command(arguments);
}

Outcome run_job(int argc, const char* const* argv) {
  JobArguments arguments;
  CLI::App parser;
  parser.add_option("FILE", arguments.job);
  parser.add_option("--limit", arguments.limit);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("-o,--output", arguments.output);
  parser.add_option("--sheet", arguments.sheets)->expected(1)->take_all();
  parser.add_option("--paper", arguments.paper);
  parser.add_flag("--json", arguments.json);
  parser.add_flag("--plain", arguments.plain);
  const auto stop = parse(parser, "job", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("job", {{"FILE", parser.count("FILE") > 0}});
  if (lacking) return *lacking;
  if (arguments.plain && arguments.json) return not_plain("job", "--json");
  arguments.colour = !arguments.output && colour_welcome();
  Patient patient;
  arguments.outside = patient.outside();
  arguments.planned = patient.counting("profiles planned", "laying out the blanks");
  return job_command(arguments);
}

Outcome run_survey(int argc, const char* const* argv) {
  SurveyArguments arguments;
  CLI::App parser;
  parser.add_option("--profiles", arguments.profiles);
  parser.add_option("--kits", arguments.kits);
  parser.add_option("--limit", arguments.limit);
  parser.add_option("-o,--output", arguments.output);
  parser.add_flag("--json", arguments.json);
  const auto stop = parse(parser, "survey", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("survey", {{"--profiles FOLDER", parser.count("--profiles") > 0},
                                          {"--kits FOLDER", parser.count("--kits") > 0}});
  if (lacking) return *lacking;
  Patient patient;
  arguments.outside = patient.outside();
  arguments.answered = patient.counting("answers");
  return survey_command(arguments);
}

Outcome run_stream(int argc, const char* const* argv) {
  StreamArguments arguments;
  CLI::App parser;
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--threads", arguments.threads);
  parser.add_option("--limit", arguments.limit);
  const auto stop = parse(parser, "stream", argc, argv);
  if (stop) return *stop;
  Patient patient;
  arguments.input = STDIN_FILENO;
  if (::isatty(STDIN_FILENO) == 1)
    arguments.ask = [](std::string_view line) { return write_all(STDERR_FILENO, line); };
  arguments.write = [](std::string_view line) { return write_all(STDOUT_FILENO, line); };
  arguments.leave_off = &interrupted();
  arguments.answered = patient.counting_records();
  return stream_command(arguments);
}

/// The arguments with "--stock 2 x 3/4" made one, as it would be written with quotation marks.
class StockJoined {
 public:
  StockJoined(int argc, const char* const* argv) {
    for (int i = 0; i < argc; ++i) {
      const bool stock = std::strcmp(argv[i], "--stock") == 0 && i + 3 < argc &&
                         (std::strcmp(argv[i + 2], "x") == 0 || std::strcmp(argv[i + 2], "X") == 0);
      words_.emplace_back(argv[i]);
      if (!stock) continue;
      words_.push_back(std::string(argv[i + 1]) + " x " + argv[i + 3]);
      i += 3;
    }
    for (const std::string& word : words_) pointers_.push_back(word.c_str());
  }
  int argc() const { return static_cast<int>(pointers_.size()); }
  const char* const* argv() const { return pointers_.data(); }

 private:
  std::vector<std::string> words_;
  std::vector<const char*> pointers_;
};

Outcome run_reach(int argc, const char* const* argv) {
  ReachArguments arguments;
  CLI::App parser;
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--stock", arguments.stock);
  parser.add_option("--by-adding", arguments.by_adding);
  parser.add_option("--write", arguments.write);
  parser.add_option("--limit", arguments.limit);
  parser.add_option("-o,--output", arguments.output);
  parser.add_flag("--json", arguments.json);
  parser.add_flag("--ascii", arguments.ascii);
  const StockJoined joined(argc, argv);
  const auto stop = parse(parser, "reach", joined.argc(), joined.argv());
  if (stop) return *stop;
  const auto lacking = missing("reach", {{"--kit KIT", parser.count("--kit") > 0},
                                         {"--stock \"W x T\"", parser.count("--stock") > 0}});
  if (lacking) return *lacking;
  arguments.ascii = arguments.ascii || !utf8_welcome();
  Patient patient;
  arguments.outside = patient.outside();
  arguments.tried = patient.counting("tried");
  return reach_command(arguments);
}

Outcome run_trace(int argc, const char* const* argv) {
  TraceArguments arguments;
  CLI::App parser;
  parser.add_option("FILE", arguments.file);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("--tolerance", arguments.tolerance);
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--width", arguments.width);
  parser.add_option("--layer", arguments.layer);
  parser.add_option("--edge", arguments.edge);
  parser.add_option("--stock", arguments.stock);
  parser.add_option("-o,--output", arguments.output);
  const StockJoined joined(argc, argv);
  const auto stop = parse(parser, "trace", joined.argc(), joined.argv());
  if (stop) return *stop;
  const auto lacking = missing("trace", {{"FILE", parser.count("FILE") > 0}});
  if (lacking) return *lacking;
  Patient patient;
  arguments.read = patient.counting_points();
  return trace_command(arguments);
}

Outcome run_scale(int argc, const char* const* argv) {
  ScaleArguments arguments;
  CLI::App parser;
  parser.add_option("PROFILE", arguments.profile);
  parser.add_option("--height", arguments.height);
  parser.add_option("--projection", arguments.projection);
  parser.add_option("--by", arguments.by);
  parser.add_option("--fillet", arguments.fillet);
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--stock", arguments.stock);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("-o,--output", arguments.output);
  const auto stop = parse(parser, "scale", argc, argv);
  if (stop) return *stop;
  const auto asked = parser.count("--height") + parser.count("--projection") + parser.count("--by");
  const auto lacking = missing("scale", {{"PROFILE", parser.count("PROFILE") > 0},
                                         {"--height L, --projection L or --by F", asked > 0}});
  if (lacking) return *lacking;
  if (asked > 1) return bad_usage("scale", "--height, --projection and --by each say how large; give one");
  return scale_command(arguments);
}

Outcome run_rake(int argc, const char* const* argv) {
  RakeArguments arguments;
  CLI::App parser;
  parser.add_option("PROFILE", arguments.profile);
  parser.add_option("--slope", arguments.slope);
  parser.add_option("--corner", arguments.corner);
  parser.add_option("--at", arguments.at);
  parser.add_option("--face", arguments.face);
  parser.add_option("--tolerance", arguments.tolerance);
  parser.add_option("--kit", arguments.kit);
  parser.add_option("--unit", arguments.unit);
  parser.add_option("-o,--output", arguments.output);
  const auto stop = parse(parser, "rake", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing(
      "rake", {{"PROFILE", parser.count("PROFILE") > 0}, {"--slope ANGLE", parser.count("--slope") > 0}});
  if (lacking) return *lacking;
  Patient patient;
  arguments.outside = patient.outside();
  return rake_command(arguments);
}

Outcome run_replay(int argc, const char* const* argv) {
  ReplayArguments arguments;
  CLI::App parser;
  parser.add_option("PLAN.json", arguments.plan);
  parser.add_option("--tolerance", arguments.tolerance);
  parser.add_option("--scrape", arguments.scrape);
  const auto stop = parse(parser, "replay", argc, argv);
  if (stop) return *stop;
  const auto lacking = missing("replay", {{"PLAN.json", parser.count("PLAN.json") > 0}});
  if (lacking) return *lacking;
  return replay_command(arguments);
}

/// "arrisline help plan", as many programs have it.
Outcome help_of(const std::string& command) {
  const std::vector<std::string_view>& known = command_names();
  if (command.empty() || std::find(known.begin(), known.end(), command) != known.end())
    return {kDone, help_text(command), ""};
  return bad_usage("", "there is no command " + arrisline::quoted(command) + suggestion(command, known));
}

/// What to run with a file that stands where a command belongs; or that there is no such command.
std::string no_command(const std::string& word) {
  const auto ends_in = [&word](std::string_view ending) {
    return word.size() > ending.size() && word.ends_with(ending);
  };
  std::string command;
  if (ends_in(".profile")) command = "plan " + word + " --kit KIT";
  if (ends_in(".kit")) command = "plan PROFILE --kit " + word;
  if (ends_in(".job")) command = "job " + word;
  if (ends_in(".svg") || ends_in(".dxf") || ends_in(".csv")) command = "trace " + word;
  if (!command.empty())
    return "a command is missing before " + arrisline::quoted(word) + "; for example: arrisline " + command;
  const std::string near = suggestion(word, command_names());
  if (!near.empty()) return "there is no command " + arrisline::quoted(word) + near;
  if (is_there(word))
    return arrisline::quoted(word) + " stands where a command belongs; for example: " + example_of("");
  return "there is no command " + arrisline::quoted(word) + suggestion("--" + word, {"--help", "--version"});
}

Outcome run_command(int argc, const char* const* argv) {
  if (argc < 2)
    return bad_usage("", "a command is missing; for example: arrisline new profile -o table-edge.profile");
  const std::string first = argv[1];
  if (first == "plan") return run_plan(argc - 1, argv + 1);
  if (first == "check") return run_check(argc - 1, argv + 1);
  if (first == "job") return run_job(argc - 1, argv + 1);
  if (first == "survey") return run_survey(argc - 1, argv + 1);
  if (first == "stream") return run_stream(argc - 1, argv + 1);
  if (first == "reach") return run_reach(argc - 1, argv + 1);
  if (first == "trace") return run_trace(argc - 1, argv + 1);
  if (first == "new") return run_new(argc - 1, argv + 1);
  if (first == "words") return run_words(argc - 1, argv + 1);
  if (first == "fmt") return run_fmt(argc - 1, argv + 1);
  if (first == "completions") return run_completions(argc - 1, argv + 1);
  if (first == "scale") return run_scale(argc - 1, argv + 1);
  if (first == "rake") return run_rake(argc - 1, argv + 1);
  if (first == "replay") return run_replay(argc - 1, argv + 1);
  if (first == "-h" || first == "--help") return {kDone, help_text(""), ""};
  if (first == "help") return help_of(argc > 2 ? argv[2] : "");
  if (first == "--version") return {kDone, "arrisline " ARRISLINE_VERSION "\n", ""};
  if (first == "-v" || first == "-V")
    return bad_usage("", "there is no option '-v'; did you mean '--version'?");
  if (!first.empty() && first.front() == '-')
    return bad_usage(
        "", "there is no option " + arrisline::quoted(first) + suggestion(first, {"--help", "--version"}));
  return bad_usage("", no_command(first));
}

// A message that cannot be written has nowhere else to go.
void complain(const std::string& message) {
  static_cast<void>(write_all(STDERR_FILENO, message));
}

/// Writes a file whole or not at all, and says so where it cannot.
bool put(const std::string& path, const std::string& text) {
  const std::optional<std::string> why = replace_file(path, text);
  if (why)
    complain("arrisline: error: cannot write " + visible(path) + ": " + *why +
             "; nothing is changed: make room, or name another place\n");
  return !why;
}

}  // namespace

int run(int argc, const char* const* argv) {
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);  // a file over the limit of its size is a write that fails
  Outcome outcome;
  try {
    outcome = run_command(argc, argv);
  } catch (const std::exception& error) {
    outcome = {
        kOurFault, "",
        std::string("arrisline: fault: ") + error.what() + "; report it with the files that were read\n"};
  }
  complain(outcome.err);
  bool written = true;              // where a sheet cannot be, the answer is given all the same
  if (outcome.code != kOurFault) {  // an answer that lacks something is no file
    for (const Outcome::File& sheet : outcome.sheets) written = put(sheet.path, sheet.text) && written;
    if (outcome.file) written = put(*outcome.file, outcome.out) && written;
  }
  if (!outcome.file && write_all(STDOUT_FILENO, outcome.out) == Written::failed) {
    complain(std::string("arrisline: error: cannot write the output: ") + system_words(errno) +
             "; make room, or name another place with --output\n");
    written = false;
  }
  if (!written) return kOurFault;
  return outcome.code;
}

}  // namespace arrisline
