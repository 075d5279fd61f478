// Any bytes as a file of points; cut in two anywhere they are read alike.
#include "trace/points.h"

#include "fuzz/tracings.h"

using namespace arrisline;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  fuzz::hold_file(data, size, "fuzz.csv");
  if (size == 0) return 0;
  const std::string_view text = fuzz::text_of(data, size);
  const auto read = [&](std::size_t cut) {
    PointsReader reader("fuzz.csv", {});
    reader.feed(text.substr(0, cut));
    reader.feed(text.substr(cut));
    return reader.finish();
  };
  const Reading<Tracing> whole = read(0);
  const Reading<Tracing> cut = read(data[0] % size);
  fuzz::hold(whole.value.has_value() == cut.value.has_value(), "a cut changes nothing");
  fuzz::hold(whole.diagnostics.size() == cut.diagnostics.size(), "a cut changes no message");
  if (whole.value) fuzz::hold(whole.value->points == cut.value->points, "a cut changes no point");
  return 0;
}
