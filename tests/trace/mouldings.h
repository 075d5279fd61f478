// Mouldings for the tests of tracing: by rule, from the examples, and with clefts.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include "arrisline/read.h"
#include "catch.h"
#include "section/sections.h"
#include "trace/tracings.h"

namespace arrisline::testing {

/// Mouldings by rule, one part as so many mm (design of each: P. Nicholson, The Mechanic's Companion;
/// Cyclopedia of Architecture, Carpentry and Building, vol. 7; Vitruvius 3.5.2, tr. Morgan; scotia after T.
/// Sheraton, Drawing-Book).
struct Classical {
  const char* name;
  const char* text;  // lengths in parts, written {n}
  double part;
};

inline std::string in_mm(const std::string& text, double part) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] != '{') {
      out += text[i++];
      continue;
    }
    const std::size_t end = text.find('}', i);
    std::ostringstream figure;
    figure.imbue(std::locale::classic());
    figure.precision(10);
    figure << std::strtod(text.substr(i + 1, end - i - 1).c_str(), nullptr) * part;
    out += figure.str();
    i = end + 1;
  }
  return out;
}

inline const Classical kClassical[] = {
    {"ovolo between fillets", "start face {16}\nstep down {3}\nbead out {12} down {12}\nfillet out {4}", 1},
    {"cyma recta, height 4 projection 3",
     "start face {3}\nbead out {1.5} down {2} radius {2.5}\ncove out {1.5} down {2} radius {2.5}", 4},
    {"cyma reversa, as high as it projects",
     "start face {2}\ncove out {1} down {1} radius {1}\nbead out {1} down {1} radius {1}", 9},
    {"Tuscan base: congé, listel, torus, plinth",
     "start face {9}\ncove out {0.75} down {0.75}\nfillet out {2.25}\nstep down {2.25}\n"
     "bead down {12} radius {6}\nfillet out {6}\nstep down {4}",
     2.5},
    {"Attic base",
     "start face {4}\nbead down {4} radius {2}\nstep down {1}\ncove down {4} radius {2.4}\n"
     "fillet out {0.5}\nstep down {1}\nbead down {6} radius {3}\nfillet out {3.5}\nstep down {3}",
     2.5},
    {"scotia of 7 parts",
     "start face {8}\nstep down {1}\ncove in {1.8} down {5.4} radius {3}\ncove out {4.8} down {1.6} radius "
     "{8}\nfillet out {5}",
     2.5},
};

inline Section classical(const Classical& one) {
  const std::string stock = "units mm\nstock 80 wide, 90 thick\n";
  const Reading<Section> reading = read_profile(stock + in_mm(one.text, one.part) + "\n", one.name);
  INFO(shown(reading));
  REQUIRE(reading.value);
  return *reading.value;
}

/// Made up, with narrow quirks and grooves, cusps between reeds, and flutes side by side.
inline const Classical kCleft[] = {
    {"a quirk of 0.7 mm",
     "start face {12.7}\nstep down {6}\nfillet out {0.7}\nstep up {5}\nbead out {8} down {8}\nfillet out {4}",
     1},
    {"a quirk of 1.2 mm",
     "start face {13.2}\nstep down {6}\nfillet out {1.2}\nstep up {5}\nbead out {8} down {8}\nfillet out {4}",
     1},
    {"grooves of 0.9 and 1.5 mm",
     "start face {18.4}\nstep down {5}\nfillet out {0.9}\nstep up {4}\nfillet out {6}\nstep down {5}\n"
     "fillet out {1.5}\nstep up {4}\nfillet out {6}\nstep down {8}\nfillet out {4}",
     1},
    {"flutes",
     "start face {24}\nstep down {2}\nfillet out {4}\ncove out {6} radius {3}\nfillet out {1}\n"
     "cove out {6} radius {3}\nfillet out {4}\nstep down {6}\nfillet out {3}",
     1},
    {"reeds",
     "start face {21}\nstep down {4}\nbead out {6} radius {3}\nbead out {6} radius {3}\n"
     "bead out {6} radius {3}\nstep down {6}\nfillet out {3}",
     1},
};

struct Moulding {
  std::string name;
  Section section;
};

/// The examples that are a line from the face to the working edge or the face.
inline std::vector<Moulding> usual_examples() {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(ARRISLINE_SOURCE_DIR) + "/examples"))
    if (entry.path().extension() == ".profile") paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  std::vector<Moulding> out;
  for (const auto& path : paths) {
    const Reading<Section> reading = read_profile_file(path.string());
    REQUIRE(reading.value);
    const std::vector<Edge> line = worked_line(*reading.value);
    // What starts on the back edge, or lies on the underside, is no line from the face to the working edge.
    const bool usual = line.front().from.y == 0 && (line.back().to.x == 0 || line.back().to.y == 0);
    if (!usual || reading.value->elements.front().chain != Chain::face) continue;
    out.push_back({path.filename().string(), *reading.value});
  }
  return out;
}

/// How far a radius found may be off, mm: five standard deviations of that of a circle fitted to so many
/// points along so much of it (R. L. Gluckstern, Nucl. Instrum. Methods 24, 1963: curvature from n points of
/// scatter s over a length l has the deviation s sqrt(720/(n + 4))/l²), and the tolerance's own share.
inline double bound_on(const Edge& arc, std::size_t points_on_it, double scatter, double tolerance) {
  const double n = static_cast<double>(points_on_it);
  const double l = length(arc);
  const double r = radius(arc);
  const double by_scatter = 5 * scatter * std::sqrt(720 / (n + 4)) * r * r / (l * l);
  // A line may lie `tolerance` off in the middle of the arc or at its ends.
  const double by_tolerance = 16 * tolerance * r * r / (l * l);
  return by_scatter + by_tolerance;
}

inline int seeds() {
  const char* given = std::getenv("ARRISLINE_TRACE_SEEDS");
  return given ? std::atoi(given) : 2;
}

}  // namespace arrisline::testing
