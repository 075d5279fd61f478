// Wood movement across the grain.
#include "arrisline/job_plan.h"
#include "catch.h"

using namespace arrisline;

namespace {

Job job_of(const std::string& species, double across) {
  Job job;
  job.moisture = Moisture{6, 14};
  Mould mould;
  mould.species = species;
  mould.across = across;
  job.moulds.push_back(mould);
  return job;
}

struct Row {
  const char* species;
  double radial, tangential;
};

}  // namespace

// USDA Wood Handbook FPL-GTR-190, table 13-5 (coefficients for one per cent between 6 and 14 %);
// yellow-poplar and eastern white pine from memory. ΔD = D·C·ΔMC.
TEST_CASE("a side moves by its width, the species' coefficient and the swing of moisture", "[movement]") {
  for (const Row& row :
       {Row{"red oak", .00158, .00369}, Row{"white oak", .00180, .00365}, Row{"black cherry", .00126, .00248},
        Row{"walnut", .00190, .00274}, Row{"sugar maple", .00165, .00353},
        Row{"yellow-poplar", .00158, .00289}, Row{"eastern white pine", .00071, .00212}}) {
    INFO(row.species);
    const std::vector<Movement> movements = movements_of(job_of(row.species, 300));
    REQUIRE(movements.size() == 1);
    CHECK(movements[0].radial == Approx(300 * row.radial * 8));
    CHECK(movements[0].tangential == Approx(300 * row.tangential * 8));
  }
}

TEST_CASE("the species is known by the trade's name too, and nothing is said of one that is not",
          "[movement]") {
  CHECK(movements_of(job_of("Cherry", 300)).size() == 1);
  CHECK(movements_of(job_of("poplar", 300)).size() == 1);
  CHECK(movements_of(job_of("oak", 300)).empty());  // red and white oak differ
  Job dry = job_of("cherry", 300);
  dry.moisture.reset();
  CHECK(movements_of(dry).empty());
}
