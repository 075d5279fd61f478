// Short forms for the tests of sections.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "arrisline/read.h"
#include "catch.h"
#include "text/reading.h"

namespace arrisline::testing {

/// The section of a profile that must be sound; warnings are allowed where `warned` says so.
inline Section section_of(const std::string& text, bool warned = false) {
  const Reading<Section> reading = read_profile(text, "test.profile");
  INFO(shown(reading));
  REQUIRE(reading.value.has_value());
  CHECK(reading.diagnostics.empty() != warned);
  return *reading.value;
}

/// What every section promises (include/arrisline/section.h).
inline void check_promises(const Section& section) {
  REQUIRE(section.target.size() >= 3);
  REQUIRE(section.source.size() == section.target.size());
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    const Edge& edge = section.target[i];
    const Edge& next = section.target[(i + 1) % section.target.size()];
    CHECK(edge.to == next.from);
    CHECK(length(edge) >= 1e-6);
    if (edge.is_arc()) CHECK(std::abs(distance(edge.centre, edge.to) - radius(edge)) <= 1e-6);
    CHECK(section.source[i] >= -1);
    CHECK(section.source[i] < static_cast<int>(section.elements.size()));
    for (const double t : {0.0, 0.25, 0.5, 0.75}) {
      const Point p = point_at(edge, t);
      CHECK(p.x >= -1e-6);
      CHECK(p.y >= -1e-6);
      CHECK(p.x <= section.width + 1e-6);
      CHECK(p.y <= section.thickness + 1e-6);
    }
  }
  CHECK(area(section.target) > 0);
  CHECK(area(section.target) < section.width * section.thickness);
}

/// The edges that came from one element, in the order of the outline.
inline std::vector<Edge> edges_of(const Section& section, int element) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < section.target.size(); ++i) {
    if (section.source[i] == element) edges.push_back(section.target[i]);
  }
  return edges;
}

/// The one edge of an element.
inline Edge edge_of(const Section& section, int element) {
  const std::vector<Edge> edges = edges_of(section, element);
  REQUIRE(edges.size() == 1);
  return edges.front();
}

inline bool near(Point a, Point b, double within = 1e-9) {
  return distance(a, b) <= within;
}

inline bool has_corner(const Section& section, Point p) {
  return std::any_of(section.target.begin(), section.target.end(),
                     [&](const Edge& edge) { return near(edge.from, p); });
}

/// The thickest crossing of the chord of an arc: its rise.
inline double rise(const Edge& arc) {
  return distance(point_at(arc, 0.5), 0.5 * (arc.from + arc.to));
}

}  // namespace arrisline::testing
