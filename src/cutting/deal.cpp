// Shown by tests/cutting.
#include "cutting/deal.h"

#include <algorithm>
#include <cmath>

namespace arrisline::cutting {
namespace {

/// The pieces of the problem that an item counts together, dealt out one by one.
class Pieces {
 public:
  explicit Pieces(const Model& model) : of_item_(model.items.size()), next_(model.items.size()) {
    const CuttingProblem& problem = *model.problem;
    for (std::size_t p = 0; p < problem.pieces.size(); ++p) {
      const WantedPiece& piece = problem.pieces[p];
      if (piece.count <= 0) continue;
      std::vector<std::size_t>& alike = of_item_[model.item_of[p]];
      alike.insert(alike.end(), static_cast<std::size_t>(piece.count), p);
    }
  }

  bool any(std::size_t item) const { return next_[item] < of_item_[item].size(); }
  std::size_t take(std::size_t item) { return of_item_[item][next_[item]++]; }

 private:
  std::vector<std::vector<std::size_t>> of_item_;
  std::vector<std::size_t> next_;
};

}  // namespace

std::vector<CutBoard> deal(const Model& model, const Solution& solution) {
  Pieces pieces(model);
  const std::vector<WantedPiece>& wanted = model.problem->pieces;
  // The strips of each class with their pieces.
  std::vector<std::vector<CutStrip>> strips(model.classes.size());
  for (const auto& [pattern, times] : solution.strips) {
    for (int n = 0; n < times; ++n) {
      CutStrip strip{model.classes[pattern.strip_class].kind, {}};
      for (const auto& [item, count] : pattern.pieces)
        for (int i = 0; i < count && pieces.any(item); ++i) strip.pieces.push_back(pieces.take(item));
      if (strip.pieces.empty()) continue;
      std::stable_sort(strip.pieces.begin(), strip.pieces.end(),
                       [&](std::size_t a, std::size_t b) { return wanted[a].length > wanted[b].length; });
      strips[pattern.strip_class].push_back(std::move(strip));
    }
  }
  std::vector<std::size_t> next(model.classes.size());
  std::vector<CutBoard> out;
  for (const auto& [pattern, times] : solution.boards) {
    for (int n = 0; n < times; ++n) {
      CutBoard board{model.sources[pattern.source].size, {}};
      for (const auto& [strip_class, count] : pattern.strips) {
        for (int i = 0; i < count && next[strip_class] < strips[strip_class].size(); ++i)
          board.strips.push_back(std::move(strips[strip_class][next[strip_class]++]));
      }
      if (board.strips.empty()) continue;
      std::stable_sort(board.strips.begin(), board.strips.end(), [&](const CutStrip& a, const CutStrip& b) {
        return model.problem->kinds[a.kind].width < model.problem->kinds[b.kind].width;
      });
      out.push_back(std::move(board));
    }
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const CutBoard& a, const CutBoard& b) { return a.size < b.size; });
  return out;
}

}  // namespace arrisline::cutting
