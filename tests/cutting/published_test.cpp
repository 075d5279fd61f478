// Published cutting-stock instances to their optimum: boards of one strip's width, no kerf. Each aims at two
// seconds; tests/bench times them.
#include <numeric>
#include <utility>
#include <vector>

#include "arrisline/cutting.h"
#include "catch.h"

using namespace arrisline;

namespace {

struct Instance {
  const char* source;
  double stock;
  std::vector<std::pair<double, int>> pieces;  // length, count
  std::size_t least;
};

std::vector<std::pair<double, int>> singly(const std::vector<double>& lengths) {
  std::vector<std::pair<double, int>> out;
  for (const double length : lengths) out.emplace_back(length, 1);
  return out;
}

const std::vector<Instance> kInstances = {
    {"the 5600 mm example of paper rolls common in the literature of cutting stock",
     5600,
     {{1380, 22},
      {1520, 25},
      {1560, 12},
      {1710, 14},
      {1820, 18},
      {1880, 18},
      {1930, 20},
      {2000, 10},
      {2050, 12},
      {2100, 14},
      {2140, 16},
      {2150, 18},
      {2200, 20}},
     73},
    {"V. Chvatal, Linear Programming (1983)", 100, {{45, 97}, {36, 610}, {31, 395}, {14, 211}}, 453},
    {"Fourer, Gay and Kernighan, AMPL (the cutting-stock chapter)",
     110,
     {{20, 48}, {45, 35}, {50, 24}, {55, 10}, {75, 8}},
     47},
    {"stock of 94", 94, {{17, 150}, {21, 96}, {22.5, 48}, {24, 108}, {29.5, 227}}, 161},
    {"the bin-packing example of GLPK", 100, singly({50, 60, 30, 70, 50, 40}), 3},
    {"E. Falkenauer, triplets t60_00", 1000,
     singly({366, 268, 366, 430, 263, 307, 414, 287, 299, 495, 251, 254, 474, 252, 274,
             370, 269, 361, 473, 252, 275, 472, 259, 269, 444, 258, 298, 439, 273, 288,
             445, 272, 283, 419, 261, 320, 363, 271, 366, 355, 273, 372, 466, 262, 272,
             357, 292, 351, 395, 255, 350, 350, 303, 347, 450, 252, 298, 410, 275, 315}),
     20}};

}  // namespace

TEST_CASE("published instances are cut from as few boards as published", "[cutting][published]") {
  for (const Instance& instance : kInstances) {
    INFO(instance.source);
    CuttingProblem problem;
    problem.sizes = {{1, instance.stock, std::nullopt, false}};
    problem.kinds = {{1, {0}}};
    for (const auto& [length, count] : instance.pieces) problem.pieces.push_back({0, length, count, -1});
    const CuttingPlan plan = cut_boards(problem);
    CHECK(plan.boards.size() == instance.least);
    CHECK(plan.bound == instance.least);
    CHECK(plan.optimal);
    std::vector<int> cut(problem.pieces.size());
    for (const CutBoard& board : plan.boards) {
      REQUIRE(board.strips.size() == 1);
      double length = 0;
      for (const std::size_t piece : board.strips[0].pieces) {
        ++cut[piece];
        length += problem.pieces[piece].length;
      }
      CHECK(length <= instance.stock + 1e-6);
    }
    for (std::size_t i = 0; i < cut.size(); ++i) CHECK(cut[i] == problem.pieces[i].count);
  }
}
