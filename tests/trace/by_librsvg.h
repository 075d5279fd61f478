// What another reader of SVG makes of a drawing.
#pragma once

#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "app/folder.h"
#include "trace/tracing.h"

namespace arrisline::testing {

/// What librsvg makes of a drawing: the same line in px.
inline Tracing by_librsvg(const std::string& svg) {
  const test::Folder folder;
  std::ofstream(folder.path / "a.svg", std::ios::binary) << svg;
  const std::string command = "cd '" + folder.path.string() + "' && rsvg-convert -f svg -o b.svg a.svg";
  if (std::system(command.c_str()) != 0)  // NOLINT(cert-env33-c): the test's own words
    throw std::runtime_error("rsvg-convert has not drawn it");
  return traced(test::contents(folder.path / "b.svg"), "b.svg");
}

/// In mm, and moved to where its least x and y are 0 when `moved`.
inline Tracing in_mm(Tracing tracing, bool moved) {
  Point least{HUGE_VAL, HUGE_VAL};
  for (Point& p : tracing.points) {
    p = tracing.mm_per_unit.value() * p;
    least = {std::min(least.x, p.x), std::min(least.y, p.y)};
  }
  for (Point& p : tracing.points) {
    if (moved) p = p - least;
  }
  return tracing;
}

}  // namespace arrisline::testing
