// Shown by tests/cutting.
#include "cutting/least.h"

#include <algorithm>
#include <cmath>

#include "cutting/fits.h"
#include "cutting/patterns.h"

namespace arrisline::cutting {
namespace {

/// Reduced costs and whole bounds are judged to this, far over the solvers' own tolerance.
constexpr double kEven = 1e-6;
constexpr int kMostRounds = 2000;
/// Patterns to which a question in whole numbers is put, and nodes of its search: for a proof, and where it
/// may be left off. Work is counted and not timed, so that the same problem has the same answer.
constexpr std::size_t kMostColumns = 60000;
constexpr std::size_t kSpareColumns = 3000;
constexpr int kMostNodes = std::numeric_limits<int>::max();
constexpr int kSpareNodes = 500;

/// Strips of each class that anybody could want: one for each piece.
std::vector<int> most_strips(const Model& model) {
  std::vector<int> out;
  for (const std::vector<std::size_t>& items : model.items_of_class) {
    long sum = 0;
    for (const std::size_t i : items) sum += model.items[i].count;
    out.push_back(static_cast<int>(std::min(sum, 1L << 30)));
  }
  return out;
}

/// What the relaxation may be over its true value: patterns of a reduced cost a hair under nought are passed
/// over, and no plan needs more boards or strips than pieces.
double slack_of(const Model& model) {
  double pieces = 0;
  for (const Item& item : model.items) pieces += item.count;
  return kEven * (1 + 2 * pieces);
}

class Search {
 public:
  Search(const Model& model, const Cost& cost, bool whole, const std::vector<Goal>& goals,
         const Solution& start, const Deadline& deadline)
      : model_(model),
        cost_(cost),
        whole_(whole),
        goals_(goals),
        deadline_(deadline),
        most_(most_strips(model)),
        slack_(whole ? slack_of(model) : kEven),
        relaxation_(model, cost, goals) {
    best_.solution = start;
    best_.value = cost_of(start, cost);
    for (const auto& [board, times] : start.boards) columns_.boards.push_back(board);
    for (const auto& [strip, times] : start.strips) columns_.strips.push_back(strip);
    relaxation_.add(columns_);
  }

  Least run() {
    if (!relax()) return best_;
    best_.bound = up(relaxed_.value);
    if (settled()) return best_;
    improve(columns_, best_.value - (whole_ ? 0.5 : kEven), kSpareNodes);
    while (!settled() && !deadline_.over()) {
      const double target = whole_ ? best_.bound : best_.value - kEven;
      const double gap = target - relaxed_.value + slack_;
      const std::optional<Columns> all =
          patterns_within(gap, deadline_.is_spare() ? kSpareColumns : kMostColumns);
      if (!all) {
        improve_with_some(gap);
        settled();
        return best_;
      }
      const Whole answer =
          improve(*all, target + (whole_ ? 0.5 : 0), deadline_.is_spare() ? kSpareNodes : kMostNodes);
      if (answer == Whole::left_off) return best_;
      if (whole_) {
        // Found, it is no better than the target; else the target is out of reach.
        if (answer == Whole::none) best_.bound = target + 1;
      } else {
        best_.bound = best_.value;
      }
    }
    return best_;
  }

 private:
  double up(double value) const { return whole_ ? std::ceil(value - slack_) : value; }

  bool settled() {
    best_.proved = best_.bound >= best_.value - kEven;
    if (best_.proved) best_.bound = best_.value;
    return best_.proved;
  }

  /// Solves the relaxation over all patterns, so that its value is a bound. False where it was left off.
  bool relax() {
    for (int round = 0; round < kMostRounds; ++round) {
      if (deadline_.over()) return false;
      const std::optional<Relaxed> relaxed = relaxation_.solve();
      if (!relaxed) return false;
      relaxed_ = *relaxed;
      Columns better;
      const bool whole = price(better);
      // A search that gave up may have found something all the same; that nothing is better it cannot tell.
      if (better.boards.empty() && better.strips.empty()) return whole;
      relaxation_.add(better);
      columns_.boards.insert(columns_.boards.end(), better.boards.begin(), better.boards.end());
      columns_.strips.insert(columns_.strips.end(), better.strips.begin(), better.strips.end());
    }
    return false;
  }

  /// The pattern of each class and source that is worth most, where it is worth more than it costs.
  bool price(Columns& better) const {
    bool whole = true;
    const Prices& prices = relaxed_.prices;
    for (std::size_t c = 0; c < model_.classes.size() && whole; ++c) {
      if (deadline_.over()) return false;
      double most = prices.cutting[c] + kEven;
      Counts best;
      whole = for_each_strip(
          model_, c, prices.item, [&] { return most; },
          [&](const Counts& counts, double worth) {
            if (worth <= most) return;
            most = worth;
            best = counts;
          });
      if (!best.empty()) better.strips.push_back({c, best});
    }
    for (std::size_t s = 0; s < model_.sources.size() && whole; ++s) {
      if (deadline_.over()) return false;
      double most = prices.source[s] + kEven;
      Counts best;
      whole = for_each_board(
          model_, model_.sources[s].size, prices.strip, most_, [&] { return most; },
          [&](const Counts& counts, double worth) {
            if (worth <= most) return;
            most = worth;
            best = counts;
          });
      if (!best.empty()) better.boards.push_back({s, best});
    }
    return whole;
  }

  /// All patterns of a reduced cost up to `gap`, or nothing where they are more than `most`.
  std::optional<Columns> patterns_within(double gap, std::size_t most) const {
    Columns out;
    const Prices& prices = relaxed_.prices;
    bool whole = true;
    // Past the limit nothing is worth enough any more, so that the search ends by itself.
    const auto least = [&](double price) {
      const bool full = out.boards.size() + out.strips.size() > most;
      return full ? 1e300 : price - gap;
    };
    for (std::size_t c = 0; c < model_.classes.size() && whole; ++c) {
      if (deadline_.over()) return std::nullopt;
      whole = for_each_strip(
          model_, c, prices.item, [&] { return least(prices.cutting[c]); },
          [&](const Counts& counts, double) {
            out.strips.push_back({c, counts});
          });
    }
    for (std::size_t s = 0; s < model_.sources.size() && whole; ++s) {
      if (deadline_.over()) return std::nullopt;
      whole = for_each_board(
          model_, model_.sources[s].size, prices.strip, most_, [&] { return least(prices.source[s]); },
          [&](const Counts& counts, double) {
            out.boards.push_back({s, counts});
          });
    }
    if (!whole || out.boards.size() + out.strips.size() > most) return std::nullopt;
    return out;
  }

  /// Of too many patterns those of the least reduced cost, with those that the relaxation is made of.
  void improve_with_some(double gap) {
    for (int halved = 0; halved < 10; ++halved) {
      gap /= 2;
      std::optional<Columns> some = patterns_within(gap, kSpareColumns);
      if (!some) continue;
      some->boards.insert(some->boards.end(), columns_.boards.begin(), columns_.boards.end());
      some->strips.insert(some->strips.end(), columns_.strips.begin(), columns_.strips.end());
      improve(*some, best_.value - (whole_ ? 0.5 : kEven), kSpareNodes);
      return;
    }
  }

  /// Looks for a solution of these columns that costs under `below`.
  Whole improve(const Columns& columns, double below, int nodes) {
    const double seconds = deadline_.left(1e9);
    if (seconds <= 0) return Whole::left_off;
    const WholeAnswer answer = solve_whole(model_, cost_, goals_, columns, below,
                                           {[this] { return deadline_.over(); }, seconds, nodes});
    if (!answer.has_solution) return answer.outcome;
    const double value = cost_of(answer.solution, cost_);
    if (value < best_.value) {
      best_.solution = answer.solution;
      best_.value = value;
    }
    return answer.outcome;
  }

  const Model& model_;
  const Cost& cost_;
  bool whole_;
  const std::vector<Goal>& goals_;
  const Deadline& deadline_;
  std::vector<int> most_;
  double slack_;
  Relaxation relaxation_;
  Relaxed relaxed_;
  Columns columns_;
  Least best_;
};

}  // namespace

double cost_of(const Solution& solution, const Cost& cost) {
  double out = 0;
  for (const auto& [board, times] : solution.boards) out += cost.board[board.source] * times;
  for (const auto& [strip, times] : solution.strips) out += cost.strip[strip.strip_class] * times;
  return out;
}

Least least_cost(const Model& model, const Cost& cost, bool whole, const std::vector<Goal>& goals,
                 const Solution& start, const Deadline& deadline) {
  return Search(model, cost, whole, goals, start, deadline).run();
}

}  // namespace arrisline::cutting
