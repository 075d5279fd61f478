// Shown by tests/cutting.
#include "cutting/model.h"

#include <algorithm>
#include <cmath>

#include "cutting/fits.h"

namespace arrisline::cutting {
namespace {

void add_items(const CuttingProblem& problem, Model& model) {
  for (const WantedPiece& piece : problem.pieces) {
    if (piece.count <= 0) continue;
    const auto same = std::find_if(model.items.begin(), model.items.end(), [&](const Item& item) {
      return item.kind == piece.kind && std::abs(item.length - piece.length) < kAlike;
    });
    if (same != model.items.end()) {
      same->count += piece.count;
    } else {
      model.items.push_back({piece.kind, piece.length, piece.count});
    }
  }
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
      std::size_t c = 0;
      while (c < model.classes.size() &&
             (model.classes[c].kind != k || model.classes[c].length != size.length))
        ++c;
      if (c == model.classes.size()) model.classes.push_back({k, size.length});
      model.classes_of_size[s].push_back(c);
    }
  }
  for (std::vector<std::size_t>& list : model.classes_of_size) {
    std::stable_sort(list.begin(), list.end(),
                     [&](std::size_t a, std::size_t b) { return model.width_of(a) > model.width_of(b); });
  }
  for (const StripClass& strips : model.classes) {
    std::vector<std::size_t> fitting;
    for (std::size_t i = 0; i < model.items.size(); ++i) {
      if (model.items[i].kind == strips.kind && model.items[i].length <= strips.length + kFit)
        fitting.push_back(i);
    }
    model.items_of_class.push_back(std::move(fitting));
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
