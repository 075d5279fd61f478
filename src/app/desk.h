// The command lines of what is done at the desk: beginning a file, looking up a word, tidying, and what the
// shell is to offer.
#pragma once

#include "app/commands.h"

namespace arrisline {

Outcome run_new(int argc, const char* const* argv);
Outcome run_words(int argc, const char* const* argv);
Outcome run_fmt(int argc, const char* const* argv);
Outcome run_completions(int argc, const char* const* argv);

}  // namespace arrisline
