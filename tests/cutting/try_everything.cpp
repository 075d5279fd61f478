// Every way to cut a handful of pieces, by the rules as the header words them: each piece into each strip it
// fits, or a new strip on each board, or a new board of each size. Shown by tests/cutting/twin_test.cpp.
#include <algorithm>
#include <map>
#include <utility>

#include "cutting/whole_job.h"

namespace arrisline::cutting_tests {
namespace {

struct Strip {
  std::size_t kind = 0;
  int length = 0;  // of its pieces and the kerfs between them
};

struct Board {
  std::size_t size = 0;
  std::vector<Strip> strips;
};

class Everything {
 public:
  Everything(const WholeJob& job, bool together) : job_(job), together_(together) {
    for (const WholePiece& piece : job.pieces) {
      WholePiece one = piece;
      one.count = 1;
      for (int i = 0; i < piece.count; ++i) pieces_.push_back(one);
    }
  }

  std::optional<Sums> run() {
    place(0);
    return best_;
  }

 private:
  /// In some order.
  bool rips(const Board& board) const {
    std::vector<int> widths;
    for (const Strip& strip : board.strips) widths.push_back(job_.kinds[strip.kind].width);
    std::sort(widths.begin(), widths.end());
    do {
      if (rips_in_order(job_, job_.sizes[board.size].width, widths)) return true;
    } while (std::next_permutation(widths.begin(), widths.end()));
    return false;
  }

  Sums sums() const {
    std::vector<std::pair<std::size_t, std::size_t>> boards;
    for (const Board& board : boards_) boards.emplace_back(board.size, board.strips.size());
    return sums_of(job_, boards);
  }

  void place(std::size_t at) {
    // More boards and strips are never less, so nothing better comes of these.
    if (best_ && sums() >= *best_) return;
    if (at == pieces_.size()) {
      best_ = sums();
      return;
    }
    const WholePiece& piece = pieces_[at];
    const auto run = std::pair{piece.run, piece.kind};
    const bool bound = together_ && piece.run >= 0;
    const auto begun = bound ? run_in_.find(run) : run_in_.end();
    const bool has_strip = begun != run_in_.end();
    for (std::size_t b = 0; b < boards_.size(); ++b) {
      for (std::size_t s = 0; s < boards_[b].strips.size(); ++s) {
        if (has_strip && begun->second != std::pair{b, s}) continue;
        Strip& strip = boards_[b].strips[s];
        const int more = job_.kerf + piece.length;
        if (strip.kind != piece.kind || !may_be_from(job_, piece, boards_[b].size) ||
            strip.length + more > job_.sizes[boards_[b].size].length)
          continue;
        strip.length += more;
        begin_run(bound && !has_strip, run, b, s, at);
        boards_[b].strips[s].length -= more;
      }
    }
    if (has_strip) return;
    for (std::size_t b = 0; b < boards_.size(); ++b) {
      if (!may_be_from(job_, piece, boards_[b].size)) continue;
      boards_[b].strips.push_back({piece.kind, piece.length});
      if (rips(boards_[b])) begin_run(bound, run, b, boards_[b].strips.size() - 1, at);
      boards_[b].strips.pop_back();
    }
    for (std::size_t size = 0; size < job_.sizes.size(); ++size) {
      if (!may_be_from(job_, piece, size)) continue;
      boards_.push_back({size, {{piece.kind, piece.length}}});
      if (rips(boards_.back())) begin_run(bound, run, boards_.size() - 1, 0, at);
      boards_.pop_back();
    }
  }

  /// Goes on with the next piece; the run, where it is one that has just begun, to stay in this strip.
  void begin_run(bool begins, const std::pair<int, std::size_t>& run, std::size_t board, std::size_t strip,
                 std::size_t at) {
    if (begins) run_in_[run] = {board, strip};
    place(at + 1);
    if (begins) run_in_.erase(run);
  }

  const WholeJob& job_;
  bool together_;
  std::vector<WholePiece> pieces_;  // singly
  std::vector<Board> boards_;
  std::map<std::pair<int, std::size_t>, std::pair<std::size_t, std::size_t>> run_in_;
  std::optional<Sums> best_;
};

}  // namespace

std::optional<Sums> try_everything(const WholeJob& job, bool together) {
  return Everything(job, together).run();
}

}  // namespace arrisline::cutting_tests
