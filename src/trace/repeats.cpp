// Shown by tests/trace/repeats_test.cpp.
#include "trace/repeats.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <tuple>

namespace arrisline {

std::vector<Point> without_repeats(const std::vector<Point>& points) {
  std::vector<Point> row = points;
  row.erase(std::unique(row.begin(), row.end()), row.end());
  std::vector<std::size_t> order(row.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(row[a].x, row[a].y, a) < std::tie(row[b].x, row[b].y, b);
  });
  std::vector<bool> again(row.size(), false);
  std::size_t repeats = 0;
  for (std::size_t k = 1; k < order.size(); ++k) {
    again[order[k]] = row[order[k]] == row[order[k - 1]];
    repeats += again[order[k]] ? 1 : 0;
  }
  if (repeats == 0 || (repeats == 1 && row.back() == row.front())) return row;
  std::vector<Point> out;
  for (std::size_t i = 0; i < row.size(); ++i)
    if (!again[i]) out.push_back(row[i]);
  return out;
}

}  // namespace arrisline
