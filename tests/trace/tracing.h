// Short forms for the tests of traced sections.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "arrisline/trace.h"
#include "text/reading.h"

namespace arrisline::testing {

/// What is said of a file: "line:column: message" a line; nothing where it is read without a word.
inline std::string said(const std::string& text, const std::string& file,
                        const TracingOptions& options = {}) {
  return messages(read_tracing(text, file, options));
}

/// The tracing that is read without an error.
inline Tracing traced(const std::string& text, const std::string& file, const TracingOptions& options = {}) {
  const Reading<Tracing> reading = read_tracing(text, file, options);
  if (!reading.value) throw std::runtime_error("not read:\n" + shown(reading));
  return *reading.value;
}

/// Only what lies on this layer, or has this id or label.
inline TracingOptions layer(const std::string& name) {
  TracingOptions options;
  options.layer = name;
  return options;
}

/// An SVG of 100 mm by 100 mm with one unit to the mm and this in it, from line 2 on.
inline std::string svg_of(const std::string& content) {
  return "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>\n" +
         content + "\n</svg>\n";
}

/// The groups of a DXF, written on one line, "0 LINE 10 0 20 5", as a file has them.
inline std::string dxf_groups(const std::string& words) {
  std::string out;
  for (const char c : words) out += c == ' ' ? '\n' : c;
  return out + "\n";
}

/// A DXF with these entities.
inline std::string dxf_of(const std::string& entities, const std::string& header = "") {
  return dxf_groups((header.empty() ? "" : "0 SECTION 2 HEADER " + header + " 0 ENDSEC ") +
                    "0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF");
}

inline Tracing traced_path(const std::string& data) {
  return traced(svg_of("<path d='" + data + "'/>"), "a.svg");
}

/// Whether two lines of points are the same to within `off`, point by point.
inline bool alike(const std::vector<Point>& a, const std::vector<Point>& b, double off = 1e-9) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (!(distance(a[i], b[i]) <= off)) return false;
  }
  return true;
}

inline double distance_to_line(Point p, const std::vector<Point>& line, bool closed) {
  double least = HUGE_VAL;
  for (std::size_t i = 0; i + (closed ? 0 : 1) < line.size(); ++i)
    least = std::min(least, distance(p, Edge{line[i], line[(i + 1) % line.size()], {}, Turn::straight}));
  return least;
}

/// The farthest that a point of either line is from the other one.
inline double apart(const Tracing& a, const Tracing& b) {
  double most = 0;
  for (const Point p : a.points) most = std::max(most, distance_to_line(p, b.points, b.closed));
  for (const Point p : b.points) most = std::max(most, distance_to_line(p, a.points, a.closed));
  return most;
}

}  // namespace arrisline::testing
