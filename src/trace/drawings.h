// The readers of drawings.
#pragma once

#include <optional>
#include <string_view>

#include "arrisline/trace.h"
#include "trace/faults.h"

namespace arrisline {

/// The line that an SVG draws. Nothing where there are mistakes.
std::optional<Tracing> read_svg(std::string_view text, const TracingOptions& options, Faults& faults);

/// The line that a DXF drawing has, from LINE, ARC, POLYLINE, LWPOLYLINE, and blocks of them.
std::optional<Tracing> read_dxf(std::string_view text, const TracingOptions& options, Faults& faults);

}  // namespace arrisline
