// The linear programme over patterns, and the same in whole numbers.
//
//   least   Σ cost(source) x + Σ cost(class) y     x: boards by pattern, y: strips by pattern
//   with    Σ pieces y ≥ wanted                    for each item
//           Σ strips x − Σ y ≥ 0                   for each class of strips
//           Σ x ≤ what there is                    for each source that is bounded
//           proved ≤ Σ goal(source) x + Σ goal(class) y ≤ reached   for each goal settled before
//
// The dual prices of the rows tell what another pattern would be worth.
#pragma once

#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include "cutting/model.h"

namespace arrisline::cutting {

/// What each board of a source and each strip of a class costs.
struct Cost {
  std::vector<double> board;
  std::vector<double> strip;
};

/// A sum that stands: of its cost no more than was reached, and no less than was proved.
struct Goal {
  Cost cost;
  double reached = 0;
  double proved = -std::numeric_limits<double>::max();
};

struct Columns {
  std::vector<BoardPattern> boards;
  std::vector<StripPattern> strips;
};

struct Prices {
  std::vector<double> item;     // ≥ 0
  std::vector<double> strip;    // what a strip of each class is worth to a board, ≥ 0
  std::vector<double> cutting;  // what a strip of each class costs, its share of every bound counted
  std::vector<double> source;   // what a board of it costs, its share of every bound counted: cost less duals
};

struct Relaxed {
  double value = 0;
  Prices prices;
};

/// The linear programme, made larger column by column.
class Relaxation {
 public:
  Relaxation(const Model& model, Cost cost, std::vector<Goal> goals);
  ~Relaxation();
  Relaxation(const Relaxation&) = delete;
  Relaxation& operator=(const Relaxation&) = delete;

  void add(const Columns& columns);
  /// Nothing where the solver failed.
  std::optional<Relaxed> solve();

 private:
  struct Solver;
  std::unique_ptr<Solver> solver_;
};

enum class Whole { found, none, left_off };

struct WholeAnswer {
  Whole outcome = Whole::left_off;
  Solution solution;  // where one was found, even if the search was left off
  bool has_solution = false;
};

/// What a search in whole numbers may take.
struct Effort {
  std::function<bool()> stop;  // asked now and then
  double seconds = 0;
  int nodes = std::numeric_limits<int>::max();
};

/// Whole numbers of these columns, of a cost under `below`, the least where `found`. Left off after that
/// effort.
WholeAnswer solve_whole(const Model& model, const Cost& cost, const std::vector<Goal>& goals,
                        const Columns& columns, double below, const Effort& effort);

}  // namespace arrisline::cutting
