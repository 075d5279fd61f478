// The plain case of a moulding: one chain from the face.
#pragma once

#include "section/drawing.h"

namespace arrisline {

/// The work is one chain, from the face to the working edge or the underside.
bool is_one_chain(const Drawing& drawing);

/// It ends on the underside. REQUIRES: is_one_chain().
bool ends_on_underside(const Drawing& drawing);

}  // namespace arrisline
