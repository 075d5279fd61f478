// Any bytes as a DXF drawing.
#include "fuzz/tracings.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  arrisline::fuzz::hold_file(data, size, "fuzz.dxf");
  return 0;
}
