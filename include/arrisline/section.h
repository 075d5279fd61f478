// The section at the end grain: the blank, the target that must remain, and which statement of the
// profile each part of the outline came from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arrisline/geometry.h"

namespace arrisline {

enum class Chain { face, underside, back };

/// "face", "underside" or "back".
const char* word(Chain chain);

/// One edge of the target that the maker has to cut, traced back to the profile.
struct Element {
  int number = 0;  // statement within its chain, from 1 after each `start`
  int part = 0;    // part of a trade shape, from 1; 0 where the statement is a single element
  Chain chain = Chain::face;
  std::string name;  // as the maker wrote it: "bead", "ovolo", "ogee (cove)"
  int line = 0;      // of the profile file, from 1; 0 where there is none
};

/// "element 2 (bead)", with the chain where it is not the face's.
std::string describe(const Element& element);

/// A profile on its blank. Lengths in mm.
///
/// The blank is 0 ≤ x ≤ width, 0 ≤ y ≤ thickness. `target` is the closed outline of the wood that must
/// remain, interior to the left (counter-clockwise in plain numbers), no edge shorter than 1e-6 mm, both
/// ends of each arc within 1e-6 mm of its radius. `source[i]` is an index into `elements`, or −1 where
/// target[i] lies on the blank's own outline and nothing has to be cut.
struct Section {
  std::string name;
  double width = 0;
  double thickness = 0;
  Loop target;
  std::vector<int> source;
  std::vector<Element> elements;
};

/// How far in from the working edge the work reaches, mm; 0 where nothing has to be cut.
double reach(const Section& section);
/// Some of the work begins, ends or lies on the back edge, so that it belongs to this width.
bool works_back_edge(const Section& section);
/// The same profile on a blank of another width: what has to be cut keeps its place from the working edge.
/// Nothing where the work is of the back edge and the width another, or where it reaches past the new width.
std::optional<Section> on_width(const Section& section, double width);

/// The blank as an outline, interior to the left.
Loop blank_outline(double width, double thickness);

/// Lets each edge begin just where the one before it ends. Left open by no more than rounding, an outline
/// would take a point level with the gap for one inside. REQUIRES: the ends differ by rounding at most.
void close_outline(Loop& outline);

}  // namespace arrisline
