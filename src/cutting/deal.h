// From patterns back to boards, strips and pieces.
#pragma once

#include <vector>

#include "cutting/model.h"

namespace arrisline::cutting {

/// Boards in the order of their sizes, those alike side by side; strips narrow before wide, so that the
/// widest comes last; pieces longest first, those alike in the order they are asked for. What a pattern has
/// over what is wanted is left out, and so are strips and boards that nothing is left for.
std::vector<CutBoard> deal(const Model& model, const Solution& solution);

}  // namespace arrisline::cutting
