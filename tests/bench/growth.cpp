// See growth.h. Each figure is the median of several generated mouldings; the growth is the slope of a line
// fitted by least squares to the logarithms.
#include "bench/growth.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <utility>
#include <vector>

#include "arrisline/plan.h"
#include "bench/inputs.h"

namespace arrisline::bench {

namespace {

const std::vector<int> kElements = {1, 2, 3, 4, 6, 8, 12, 16, 20};
const std::vector<int> kPlanes = {3, 6, 12, 24};
constexpr int kVariants = 3;

struct Cell {
  double milliseconds = 0;  // of processor time, median
  int planned = 0;          // of kVariants; the rest is refused or left undecided
  int proved = 0;           // of those planned
};

Cell measure(int elements, const Kit& kit) {
  Cell cell;
  std::vector<double> times;
  for (int variant = 0; variant < kVariants; ++variant) {
    const Section section = moulding_of(elements, variant);
    const std::clock_t begin = std::clock();
    const Plan plan = make_plan(section, kit, within_limit());
    times.push_back(1e3 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
    cell.planned += plan.feasible ? 1 : 0;
    cell.proved += plan.feasible && plan.optimal ? 1 : 0;
  }
  std::sort(times.begin(), times.end());
  cell.milliseconds = times[times.size() / 2];
  return cell;
}

/// Slope of ln y over ln x.
double exponent(const std::vector<std::pair<double, double>>& points) {
  double n = 0, x = 0, y = 0, xx = 0, xy = 0;
  for (const auto& [px, py] : points) {
    const double lx = std::log(px), ly = std::log(py);
    ++n;
    x += lx;
    y += ly;
    xx += lx * lx;
    xy += lx * ly;
  }
  return (n * xy - x * y) / (n * xx - x * x);
}

}  // namespace

void print_growth() {
  std::printf(
      "Median milliseconds of processor time of %d mouldings; planned/proved of them.\n\n| elements |",
      kVariants);
  for (const int planes : kPlanes) std::printf(" %d planes | |", planes);
  std::printf("\n|---:|");
  for (std::size_t i = 0; i < kPlanes.size(); ++i) std::printf("---:|:---|");
  std::printf("\n");
  std::vector<std::vector<Cell>> rows;
  for (const int elements : kElements) {
    std::printf("| %d |", elements);
    rows.emplace_back();
    for (const int planes : kPlanes) {
      const Cell cell = measure(elements, kit_of(planes));
      rows.back().push_back(cell);
      std::printf(" %.1f | %d/%d |", cell.milliseconds, cell.planned, cell.proved);
      std::fflush(stdout);
    }
    std::printf("\n");
  }
  std::printf("\nFitted growth, time as a power of the elements: ");
  for (std::size_t j = 0; j < kPlanes.size(); ++j) {
    std::vector<std::pair<double, double>> points;
    for (std::size_t i = 0; i < kElements.size(); ++i)
      points.emplace_back(kElements[i], rows[i][j].milliseconds);
    std::printf("%s%.1f with %d planes", j == 0 ? "" : ", ", exponent(points), kPlanes[j]);
  }
  std::printf(".\nTime as a power of the planes: ");
  for (std::size_t i = 0; i < kElements.size(); ++i) {
    std::vector<std::pair<double, double>> points;
    for (std::size_t j = 0; j < kPlanes.size(); ++j) points.emplace_back(kPlanes[j], rows[i][j].milliseconds);
    std::printf("%s%.1f at %d", i == 0 ? "" : ", ", exponent(points), kElements[i]);
  }
  std::printf(" elements.\n");
}

}  // namespace arrisline::bench
