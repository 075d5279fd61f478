// Any bytes as an SVG drawing, and, where they are no XML, as path data.
#include "fuzz/tracings.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  fuzz::hold_file(data, size, "fuzz.svg");
  if (size == 0 || data[0] == '<') return 0;
  const std::string text = "<svg width='90mm' viewBox='0 0 90 90'><path d='" +
                           std::string(fuzz::text_of(data, size)) + "'/></svg>";
  fuzz::hold_file(reinterpret_cast<const std::uint8_t*>(text.data()), text.size(), "fuzz.svg");
  return 0;
}
