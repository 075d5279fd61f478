// Jobs made in memory, without files.
#pragma once

#include <string>

#include "arrisline/job_plan.h"
#include "plan/planning.h"

namespace arrisline::test {

inline Stock stock(double width, double length, std::optional<int> count = 1) {
  Stock out;
  out.species = "poplar";
  out.thickness = 0.75 * kMmPerInch;
  out.width = width * kMmPerInch;
  out.length = length * kMmPerInch;
  out.count = count;
  out.to_buy = !count;
  return out;
}

/// Pieces of a profile on 3/4 in stock; lengths in inches.
inline Mould mould(const std::string& name, const std::string& chain, double width, double length,
                   int count = 1) {
  Mould out;
  out.name = name;
  out.profile = name + ".profile";
  out.section = profile(std::to_string(width) + " wide, 3/4 thick", chain);
  out.width = out.section.width;
  out.length = length * kMmPerInch;
  out.count = count;
  return out;
}

inline Job job(Kit kit, std::vector<Stock> stocks, std::vector<Mould> moulds) {
  Job out;
  out.name = "test";
  out.kit = std::move(kit);
  out.stocks = std::move(stocks);
  out.moulds = std::move(moulds);
  return out;
}

inline constexpr const char* kRoundOver = "start face 3/8\nbead out 3/8 down 3/8";
inline constexpr const char* kRebate = "start face 1/2\nstep down 1/4\nfillet out 1/2";
inline constexpr const char* kCavetto = "start face 3/8\ncavetto 3/8";

}  // namespace arrisline::test
