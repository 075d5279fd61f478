// The fewest boards, goal by goal, and the runs kept together where that costs nothing. Shown by
// tests/cutting.
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "arrisline/cutting.h"
#include "cutting/deal.h"
#include "cutting/first_fit.h"
#include "cutting/fits.h"
#include "cutting/least.h"
#include "cutting/model.h"

namespace arrisline {
namespace {

using namespace cutting;

/// A plan and what it comes to in the order of what is least.
struct Solved {
  CuttingPlan plan;
  std::tuple<int, int, std::size_t> counts;  // boards missing, bought, boards
  double area = 0;
  double strips = 0;  // length of all strips
};

Cost by_source(const Model& model, const std::function<double(const BoardSource&)>& of_one) {
  Cost out;
  for (const BoardSource& source : model.sources) out.board.push_back(of_one(source));
  out.strip.resize(model.classes.size());
  return out;
}

/// One board costs what another does not.
bool tells_apart(const Cost& cost) {
  return std::adjacent_find(cost.board.begin(), cost.board.end(), std::not_equal_to<>()) != cost.board.end();
}

/// Boards that the pieces' own area takes, each piece with the kerf beside it, if nothing else were lost.
double least_by_area(const Model& model) {
  const CuttingRules& rules = model.problem->rules;
  double wanted = 0;
  for (const Item& item : model.items)
    wanted += item.count * takes(item.length, rules) * model.problem->kinds[item.kind].width;
  double most = 0;
  for (const BoardSize& size : model.problem->sizes)
    most = std::max(most, size.width * room_of(size.length, rules));
  return most > 0 ? std::ceil(wanted / most - kFit) : 0;
}

/// With more classes of strips or items the linear programme itself takes longer, and more memory, than it is
/// worth: the first plan found stands, with the bound of its area.
constexpr std::size_t kMostClasses = 400;
constexpr std::size_t kMostPairs = 40000;  // of an item and a class that it fits

bool too_large(const Model& model) {
  std::size_t pairs = 0;
  for (const std::vector<std::size_t>& items : model.items_of_class) pairs += items.size();
  return model.classes.size() > kMostClasses || pairs > kMostPairs;
}

/// One goal after the other, each settled before the next is asked for.
class Goals {
 public:
  Goals(const Model& model, const Deadline& deadline)
      : model_(model), deadline_(deadline), solution_(first_fit(model)) {}

  Least settle(const Cost& cost, bool whole) {
    Least least;
    least.value = least.bound = cost_of(solution_, cost);
    least.proved = least.value <= 0;
    if (!least.proved) least.bound = 0;
    least.solution = solution_;
    if (!least.proved && !too_large(model_)) {
      const Deadline deadline = whole ? deadline_.half() : deadline_.half().spare();
      least = least_cost(model_, cost, whole, goals_, solution_, deadline);
      solution_ = least.solution;
    }
    Goal goal{cost, least.value};
    if (whole) {
      goal.proved = least.bound;
    } else {
      goal.reached += 1e-9;  // room for the rounding of sums that are no whole numbers
    }
    goals_.push_back(std::move(goal));
    return least;
  }
  const Solution& solution() const { return solution_; }

 private:
  const Model& model_;
  const Deadline& deadline_;
  Solution solution_;
  std::vector<Goal> goals_;
};

Solved solve(const CuttingProblem& problem, const Deadline& deadline) {
  const Model model = make_model(problem);
  double largest = 1e-9;
  double longest = 1e-9;
  for (const BoardSource& source : model.sources) largest = std::max(largest, model.area_of(source));
  for (const StripClass& strips : model.classes) longest = std::max(longest, strips.length);
  const Cost missing = by_source(model, [](const BoardSource& source) { return source.missing ? 1 : 0; });
  const Cost bought = by_source(model, [&](const BoardSource& source) {
    return !source.missing && model.size_of(source).to_buy ? 1 : 0;
  });
  const Cost boards = by_source(model, [](const BoardSource&) { return 1; });
  const Cost area =
      by_source(model, [&](const BoardSource& source) { return model.area_of(source) / largest; });
  Cost strips = by_source(model, [](const BoardSource&) { return 0; });
  for (std::size_t c = 0; c < model.classes.size(); ++c) strips.strip[c] = model.classes[c].length / longest;

  Goals goals(model, deadline);
  bool proved = true;
  for (const Cost* cost : {&missing, &bought})
    if (tells_apart(*cost)) proved = goals.settle(*cost, true).proved && proved;
  const Least fewest = goals.settle(boards, true);
  if (tells_apart(area)) goals.settle(area, false);
  goals.settle(strips, false);
  const Solution& solution = goals.solution();

  Solved out;
  out.plan.boards = deal(model, solution);
  const double bound = std::max(fewest.bound, least_by_area(model));
  out.plan.bound = static_cast<std::size_t>(std::lround(bound));
  // What is found for a later goal may have fewer boards than were found for their own.
  out.plan.optimal = proved && out.plan.bound >= out.plan.boards.size();
  int bought_sum = 0;
  int missing_sum = 0;
  for (const CutBoard& board : out.plan.boards)
    out.strips += static_cast<double>(board.strips.size()) * problem.sizes[board.size].length;
  out.plan.missing.resize(problem.sizes.size());
  for (std::size_t s = 0; s < problem.sizes.size(); ++s) {
    const BoardSize& size = problem.sizes[s];
    const auto used = static_cast<int>(std::count_if(out.plan.boards.begin(), out.plan.boards.end(),
                                                     [s](const CutBoard& board) { return board.size == s; }));
    out.plan.missing[s] = size.count ? std::max(0, used - *size.count) : 0;
    missing_sum += out.plan.missing[s];
    if (size.to_buy) bought_sum += used - out.plan.missing[s];
    out.area += used * size.width * size.length;
  }
  out.counts = {missing_sum, bought_sum, out.plan.boards.size()};
  return out;
}

bool no_worse(const Solved& a, const Solved& b) {
  constexpr double kEven = 1e-6;  // of itself
  if (a.counts != b.counts) return a.counts < b.counts;
  if (std::abs(a.area - b.area) > kEven * b.area) return a.area < b.area;
  return a.strips <= b.strips * (1 + kEven);
}

/// The problem with the pieces of some runs made one long piece each, and what each of its pieces stands for.
struct Joined {
  CuttingProblem problem;
  std::vector<std::vector<std::size_t>>
      stands_for;  // pieces of the problem as it was, in the order of sawing
};

Joined join(const CuttingProblem& problem, const std::set<int>& runs) {
  Joined out;
  out.problem = problem;
  out.problem.pieces.clear();
  std::map<std::pair<int, std::size_t>, std::size_t> place;  // of a run's one piece
  for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
    const WantedPiece& piece = problem.pieces[p];
    if (runs.count(piece.run) == 0 || piece.count <= 0) {
      out.problem.pieces.push_back(piece);
      out.stands_for.push_back({p});
      continue;
    }
    const auto [where, fresh] = place.try_emplace({piece.run, piece.kind}, out.problem.pieces.size());
    const double length = piece.count * piece.length + (piece.count - 1) * problem.rules.kerf;
    if (fresh) {
      out.problem.pieces.push_back({piece.kind, length, 1, -1, piece.sizes});
      out.stands_for.emplace_back();
    } else {
      WantedPiece& whole = out.problem.pieces[where->second];
      whole.length += length + problem.rules.kerf;
      // What all of them may come from.
      if (!whole.sizes) whole.sizes = piece.sizes;
      if (piece.sizes)
        std::erase_if(*whole.sizes, [&](std::size_t s) { return !may_come_from(piece.sizes, s); });
    }
    std::vector<std::size_t>& all = out.stands_for[where->second];
    all.insert(all.end(), static_cast<std::size_t>(piece.count), p);
  }
  return out;
}

/// Every piece fits some board, alone.
bool can_be_cut(const CuttingProblem& problem) {
  return std::all_of(problem.pieces.begin(), problem.pieces.end(), [&](const WantedPiece& piece) {
    const StripKind& kind = problem.kinds[piece.kind];
    return std::any_of(kind.sizes.begin(), kind.sizes.end(), [&](std::size_t s) {
      return may_come_from(piece.sizes, s) && problem.sizes[s].length + kFit >= piece.length &&
             problem.sizes[s].width + kFit >= last_takes(kind.width, problem.rules);
    });
  });
}

/// The runs of more than one piece.
std::vector<int> runs_of(const CuttingProblem& problem) {
  std::map<int, int> counts;
  for (const WantedPiece& piece : problem.pieces)
    if (piece.run >= 0) counts[piece.run] += piece.count;
  std::vector<int> out;
  for (const auto& [run, count] : counts)
    if (count > 1) out.push_back(run);
  return out;
}

std::optional<Solved> solve_joined(const CuttingProblem& problem, const std::set<int>& runs,
                                   const Deadline& deadline) {
  const Joined joined = join(problem, runs);
  if (!can_be_cut(joined.problem)) return std::nullopt;
  Solved out = solve(joined.problem, deadline.spare());
  for (CutBoard& board : out.plan.boards) {
    for (CutStrip& strip : board.strips) {
      std::vector<std::size_t> pieces;
      for (const std::size_t piece : strip.pieces) {
        const std::vector<std::size_t>& all = joined.stands_for[piece];
        pieces.insert(pieces.end(), all.begin(), all.end());
      }
      strip.pieces = std::move(pieces);
    }
  }
  return out;
}

}  // namespace

CuttingPlan cut_boards(const CuttingProblem& problem, const CuttingOptions& options) {
  /// Attempts at keeping one run more in one strip, where all of them together cost a board.
  constexpr int kMostAttempts = 12;
  const Deadline deadline(options);
  Solved best = solve(problem, deadline);
  const std::vector<int> runs = runs_of(problem);
  if (runs.empty()) return best.plan;
  const auto keep = [&](const std::set<int>& together) {
    std::optional<Solved> joined = solve_joined(problem, together, deadline);
    if (!joined || !no_worse(*joined, best)) return false;
    // What was proved of the pieces apart holds of them joined.
    joined->plan.bound = best.plan.bound;
    joined->plan.optimal = best.plan.optimal;
    best = std::move(*joined);
    return true;
  };
  if (keep(std::set<int>(runs.begin(), runs.end()))) return best.plan;
  std::set<int> together;
  int attempts = 0;
  for (const int run : runs) {
    if (++attempts > kMostAttempts || deadline.over()) break;
    together.insert(run);
    if (!keep(together)) together.erase(run);
  }
  return best.plan;
}

}  // namespace arrisline
