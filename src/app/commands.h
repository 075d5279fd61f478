// The commands, each a function from its arguments to what it prints. None of them writes to the terminal.
#pragma once

#include <atomic>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/output.h"

namespace arrisline {

enum ExitCode { kDone = 0, kNo = 1, kBadInput = 2, kOurFault = 3, kInterrupted = 130 };

struct Outcome {
  struct File {
    std::string path;
    std::string text;
  };
  int code = kDone;
  std::string out;                                 // for standard output
  std::string err;                                 // for standard error
  std::optional<std::string> file = std::nullopt;  // where `out` goes instead
  std::vector<File> sheets = {};                   // written besides
};

/// Lengths and the unit are as typed, absent where the option was not given.
/// The hands outside that a search minds: an interruption, and who wants to know how long it has gone on.
struct Outside {
  const std::atomic<bool>* interrupt = nullptr;
  std::function<void(double)> progress;  // called with the seconds gone
};

struct PlanArguments {
  std::string profile;
  std::string kit;
  std::optional<std::string> tolerance;
  std::optional<std::string> scrape;
  std::optional<std::string> gauge_error;
  std::optional<std::string> limit;
  std::optional<std::string> prefer;
  std::optional<std::string> allow;    // that the line may depart from the drawing
  std::optional<std::string> redrawn;  // file for the profile that then is cut
  std::optional<std::string> unit;
  std::optional<std::string> output;
  std::vector<std::string> sheets;
  std::optional<std::string> paper;
  bool json = false;
  bool colour = false;
  bool picture = false;  // of the section, above the cut list
  bool steps = false;    // and of each cut
  bool ascii = false;    // drawn with nothing else
  bool plain = false;    // to be read aloud
  Outside outside;
};
Outcome plan_command(const PlanArguments& arguments);

struct CheckArguments {
  std::vector<std::string> profiles;
  std::string kit;
  std::optional<std::string> limit;
  std::optional<std::string> output;
  bool json = false;
  bool plain = false;
  Outside outside;
};
Outcome check_command(const CheckArguments& arguments);

struct JobArguments {
  std::string job;
  std::optional<std::string> limit;
  std::optional<std::string> unit;
  std::optional<std::string> output;
  std::vector<std::string> sheets;
  std::optional<std::string> paper;
  bool json = false;
  bool colour = false;
  bool plain = false;
  Outside outside;
  std::function<void(std::size_t, std::size_t)> planned;  // called with the profiles planned, of how many
};
Outcome job_command(const JobArguments& arguments);

/// Takes a piece of an answer that is not kept until it is whole.
using Sink = std::function<Written(std::string_view)>;

struct StreamArguments {
  std::optional<std::string> kit;
  std::optional<std::string> threads;
  std::optional<std::string> limit;
  int input = 0;  // the descriptor that the records come from
  Sink write;     // called with one whole line at a time, never by two threads at once
  Sink ask;  // called once with what a terminal is told before its first record; empty where nobody types
  // Set by another hand at an interruption, and by the command where `write` fails.
  std::atomic<bool>* leave_off = nullptr;
  std::function<void(std::size_t, std::size_t)>
      answered;  // called with the records answered, the errors in them
};
/// REQUIRES: `write` and `leave_off` are given.
Outcome stream_command(const StreamArguments& arguments);

struct SurveyArguments {
  std::string profiles;  // folders
  std::string kits;
  std::optional<std::string> limit;
  std::optional<std::string> output;
  bool json = false;
  Outside outside;
  std::function<void(std::size_t, std::size_t)> answered;  // called with the answers found, of how many
};
Outcome survey_command(const SurveyArguments& arguments);

struct ReachArguments {
  std::string kit;
  std::optional<std::string> stock;  // "2 x 3/4"
  std::optional<std::string> limit;
  std::optional<std::string> by_adding;
  std::optional<std::string> write;  // folder for the profiles
  std::optional<std::string> output;
  bool json = false;
  bool ascii = false;
  Outside outside;
  std::function<void(std::size_t, std::size_t)> tried;  // called with the mouldings tried, of how many
};
Outcome reach_command(const ReachArguments& arguments);

struct TraceArguments {
  std::string file;
  std::optional<std::string> unit;
  std::optional<std::string> tolerance;
  std::optional<std::string> kit;
  std::optional<std::string> width;  // of the whole line
  std::optional<std::string> layer;  // of a drawing
  std::optional<std::string> edge;   // "left" or "right"
  std::optional<std::string> stock;  // "2 x 3/4"
  std::optional<std::string> output;
  std::function<void(std::size_t)> read;  // called with the points read so far
};
Outcome trace_command(const TraceArguments& arguments);

struct WordsArguments {
  std::optional<std::string> word;  // absent: all of them
  bool ascii = false;
};
Outcome words_command(const WordsArguments& arguments);

struct NewArguments {
  std::string kind;
  std::optional<std::string> unit;
  std::optional<std::string> output;
};
Outcome new_command(const NewArguments& arguments);

struct FmtArguments {
  std::vector<std::string> files;
  std::optional<std::string> output;
  bool check = false;
};
Outcome fmt_command(const FmtArguments& arguments);

/// The script by which a shell completes command lines: of bash, zsh or fish.
Outcome completions_command(const std::string& shell);

/// Larger or smaller; one of height, projection and by is given.
struct ScaleArguments {
  std::string profile;
  std::optional<std::string> height;
  std::optional<std::string> projection;
  std::optional<std::string> by;
  std::optional<std::string> fillet;  // the least width of a flat
  std::optional<std::string> kit;     // whose radii arcs take
  std::optional<std::string> stock;
  std::optional<std::string> unit;
  std::optional<std::string> output;
};
Outcome scale_command(const ScaleArguments& arguments);

struct RakeArguments {
  std::string profile;
  std::optional<std::string> slope;
  std::optional<std::string> corner;
  std::optional<std::string> at;    // foot or head of the slope
  std::optional<std::string> face;  // looks down or up
  std::optional<std::string> tolerance;
  std::optional<std::string> kit;  // that may cut it
  std::optional<std::string> unit;
  std::optional<std::string> output;
  Outside outside;
};
Outcome rake_command(const RakeArguments& arguments);

struct ReplayArguments {
  std::string plan;  // a path, or "-" for standard input
  std::optional<std::string> tolerance;
  std::optional<std::string> scrape;
};
Outcome replay_command(const ReplayArguments& arguments);

}  // namespace arrisline
