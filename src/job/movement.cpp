// How far wood moves across the grain. Shown by tests/job/movement_test.cpp.
#include <algorithm>
#include <array>
#include <string_view>

#include "arrisline/job_plan.h"
#include "job/runs.h"
#include "wording/words.h"

namespace arrisline {
namespace {

// Change in size for one per cent of moisture content, for 6 to 14 per cent: USDA Wood Handbook
// FPL-GTR-190, table 13-5; the two marked from memory.
struct Coefficients {
  std::string_view name;
  std::string_view also;  // as the trade calls it too; empty: nothing else
  double radial;
  double tangential;
};
constexpr std::array<Coefficients, 7> kSpecies = {{
    {"red oak", "", 0.00158, 0.00369},
    {"white oak", "", 0.00180, 0.00365},
    {"black cherry", "cherry", 0.00126, 0.00248},
    {"walnut", "black walnut", 0.00190, 0.00274},
    {"sugar maple", "hard maple", 0.00165, 0.00353},
    {"yellow-poplar", "poplar", 0.00158, 0.00289},          // from memory
    {"eastern white pine", "white pine", 0.00071, 0.00212}  // from memory
}};

const Coefficients* known(std::string_view species) {
  std::string name = lower(species);
  if (name == "yellow poplar") name = "yellow-poplar";
  const auto found = std::find_if(kSpecies.begin(), kSpecies.end(), [&](const Coefficients& one) {
    return one.name == name || (!one.also.empty() && one.also == name);
  });
  return found == kSpecies.end() ? nullptr : &*found;
}

}  // namespace

std::vector<Movement> movements_of(const Job& job) {
  std::vector<Movement> out;
  if (!job.moisture) return out;
  const double swing = job.moisture->dampest - job.moisture->driest;
  for (std::size_t i = 0; i < job.moulds.size(); ++i) {
    const Mould& mould = job.moulds[i];
    if (!mould.across) continue;
    for (const std::string& species : species_for(job, mould)) {
      const Coefficients* wood = known(species);
      if (wood == nullptr) continue;
      out.push_back({i, species, *mould.across, *mould.across * wood->radial * swing,
                     *mould.across * wood->tangential * swing});
    }
  }
  return out;
}

}  // namespace arrisline
