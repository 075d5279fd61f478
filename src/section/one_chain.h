// The plain case of a moulding, one chain from the face, and how large any is.
#pragma once

#include <vector>

#include "section/drawing.h"
#include "section/walk.h"

namespace arrisline {

/// The work is one chain, from the face to the working edge or the underside.
bool is_one_chain(const Drawing& drawing);

/// It ends on the underside. REQUIRES: is_one_chain().
bool ends_on_underside(const Drawing& drawing);

/// The least and the greatest that the strokes reach, their arcs with them, from where the first begins.
Reach reach_of(const std::vector<Stroke>& strokes);

/// How far the strokes reach in all: out as x (projection), and deep as y (height).
Point extent_of(const std::vector<Stroke>& strokes);
/// The same of all chains as they lie on the stock.
Point extent_of(const Drawing& drawing);

}  // namespace arrisline
