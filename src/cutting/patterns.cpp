// Shown by tests/cutting.
#include "cutting/patterns.h"

#include <algorithm>
#include <cmath>

#include "cutting/fits.h"

namespace arrisline::cutting {
namespace {

/// Something to be packed, as often as `most`, each taking `takes` of the room and worth `worth`.
struct Packed {
  std::size_t what = 0;
  double takes = 0;
  double worth = 0;
  int most = 0;
};

/// Depth first, the things of most worth for their room first, as many of each as fit first; left off where
/// even filling the rest of the room by its best rate falls short.
class Packing {
 public:
  Packing(std::vector<Packed> things, const std::function<double()>& least,
          const std::function<void(const Counts&, double)>& found, std::int64_t& looks)
      : things_(std::move(things)), least_(least), found_(found), looks_(looks) {
    std::stable_sort(things_.begin(), things_.end(), [](const Packed& a, const Packed& b) {
      return a.worth * b.takes > b.worth * a.takes ||
             (a.worth * b.takes == b.worth * a.takes && a.takes > b.takes);
    });
    smallest_.resize(things_.size() + 1, 1e300);
    for (std::size_t i = things_.size(); i-- > 0;)
      smallest_[i] = std::min(smallest_[i + 1], things_[i].takes);
    counts_.resize(things_.size());
  }

  bool run(double room) {
    descend(0, room, 0);
    return looks_ < kMostLooks;
  }

 private:
  void descend(std::size_t at, double room, double worth) {
    if (++looks_ >= kMostLooks) return;
    if (at == things_.size() || smallest_[at] > room) {
      tell(room, worth);
      return;
    }
    const Packed& thing = things_[at];
    // A hair under what is asked for is let through: which of two equal sums is less is chance.
    if (worth + room / thing.takes * std::max(thing.worth, 0.0) < least_() - 1e-9) return;
    const int fits = std::min(thing.most, static_cast<int>(std::min(1e9, std::floor(room / thing.takes))));
    for (int n = fits; n >= 0; --n) {
      counts_[at] = n;
      descend(at + 1, room - n * thing.takes, worth + n * thing.worth);
    }
    counts_[at] = 0;
  }

  void tell(double room, double worth) {
    if (worth < least_() - 1e-9) return;
    // Room left for one more of something is another pattern with it, worth no less.
    for (std::size_t i = 0; i < things_.size(); ++i)
      if (counts_[i] < things_[i].most && things_[i].takes <= room && things_[i].worth >= 0) return;
    Counts out;
    for (std::size_t i = 0; i < things_.size(); ++i)
      if (counts_[i] > 0) out.emplace_back(things_[i].what, counts_[i]);
    if (out.empty()) return;
    std::sort(out.begin(), out.end());
    found_(out, worth);
  }

  std::vector<Packed> things_;
  const std::function<double()>& least_;
  const std::function<void(const Counts&, double)>& found_;
  std::vector<double> smallest_;  // of the things from here on
  std::vector<int> counts_;
  std::int64_t& looks_;
};

}  // namespace

bool for_each_strip(const Model& model, std::size_t strip_class, const std::vector<double>& worth_of_item,
                    const std::function<double()>& least,
                    const std::function<void(const Counts&, double)>& found) {
  std::vector<Packed> things;
  for (const std::size_t i : model.items_of_class[strip_class]) {
    const Item& item = model.items[i];
    things.push_back({i, takes(item.length, model.problem->rules), worth_of_item[i], item.count});
  }
  std::int64_t looks = 0;
  return Packing(std::move(things), least, found, looks)
      .run(room_of(model.classes[strip_class].length, model.problem->rules));
}

bool for_each_board(const Model& model, std::size_t size, const std::vector<double>& worth_of_class,
                    const std::vector<int>& most, const std::function<double()>& least,
                    const std::function<void(const Counts&, double)>& found) {
  const CuttingRules& rules = model.problem->rules;
  const std::vector<std::size_t>& classes = model.classes_of_size[size];
  bool whole = true;
  std::int64_t looks = 0;
  // The widest strip first: it comes last, so what it takes is known, and the others are no wider.
  for (std::size_t w = 0; w < classes.size(); ++w) {
    const std::size_t widest = classes[w];
    if (most[widest] < 1) continue;
    std::vector<Packed> things;
    for (std::size_t i = w; i < classes.size(); ++i) {
      const std::size_t c = classes[i];
      things.push_back(
          {c, strip_takes(model.width_of(c), rules), worth_of_class[c], most[c] - (c == widest ? 1 : 0)});
    }
    const double room = model.problem->sizes[size].width + kFit - last_takes(model.width_of(widest), rules);
    if (room < 0) continue;
    const auto with_widest = [&](const Counts& counts, double worth) {
      Counts all = counts;
      const auto place =
          std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.first >= widest; });
      if (place != all.end() && place->first == widest) {
        ++place->second;
      } else {
        all.insert(place, {widest, 1});
      }
      found(all, worth + worth_of_class[widest]);
    };
    const std::function<double()> least_beside = [&] { return least() - worth_of_class[widest]; };
    bool any = false;
    const std::function<void(const Counts&, double)> beside = [&](const Counts& counts, double worth) {
      any = true;
      with_widest(counts, worth);
    };
    whole = Packing(things, least_beside, beside, looks).run(room) && whole;
    // Alone, where nothing goes beside it.
    if (!any && worth_of_class[widest] >= least() - 1e-9) with_widest({}, 0);
  }
  return whole;
}

}  // namespace arrisline::cutting
