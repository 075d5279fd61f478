// Shown by tests/cutting.
#include "cutting/first_fit.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "cutting/fits.h"

namespace arrisline::cutting {
namespace {

struct OpenStrip {
  std::size_t strip_class = 0;
  double room = 0;
  std::map<std::size_t, int> pieces;
};

struct OpenBoard {
  std::size_t source = 0;
  std::vector<std::size_t> strips;  // indices of strips
  std::vector<double> widths;
};

class FirstFit {
 public:
  explicit FirstFit(const Model& model) : model_(model), left_(model.sources.size()) {
    for (std::size_t s = 0; s < left_.size(); ++s) left_[s] = model.sources[s].most.value_or(1 << 30);
    order_.resize(model.sources.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    const auto rank = [&](std::size_t s) {
      const BoardSource& source = model.sources[s];
      return source.missing ? 2 : model.size_of(source).to_buy ? 1 : 0;
    };
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      if (rank(a) != rank(b)) return rank(a) < rank(b);
      return model.area_of(model.sources[a]) < model.area_of(model.sources[b]);
    });
  }

  Solution run() {
    std::vector<std::size_t> items(model_.items.size());
    std::iota(items.begin(), items.end(), std::size_t{0});
    std::stable_sort(items.begin(), items.end(), [&](std::size_t a, std::size_t b) {
      return model_.items[a].length > model_.items[b].length;
    });
    for (const std::size_t item : items)
      for (int left = model_.items[item].count; left > 0;) left -= place(item, left);
    return solution();
  }

 private:
  /// Places some of so many pieces together, at least one; how many.
  int place(std::size_t item, int count) {
    const CuttingRules& rules = model_.problem->rules;
    const double need = takes(model_.items[item].length, rules);
    for (OpenStrip& strip : strips_) {
      if (!may_hold(strip.strip_class, item) || strip.room < need) continue;
      return put(strip, item, need, count);
    }
    for (OpenBoard& board : boards_) {
      const std::optional<std::size_t> strips = class_for(model_.sources[board.source].size, item);
      if (!strips) continue;
      board.widths.push_back(model_.width_of(*strips));
      if (fits(board)) {
        return open(board, *strips, item, need, count);
      }
      board.widths.pop_back();
    }
    for (const std::size_t s : order_) {
      const std::optional<std::size_t> strips =
          left_[s] > 0 ? class_for(model_.sources[s].size, item) : std::nullopt;
      if (!strips) continue;
      --left_[s];
      boards_.push_back({s, {}, {model_.width_of(*strips)}});
      return open(boards_.back(), *strips, item, need, count);
    }
    return count;  // it fits no board, which the caller must see to
  }

  int open(OpenBoard& board, std::size_t strip_class, std::size_t item, double need, int count) {
    board.strips.push_back(strips_.size());
    strips_.push_back({strip_class, room_of(model_.classes[strip_class].length, model_.problem->rules), {}});
    return put(strips_.back(), item, need, count);
  }

  static int put(OpenStrip& strip, std::size_t item, double need, int count) {
    const int fit = std::min(count, static_cast<int>(strip.room / need));
    strip.room -= fit * need;
    strip.pieces[item] += fit;
    return fit;
  }

  bool fits(const OpenBoard& board) const {
    const CuttingRules& rules = model_.problem->rules;
    const double widest = *std::max_element(board.widths.begin(), board.widths.end());
    double taken = last_takes(widest, rules) - strip_takes(widest, rules);
    for (const double width : board.widths) taken += strip_takes(width, rules);
    return taken <= model_.size_of(model_.sources[board.source]).width + kFit;
  }

  bool may_hold(std::size_t strip_class, std::size_t item) const {
    const std::vector<std::size_t>& items = model_.items_of_class[strip_class];
    return std::find(items.begin(), items.end(), item) != items.end();
  }

  std::optional<std::size_t> class_for(std::size_t size, std::size_t item) const {
    for (const std::size_t c : model_.classes_of_size[size])
      if (may_hold(c, item)) return c;
    return std::nullopt;
  }

  Solution solution() const {
    Solution out;
    for (const OpenBoard& board : boards_) {
      std::map<std::size_t, int> strips;
      for (const std::size_t strip : board.strips) ++strips[strips_[strip].strip_class];
      out.boards.push_back({{board.source, Counts(strips.begin(), strips.end())}, 1});
    }
    for (const OpenStrip& strip : strips_)
      out.strips.push_back({{strip.strip_class, Counts(strip.pieces.begin(), strip.pieces.end())}, 1});
    return out;
  }

  const Model& model_;
  std::vector<int> left_;  // of each source
  std::vector<std::size_t> order_;
  std::vector<OpenBoard> boards_;
  std::vector<OpenStrip> strips_;
};

}  // namespace

Solution first_fit(const Model& model) {
  return FirstFit(model).run();
}

}  // namespace arrisline::cutting
