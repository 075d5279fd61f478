// Boards cut for random jobs against GLPK's glpsol on another model of the same. GLPK is under the GPL: it is
// run as a program of its own, and only here. The long run: ARRISLINE_GLPSOL_JOBS=500.
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <random>
#include <string>

#include "catch.h"
#include "cutting/arc_flow.h"
#include "cutting/whole_job.h"

using namespace arrisline;
using namespace arrisline::cutting_tests;

namespace {

constexpr unsigned kSeed = 1;   // ARRISLINE_SEED sets another
constexpr unsigned kJobs = 15;  // ARRISLINE_GLPSOL_JOBS sets another

struct Glpsol {
  std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("arrisline-glpsol-" + std::to_string(getpid()));

  Glpsol() { std::filesystem::create_directories(folder); }
  Glpsol(const Glpsol&) = delete;
  Glpsol& operator=(const Glpsol&) = delete;
  ~Glpsol() { std::filesystem::remove_all(folder); }

  static bool installed() { return std::system("glpsol --version >/dev/null 2>&1") == 0; }

  /// The least of the objective; nothing where a minute was not enough to prove it.
  std::optional<std::int64_t> least(const WholeJob& job) const {
    const std::string model = (folder / "job.lp").string();
    const std::string answer = (folder / "answer").string();
    {
      std::ofstream file(model);
      write_flow(file, job);
    }
    std::filesystem::remove(answer);
    const std::string command = "glpsol --lp '" + model + "' --tmlim 60 --cuts -w '" + answer + "' >'" +
                                (folder / "log").string() + "' 2>&1";
    REQUIRE(std::system(command.c_str()) == 0);
    // s mip ROWS COLUMNS o OBJECTIVE, where o says that it is proved.
    std::ifstream file(answer);
    for (std::string word; file >> word;) {
      if (word != "s") {
        file.ignore(1 << 20, '\n');
        continue;
      }
      std::string mip, rows, columns, status;
      double objective = 0;
      file >> mip >> rows >> columns >> status >> objective;
      REQUIRE(file);
      if (status != "o") return std::nullopt;
      return static_cast<std::int64_t>(objective + 0.5);
    }
    FAIL("glpsol gave no answer");
    return std::nullopt;
  }
};

}  // namespace

TEST_CASE("glpsol finds nothing less for random jobs", "[cutting][glpsol]") {
  if (!Glpsol::installed()) {
    WARN("glpsol (Debian: glpk-utils) is not installed: not compared");
    return;
  }
  const Glpsol glpsol;
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const unsigned jobs = number_from("ARRISLINE_GLPSOL_JOBS", kJobs);
  INFO("ARRISLINE_SEED=" << seed);
  std::mt19937 random(seed);
  unsigned compared = 0, several_strips = 0, two_sizes = 0, short_of_boards = 0, more_than_five = 0;
  unsigned disagree = 0;
  for (unsigned n = 0; n < jobs; ++n) {
    Bounds bounds;
    bounds.sizes = n % 4 == 0 ? 1 : 2;
    bounds.kinds = n % 3 == 0 ? 1 : 3;
    bounds.entries = 7;
    bounds.pieces = 60;
    bounds.shortest = 40;
    bounds.longest = 100;
    bounds.choosy = n % 5 == 4;
    const WholeJob job = random_job(random, bounds);
    INFO("job " << n << ": " << job);
    const CuttingPlan plan = cut_boards(in_mm(job));
    CHECK(faults(job, plan) == std::vector<std::string>{});
    CHECK(plan.optimal);
    REQUIRE(plan.boards.size() <= static_cast<std::size_t>(kMostBoards));
    const std::optional<std::int64_t> least = glpsol.least(job);
    if (!least) continue;
    ++compared;
    disagree += flow_objective(job, plan) != *least;
    CHECK(flow_objective(job, plan) == *least);
    two_sizes += job.sizes.size() == 2;
    several_strips += std::any_of(plan.boards.begin(), plan.boards.end(),
                                  [](const CutBoard& board) { return board.strips.size() > 1; });
    short_of_boards += sums_of(job, plan).missing > 0;
    more_than_five += plan.boards.size() > 5;
  }
  if (jobs > kJobs) {
    std::cout << "seed " << seed << ": " << jobs << " jobs, " << compared
              << " proved by glpsol within a minute, " << disagree << " disagree; " << two_sizes
              << " with two sizes, " << several_strips << " with boards of several strips, "
              << short_of_boards << " short of boards, " << more_than_five << " of more than five boards\n";
  }
  CHECK(compared >= jobs * 9 / 10);
  CHECK(two_sizes >= jobs / 5);
  CHECK(several_strips >= jobs / 5);
  CHECK(short_of_boards >= jobs / 10);
  CHECK(more_than_five >= jobs / 5);
}
