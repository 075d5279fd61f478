// Memory for Expat.
#pragma once

#include <expat.h>

namespace arrisline {

/// Functions that give the parsers of one thread no more than kMaxXmlBytes together, so that a drawing of
/// nothing but names is an error (XML_ERROR_NO_MEMORY) before it takes all there is.
const XML_Memory_Handling_Suite* bounded_memory();

}  // namespace arrisline
