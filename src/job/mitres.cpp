// Saw settings of mitred ends, and how far the ends run back. Shown by tests/job/mitres_test.cpp.
#include <cmath>

#include "arrisline/job_plan.h"

namespace arrisline {

Mitre mitre_of(const Mould& mould, bool left) {
  const double spring = to_radians(mould.spring);
  const double half_corner = to_radians(mould.corner) / 2;
  Mitre out;
  out.left = left;
  out.corner = mould.corner;
  out.spring = mould.spring;
  out.mitre = to_degrees(std::atan(std::sin(spring) / std::tan(half_corner)));
  out.bevel = to_degrees(std::asin(std::sin(to_radians(90 - mould.spring)) * std::cos(half_corner)));
  out.runs_back = runs_back(mould);
  const int ends = (left_end(mould.mitre) ? 1 : 0) + (right_end(mould.mitre) ? 1 : 0);
  out.short_point = mould.length - ends * out.runs_back;
  return out;
}

std::vector<Mitre> mitres_of(const Job& job) {
  std::vector<Mitre> out;
  for (std::size_t i = 0; i < job.moulds.size(); ++i) {
    for (const bool left : {true, false}) {
      if (!(left ? left_end(job.moulds[i].mitre) : right_end(job.moulds[i].mitre))) continue;
      out.push_back(mitre_of(job.moulds[i], left));
      out.back().mould = i;
    }
  }
  return out;
}

}  // namespace arrisline
