// Pages as PDF, painted with Cairo.
#pragma once

#include <string>
#include <vector>

#include "sheet/drawing.h"

namespace arrisline {

struct PdfWords {
  std::string title;    // visible(), of any length
  std::string subject;  // the same
};

/// A place in the document that a reader may jump to.
struct Bookmark {
  std::string words;
  std::size_t page = 0;  // index
};

/// One document, a sheet a page. Arcs stay smooth to a few thousandths of a mm, words stay words. The date is
/// that of SOURCE_DATE_EPOCH where it is set, else one and the same. Throws std::runtime_error where Cairo
/// fails.
std::string pdf_document(const std::vector<Sheet>& pages, const PdfWords& words,
                         const std::vector<Bookmark>& bookmarks);

/// "2026-11-26T20:50:00Z" of seconds since 1970 as SOURCE_DATE_EPOCH has them; that of 2000 where `seconds`
/// is absent or no such number.
std::string document_date(const char* seconds);

}  // namespace arrisline
