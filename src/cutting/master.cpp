// Clp solves the relaxation, Cbc the whole numbers. Shown by tests/cutting.
#include "cutting/master.h"

#include <Clp_C_Interface.h>

#include <CbcEventHandler.hpp>
#include <CbcModel.hpp>
#include <CbcSolver.hpp>
#include <OsiClpSolverInterface.hpp>
#include <cmath>
#include <limits>
#include <string>

namespace arrisline::cutting {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::max();

/// Where each row stands.
struct Rows {
  std::size_t items = 0;    // first of the items
  std::size_t classes = 0;  // first of the classes
  std::vector<int> bound;   // row of each source, −1 where it is not bounded
  std::size_t goals = 0;    // first of the goals
  std::vector<double> low, high;
};

Rows rows_of(const Model& model, const std::vector<Goal>& goals) {
  Rows rows;
  for (const Item& item : model.items) {
    rows.low.push_back(item.count);
    rows.high.push_back(kInfinity);
  }
  rows.classes = rows.low.size();
  for (std::size_t c = 0; c < model.classes.size(); ++c) {
    rows.low.push_back(0);
    rows.high.push_back(kInfinity);
  }
  for (const BoardSource& source : model.sources) {
    rows.bound.push_back(source.most ? static_cast<int>(rows.low.size()) : -1);
    if (!source.most) continue;
    rows.low.push_back(-kInfinity);
    rows.high.push_back(*source.most);
  }
  rows.goals = rows.low.size();
  for (const Goal& goal : goals) {
    rows.low.push_back(goal.proved);
    rows.high.push_back(goal.reached);
  }
  return rows;
}

/// Columns of a sparse matrix, in the solvers' form.
struct Matrix {
  std::vector<double> low, high, cost;
  std::vector<CoinBigIndex> starts{0};
  std::vector<int> rows;
  std::vector<double> values;

  void put(std::size_t row, double value) {
    rows.push_back(static_cast<int>(row));
    values.push_back(value);
  }
  void end(double column_cost) {
    low.push_back(0);
    high.push_back(kInfinity);
    cost.push_back(column_cost);
    starts.push_back(static_cast<CoinBigIndex>(rows.size()));
  }
  int count() const { return static_cast<int>(cost.size()); }
};

Matrix matrix_of(const Columns& columns, const Rows& rows, const Cost& cost, const std::vector<Goal>& goals) {
  Matrix out;
  for (const BoardPattern& board : columns.boards) {
    for (const auto& [strip_class, count] : board.strips) out.put(rows.classes + strip_class, count);
    if (rows.bound[board.source] >= 0) out.put(static_cast<std::size_t>(rows.bound[board.source]), 1);
    for (std::size_t g = 0; g < goals.size(); ++g)
      if (goals[g].cost.board[board.source] != 0) out.put(rows.goals + g, goals[g].cost.board[board.source]);
    out.end(cost.board[board.source]);
  }
  for (const StripPattern& strip : columns.strips) {
    for (const auto& [item, count] : strip.pieces) out.put(rows.items + item, count);
    out.put(rows.classes + strip.strip_class, -1);
    for (std::size_t g = 0; g < goals.size(); ++g)
      if (goals[g].cost.strip[strip.strip_class] != 0)
        out.put(rows.goals + g, goals[g].cost.strip[strip.strip_class]);
    out.end(cost.strip[strip.strip_class]);
  }
  return out;
}

}  // namespace

struct Relaxation::Solver {
  const Model& model;
  Cost cost;
  std::vector<Goal> goals;
  Rows rows;
  Clp_Simplex* clp;

  Solver(const Model& of, Cost costs, std::vector<Goal> settled)
      : model(of),
        cost(std::move(costs)),
        goals(std::move(settled)),
        rows(rows_of(of, goals)),
        clp(Clp_newModel()) {
    Clp_setLogLevel(clp, 0);
    const std::vector<CoinBigIndex> starts(rows.low.size() + 1, 0);
    Clp_addRows(clp, static_cast<int>(rows.low.size()), rows.low.data(), rows.high.data(), starts.data(),
                nullptr, nullptr);
  }
  ~Solver() { Clp_deleteModel(clp); }
  Solver(const Solver&) = delete;
  Solver& operator=(const Solver&) = delete;
};

Relaxation::Relaxation(const Model& model, Cost cost, std::vector<Goal> goals)
    : solver_(std::make_unique<Solver>(model, std::move(cost), std::move(goals))) {}

Relaxation::~Relaxation() = default;

void Relaxation::add(const Columns& columns) {
  const Matrix matrix = matrix_of(columns, solver_->rows, solver_->cost, solver_->goals);
  if (matrix.count() == 0) return;
  Clp_addColumns(solver_->clp, matrix.count(), matrix.low.data(), matrix.high.data(), matrix.cost.data(),
                 matrix.starts.data(), matrix.rows.data(), matrix.values.data());
}

std::optional<Relaxed> Relaxation::solve() {
  Clp_primal(solver_->clp, 0);
  if (Clp_status(solver_->clp) != 0) return std::nullopt;
  const double* dual = Clp_dualRowSolution(solver_->clp);
  const Rows& rows = solver_->rows;
  const Model& model = solver_->model;
  Relaxed out;
  out.value = Clp_objectiveValue(solver_->clp);
  // What a unit more of a goal settled before is worth; rounding aside, never > 0 where only its most is
  // given.
  const auto of_goal = [&](std::size_t g) {
    const double price = dual[rows.goals + g];
    return solver_->goals[g].proved > -kInfinity ? price : std::min(0.0, price);
  };
  // Rounding may leave a price a hair on the wrong side.
  for (std::size_t i = 0; i < model.items.size(); ++i)
    out.prices.item.push_back(std::max(0.0, dual[rows.items + i]));
  for (std::size_t c = 0; c < model.classes.size(); ++c)
    out.prices.strip.push_back(std::max(0.0, dual[rows.classes + c]));
  for (std::size_t c = 0; c < model.classes.size(); ++c) {
    double price = out.prices.strip[c] + solver_->cost.strip[c];
    for (std::size_t g = 0; g < solver_->goals.size(); ++g)
      price -= of_goal(g) * solver_->goals[g].cost.strip[c];
    out.prices.cutting.push_back(price);
  }
  for (std::size_t s = 0; s < model.sources.size(); ++s) {
    double price = solver_->cost.board[s];
    if (rows.bound[s] >= 0) price -= std::min(0.0, dual[rows.bound[s]]);
    for (std::size_t g = 0; g < solver_->goals.size(); ++g)
      price -= of_goal(g) * solver_->goals[g].cost.board[s];
    out.prices.source.push_back(price);
  }
  return out;
}

namespace {

/// Asked by Cbc at every node and whenever a heuristic ends.
class StopWhen : public CbcEventHandler {
 public:
  explicit StopWhen(const std::function<bool()>& asked) : asked_(&asked) {}
  CbcAction event(CbcEvent) override { return (*asked_)() ? stop : noAction; }
  CbcEventHandler* clone() const override { return new StopWhen(*this); }

 private:
  const std::function<bool()>* asked_;
};

int go_on(CbcModel*, int) {
  return 0;
}

}  // namespace

WholeAnswer solve_whole(const Model& model, const Cost& cost, const std::vector<Goal>& goals,
                        const Columns& columns, double below, const Effort& effort) {
  WholeAnswer out;
  const Rows rows = rows_of(model, goals);
  const Matrix matrix = matrix_of(columns, rows, cost, goals);
  if (matrix.count() == 0) {
    out.outcome = Whole::none;
    return out;
  }
  OsiClpSolverInterface osi;
  osi.messageHandler()->setLogLevel(0);
  osi.getModelPtr()->setLogLevel(0);
  osi.loadProblem(matrix.count(), static_cast<int>(rows.low.size()), matrix.starts.data(), matrix.rows.data(),
                  matrix.values.data(), matrix.low.data(), matrix.high.data(), matrix.cost.data(),
                  rows.low.data(), rows.high.data());
  for (int i = 0; i < matrix.count(); ++i) osi.setInteger(i);
  CbcModel cbc(osi);
  CbcSolverUsefulData settings;
  settings.noPrinting_ = true;
  settings.useSignalHandler_ = false;  // Ctrl-C is the program's, which `stop` tells of
  CbcMain0(cbc, settings);
  cbc.setLogLevel(0);
  StopWhen stop_when(effort.stop);
  cbc.passInEventHandler(&stop_when);
  cbc.setCutoff(below);
  // Elapsed, for on a busy machine the processor's seconds are longer.
  const std::string seconds = std::to_string(static_cast<int>(std::ceil(std::min(effort.seconds, 1e9))));
  const std::string nodes = std::to_string(effort.nodes);
  const char* words[] = {"cbc",           "-log",      "0",           "-timeMode", "elapsed", "-sec",
                         seconds.c_str(), "-maxNodes", nodes.c_str(), "-solve",    "-quit"};
  CbcMain1(static_cast<int>(std::size(words)), words, cbc, go_on, settings);
  const double* best = cbc.bestSolution();
  const bool proven_none = cbc.isProvenInfeasible();
  if (best != nullptr && !proven_none) {
    out.has_solution = true;
    const std::size_t boards = columns.boards.size();
    for (std::size_t i = 0; i < boards + columns.strips.size(); ++i) {
      const int times = static_cast<int>(std::lround(best[i]));
      if (times <= 0) continue;
      if (i < boards) out.solution.boards.emplace_back(columns.boards[i], times);
      if (i >= boards) out.solution.strips.emplace_back(columns.strips[i - boards], times);
    }
  }
  if (out.has_solution && cbc.isProvenOptimal()) {
    out.outcome = Whole::found;
  } else if (proven_none) {
    out.outcome = Whole::none;
  }
  return out;
}

}  // namespace arrisline::cutting
