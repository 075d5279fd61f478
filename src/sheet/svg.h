// Sheets and pictures as SVG.
#pragma once

#include <string>

#include "sheet/drawing.h"

namespace arrisline {

/// Text as content or attribute of SVG and HTML: & < > " ' escaped. REQUIRES: visible() text.
std::string escaped(const std::string& text);

/// A picture as an <svg> element to be put into HTML or another SVG, with title and description; `id` is the
/// beginning of the ids in it, and must be its own in the document. Colours come by class (see word(Role)).
std::string svg_element(const Picture& picture, const std::string& id);

/// The style sheet of the classes, for the <style> of a document.
std::string svg_styles();

/// A whole document, with its XML declaration.
std::string svg_document(const Sheet& sheet, const std::string& title, const std::string& description);

}  // namespace arrisline
