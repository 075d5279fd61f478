// What the cut list says of one cut, sentence by sentence.
#pragma once

#include <string>
#include <vector>

#include "arrisline/report.h"
#include "report/gauge_lines.h"

namespace arrisline {

/// "1", "1 and 2", "1, 2 and 3".
std::string listed(const std::vector<std::string>& words);
/// "1 piece", "3 pieces".
std::string counted(std::size_t count, const std::string& one, const std::string& many);
/// " 1. ", "12. ".
std::string number_lead(std::size_t number);

struct CutContext {
  const Section& section;
  const std::vector<StruckLine>& lines;
  Unit unit;
  double division;        // mm, for figures that are not gauged
  bool back_edge = true;  // false while the stick is still part of a wider blank
};

/// What the cut makes: "takes out waste", "makes element 2 (bead)".
std::string purpose(const Cut& cut, const Section& section);
/// Where the plane goes: one sentence a pass, or a tilt.
std::vector<std::string> where_it_goes(const Cut& cut, const CutContext& context);
/// What the plane is guided by.
std::string guided_by(const Cut& cut);
/// What to do with the blank so that it lies so.
std::string lay(Lies lies);
/// How the blank lies and which way it is planed, with a caution where that is against the grain.
std::string planed_words(Lies lies);
/// Which edge has to stand out over the board.
std::string overhang_words(Lies lies);

}  // namespace arrisline
