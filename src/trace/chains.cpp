// Shown by tests/trace/round_trip_test.cpp.
#include "trace/chains.h"

#include <algorithm>
#include <string>
#include <vector>

namespace arrisline {

namespace {

/// As the section has it: its edges run the other way, the wood to their left.
std::string name_of(const Edge& edge) {
  if (edge.is_arc()) return edge.turn == Turn::left ? "bead" : "cove";
  if (edge.from.x == edge.to.x) return "step";
  if (edge.from.y == edge.to.y) return "fillet";
  return "bevel";
}

}  // namespace

void number_elements(Section& section) {
  const std::size_t n = section.target.size();
  struct Run {
    std::size_t first = 0;
    std::size_t count = 0;
    Chain chain = Chain::face;
  };
  std::vector<Run> runs;
  for (std::size_t i = 0; i < n; ++i) {
    if (section.source[i] < 0 || section.source[(i + n - 1) % n] >= 0) continue;
    Run run{i, 0, Chain::face};
    while (section.source[(i + run.count) % n] >= 0 && run.count < n) ++run.count;
    const Point from = section.target[i].from;
    const Point to = section.target[(i + run.count - 1) % n].to;
    const bool upper_right = to.x == section.width && to.y != section.thickness;
    if (to.y != 0) run.chain = upper_right ? Chain::back : Chain::underside;
    if (to.y == 0 && from.y == 0 && from.x > to.x) run.chain = Chain::face;
    runs.push_back(run);
  }
  std::stable_sort(runs.begin(), runs.end(), [](const Run& a, const Run& b) { return a.chain < b.chain; });
  for (const Run& run : runs) {
    for (std::size_t k = 0; k < run.count; ++k) {
      const std::size_t along = run.chain == Chain::face ? run.count - 1 - k : k;
      const std::size_t at = (run.first + along) % n;
      Element element;
      element.number = static_cast<int>(k) + 1;
      element.chain = run.chain;
      element.name = name_of(section.target[at]);
      section.source[at] = static_cast<int>(section.elements.size());
      section.elements.push_back(element);
    }
  }
}

}  // namespace arrisline
