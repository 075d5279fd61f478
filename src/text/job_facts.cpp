// What can be told of a job without planning it. Shown by tests/text/job_test.cpp.
#include <cmath>
#include <filesystem>

#include "arrisline/job.h"
#include "wording/words.h"

namespace arrisline {

const char* word(Ends ends) {
  switch (ends) {
    case Ends::none:
      return "none";
    case Ends::left:
      return "left";
    case Ends::right:
      return "right";
    case Ends::both:
      return "both";
  }
  return "";
}

bool left_end(Ends ends) {
  return ends == Ends::left || ends == Ends::both;
}

bool right_end(Ends ends) {
  return ends == Ends::right || ends == Ends::both;
}

bool same_strip(const Mould& a, const Mould& b) {
  const auto file = [](const Mould& mould) {
    return std::filesystem::path(mould.profile).lexically_normal();
  };
  return std::abs(a.width - b.width) <= kSameWidth && file(a) == file(b);
}

double runs_back(const Mould& mould) {
  const double spring = to_radians(mould.spring);
  return (mould.width * std::sin(spring) + mould.section.thickness * std::cos(spring)) /
         std::tan(to_radians(mould.corner) / 2);
}

bool serves(const Stock& stock, const Mould& mould, const Job& job) {
  const double long_enough = mould.length + 2 * job.saw.allowance;
  return std::abs(stock.thickness - mould.section.thickness) <= kSameThickness &&
         (mould.species.empty() || lower(mould.species) == lower(stock.species)) &&
         stock.width >= mould.width - kSameWidth && stock.width >= job.ripping.hold - kSameWidth &&
         stock.length >= long_enough - kSameWidth;
}

}  // namespace arrisline
