// Sections and cuts at random, most of them laid where geometry goes wrong: along what is cut already,
// through its corners, on the same circle or one a hair off, touching and no more.
#pragma once

#include <array>
#include <random>
#include <span>
#include <string_view>
#include <vector>

#include "arrisline/geometry.h"
#include "arrisline/plane.h"

namespace arrisline::referee {

struct Chance {
  std::mt19937_64 engine;
  explicit Chance(unsigned long seed) : engine(seed) {}
  double in(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine); }
  int of(int n) { return std::uniform_int_distribution<int>(0, n - 1)(engine); }
  bool one_in(int n) { return of(n) == 0; }
  /// A length between 10^low and 10^high, of either sign.
  double hair(double low, double high);
  template <class T>
  const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(of(static_cast<int>(list.size())))];
  }
};

enum class CutKind {
  random,
  grid,
  shared_edge,
  same_circle,
  near_circle,
  tangent,
  touching,
  repeat,
  sliver,
  corner
};
inline constexpr std::array<std::string_view, 10> kCutKinds{"at random",
                                                            "on a grid",
                                                            "along an edge",
                                                            "on the same circle",
                                                            "on nearly the same circle",
                                                            "in a tangent circle",
                                                            "touching only",
                                                            "the same pose again",
                                                            "a sliver off",
                                                            "through a corner"};

struct RandomCut {
  CutKind kind = CutKind::random;
  Plane plane;
  Pose pose;
};

/// A closed outline within a box, its inside to the left: 10 to 40 lines and arcs, some of over 180 degrees;
/// it may cross itself, so ask Region::inside().
std::vector<Edge> random_section(Chance& chance, double wide, double thick);

/// A cut laid on the pieces of boundary that the wood has now. `done` are the cuts it has seen.
RandomCut random_cut(Chance& chance, std::span<const Edge> wood, const std::vector<RandomCut>& done,
                     double wide, double thick);

/// The outline of what the pose sweeps, the sides `far` mm long. REQUIRES: not a scraper.
std::vector<Edge> outline_of(const Plane& plane, const Pose& pose, double far);

}  // namespace arrisline::referee
