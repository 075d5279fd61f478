// The command line: from arguments to an exit code.
#pragma once

namespace arrisline {

/// Runs the program. 0: done; 1: the honest answer is no; 2: bad input or usage; 3: our own fault.
/// REQUIRES: argc ≥ 1.
int run(int argc, const char* const* argv);

}  // namespace arrisline
