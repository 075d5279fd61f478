// Cutting jobs in whole units, so that a plan is judged without rounding, and plans judged and made by other
// ways than those of src/cutting.
#pragma once

#include <cstdint>
#include <optional>
#include <ostream>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "arrisline/cutting.h"

namespace arrisline::cutting_tests {

struct WholeSize {
  int width = 0, length = 0;
  std::optional<int> count;
  bool to_buy = false;
};

struct WholeKind {
  int width = 0;
  std::vector<std::size_t> sizes;
};

struct WholePiece {
  std::size_t kind = 0;
  int length = 0, count = 1, run = -1;
  std::optional<std::vector<std::size_t>> sizes = std::nullopt;  // absent: all of its kind
};

struct WholeJob {
  double unit = 1;  // mm; of 0.1 or a sixteenth of an inch the sums in mm are not exact
  std::vector<WholeSize> sizes;
  std::vector<WholeKind> kinds;
  std::vector<WholePiece> pieces;
  int kerf = 0, rip_kerf = 0, trued = 0, hold = 0;
};

/// Whether the piece may come from boards of this size, as long as they need be.
bool may_be_from(const WholeJob& job, const WholePiece& piece, std::size_t size);

CuttingProblem in_mm(const WholeJob& job);

/// As C++ text that makes it, for the report of a failure.
std::ostream& operator<<(std::ostream& out, const WholeJob& job);

/// What is least, in its order. A board missing is not counted as bought.
struct Sums {
  int missing = 0, bought = 0, boards = 0;
  std::int64_t area = 0;
  std::int64_t strips = 0;  // their length
  auto operator<=>(const Sums&) const = default;
};
std::ostream& operator<<(std::ostream& out, const Sums& sums);

/// Of the size of each board and how many strips come off it.
Sums sums_of(const WholeJob& job, const std::vector<std::pair<std::size_t, std::size_t>>& boards);
Sums sums_of(const WholeJob& job, const CuttingPlan& plan);

/// Strips of these widths come off the board in this order.
bool rips_in_order(const WholeJob& job, int board_width, const std::vector<int>& widths);

/// What the plan does that the header forbids, in words; empty where it keeps to it.
std::vector<std::string> faults(const WholeJob& job, const CuttingPlan& plan);

/// How many runs, each of one kind and of more than one piece, are cut from one strip.
int runs_kept(const WholeJob& job, const CuttingPlan& plan);
int runs_of_several(const WholeJob& job);

/// The least by trying everything; with `together`, of the plans that cut every run from one strip, nothing
/// where there is none. For a handful of pieces.
std::optional<Sums> try_everything(const WholeJob& job, bool together = false);

struct Bounds {
  int sizes = 2, kinds = 2;
  int entries = 4;                 // of the list of pieces
  int pieces = 7;                  // in all
  int shortest = 8, longest = 60;  // boards, in units; pieces are from an eighth of it up
  int longest_piece = 1000;
  bool runs = false;
  bool choosy = false;  // some pieces may come from some of their kind's boards only
};

/// A job that has an answer: every piece fits some board of its kind's sizes, alone.
WholeJob random_job(std::mt19937& random, const Bounds& bounds);

/// From the environment, or else.
unsigned number_from(const char* name, unsigned otherwise);

}  // namespace arrisline::cutting_tests
