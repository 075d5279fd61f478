// A section taken back to the drawing that it would be read from.
#pragma once

#include <vector>

#include "section/drawing.h"

namespace arrisline {

/// The chains of a section, each from its start on, with one stroke for each edge that has to be cut and one
/// for each that runs along the stock between such; those have elements of their own, named as what they are.
/// Trade shapes keep the names of their parts. REQUIRES: a section as build_section() gives it, whose
/// elements lie chain by chain, numbered from 1 in each.
///
/// `sources`, where given, gets the element of the section for each stroke, chain by chain; −1 for one along
/// the stock.
Drawing drawing_of(const Section& section, Unit unit, std::vector<int>* sources = nullptr);

/// The elements of the section that the strokes of its drawing were drawn as. One along the stock is no part
/// of what is cut, but it has an element that may come to be: the one that stands where it does between
/// elements that are cut. −1 for what leads to a chain that begins on the edge it runs toward, which nobody
/// drew. `sources`: as drawing_of() gives them.
std::vector<int> drawn_as(const Section& section, const Drawing& drawing, const std::vector<int>& sources);

/// "step", "fillet", "bevel", "bead", "cove": what a stroke is called by itself.
const char* plain_name(const Stroke& stroke);

}  // namespace arrisline
