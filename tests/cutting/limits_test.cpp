// Cutting boards left off: by the limit, by Ctrl-C, at once or while it works; large jobs; and nothing of the
// solvers on the terminal. None of it is timed: what is asked is that the answer is whole and its bound true.
#include <fcntl.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <limits>
#include <random>
#include <sstream>
#include <string>
#include <thread>

#include "catch.h"
#include "cutting/master.h"
#include "cutting/model.h"
#include "cutting/patterns.h"
#include "cutting/whole_job.h"

using namespace arrisline;
using namespace arrisline::cutting_tests;

namespace {

/// What goes to standard output and error, by whatever means, while it stands.
class Heard {
 public:
  Heard() : file_(std::filesystem::temp_directory_path() / ("arrisline-heard-" + std::to_string(getpid()))) {
    std::fflush(nullptr);
    const int file = open(file_.c_str(), O_CREAT | O_TRUNC | O_WRONLY, 0600);
    REQUIRE(file >= 0);
    for (const int stream : {1, 2}) {
      kept_[stream - 1] = dup(stream);
      dup2(file, stream);
    }
    close(file);
  }
  Heard(const Heard&) = delete;
  Heard& operator=(const Heard&) = delete;
  ~Heard() { std::filesystem::remove(file_); }

  std::string stop() {
    std::fflush(nullptr);
    for (const int stream : {1, 2}) {
      dup2(kept_[stream - 1], stream);
      close(kept_[stream - 1]);
    }
    std::stringstream out;
    out << std::ifstream(file_).rdbuf();
    return out.str();
  }

 private:
  std::filesystem::path file_;
  int kept_[2] = {};
};

/// 60 lengths a few of each, three kinds, two sizes: more than is proved in an instant.
WholeJob hard_job(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  WholeJob job;
  job.sizes = {{150, 2400, std::nullopt, false}, {200, 3000, 6, true}};
  job.kinds = {{45, {0, 1}}, {32, {0, 1}}, {60, {0, 1}}};
  job.kerf = job.rip_kerf = 3;
  job.trued = 1;
  job.hold = 60;
  for (int i = 0; i < 60; ++i)
    job.pieces.push_back(
        {static_cast<std::size_t>(between(0, 2)), between(300, 1200), between(1, 4), between(-1, 5)});
  return job;
}

/// Wood alone asks for this many, each piece with the kerf beside it and each board with one kerf more.
int plain_bound(const WholeJob& job) {
  std::int64_t wanted = 0, most = 0;
  for (const WholePiece& piece : job.pieces)
    wanted += std::int64_t{piece.length + job.kerf} * job.kinds[piece.kind].width * piece.count;
  for (const WholeSize& size : job.sizes)
    most = std::max(most, std::int64_t{size.length + job.kerf} * size.width);
  return static_cast<int>((wanted + most - 1) / most);
}

}  // namespace

TEST_CASE("left off at once there is still a plan, and a bound that holds", "[cutting][limits]") {
  const unsigned seed = number_from("ARRISLINE_SEED", 3);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed);
  const std::atomic<bool> interrupted = true;
  unsigned not_proved = 0;
  for (int n = 0; n < 200; ++n) {
    Bounds bounds;
    bounds.sizes = 3;
    bounds.runs = n % 2 == 0;
    const WholeJob job = random_job(random, bounds);
    INFO("job " << n << ": " << job);
    const std::optional<Sums> least = try_everything(job);
    REQUIRE(least);
    const CuttingPlan by_limit = cut_boards(in_mm(job), {0, nullptr});
    const CuttingPlan by_hand =
        cut_boards(in_mm(job), {std::numeric_limits<double>::infinity(), &interrupted});
    for (const CuttingPlan& plan : {by_limit, by_hand}) {
      CHECK(faults(job, plan) == std::vector<std::string>{});
      const Sums sums = sums_of(job, plan);
      CHECK(static_cast<int>(plan.bound) >= plain_bound(job));
      if (plan.optimal) {
        CHECK(std::tuple(sums.missing, sums.bought, sums.boards) ==
              std::tuple(least->missing, least->bought, least->boards));
      }
      if (std::tuple(sums.missing, sums.bought) == std::tuple(least->missing, least->bought))
        CHECK(static_cast<int>(plan.bound) <= least->boards);
      not_proved += !plan.optimal;
    }
  }
  CHECK(not_proved > 50);
}

TEST_CASE("left off while it works it gives what it has", "[cutting][limits]") {
  for (const double limit : {0.001, 0.02, 0.1}) {
    const WholeJob job = hard_job(1);
    INFO("limit " << limit << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job), {limit, nullptr});
    CHECK(faults(job, plan) == std::vector<std::string>{});
    CHECK(static_cast<int>(plan.bound) >= plain_bound(job));
  }
}

TEST_CASE("the search in whole numbers asks whether to stop, and stops", "[cutting][limits]") {
  std::mt19937 random(4);
  WholeJob job;
  job.sizes = {{10, 1000, std::nullopt, false}};
  job.kinds = {{10, {0}}};
  for (int i = 0; i < 40; ++i) job.pieces.push_back({0, 251 + static_cast<int>(random() % 240), 1, -1});
  const CuttingProblem problem = in_mm(job);
  const cutting::Model model = cutting::make_model(problem);
  cutting::Columns columns;
  columns.boards.push_back({0, {{0, 1}}});
  cutting::for_each_strip(
      model, 0, std::vector<double>(model.items.size(), 1.0), [] { return 0.0; },
      [&](const cutting::Counts& counts, double) {
        columns.strips.push_back({0, counts});
      });
  REQUIRE(columns.strips.size() > 1000);
  const cutting::Cost boards{{1}, {0}};
  int asked = 0;
  const auto solve = [&](bool answer) {
    asked = 0;
    const auto stop = [&] {
      ++asked;
      return answer;
    };
    return cutting::solve_whole(model, boards, {}, columns, 40, {stop, 60});
  };
  const cutting::WholeAnswer stopped = solve(true);
  CHECK(stopped.outcome == cutting::Whole::left_off);
  const int at_once = asked;
  CHECK(at_once > 0);
  const cutting::WholeAnswer whole = solve(false);
  CHECK(whole.outcome == cutting::Whole::found);
  CHECK(whole.has_solution);
  CHECK(asked > at_once);
}

TEST_CASE("Ctrl-C reaches the program while boards are cut", "[cutting][limits]") {
  static std::atomic<bool> interrupt;
  interrupt = false;
  const auto before = std::signal(SIGINT, [](int) { interrupt = true; });
  const WholeJob job = hard_job(2);
  std::thread later([] {
    std::this_thread::sleep_for(std::chrono::milliseconds(100));
    kill(getpid(), SIGINT);
  });
  const CuttingPlan plan = cut_boards(in_mm(job), {std::numeric_limits<double>::infinity(), &interrupt});
  later.join();
  std::signal(SIGINT, before);
  CHECK(interrupt);
  CHECK(faults(job, plan) == std::vector<std::string>{});
}

TEST_CASE("nothing of the solvers shows", "[cutting][limits]") {
  std::vector<CuttingPlan> plans;
  Heard heard;
  for (const unsigned seed : {1U, 2U})
    for (const double limit : {0.0, 0.05, 1.0})
      plans.push_back(cut_boards(in_mm(hard_job(seed)), {limit, nullptr}));
  const std::string said = heard.stop();
  CHECK(said == "");
  CHECK(plans.back().boards.size() > 5);
}

TEST_CASE("many pieces alike are no harder than few", "[cutting][limits]") {
  WholeJob job;
  job.sizes = {{10, 100, std::nullopt, false}};
  job.kinds = {{10, {0}}};
  job.pieces = {{0, 50, 5000, -1}};
  CuttingPlan plan = cut_boards(in_mm(job));
  CHECK(faults(job, plan) == std::vector<std::string>{});
  CHECK(plan.boards.size() == 2500);
  CHECK(plan.optimal);

  // Four times V. Chvátal's example (see published_test.cpp). Computed: 194 × (45, 45), 422 × (36, 36, 14,
  // 14), 403 × (36, 36) and 790 × (31, 31, 36) are 1809; and let a 45 and a 36 count 1/2 each, a 31 1/4, then
  // no strip of 100 counts over 1, while all together count 194 + 1220 + 395 = 1809.
  job.pieces = {{0, 45, 97 * 4, -1}, {0, 36, 610 * 4, -1}, {0, 31, 395 * 4, -1}, {0, 14, 211 * 4, -1}};
  plan = cut_boards(in_mm(job));
  CHECK(faults(job, plan) == std::vector<std::string>{});
  CHECK(plan.boards.size() == 1809);
  CHECK(plan.optimal);
}

TEST_CASE("thousands of pieces of several kinds and sizes", "[cutting][limits]") {
  WholeJob job;
  job.sizes = {{150, 2400, std::nullopt, true}, {200, 3000, 250, false}};
  job.kinds = {{45, {0, 1}}, {32, {0, 1}}};
  job.kerf = job.rip_kerf = 3;
  job.trued = 1;
  job.hold = 60;
  job.pieces = {
      {0, 433, 5000, -1}, {0, 911, 1777, -1}, {1, 1205, 2500, -1}, {1, 388, 4999, 1}, {0, 640, 3, 0}};
  const CuttingPlan plan = cut_boards(in_mm(job));
  CHECK(faults(job, plan) == std::vector<std::string>{});
  CHECK(plan.optimal);
  CHECK(sums_of(job, plan).missing == 0);
}
