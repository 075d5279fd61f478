// A cutting problem as the solver sees it: pieces alike counted together, boards by how they are come by, and
// patterns of strips and of pieces.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "arrisline/cutting.h"

namespace arrisline::cutting {

/// Lengths closer than this are one, mm.
inline constexpr double kAlike = 1e-9;

/// Pieces of one kind and length that may come from the same boards.
struct Item {
  std::size_t kind = 0;
  double length = 0;
  int count = 0;
  std::optional<std::vector<std::size_t>> sizes = std::nullopt;  // ascending; absent: all of its kind
};

/// Whether a piece of its kind may come from boards of this size.
inline bool may_come_from(const std::optional<std::vector<std::size_t>>& sizes, std::size_t size) {
  return !sizes || std::find(sizes->begin(), sizes->end(), size) != sizes->end();
}

/// Boards of one size that there are (or can be bought), or that are missing.
struct BoardSource {
  std::size_t size = 0;
  bool missing = false;
  std::optional<int> most;  // absent: as many as it takes
};

/// Strips of one kind on boards of one length that the same pieces may come from: a piece pattern goes with
/// any of them.
struct StripClass {
  std::size_t kind = 0;
  double length = 0;
};

using Counts = std::vector<std::pair<std::size_t, int>>;  // of what, how many; ascending, no zeros

/// Strips of a board, by class.
struct BoardPattern {
  std::size_t source = 0;
  Counts strips;
};

/// Pieces of a strip, by item.
struct StripPattern {
  std::size_t strip_class = 0;
  Counts pieces;
};

struct Model {
  const CuttingProblem* problem = nullptr;
  std::vector<Item> items;
  std::vector<std::size_t> item_of;  // of each piece of the problem that is wanted at all
  std::vector<BoardSource> sources;
  std::vector<StripClass> classes;
  /// Classes that a size can be ripped into, widest first.
  std::vector<std::vector<std::size_t>> classes_of_size;
  /// Items of a class that fit its length alone.
  std::vector<std::vector<std::size_t>> items_of_class;

  const BoardSize& size_of(const BoardSource& source) const { return problem->sizes[source.size]; }
  double width_of(std::size_t strip_class) const { return problem->kinds[classes[strip_class].kind].width; }
  double area_of(const BoardSource& source) const { return size_of(source).width * size_of(source).length; }
};

/// REQUIRES: as cut_boards().
Model make_model(const CuttingProblem& problem);

/// An answer in patterns, each with how often it is used.
struct Solution {
  std::vector<std::pair<BoardPattern, int>> boards;
  std::vector<std::pair<StripPattern, int>> strips;
};

}  // namespace arrisline::cutting
