// Shown by tests/cutting.
#include "cutting/model.h"

#include <algorithm>
#include <cmath>

#include "cutting/fits.h"

namespace arrisline::cutting {
namespace {

void add_items(const CuttingProblem& problem, Model& model) {
  for (const WantedPiece& piece : problem.pieces) {
    std::optional<std::vector<std::size_t>> sizes = piece.sizes;
    if (sizes) std::sort(sizes->begin(), sizes->end());
    const auto same = std::find_if(model.items.begin(), model.items.end(), [&](const Item& item) {
      return item.kind == piece.kind && std::abs(item.length - piece.length) < kAlike && item.sizes == sizes;
    });
    model.item_of.push_back(static_cast<std::size_t>(same - model.items.begin()));
    if (piece.count <= 0) continue;
    if (same != model.items.end()) {
      same->count += piece.count;
    } else {
      model.items.push_back({piece.kind, piece.length, piece.count, std::move(sizes)});
    }
  }
}

/// The items that fit a strip of this kind off this board, alone.
std::vector<std::size_t> fitting(const Model& model, std::size_t kind, std::size_t size) {
  const double length = model.problem->sizes[size].length;
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < model.items.size(); ++i) {
    const Item& item = model.items[i];
    if (item.kind == kind && item.length <= length + kFit && may_come_from(item.sizes, size))
      out.push_back(i);
  }
  return out;
}

/// Of a single size those missing are the boards over its count, whatever is least.
void add_sources(const CuttingProblem& problem, Model& model) {
  if (problem.sizes.size() == 1) {
    model.sources.push_back({0, false, std::nullopt});
    return;
  }
  for (std::size_t s = 0; s < problem.sizes.size(); ++s) {
    const BoardSize& size = problem.sizes[s];
    model.sources.push_back({s, false, size.count});
    if (size.count) model.sources.push_back({s, true, std::nullopt});
  }
}

void add_classes(const CuttingProblem& problem, Model& model) {
  model.classes_of_size.resize(problem.sizes.size());
  for (std::size_t k = 0; k < problem.kinds.size(); ++k) {
    for (const std::size_t s : problem.kinds[k].sizes) {
      const BoardSize& size = problem.sizes[s];
      if (last_takes(problem.kinds[k].width, problem.rules) > size.width + kFit) continue;
      std::vector<std::size_t> items = fitting(model, k, s);
      std::size_t c = 0;
      while (c < model.classes.size() &&
             (model.classes[c].kind != k || model.classes[c].length != size.length ||
              model.items_of_class[c] != items))
        ++c;
      if (c == model.classes.size()) {
        model.classes.push_back({k, size.length});
        model.items_of_class.push_back(std::move(items));
      }
      model.classes_of_size[s].push_back(c);
    }
  }
  for (std::vector<std::size_t>& list : model.classes_of_size) {
    std::stable_sort(list.begin(), list.end(),
                     [&](std::size_t a, std::size_t b) { return model.width_of(a) > model.width_of(b); });
  }
}

}  // namespace

Model make_model(const CuttingProblem& problem) {
  Model model;
  model.problem = &problem;
  add_items(problem, model);
  add_sources(problem, model);
  add_classes(problem, model);
  return model;
}

}  // namespace arrisline::cutting
