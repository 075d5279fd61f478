// The frame of an HTML sheet: its head, its style and its script.
#pragma once

#include <string>

#include "arrisline/sheet.h"

namespace arrisline {

/// A whole document. Nothing in it is fetched or run but its one style and its one script, which its
/// Content-Security-Policy names by their sums. Both an HTML and an XML parser take it. REQUIRES: `title` and
/// `body` are escaped.
///
/// The style and the script go by these classes:
///   bench   a plan: stage, tools and list     stage   its steps
///   step    one step, its heading first       now     the step that is shown
///   tools   Back, a slider, Next              list    a row for each step, in the same order
///   said    what a screen reader is told
/// Without the script (no class `live` on the root), and on paper, all steps are shown.
std::string html_page(const std::string& title, const std::string& body, Paper paper);

}  // namespace arrisline
