// Where face and working edge lie in a tracing.
#pragma once

#include <optional>

#include "arrisline/trace.h"
#include "trace/chain.h"

namespace arrisline {

/// How a tracing was laid into the frame of the section, y down from the face and x from the working edge.
struct Laid {
  double turned = 0;  // degrees it lay askew
  bool mirrored = false;
  bool may_be_mirrored = false;  // as FittedProfile has it
  bool flute = false;            // both ends lie on the face
};

/// The angle that the most of the flats lie askew by, in degrees within ±10; 0 where what there is of flats
/// may as well lie straight.
double askew(const Samples& samples, const Fitted& fitted, const Allowed& allowed);

/// Turns and mirrors samples and line so that the face is up (y is depth) and the working edge at the left,
/// and so that an open line runs from the face to the working edge. A file that says which way up it is drawn
/// is believed; in a list of points the working edge is the left one unless `edge` says otherwise, which
/// tells which way is up. `closed` lines run with the wood to the right, and their work is brought to the
/// corner of face and working edge.
Laid lay(Samples& samples, Fitted& fitted, bool closed, Upward upward, std::optional<EdgeAt> edge,
         const Allowed& allowed);

/// Moves everything by so much.
void shift(Samples& samples, Fitted& fitted, Point by);

}  // namespace arrisline
