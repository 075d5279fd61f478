// `arrisline stream`: a line of JSON in, a line of JSON out, on all cores and in order. Shown by
// tests/app/stream_test.cpp and tests/cli.
#include <tbb/global_control.h>
#include <tbb/info.h>
#include <tbb/parallel_pipeline.h>
#include <tbb/task_arena.h>

#include <algorithm>
#include <cerrno>
#include <charconv>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/lines.h"
#include "app/stream_answer.h"
#include "app/verify.h"
#include "arrisline/limits.h"
#include "arrisline/read.h"
#include "text/load.h"
#include "wording/words.h"

namespace arrisline {
namespace {

// Records between reading and writing, for each thread. Behind a record that takes long others wait, held
// whole: so many that the other threads seldom run dry, and few enough to hold.
constexpr std::size_t kTokens = 16;
// Pieces of wood cut in a second of --limit: fewer than any machine cuts, so that it is this count that ends
// a search, and not the clock, and every run gives the same plan.
constexpr double kWorkASecond = 400'000;
constexpr int kFaultsTold = 5;

struct Line {
  std::size_t number = 0;
  std::string text;
  bool too_long = false;
};

std::optional<std::size_t> threads_option(const std::optional<std::string>& text, std::string& messages) {
  if (!text) return static_cast<std::size_t>(std::max(1, tbb::info::default_concurrency()));
  std::size_t threads = 0;
  const char* end = text->data() + text->size();
  const std::from_chars_result read = std::from_chars(text->data(), end, threads);
  if (read.ec == std::errc{} && read.ptr == end && threads > 0 && threads <= kMaxThreads) return threads;
  messages += usage_error("stream", "--threads is a whole number from 1 to " + std::to_string(kMaxThreads) +
                                        ", such as 4, not " + arrisline::quoted(*text));
  return std::nullopt;
}

/// Takes the answers in order, and keeps count.
class Writer {
 public:
  explicit Writer(const StreamArguments& arguments) : arguments_(arguments) {}

  void take(const Answer& answer) {
    // What was under way then may have been left off half searched.
    if (arguments_.leave_off->load()) return;
    tell(answer.fault);
    const Written written = arguments_.write(answer.line);
    if (written != Written::all) {
      if (written == Written::failed)
        trouble_ = std::string("arrisline: error: cannot write the output: ") + system_words(errno) +
                   "; make room, or write to another place\n";
      closed_ = true;
      arguments_.leave_off->store(true);
      return;
    }
    ++answered_;
    errors_ += answer.error ? 1 : 0;
    if (arguments_.answered) arguments_.answered(answered_, errors_);
  }

  /// Ends reading where the input cannot be read.
  void no_input(const std::string& why) {
    no_input_ = std::string("arrisline stream: error: standard input cannot be read: ") + why +
                "; for example: arrisline stream < records.jsonl\n";
  }

  Outcome outcome() const {
    Outcome out;
    out.err = faults_ +
              (told_ > kFaultsTold ? "  and " + std::to_string(told_ - kFaultsTold) + " more\n" : "") +
              no_input_ + trouble_;
    if (told_ > 0 || !trouble_.empty()) {
      out.code = kOurFault;
    } else if (!no_input_.empty()) {
      out.code = kBadInput;
    } else if (arguments_.leave_off->load() && !closed_) {
      out.code = kInterrupted;
    } else {
      out.code = errors_ > 0 ? kNo : kDone;
    }
    return out;
  }

 private:
  void tell(const std::string& fault) {
    if (!fault.empty() && ++told_ <= kFaultsTold) faults_ += fault;
  }

  const StreamArguments& arguments_;
  std::size_t answered_ = 0;
  std::size_t errors_ = 0;
  int told_ = 0;
  std::string faults_;
  std::string no_input_;
  std::string trouble_;
  bool closed_ = false;  // nobody reads on, or nothing more can be written
};

void answer_all(const StreamArguments& arguments, const Answering& how, std::size_t threads, Writer& writer) {
  LineReader lines(arguments.input, kMaxStreamLine, *arguments.leave_off);
  std::size_t number = 0;
  const auto read = [&](tbb::flow_control& control) {
    Line line;
    while (true) {
      const LineReader::Got got = lines.next(line.text);
      if (got == LineReader::Got::failed) writer.no_input(system_words(errno));
      line.too_long = got == LineReader::Got::too_long;
      if (got != LineReader::Got::line && !line.too_long) {
        control.stop();
        return line;
      }
      line.number = ++number;
      if (line.too_long || !is_blank(line.text)) return line;
    }
  };
  const auto answer = [&](const Line& line) {
    if (arguments.leave_off->load()) return Answer{};
    return line.too_long ? answer_too_long(line.number) : answer_line(line.text, line.number, how);
  };
  const auto write = [&](const Answer& done) { writer.take(done); };
  // Workers need a stack as large as the first thread's.
  const tbb::global_control stack(tbb::global_control::thread_stack_size, std::size_t{8} << 20);
  const tbb::global_control most(tbb::global_control::max_allowed_parallelism, threads);
  tbb::task_arena arena(static_cast<int>(threads));
  arena.execute([&] {
    tbb::parallel_pipeline(threads * kTokens,
                           tbb::make_filter<void, Line>(tbb::filter_mode::serial_in_order, read) &
                               tbb::make_filter<Line, Answer>(tbb::filter_mode::parallel, answer) &
                               tbb::make_filter<Answer, void>(tbb::filter_mode::serial_in_order, write));
  });
}

}  // namespace

Outcome stream_command(const StreamArguments& arguments) {
  Outcome outcome;
  std::optional<Kit> kit;
  if (arguments.kit) kit = take(read_kit_file(*arguments.kit), outcome.err);
  const std::optional<std::size_t> threads = threads_option(arguments.threads, outcome.err);
  const std::optional<double> limit = limit_option(arguments.limit, "stream", outcome.err);
  if ((arguments.kit && !kit) || !threads || !limit) {
    outcome.code = kBadInput;
    return outcome;
  }
  KitShelf shelf;
  Answering how;
  how.kit = kit ? &*kit : nullptr;
  how.shelf = &shelf;
  how.options.limit = *limit;
  how.options.most_work = static_cast<std::uint64_t>(*limit * kWorkASecond);
  how.options.interrupt = arguments.leave_off;
  how.judge = judge;
  if (arguments.ask)
    arguments.ask(
        "arrisline stream waits for records, a line of JSON each, such as "
        "{\"profile\": \"table-edge.profile\"}; Ctrl-D on an empty line ends them\n");
  Writer writer(arguments);
  answer_all(arguments, how, *threads, writer);
  Outcome done = writer.outcome();
  done.err.insert(0, outcome.err);
  return done;
}

}  // namespace arrisline
