// Some of the ways in which a blank can lie on the board.
#pragma once

#include <array>
#include <bit>
#include <cstddef>

#include "arrisline/plan.h"

namespace arrisline {

/// The likelier before the others: face up, turned end for end before turned over, and over end over end
/// before over about its length, since the working edge is then free still.
inline constexpr std::array kWaysToLie = {Lies::face_up, Lies::end_for_end, Lies::underside_up,
                                          Lies::rolled_over};

class LieSet {
 public:
  LieSet() = default;
  explicit LieSet(Lies lies) { add(lies); }

  void add(Lies lies) { bits_ |= bit(lies); }
  bool has(Lies lies) const { return (bits_ & bit(lies)) != 0; }
  bool empty() const { return bits_ == 0; }
  std::size_t size() const { return static_cast<std::size_t>(std::popcount(bits_)); }
  bool meets(LieSet other) const { return (bits_ & other.bits_) != 0; }
  /// The likeliest of them. REQUIRES: there is one.
  Lies first() const {
    for (const Lies lies : kWaysToLie) {
      if (has(lies)) return lies;
    }
    return Lies::face_up;
  }

  friend bool operator==(const LieSet&, const LieSet&) = default;

 private:
  static unsigned bit(Lies lies) { return 1U << static_cast<unsigned>(lies); }

  unsigned bits_ = 0;
};

}  // namespace arrisline
