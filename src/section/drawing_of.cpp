// The way back from edges on the stock to strokes in the reading of each chain's side. Shown by
// tests/text/write_profile_test.cpp, which reads what is written.
#include "section/drawing_of.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>

#include "section/walk.h"

namespace arrisline {
namespace {

/// For each element the number of its chain, counted in the order of the elements.
std::vector<int> chains_of(const std::vector<Element>& elements) {
  std::vector<int> out;
  int chain = 0;
  for (std::size_t i = 0; i < elements.size(); ++i) {
    if (i > 0) {
      const Element& before = elements[i - 1];
      const Element& here = elements[i];
      const bool again =
          here.number < before.number || (here.number == before.number && here.part <= before.part);
      if (here.chain != before.chain || again) ++chain;
    }
    out.push_back(chain);
  }
  return out;
}

/// The edges of one chain in the order of the target, those along the stock between them included.
struct Run {
  std::size_t first = 0;
  std::size_t count = 0;
};

Run run_of(const Section& section, const std::vector<int>& chain_of, int chain) {
  const std::size_t n = section.target.size();
  auto belongs = [&](std::size_t i) {
    const int source = section.source[i % n];
    return source >= 0 && chain_of[static_cast<std::size_t>(source)] == chain;
  };
  // Whatever is not of the chain lies outside its run, in one piece with an edge along the stock: the longest
  // stretch without the chain is what the run leaves out.
  Run best;
  std::size_t longest = 0;
  for (std::size_t i = 0; i < n; ++i) {
    if (!belongs(i)) continue;
    std::size_t others = 0;
    bool strange = false;  // an element of another chain: certainly outside
    while (others < n && !belongs(i + 1 + others)) {
      strange = strange || section.source[(i + 1 + others) % n] >= 0;
      ++others;
    }
    const std::size_t weight = others + (strange ? n : 0);
    if (best.count == 0 || weight > longest) {
      longest = weight;
      best = {(i + 1 + others) % n, n - others};
    }
  }
  return best;
}

/// Where the chain starts. One that begins on the edge that it runs toward has to come there along the stock.
template <class Add>
void begin(const Section& section, Point from, DrawnChain& drawn, const Add& add) {
  drawn.from_back = from.y != 0 && from.x == section.width;
  drawn.start = drawn.from_back ? from.y : from.x;
  if (from.y == 0 || drawn.from_back) return;
  drawn.start = section.width / 4;
  add(Edge{{drawn.start, 0}, {0, 0}, {}, Turn::straight}, -1);
  add(Edge{{0, 0}, from, {}, Turn::straight}, -1);
}

}  // namespace

const char* plain_name(const Stroke& stroke) {
  if (stroke.turn != Turn::straight) return stroke.turn == Turn::right ? "bead" : "cove";
  if (stroke.move.x == 0) return "step";
  return stroke.move.y == 0 ? "fillet" : "bevel";
}

Drawing drawing_of(const Section& section, Unit unit, std::vector<int>* sources) {
  Drawing out;
  out.name = section.name;
  out.unit = unit;
  out.width = section.width;
  out.thickness = section.thickness;
  const std::vector<int> chain_of = chains_of(section.elements);
  const int chains = chain_of.empty() ? 0 : chain_of.back() + 1;
  for (int chain = 0; chain < chains; ++chain) {
    const Run run = run_of(section, chain_of, chain);
    if (run.count == 0) continue;
    const auto of_chain =
        static_cast<std::size_t>(std::find(chain_of.begin(), chain_of.end(), chain) - chain_of.begin());
    DrawnChain drawn;
    drawn.side = section.elements[of_chain].chain;
    auto add = [&](const Edge& edge, int source) {
      Stroke stroke;
      stroke.move = edge.to - edge.from;
      stroke.turn = edge.turn;
      if (edge.is_arc()) {
        stroke.radius = radius(edge);
        stroke.large = std::abs(sweep(edge)) > kPi + 1e-9;
      }
      stroke.element = static_cast<int>(out.elements.size());
      Element element = source >= 0 ? section.elements[static_cast<std::size_t>(source)] : Element{};
      if (source < 0) element.name = plain_name(stroke);
      element.number = static_cast<int>(drawn.strokes.size()) + 1;
      element.part = 0;
      element.chain = drawn.side;
      out.elements.push_back(element);
      out.places.push_back({});
      out.chain_of.push_back(chain + 1);
      drawn.strokes.push_back(stroke);
      if (sources) sources->push_back(source);
    };
    for (std::size_t k = 0; k < run.count; ++k) {
      const std::size_t along = drawn.side == Chain::face ? run.count - 1 - k : k;
      const std::size_t at = (run.first + along) % section.target.size();
      const Edge edge = turned_round(section.width, section.thickness, drawn.side, section.target[at]);
      if (k == 0) begin(section, edge.from, drawn, add);
      add(edge, section.source[at]);
    }
    out.chains.push_back(drawn);
  }
  return out;
}

std::vector<int> drawn_as(const Section& section, const Drawing& drawing, const std::vector<int>& sources) {
  const auto same_chain = [&](int earlier, int later) {
    const Element& a = section.elements[static_cast<std::size_t>(earlier)];
    const Element& b = section.elements[static_cast<std::size_t>(later)];
    return a.chain == b.chain && std::pair(a.number, a.part) < std::pair(b.number, b.part);
  };
  std::vector<int> out = sources;
  std::size_t first = 0;
  for (const DrawnChain& chain : drawing.chains) {
    const std::size_t end = first + chain.strokes.size();
    for (std::size_t s = first; s + 1 < end; ++s) {
      if (sources[s] < 0 && s > first) out[s] = out[s - 1] < 0 ? -1 : out[s - 1] + 1;
    }
    // Before the first that is cut, counted back from it.
    std::size_t cut = first;
    while (cut < end && sources[cut] < 0) ++cut;
    for (std::size_t s = cut; cut < end && s > first + 1; --s) {
      const int element = out[s] - 1;
      out[s - 1] = element >= 0 && same_chain(element, sources[cut]) ? element : -1;
      if (out[s - 1] < 0) break;
    }
    first = end;
  }
  return out;
}

}  // namespace arrisline
