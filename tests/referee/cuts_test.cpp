// The planner's wood and the replay's against exact arithmetic, cut by cut, on random and adversarial
// sections. ARRISLINE_REFEREE_CUTS (5000) and ARRISLINE_REFEREE_SEED (1) make it longer or other. Each stick
// has a seed of its own, so that ARRISLINE_REFEREE_STICK=n cuts that one alone and shows every cut of it.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <deque>
#include <string>

#include "arrisline/section.h"
#include "catch.h"
#include "plan/gouge.h"
#include "plan/thickness.h"
#include "plan/wood.h"
#include "referee/compare.h"
#include "referee/random_cuts.h"
#include "referee/region.h"
#include "replay/flattened.h"
#include "replay/remains.h"
#include "replay/standing.h"

using namespace arrisline;
using namespace arrisline::referee;

static constexpr double kWide = 50, kThick = 20, kFar = 200;
// Above this the area is grossly wrong, mm²: far over the rounding, far under what a plan may be off by.
static constexpr double kGross = 1e-4;
// Two boundaries that ought to be one are no farther apart than this, mm.
static constexpr double kApart = 1e-5;

namespace {

unsigned long from_environment(const char* name, unsigned long otherwise) {
  const char* text = std::getenv(name);
  return text == nullptr ? otherwise : std::strtoul(text, nullptr, 10);
}

std::string figures(double value, const char* form = "%.17g") {
  std::array<char, 40> text;
  std::snprintf(text.data(), text.size(), form, value);
  return text.data();
}

// The seed of one stick: as good as unrelated to those of its neighbours (the mixing of splitmix64).
unsigned long seed_of(unsigned long seed, long stick) {
  std::uint64_t mixed = seed * 0x9e3779b97f4a7c15 + static_cast<std::uint64_t>(stick);
  for (int round = 0; round < 2; ++round) {
    mixed += 0x9e3779b97f4a7c15;
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111eb;
    mixed ^= mixed >> 31;
  }
  return mixed;
}

// How often something was compared, how often it was off, and by how much at the worst.
struct Tally {
  std::string what;
  double allowed;
  long compared = 0, off = 0;
  double worst = 0;
  std::string first{};  // where it was off first

  // The first twenty that are off are told at once: a long run need not be waited for.
  void compare(double error, const std::string& where) {
    ++compared;
    worst = std::max(worst, error);
    if (error <= allowed) return;
    constexpr long kTold = 20;
    if (off++ >= kTold) return;
    const std::string told = where + ", off by " + figures(error, "%.3g");
    if (first.empty()) first = told;
    std::printf("%s: %s\n", what.c_str(), told.c_str());
    std::fflush(stdout);
  }
};

struct Stick {
  std::deque<RandomCut> cuts;  // Wood keeps pointers to their planes
  std::vector<RandomCut> done;
  std::vector<Edge> outline;
  Region exact;
};

std::string place(unsigned long seed, long stick, std::size_t cut, CutKind kind, const Plane& plane) {
  return std::string(word(plane.kind)) + " " + "seed " + std::to_string(seed) + ", stick " +
         std::to_string(stick) + ", cut " + std::to_string(cut) + " " +
         std::string(kCutKinds[static_cast<std::size_t>(kind)]);
}

void show_pieces(const char* what, std::span<const Edge> edges) {
  std::printf("  %s\n", what);
  for (const Edge& edge : edges)
    std::printf("    {{%.17g, %.17g}, {%.17g, %.17g}, {%.17g, %.17g}, Turn::%s},\n", edge.from.x, edge.from.y,
                edge.to.x, edge.to.y, edge.centre.x, edge.centre.y,
                edge.turn == Turn::straight ? "straight"
                : edge.turn == Turn::left   ? "left"
                                            : "right");
}

void show_cut(const RandomCut& cut, double took, double takes) {
  std::printf("  {PlaneKind::%s, %.17g, %.17g, {{%.17g, %.17g}, %.17g}},  // %s: took %.17g, exact %.17g\n",
              word(cut.plane.kind), cut.plane.width, cut.plane.radius, cut.pose.at.x, cut.pose.at.y,
              cut.pose.tilt, std::string(kCutKinds[static_cast<std::size_t>(cut.kind)]).c_str(), took, takes);
}

class Referee {
 public:
  explicit Referee(unsigned long seed) : seed_(seed), chance_(seed) {}

  void run(long cuts) {
    for (long stick = 0; taken.compared < cuts; ++stick) cut_stick(stick);
  }

  /// This stick and no other, every cut shown with figures that make it again.
  void show(long stick) {
    shown_ = true;
    cut_stick(stick);
  }

  Tally taken{"area taken, mm²", kGross};
  Tally left{"area left, mm²", kGross};
  Tally differs{"symmetric difference, mm²", kGross};
  Tally boundary{"boundary apart, mm", kApart};
  Tally gouge{"depth of a gouge, mm", 2e-4};
  Tally thick{"thickness by the planner, mm", 2e-4};
  Tally thick_replayed{"thickness by the replay, mm", 2e-4};
  Tally solid{"points of wood told by the replay", 0};
  Tally flattened{"area by the clipper, over what it may be off", 0};
  std::array<long, kCutKinds.size()> kinds{};
  std::array<const Tally*, 9> tallies() const {
    return {&taken, &left, &differs, &boundary, &gouge, &thick, &thick_replayed, &solid, &flattened};
  }
  long not_linked = 0, sections = 0, large_arcs = 0, touched = 0, misses = 0;

 private:
  void cut_stick(long stick);
  void compare_replay(const Stick& stick, const replaying::Standing& standing, const ClipperLib::Paths& flat,
                      double arcs, const std::string& where);
  void compare_thickness(const Stick& stick, const Wood& wood, const replaying::Standing& standing,
                         const ClipperLib::Paths& flat, const std::string& where);
  std::vector<Edge> valid_section();

  unsigned long seed_;
  bool shown_ = false;
  Chance chance_;
};

std::vector<Edge> Referee::valid_section() {
  for (;;) {
    std::vector<Edge> outline = inside_to_the_left(random_section(chance_, kWide, kThick));
    if (Region::inside(outline)) return outline;
  }
}

void Referee::cut_stick(long number) {
  chance_ = Chance(seed_of(seed_, number));
  Stick stick;
  const bool blank = chance_.of(2) == 0;
  stick.outline = blank ? blank_outline(kWide, kThick) : valid_section();
  stick.exact = *Region::inside(stick.outline);
  if (!blank) ++sections;
  if (shown_) show_pieces("the stick before", stick.outline);
  for (const Edge& edge : stick.outline) large_arcs += std::abs(sweep(edge)) > kPi ? 1 : 0;
  Wood wood(stick.outline);
  replaying::Standing standing(kWide, kThick);
  ClipperLib::Paths flat{replaying::flatten(std::span<const Edge>(stick.outline))};
  const Loop target = inside_to_the_left(valid_section());
  double arcs = 0;
  std::string where;
  const std::size_t cuts = 3 + static_cast<std::size_t>(chance_.of(8));
  for (std::size_t i = 0; i < cuts; ++i) {
    const RandomCut& cut =
        stick.cuts.emplace_back(random_cut(chance_, wood.edges(), stick.done, kWide, kThick));
    const auto swept = Region::inside(outline_of(cut.plane, cut.pose, kFar));
    REQUIRE(swept);
    where = place(seed_, number, i, cut.kind, cut.plane);
    ++kinds[static_cast<std::size_t>(cut.kind)];
    const double before = stick.exact.area();
    Region rest = stick.exact.less(*swept);
    const Sweep sweep(cut.plane, cut.pose);
    const double took = wood.cut(sweep);
    const double takes = before - rest.area();
    if (shown_) show_cut(cut, took, takes);
    if (cut.kind == CutKind::touching) ++(takes < 1e-9 ? touched : misses);
    stick.exact = std::move(rest);
    stick.done.push_back(cut);
    taken.compare(std::abs(took - takes), where);
    left.compare(std::abs(wood.area() - stick.exact.area()), where);
    boundary.compare(apart(stick.exact, wood), where);
    const std::vector<Edge> sides = outline_of(cut.plane, cut.pose, kFar);
    const Bounds depth = distances(target, 0.5, [&](const Edge& edge, double t) {
      const Point p = point_at(edge, t);
      return swept->holds(p) ? off_outline(p, sides) : -off_outline(p, sides);
    });
    gouge.compare(outside(depth, gouge_depth(target, sweep)), where);
    if (blank) {
      const replaying::Swept replayed = replaying::sweep_of(cut.plane, cut.pose, kFar);
      for (const Edge& edge : replayed.bounds) arcs += edge.is_arc() ? length(edge) : 0;
      flat = replaying::less(flat, {replaying::flatten(replayed)});
      standing.take(replayed);
    }
  }
  if (shown_) {
    show_pieces("wood by the planner", wood.edges());
    show_pieces("wood by exact arithmetic", edges_of(stick.exact));
  }
  const double differing = symmetric_difference(stick.exact, wood);
  if (differing < -kGross) {
    ++not_linked;
  } else {
    differs.compare(std::abs(differing), where);
  }
  if (!blank) return;
  compare_replay(stick, standing, flat, arcs, where);
  // Of a target that reaches out of the blank nothing is left above it there.
  compare_thickness(stick, wood, standing, flat, where);
}

void Referee::compare_replay(const Stick& stick, const replaying::Standing& standing,
                             const ClipperLib::Paths& flat, double arcs, const std::string& where) {
  constexpr double kNear = 1e-6;  // on the surface either is right
  const std::vector<Edge> bound = edges_of(stick.exact);
  for (int i = 0; i < 40; ++i) {
    Point p{chance_.in(0, kWide), chance_.in(0, kThick)};
    if (i % 2 == 0 && !bound.empty())
      p = point_at(chance_.one_of(bound), chance_.in(0, 1)) + Point{chance_.hair(-5, 0), chance_.hair(-5, 0)};
    if (bound.empty() || off_outline(p, bound) < kNear || standing.off_blank(p) > -kNear) continue;
    solid.compare(standing.solid(p) == stick.exact.holds(p) ? 0 : 1, where);
  }
  const double off = std::abs(replaying::area_of(flat) - stick.exact.area());
  flattened.compare(std::max(0.0, off - 0.02 - 0.0007 * arcs), where);
}

void Referee::compare_thickness(const Stick& stick, const Wood& wood, const replaying::Standing& standing,
                                const ClipperLib::Paths& flat, const std::string& where) {
  const Loop target = inside_to_the_left(valid_section());
  const Region above = stick.exact.less(*Region::inside(target));
  // To either, wood narrower than 1e-5 mm is none, judged at a few places of each piece of its surface. So
  // what is twice that everywhere has to be counted, and what is not there at all may not be.
  const auto bounds_of = [&](double narrowest) {
    return distances(edges_of(above), 1.5, [&](const Edge& edge, double t) {
      return parts_wood_from_air(above, edge, t, narrowest) ? off_outline(point_at(edge, t), target) : kNone;
    });
  };
  const Bounds bounds{bounds_of(2e-5).low, bounds_of(2e-8).high};
  thick.compare(outside(bounds, thickest_left(wood, target).height), where);
  const ClipperLib::Paths left_flat =
      replaying::less(flat, {replaying::flatten(std::span<const Edge>(target))});
  thick_replayed.compare(outside(bounds, replaying::thickest_left(standing, target, left_flat).mm), where);
}

}  // namespace

TEST_CASE("cuts, areas, depths and thicknesses are those of exact arithmetic", "[referee][cuts]") {
  const unsigned long seed = from_environment("ARRISLINE_REFEREE_SEED", 1);
  const long cuts = static_cast<long>(from_environment("ARRISLINE_REFEREE_CUTS", 5000));
  Referee referee(seed);
  if (const char* stick = std::getenv("ARRISLINE_REFEREE_STICK")) {
    referee.show(std::strtol(stick, nullptr, 10));
    for (const Tally* tally : referee.tallies()) {
      INFO(tally->what << ": " << tally->first);
      CHECK(tally->off == 0);
    }
    return;
  }
  referee.run(cuts);

  std::printf("seed %lu: %ld cuts, %ld sections of lines and arcs, %ld arcs over 180 degrees\n", seed,
              referee.taken.compared, referee.sections, referee.large_arcs);
  for (std::size_t i = 0; i < kCutKinds.size(); ++i) {
    std::printf("  %-26s %8ld\n", std::string(kCutKinds[i]).c_str(), referee.kinds[i]);
    CHECK(referee.kinds[i] > cuts / 20);
  }
  std::printf("  %-46s %9s %6s %10s\n", "", "compared", "off", "worst");
  for (const Tally* tally : referee.tallies()) {
    std::printf("  %-46s %9ld %6ld %10.2g\n", tally->what.c_str(), tally->compared, tally->off, tally->worst);
    INFO(tally->what << ": " << tally->first);
    CHECK(tally->off == 0);
    CHECK(tally->compared > cuts / 40);
  }
  std::printf("  sticks whose pieces did not link: %ld\n", referee.not_linked);
  CHECK(referee.not_linked * 20 < referee.differs.compared);
  CHECK(referee.large_arcs > cuts / 50);
  CHECK(referee.touched > referee.misses);
}
