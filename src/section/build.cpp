// From chains to one closed outline: what each chain takes off the blank's own outline is replaced by the
// chain. The outline is then searched for places where it meets itself. Shown by
// tests/section/chains_test.cpp, section_mistakes_test.cpp and properties_test.cpp.
#include <algorithm>
#include <cmath>
#include <string>

#include "section/contacts.h"
#include "section/drawing.h"
#include "section/walk.h"

namespace arrisline {

namespace {

/// Self-crossings reported before the search stops.
constexpr std::size_t kMostContacts = 20;
/// Edges whose directions at a joint differ by less than this from a full turn back close to nothing, in
/// radians.
constexpr double kCleft = 1e-6;

/// A chain on the blank, with its ends as distances round the outline.
struct Placed {
  Path path;
  double from = 0;
  double to = 0;
};

/// Closed: the chains with what lies between them.
using Outline = Path;

const Element& element(const Drawing& drawing, int index) {
  return drawing.elements[static_cast<std::size_t>(index)];
}

bool in_one_chain(const Drawing& drawing, int a, int b) {
  return drawing.chain_of[static_cast<std::size_t>(a)] == drawing.chain_of[static_cast<std::size_t>(b)];
}

/// An element beside another: with its line where it is of a different chain, since both may have its number.
std::string beside(const Drawing& drawing, int index, int other) {
  std::string text = describe(element(drawing, index));
  if (other < 0 || in_one_chain(drawing, index, other)) return text;
  return text + " of line " + std::to_string(element(drawing, index).line);
}

Outline splice(const Drawing& drawing, const std::vector<Placed>& chains) {
  Outline out;
  for (std::size_t i = 0; i < chains.size(); ++i) {
    const Placed& chain = chains[i];
    const Placed& next = chains[(i + 1) % chains.size()];
    out.edges.insert(out.edges.end(), chain.path.edges.begin(), chain.path.edges.end());
    out.source.insert(out.source.end(), chain.path.source.begin(), chain.path.source.end());
    follow_outline(drawing.width, drawing.thickness, next.path.edges.front().from, out);
  }
  close_outline(out.edges);
  return out;
}

/// An element of the chain to name, near the end that comes first round the outline.
int first_source(const Path& path) {
  const auto found = std::find_if(path.source.begin(), path.source.end(), [](int s) { return s >= 0; });
  return found == path.source.end() ? 0 : *found;
}

/// The elements of two chains that run through one another, or those next to where they meet.
std::pair<int, int> overlapping(const Path& a, const Path& b) {
  std::vector<Edge> both = a.edges;
  both.insert(both.end(), b.edges.begin(), b.edges.end());
  for (const SelfContact& contact : find_contacts(both, false, kMostContacts).list) {
    if (contact.first >= a.edges.size() || contact.second < a.edges.size()) continue;
    const int one = a.source[contact.first];
    const int two = b.source[contact.second - a.edges.size()];
    if (one >= 0 && two >= 0) return {one, two};
  }
  return {first_source(a), first_source(b)};
}

bool check_apart(const Drawing& drawing, const std::vector<Placed>& chains, Mistakes& mistakes) {
  const double round = 2 * (drawing.width + drawing.thickness);
  const auto ahead = [&](double from, double to) { return to >= from ? to - from : to - from + round; };
  bool apart = true;
  for (std::size_t i = 0; chains.size() > 1 && i < chains.size(); ++i) {
    const Placed& one = chains[i];
    const Placed& two = chains[(i + 1) % chains.size()];
    if (ahead(one.from, one.to) <= ahead(one.from, two.from) && one.from != two.from) continue;
    auto [a, b] = overlapping(one.path, two.path);
    if (a > b) std::swap(a, b);
    mistakes.error(drawing.places[static_cast<std::size_t>(b)],
                   "chains overlap: " + describe(element(drawing, b)) + " and " + beside(drawing, a, b) +
                       " take away the same wood; start one farther off");
    apart = false;
    if (chains.size() == 2) break;  // the second is beside the first both ways round
  }
  return apart;
}

/// What to call an edge of the outline, and the place to point at: an element, or a side of the stock.
struct Named {
  std::string text;
  int source = -1;
};

Named name_of(const Drawing& drawing, const Outline& outline, std::size_t i, int other = -1) {
  if (outline.source[i] >= 0) return {beside(drawing, outline.source[i], other), outline.source[i]};
  const Edge& edge = outline.edges[i];
  if (edge.from.y == 0 && edge.to.y == 0) return {"the face", -1};
  if (edge.from.y == drawing.thickness && edge.to.y == drawing.thickness) return {"the underside", -1};
  return {edge.from.x == 0 ? "the working edge" : "the back edge", -1};
}

/// "element 2 (step)", or the two elements that join where the outline is met.
std::string meeting_there(const Drawing& drawing, const Outline& outline, std::size_t i, Point at) {
  const std::size_t n = outline.edges.size();
  std::size_t before = i;
  std::size_t after = i;
  if (distance(at, outline.edges[i].from) <= kSamePoint) before = (i + n - 1) % n;
  if (distance(at, outline.edges[i].to) <= kSamePoint) after = (i + 1) % n;
  int a = outline.source[before];
  int b = outline.source[after];
  if (a > b) std::swap(a, b);
  if (a < 0 || a == b) return describe(element(drawing, std::max(a, b))) + " meets ";
  return describe(element(drawing, a)) + " and " + describe(element(drawing, b)) + " meet ";
}

void report(const Drawing& drawing, const Outline& outline, const SelfContact& contact, Mistakes& mistakes,
            bool& sound) {
  std::size_t edge = contact.first;
  std::size_t other_edge = contact.second;
  if (outline.source[edge] < outline.source[other_edge]) std::swap(edge, other_edge);
  const Named later = name_of(drawing, outline, edge);
  const Named other = name_of(drawing, outline, other_edge, later.source);
  Place place;
  if (later.source >= 0) place = drawing.places[static_cast<std::size_t>(later.source)];
  const bool one_chain = other.source >= 0 && in_one_chain(drawing, later.source, other.source);
  switch (contact.meeting) {
    case Meeting::crosses:
      mistakes.error(place, std::string(one_chain ? "the chain crosses itself: " : "chains cross: ") +
                                later.text + " runs through or along " + other.text +
                                "; check their lengths and directions");
      sound = false;
      return;
    case Meeting::pinches_in: {
      const bool on_stock = later.source >= 0 && other.source < 0;
      const std::string who =
          on_stock ? meeting_there(drawing, outline, edge, contact.at) : later.text + " meets ";
      mistakes.error(place,
                     "a piece of wood is left unattached where " + who + other.text + "; make one shorter");
      sound = false;
      return;
    }
    case Meeting::pinches_out:
      mistakes.warn(place, later.text + " touches " + other.text +
                               " and closes off a pocket that no plane can reach; move them apart");
      return;
  }
}

double curvature(const Edge& edge) {
  if (!edge.is_arc()) return 0;
  return (edge.turn == Turn::left ? 1 : -1) / radius(edge);
}

/// Warns of joints where the outline turns straight back: a cleft in the wood, or a feather edge of it.
void warn_of_clefts(const Drawing& drawing, const Outline& outline, Mistakes& mistakes) {
  const std::size_t n = outline.edges.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const Point in = direction_at(outline.edges[i], 1);
    const Point out = direction_at(outline.edges[j], 0);
    if (dot(in, out) > 0 || std::abs(cross(in, out)) > kCleft) continue;
    Named later = name_of(drawing, outline, i);
    Named other = name_of(drawing, outline, j);
    if (later.source < other.source) std::swap(later, other);
    if (later.source < 0) continue;
    const bool wood_between = -curvature(outline.edges[i]) > curvature(outline.edges[j]);
    mistakes.warn(drawing.places[static_cast<std::size_t>(later.source)],
                  later.text + " and " + other.text +
                      (wood_between ? " meet in a feather edge of no thickness; put a fillet between them"
                                    : " close to nothing where they meet: no plane can reach into the cleft; "
                                      "put a fillet between them"));
  }
}

}  // namespace

std::optional<Section> build_section(const Drawing& drawing, Mistakes& mistakes) {
  const std::size_t errors_before = mistakes.errors;
  std::vector<Placed> chains;
  for (const DrawnChain& chain : drawing.chains) {
    std::optional<Path> path = walk(drawing, chain, mistakes);
    if (!path) continue;
    const double from = along_outline(drawing.width, drawing.thickness, path->edges.front().from);
    const double to = along_outline(drawing.width, drawing.thickness, path->edges.back().to);
    chains.push_back({std::move(*path), from, to});
  }
  if (chains.size() < drawing.chains.size() || chains.empty()) return std::nullopt;
  std::stable_sort(chains.begin(), chains.end(),
                   [](const Placed& a, const Placed& b) { return a.from < b.from; });
  if (!check_apart(drawing, chains, mistakes)) return std::nullopt;

  Outline outline = splice(drawing, chains);
  const Contacts contacts = find_contacts(outline.edges, true, kMostContacts);
  bool sound = true;
  for (const SelfContact& contact : contacts.list) report(drawing, outline, contact, mistakes, sound);
  if (!contacts.complete) {
    mistakes.error(drawing.chains.front().place,
                   "the chain is too intricate to be checked: its elements lie too closely side by side; "
                   "draw it with fewer");
  }
  if (!sound || mistakes.errors > errors_before) return std::nullopt;
  warn_of_clefts(drawing, outline, mistakes);

  Section section;
  section.name = drawing.name;
  section.width = drawing.width;
  section.thickness = drawing.thickness;
  section.target = std::move(outline.edges);
  section.source = std::move(outline.source);
  section.elements = drawing.elements;
  return section;
}

}  // namespace arrisline
