// Every statement and form of docs/files.md, put together at random and taken the whole way.
// tests/fuzz/plan.cpp does the same with choices made by a fuzzer.
#include "plan/grammar.h"

#include <chrono>
#include <cstdlib>
#include <random>

#include "catch.h"
#include "plan/whole_way.h"

using namespace arrisline;
using namespace arrisline::test;

namespace {

constexpr unsigned kSeed = 7;  // ARRISLINE_SEED sets another
constexpr int kPairs = 300;
constexpr std::size_t kChoices =
    300;  // more than most files ask for; where they end the rest is the plainest

std::string random_bytes(std::mt19937& random) {
  std::string bytes(kChoices, '\0');
  for (char& byte : bytes) byte = static_cast<char>(random() & 0xFF);
  return bytes;
}

}  // namespace

TEST_CASE("every form of profile and kit at random: read, planned, written, read back and replayed",
          "[plan][random][grammar]") {
  unsigned seed = kSeed;
  if (const char* given = std::getenv("ARRISLINE_SEED"))
    seed = static_cast<unsigned>(std::strtoul(given, nullptr, 10));
  std::mt19937 random(seed);
  int drawn = 0;
  int planned = 0;
  int refused = 0;
  int curved = 0;
  double longest = 0;
  for (int pair = 0; pair < kPairs; ++pair) {
    const std::string bytes = random_bytes(random);
    Choices choices(bytes);
    const std::string kit = make_kit(choices);
    const std::string profile = make_profile(choices);
    PlanOptions options;
    options.most_work = 20000;
    const auto before = std::chrono::steady_clock::now();
    const WholeWay way = whole_way(profile, kit, options);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - before;
    longest = std::max(longest, took.count());
    INFO("seed " << seed << ", pair " << pair << "\n--- profile\n" << profile << "--- kit\n" << kit);
    CHECK(way.broken == "");
    drawn += way.drawn ? 1 : 0;
    planned += way.planned ? 1 : 0;
    refused += way.refused ? 1 : 0;
    curved += way.curved ? 1 : 0;
  }
  // Guards against a generator that draws nothing, or nothing that can be cut, or nothing that cannot.
  INFO("seed " << seed << ": " << drawn << " drawn, " << planned << " planned, " << refused << " refused, "
               << curved << " with curves, longest " << longest << " s");
  CHECK(drawn >= kPairs / 3);
  CHECK(planned >= kPairs / 20);
  CHECK(refused >= kPairs / 20);
  CHECK(curved >= kPairs / 50);
  WARN("seed " << seed << ": " << drawn << " drawn, " << planned << " planned, " << refused << " refused, "
               << curved << " with curves, longest " << longest << " s");
}
