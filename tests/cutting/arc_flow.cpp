// Shown by tests/cutting/glpsol_test.cpp. After J. M. Valério de Carvalho's arc-flow model of cutting stock
// (from memory), in two stages: neither patterns nor which strip comes last are thought of.
#include "cutting/arc_flow.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace arrisline::cutting_tests {
namespace {

constexpr std::int64_t kWeight = kMostBoards + 1;

/// The size whose boards cost one more each, where there are two of different area.
std::optional<std::size_t> larger(const WholeJob& job) {
  if (job.sizes.size() != 2) return std::nullopt;
  const auto area = [&](std::size_t s) { return job.sizes[s].width * job.sizes[s].length; };
  if (area(0) == area(1)) return std::nullopt;
  return area(0) > area(1) ? 0 : 1;
}

/// Arcs of one flow: what comes to each node and leaves it.
class Flow {
 public:
  Flow(std::string name, std::vector<std::string>& variables)
      : name_(std::move(name)), variables_(variables) {}

  std::string arc(int from, int to, const std::string& what) {
    std::string variable = name_ + "_" + std::to_string(from) + "_" + what;
    variables_.push_back(variable);
    balance_[from] += " - " + variable;
    balance_[to] += " + " + variable;
    return variable;
  }
  /// `entering`: the variable of what comes to the first node. Node −1 is the end, and takes all.
  void write(std::ostream& out, int first, const std::string& entering) {
    balance_[first] += " + " + entering;
    for (const auto& [node, terms] : balance_)
      if (node >= 0) out << " at_" << name_ << "_" << node << ":" << terms << " = 0\n";
  }

 private:
  std::string name_;
  std::vector<std::string>& variables_;
  std::map<int, std::string> balance_;
};

}  // namespace

std::int64_t flow_objective(const WholeJob& job, const CuttingPlan& plan) {
  const Sums sums = sums_of(job, plan);
  const auto of_larger = std::count_if(plan.boards.begin(), plan.boards.end(),
                                       [&](const CutBoard& board) { return larger(job) == board.size; });
  return ((sums.missing * kWeight + sums.bought) * kWeight + sums.boards) * kWeight + of_larger;
}

void write_flow(std::ostream& out, const WholeJob& job) {
  std::vector<std::string> cut(job.pieces.size());  // the arcs that are such a piece
  std::vector<std::string> variables;
  out << "Minimize\n obj:";
  for (std::size_t s = 0; s < job.sizes.size(); ++s) {
    const std::string n = std::to_string(s);
    const std::int64_t bought = job.sizes[s].to_buy ? kWeight * kWeight : 0;
    out << " + " << bought + kWeight + (larger(job) == s ? 1 : 0) << " boards" << n;
    variables.push_back("boards" + n);
    if (!job.sizes[s].count) continue;
    out << " + " << kWeight * kWeight * kWeight - bought << " missing" << n;
    variables.push_back("missing" + n);
  }
  out << "\nSubject To\n";
  for (std::size_t s = 0; s < job.sizes.size(); ++s) {
    const WholeSize& size = job.sizes[s];
    const std::string n = std::to_string(s);
    if (size.count)
      out << " count" << n << ": boards" << n << " - missing" << n << " <= " << *size.count << "\n";

    // Across: a node is the width that is left.
    std::map<std::size_t, std::string> ripped;  // the arcs that are a strip of a kind
    Flow across("w" + n, variables);
    std::set<int, std::greater<>> left{size.width};
    for (auto at = left.begin(); at != left.end(); ++at) {
      for (std::size_t k = 0; k < job.kinds.size(); ++k) {
        const WholeKind& kind = job.kinds[k];
        if (std::find(kind.sizes.begin(), kind.sizes.end(), s) == kind.sizes.end()) continue;
        if (*at < kind.width || *at < job.hold) continue;
        const int then = std::max(-1, *at - kind.width - job.rip_kerf - job.trued);
        if (then >= 0) left.insert(then);
        ripped[k] += " + " + across.arc(*at, then, "k" + std::to_string(k));
      }
      across.arc(*at, -1, "end");
    }
    across.write(out, size.width, "boards" + n);

    // Along a strip of each kind: a node is where the next piece begins.
    for (const auto& [k, arcs] : ripped) {
      const std::string strips = "strips" + n + "_" + std::to_string(k);
      variables.push_back(strips);
      out << " rip" << n << "_" << k << ":" << arcs << " - " << strips << " >= 0\n";
      Flow along("l" + n + "_" + std::to_string(k), variables);
      std::set<int> begins{0};
      for (auto at = begins.begin(); at != begins.end(); ++at) {
        for (std::size_t p = 0; p < job.pieces.size(); ++p) {
          const WholePiece& piece = job.pieces[p];
          if (piece.kind != k || !may_be_from(job, piece, s) || *at + piece.length > size.length) continue;
          const int then = *at + piece.length + job.kerf;
          begins.insert(then);
          cut[p] += " + " + along.arc(*at, then, "p" + std::to_string(p));
        }
        along.arc(*at, -1, "end");
      }
      along.write(out, 0, strips);
    }
  }
  for (std::size_t p = 0; p < job.pieces.size(); ++p)
    out << " piece" << p << ":" << cut[p] << " >= " << job.pieces[p].count << "\n";
  out << "General\n";
  for (const std::string& variable : variables) out << " " << variable << "\n";
  out << "End\n";
}

}  // namespace arrisline::cutting_tests
