// A report to be read aloud.
#pragma once

#include <string>
#include <vector>

#include "report/page.h"

namespace arrisline {

/// The blocks as one fact a line, however long. Nothing is told by where it stands: a line says itself which
/// cut, plane or blank it is about. Units are written out, so that the inch is not heard as the word "in".
std::string in_plain_lines(const std::vector<Block>& blocks);

/// In columns or, where the options say so, as plain lines.
std::string laid_out(const std::vector<Block>& blocks, bool plain, bool colour);

}  // namespace arrisline
