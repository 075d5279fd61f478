// How finely each gauge line of a plan is set, so that no more is left than may be.
#pragma once

#include <vector>

#include "plan/gauge.h"
#include "plan/sequence.h"

namespace arrisline {

/// Goes through the flat cuts with their lines rounded, each to its division by GaugeLine::fine. Where that
/// leaves more than `may_leave` mm, the lines that lay no rail and are to blame for it are made fine; and
/// those that would have to be finer still get `finer`. `lines`: one for each step. REQUIRES: with every line
/// at its exact figure no more is left than `may_leave`, or nothing is changed for it.
void set_fine_enough(const Problem& problem, const Sequence& sequence, double may_leave,
                     std::vector<LaidOut>& lines);

/// Gives the flat cuts the flats of the target that they finish beside those their drafts were made for: the
/// cut after which no more than `may_leave` mm stands over a flat that no cut is made for, if its sole is
/// flat.
void claim_flats(const Problem& problem, double may_leave, Sequence& sequence);

}  // namespace arrisline
