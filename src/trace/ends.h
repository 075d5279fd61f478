// The sides of the blank that a line runs into, and what was not traced of them.
#pragma once

#include "trace/chain.h"

namespace arrisline {

/// Where a line ends.
enum class Reached { edge_or_underside, face, start };  // face: a flute; start: closed

/// Which sides of the blank an open line shows, and which its ends lie on.
struct TracedEnds {
  bool closed = false;
  bool flute = false;         // from the face back to the face
  bool from_back = false;     // from the back edge; otherwise from the face
  bool to_underside = false;  // to the underside; otherwise to the working edge, or the face
  bool face_traced = true;    // the first link is a piece of the face
  bool edge_traced = true;    // the last link is a piece of the working edge, the underside or the face
};

/// REQUIRES: the line lies as lay() has left it.
TracedEnds ends_of(const Samples& samples, const Fitted& fitted, Reached reached, const Allowed& allowed);

/// Whether a link is, by the samples, level or upright.
bool runs(const Samples& samples, const Fitted& fitted, std::size_t link, Held::Axis axis,
          const Allowed& allowed);

/// An end whose side was not traced gets a piece of it, so that what meets it has something to meet.
void put_stubs(Samples& samples, Fitted& fitted, const TracedEnds& ends);

/// Closes a target that has its worked part alone by the outline of the stock.
void close_round(Section& section, const TracedEnds& ends);

}  // namespace arrisline
