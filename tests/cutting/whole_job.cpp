// Shown by tests/cutting/twin_test.cpp, where the judge must find fault with spoilt plans.
#include "cutting/whole_job.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <map>
#include <set>
#include <utility>

namespace arrisline::cutting_tests {
namespace {

std::string number(double value) {
  char text[32];
  return std::string(text, std::to_chars(text, text + sizeof text, value).ptr);
}

}  // namespace

bool may_be_from(const WholeJob& job, const WholePiece& piece, std::size_t size) {
  const auto has = [&](const std::vector<std::size_t>& sizes) {
    return std::find(sizes.begin(), sizes.end(), size) != sizes.end();
  };
  return piece.length <= job.sizes[size].length && has(job.kinds[piece.kind].sizes) &&
         (!piece.sizes || has(*piece.sizes));
}

CuttingProblem in_mm(const WholeJob& job) {
  CuttingProblem out;
  for (const WholeSize& size : job.sizes)
    out.sizes.push_back({size.width * job.unit, size.length * job.unit, size.count, size.to_buy});
  for (const WholeKind& kind : job.kinds) out.kinds.push_back({kind.width * job.unit, kind.sizes});
  for (const WholePiece& piece : job.pieces)
    out.pieces.push_back({piece.kind, piece.length * job.unit, piece.count, piece.run, piece.sizes});
  out.rules = {job.kerf * job.unit, job.rip_kerf * job.unit, job.trued * job.unit, job.hold * job.unit};
  return out;
}

std::ostream& operator<<(std::ostream& out, const WholeJob& job) {
  out << "WholeJob{" << number(job.unit) << ",\n  {";
  for (const WholeSize& size : job.sizes) {
    out << "{" << size.width << ", " << size.length << ", "
        << (size.count ? std::to_string(*size.count) : "std::nullopt") << ", "
        << (size.to_buy ? "true" : "false") << "}, ";
  }
  out << "},\n  {";
  for (const WholeKind& kind : job.kinds) {
    out << "{" << kind.width << ", {";
    for (const std::size_t size : kind.sizes) out << size << ", ";
    out << "}}, ";
  }
  out << "},\n  {";
  for (const WholePiece& piece : job.pieces) {
    out << "{" << piece.kind << ", " << piece.length << ", " << piece.count << ", " << piece.run;
    if (piece.sizes) {
      out << ", std::vector<std::size_t>{";
      for (const std::size_t size : *piece.sizes) out << size << ", ";
      out << "}";
    }
    out << "}, ";
  }
  return out << "},\n  " << job.kerf << ", " << job.rip_kerf << ", " << job.trued << ", " << job.hold << "}";
}

std::ostream& operator<<(std::ostream& out, const Sums& sums) {
  return out << "missing " << sums.missing << ", bought " << sums.bought << ", boards " << sums.boards
             << ", area " << sums.area << ", strips " << sums.strips;
}

Sums sums_of(const WholeJob& job, const std::vector<std::pair<std::size_t, std::size_t>>& boards) {
  Sums out;
  std::vector<int> used(job.sizes.size());
  for (const auto& [s, strips] : boards) {
    const WholeSize& size = job.sizes[s];
    ++used[s];
    out.area += std::int64_t{size.width} * size.length;
    out.strips += static_cast<std::int64_t>(strips) * size.length;
  }
  out.boards = static_cast<int>(boards.size());
  for (std::size_t s = 0; s < used.size(); ++s) {
    const WholeSize& size = job.sizes[s];
    const int missing = size.count ? std::max(0, used[s] - *size.count) : 0;
    out.missing += missing;
    if (size.to_buy) out.bought += used[s] - missing;
  }
  return out;
}

Sums sums_of(const WholeJob& job, const CuttingPlan& plan) {
  std::vector<std::pair<std::size_t, std::size_t>> boards;
  for (const CutBoard& board : plan.boards) boards.emplace_back(board.size, board.strips.size());
  return sums_of(job, boards);
}

bool rips_in_order(const WholeJob& job, int board_width, const std::vector<int>& widths) {
  int left = board_width;
  for (const int width : widths) {
    if (left < width || left < job.hold) return false;
    left -= width + job.rip_kerf + job.trued;
  }
  return true;
}

std::vector<std::string> faults(const WholeJob& job, const CuttingPlan& plan) {
  std::vector<std::string> out;
  std::vector<int> cut(job.pieces.size());
  std::vector<int> used(job.sizes.size());
  for (const CutBoard& board : plan.boards) {
    if (board.size >= job.sizes.size()) {
      out.push_back("a board of no size");
      continue;
    }
    const WholeSize& size = job.sizes[board.size];
    ++used[board.size];
    if (board.strips.empty()) out.push_back("a board that nothing is cut from");
    std::vector<int> widths;
    for (const CutStrip& strip : board.strips) {
      if (strip.kind >= job.kinds.size()) {
        out.push_back("a strip of no kind");
        continue;
      }
      const std::vector<std::size_t>& allowed = job.kinds[strip.kind].sizes;
      if (std::find(allowed.begin(), allowed.end(), board.size) == allowed.end())
        out.push_back("a strip from a board that its kind may not be ripped from");
      widths.push_back(job.kinds[strip.kind].width);
      if (strip.pieces.empty()) out.push_back("a strip without pieces");
      int length = -job.kerf;
      for (const std::size_t piece : strip.pieces) {
        if (piece >= job.pieces.size()) {
          out.push_back("no such piece");
          continue;
        }
        if (job.pieces[piece].kind != strip.kind) out.push_back("a piece from a strip of another kind");
        if (!may_be_from(job, job.pieces[piece], board.size))
          out.push_back("a piece from a board that it may not come from");
        length += job.pieces[piece].length + job.kerf;
        ++cut[piece];
      }
      if (length > size.length) out.push_back("property 2: pieces longer than their board");
    }
    if (!rips_in_order(job, size.width, widths)) out.push_back("property 3: strips that do not rip");
  }
  for (std::size_t p = 0; p < cut.size(); ++p)
    if (cut[p] != job.pieces[p].count) out.push_back("property 1: a piece not cut as often as wanted");
  if (plan.missing.size() != job.sizes.size()) {
    out.push_back("not one figure of boards missing for each size");
  } else {
    for (std::size_t s = 0; s < used.size(); ++s) {
      const int missing = job.sizes[s].count ? std::max(0, used[s] - *job.sizes[s].count) : 0;
      if (plan.missing[s] != missing) out.push_back("a wrong figure of boards missing");
    }
  }
  if (plan.bound > plan.boards.size()) out.push_back("a bound over the boards of the plan");
  if (plan.optimal && plan.bound != plan.boards.size())
    out.push_back("optimal with more boards than the bound");
  return out;
}

namespace {

std::map<std::pair<int, std::size_t>, int> pieces_of_runs(const WholeJob& job) {
  std::map<std::pair<int, std::size_t>, int> out;
  for (const WholePiece& piece : job.pieces)
    if (piece.run >= 0) out[{piece.run, piece.kind}] += piece.count;
  return out;
}

}  // namespace

int runs_of_several(const WholeJob& job) {
  int out = 0;
  for (const auto& [run, count] : pieces_of_runs(job)) out += count > 1;
  return out;
}

int runs_kept(const WholeJob& job, const CuttingPlan& plan) {
  std::map<std::pair<int, std::size_t>, int> strips;  // that each run is cut from
  for (const CutBoard& board : plan.boards) {
    for (const CutStrip& strip : board.strips) {
      std::set<int> here;
      for (const std::size_t piece : strip.pieces) here.insert(job.pieces[piece].run);
      for (const int run : here) ++strips[{run, strip.kind}];
    }
  }
  int out = 0;
  for (const auto& [run, count] : pieces_of_runs(job)) out += count > 1 && strips[run] == 1;
  return out;
}

namespace {

int between(std::mt19937& random, int low, int high) {
  // Not uniform_int_distribution: the libraries differ in what it gives.
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

bool one_in(std::mt19937& random, int times) {
  return between(random, 1, times) == 1;
}

/// Whether the piece fits some board, alone.
bool stands(const WholeJob& job, const WholePiece& piece) {
  for (std::size_t s = 0; s < job.sizes.size(); ++s) {
    if (may_be_from(job, piece, s) && rips_in_order(job, job.sizes[s].width, {job.kinds[piece.kind].width}))
      return true;
  }
  return false;
}

}  // namespace

WholeJob random_job(std::mt19937& random, const Bounds& bounds) {
  constexpr double kUnits[] = {1, 0.1, 25.4 / 16, 1.0 / 3};
  while (true) {
    WholeJob job;
    job.unit = kUnits[between(random, 0, 3)];
    job.kerf = one_in(random, 3) ? 0 : between(random, 1, 3);
    job.rip_kerf = one_in(random, 3) ? 0 : between(random, 1, 3);
    job.trued = one_in(random, 2) ? 0 : between(random, 1, 2);
    const int sizes = between(random, 1, bounds.sizes);
    for (int s = 0; s < sizes; ++s) {
      WholeSize size;
      size.width = between(random, 6, 30);
      size.length = between(random, bounds.shortest, bounds.longest);
      if (!one_in(random, 3)) size.count = between(random, 0, 3);
      size.to_buy = one_in(random, 3);
      job.sizes.push_back(size);
    }
    job.hold = one_in(random, 2) ? 0 : between(random, 3, 16);
    const int kinds = between(random, 1, bounds.kinds);
    for (int k = 0; k < kinds; ++k) {
      WholeKind kind;
      kind.width = between(random, 3, 15);
      for (std::size_t s = 0; s < job.sizes.size(); ++s)
        if (!one_in(random, 5)) kind.sizes.push_back(s);
      job.kinds.push_back(kind);
    }
    int left = between(random, 1, bounds.pieces);
    for (int e = 0; e < bounds.entries && left > 0; ++e) {
      WholePiece piece;
      piece.kind = static_cast<std::size_t>(between(random, 0, kinds - 1));
      piece.length =
          between(random, std::max(1, bounds.longest / 8), std::min(bounds.longest, bounds.longest_piece));
      piece.count = between(random, 1, std::max(1, left * 2 / 3));
      if (bounds.runs && !one_in(random, 3)) piece.run = between(random, 0, 1);
      if (bounds.choosy && one_in(random, 2)) {
        piece.sizes.emplace();
        for (std::size_t s = 0; s < job.sizes.size(); ++s)
          if (one_in(random, 2)) piece.sizes->push_back(s);
      }
      left -= piece.count;
      job.pieces.push_back(piece);
    }
    std::erase_if(job.pieces, [&](const WholePiece& piece) { return !stands(job, piece); });
    if (!job.pieces.empty()) return job;
  }
}

unsigned number_from(const char* name, unsigned otherwise) {
  const char* given = std::getenv(name);
  if (given == nullptr) return otherwise;
  unsigned out = otherwise;
  std::from_chars(given, given + std::strlen(given), out);
  return out;
}

}  // namespace arrisline::cutting_tests
