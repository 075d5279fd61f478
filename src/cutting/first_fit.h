// A plan that is quickly found.
#pragma once

#include "cutting/model.h"

namespace arrisline::cutting {

/// Longest pieces first, each into the first strip of its kind with room, else a strip off the first board
/// with room, else another board: those that there are before those to buy before those missing, and the
/// least area that will do.
Solution first_fit(const Model& model);

}  // namespace arrisline::cutting
