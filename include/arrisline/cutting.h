// Which lengths come out of which board: boards are ripped into strips along their length, strips sawn into
// pieces. The fewest boards, proved.
#pragma once

#include <atomic>
#include <cstddef>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

namespace arrisline {

/// Boards of one size. Lengths in mm.
struct BoardSize {
  double width = 0;
  double length = 0;
  std::optional<int> count;  // that there are; absent: as many as it takes
  bool to_buy = false;       // used only where those on hand do not do
};

/// A kind of strip: pieces of one kind may come from one strip, pieces of different kinds never do.
struct StripKind {
  double width = 0;                // ripped, mm
  std::vector<std::size_t> sizes;  // the boards it may be ripped from
};

struct WantedPiece {
  std::size_t kind = 0;
  double length = 0;  // with its allowances, mm
  int count = 1;
  int run = -1;  // pieces of one kind with the same run ≥ 0 are best cut from one strip, so that the grain
                 // goes on round a mitre
  /// The boards it may come from, of those of its kind; absent: all of these.
  std::optional<std::vector<std::size_t>> sizes = std::nullopt;
};

/// mm, each ≥ 0.
struct CuttingRules {
  double kerf = 0;      // of each cross cut, save one within a kerf of the strip's end
  double rip_kerf = 0;  // of each rip, save one within a kerf of the board's edge
  double trued = 0;     // planed off the new edge before the next strip is stuck
  double hold = 0;      // least width of the board while a strip is stuck on its edge
};

/// A strip of a board, with the pieces that come from it in the order of sawing (indices into `pieces`).
struct CutStrip {
  std::size_t kind = 0;
  std::vector<std::size_t> pieces;
};

struct CutBoard {
  std::size_t size = 0;
  std::vector<CutStrip> strips;  // in the order they are stuck and ripped off
};

struct CuttingProblem {
  std::vector<BoardSize> sizes;
  std::vector<StripKind> kinds;
  std::vector<WantedPiece> pieces;
  CuttingRules rules;
};

/// Least, in this order: boards missing, boards bought, boards; then, as far as was found, area of the
/// boards, length of the strips (each has to be stuck), and runs that are not kept in one strip.
///
/// Property 1: every piece wanted is in it exactly `count` times, on boards that it may come from.
///
/// Property 2: the pieces p1 … pn of a strip fit its board: Σ p + (n − 1)·kerf ≤ length.
///
/// Property 3: the strips w1 … wn of a board fit it: with v = width less what the strips before took, rip
/// kerf and truing with each, every wi ≤ v and hold ≤ v when its turn comes.
struct CuttingPlan {
  std::vector<CutBoard> boards;  // those missing too
  std::vector<int> missing;      // for each size: boards in the plan over those there are
  /// Proved: no plan has fewer boards, of those with as few missing and bought.
  std::size_t bound = 0;
  bool optimal = false;  // proved: missing, bought and boards are as few as can be
};

struct CuttingOptions {
  double limit = std::numeric_limits<double>::infinity();  // seconds
  const std::atomic<bool>* interrupt = nullptr;
};

/// REQUIRES: every piece fits some board of its kind's sizes, alone. No pieces give a plan without boards.
CuttingPlan cut_boards(const CuttingProblem& problem, const CuttingOptions& options = {});

}  // namespace arrisline
