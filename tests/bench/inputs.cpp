// See inputs.h.
#include "bench/inputs.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <random>

namespace arrisline::bench {

template <class T>
T need(Reading<T> reading) {
  if (reading.value) return std::move(*reading.value);
  for (const Diagnostic& diagnostic : reading.diagnostics) std::cerr << format(diagnostic);
  std::exit(2);
}
template Section need(Reading<Section>);
template Kit need(Reading<Kit>);

PlanOptions within_limit() {
  PlanOptions options;
  options.limit = 10;
  return options;
}

std::vector<std::string> example_profiles() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(kExamples)) {
    if (entry.path().extension() == ".profile") names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

Kit half_set() {
  return need(read_kit_file(kExamples + "half-set.kit"));
}

Kit pair_of_sixes() {
  return need(read_kit_file(kExamples + "pair-of-sixes.kit"));
}

Kit full_set() {
  std::string text = "units inch\nrebate 1 1/4\nrebate 3/4\nplough 1/8 1/4 3/8 1/2\nscraper\n";
  for (int n = 1; n <= 18; ++n) text += "hollow " + std::to_string(n) + "\nround " + std::to_string(n) + "\n";
  return need(read_kit(text, "full set"));
}

Kit kit_of(int count) {
  const std::vector<std::string> shelf = {
      "rebate 3/4", "hollow 6",     "round 6",    "hollow 4", "round 4",  "plough 1/4",
      "hollow 8",   "round 8",      "plough 1/8", "hollow 2", "round 2",  "rebate 1/2",
      "hollow 10",  "round 10",     "plough 3/8", "hollow 3", "round 3",  "hollow 12",
      "round 12",   "rebate 1 1/4", "hollow 5",   "round 5",  "hollow 7", "round 7"};
  std::string text = "units inch\nscraper\n";
  for (int i = 0; i < count && i < static_cast<int>(shelf.size()); ++i)
    text += shelf[static_cast<std::size_t>(i)] + "\n";
  return need(read_kit(text, std::to_string(count) + " planes"));
}

std::vector<Section> ordinary() {
  const std::vector<std::string> chains = {
      "start face 3/8\novolo 3/8",
      "start face 3/8\ncavetto 3/8",
      "start face 1/4\nchamfer 1/4",
      "start face 1/2\nstep down 1/4\nfillet out 1/2",
      "start face 3/8\ntorus 3/4",
      "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8",
      "start face 1/2\nstep down 1/8\ncavetto 3/8\nfillet out 1/8",
      "start face 3/4\nogee out 3/4 down 3/4",
      "start face 3/4\nreverse-ogee out 3/4 down 3/4",
      "start face .6\nogee out .6 down .45",
      "start face .6\nreverse-ogee out .6 down .45",
      "start face .725\nstep down 1/16\nogee out .6 down .45\nfillet out 1/8",
      "start face 1 3/4\ncove out 1/2 radius 3/8",
      "start face 7/8\nbead out 3/8 down 3/8\nfillet out 1/8\ncove out 3/8 down 3/8",
      "start face 1/2\nstep down 1/8\novolo 3/8\nfillet out 1/8\nside underside\nstart back 1/4\nfillet out "
      "3/8\nstep up 1/4",
      "start face 1\nstep down 1/16\nbead out 3/8 down 3/8\nfillet out 1/8\ncove out 5/16 down 3/16 radius "
      "3/8\n"
      "fillet out 3/16",
  };
  std::vector<Section> sections;
  for (const std::string& chain : chains) {
    sections.push_back(
        need(read_profile("units inch\nstock 2 1/2 wide, 3/4 thick\n" + chain + "\n", "ordinary")));
  }
  return sections;
}

Section moulding_of(int elements, int variant) {
  // Sixteenths of an inch, toward the working edge and down; an arc follows a flat, and a flat an arc.
  std::mt19937 random(static_cast<unsigned>(1000 * elements + variant));
  const auto pick = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  int out = 0, down = 0;
  std::string chain;
  bool flat = elements > 1 && pick(0, 1) == 0;
  for (int i = 0; i < elements; ++i, flat = !flat) {
    if (!flat) {
      chain += pick(0, 1) == 0 ? "ovolo 3/8\n" : "cavetto 3/8\n";
      out += 6;
      down += 6;
      continue;
    }
    const int a = pick(2, 4), b = pick(2, 4);
    // The first goes down, since nothing is cut along the face.
    switch (i == 0 ? 4 * pick(0, 1) : pick(0, 4)) {
      case 0:
      case 1:
        chain += "step down " + std::to_string(b) + "/16\n";
        down += b;
        break;
      case 2:
      case 3:
        chain += "fillet out " + std::to_string(a) + "/16\n";
        out += a;
        break;
      default:
        chain += "bevel out " + std::to_string(2 * a) + "/16 down " + std::to_string(b) + "/16\n";
        out += 2 * a;
        down += b;
    }
  }
  const std::string text = "units inch\nstock " + std::to_string(out + 16) + "/16 wide, " +
                           std::to_string(down + 4) + "/16 thick\nstart face " + std::to_string(out) +
                           "/16\n" + chain;
  return need(read_profile(text, "generated"));
}

}  // namespace arrisline::bench
