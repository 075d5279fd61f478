// Shown by tests/text/job_mistakes_test.cpp.
#include "text/job_checks.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "wording/length.h"
#include "wording/words.h"

namespace arrisline {
namespace {

std::optional<Section> ripped_section(const MouldText& text, const Section& profile, Unit unit,
                                      Mistakes& mistakes) {
  if (!text.width) return profile;
  const double width = text.width->value;
  std::optional<Section> out = on_width(profile, width);
  if (out) return out;
  const std::string name = quoted(text.profile.value);
  if (works_back_edge(profile)) {
    mistakes.error(text.width->place, name + " works the back edge of a blank " +
                                          show(profile.width, unit, true) +
                                          " wide; leave 'width' out, or write that one");
  } else {
    mistakes.error(text.width->place, name + " reaches " + show(reach(profile), unit, true) +
                                          " in from the working edge; write at least that width");
  }
  return std::nullopt;
}

/// The stocks that will do so far, as the tests of a moulding go on.
class Candidates {
 public:
  explicit Candidates(const std::vector<Stock>& stocks) {
    for (const Stock& stock : stocks) left_.push_back(&stock);
  }

  /// Keeps those that pass. Where none does all stay, so that they can be told of.
  bool keep(const std::function<bool(const Stock&)>& passes) {
    std::vector<const Stock*> passed;
    std::copy_if(left_.begin(), left_.end(), std::back_inserter(passed),
                 [&](const Stock* stock) { return passes(*stock); });
    if (passed.empty()) return false;
    left_ = std::move(passed);
    return true;
  }
  double most(double Stock::*measure) const {
    double out = 0;
    for (const Stock* stock : left_) out = std::max(out, stock->*measure);
    return out;
  }
  double nearest(double Stock::*measure, double to) const {
    double out = left_.front()->*measure;
    for (const Stock* stock : left_)
      if (std::abs(stock->*measure - to) < std::abs(out - to)) out = stock->*measure;
    return out;
  }
  std::vector<std::string> species() const {
    std::vector<std::string> out;
    for (const Stock* stock : left_) out.push_back(lower(stock->species));
    return out;
  }

 private:
  std::vector<const Stock*> left_;
};

void check_mould(const Mould& mould, const MouldText& text, const Job& job, Mistakes& mistakes) {
  const Unit unit = job.unit;
  Candidates stocks(job.stocks);
  if (text.species &&
      !stocks.keep([&](const Stock& s) { return lower(s.species) == lower(mould.species); })) {
    const std::vector<std::string> species = stocks.species();
    const std::string near =
        suggestion(mould.species, std::vector<std::string_view>(species.begin(), species.end()));
    mistakes.error(text.species->place, "no blank is of " + quoted(mould.species) +
                                            (near.empty() ? "; add a line 'blank' or 'buy' of it" : near));
    return;
  }
  const double thick = mould.section.thickness;
  if (!stocks.keep([&](const Stock& s) { return std::abs(s.thickness - thick) <= kSameThickness; })) {
    mistakes.error(text.profile.place,
                   "no blank " + (text.species ? "of " + quoted(mould.species) + " " : "") + "is " +
                       show(thick, unit) + " thick, as this profile is; the nearest is " +
                       show(stocks.nearest(&Stock::thickness, thick), unit) + ": add one of its own");
    return;
  }
  const double least = std::max(mould.width, job.ripping.hold);
  if (!stocks.keep([&](const Stock& s) { return s.width >= least - kSameWidth; })) {
    mistakes.error(text.width ? text.width->place : text.profile.place,
                   "no blank of its thickness is " + show(least, unit, true) + " wide" +
                       (least > mould.width ? ", the narrowest that can be held" : "") + "; the widest is " +
                       show(stocks.most(&Stock::width), unit) + ": add a wider one");
    return;
  }
  const double need = mould.length + 2 * job.saw.allowance;
  if (!stocks.keep([&](const Stock& s) { return s.length >= need - kSameWidth; })) {
    mistakes.error(text.length.place, "no blank that would do is " + show(need, unit, true) + " long" +
                                          (job.saw.allowance > 0 ? ", with the allowance at both ends" : "") +
                                          "; the longest is " + show(stocks.most(&Stock::length), unit) +
                                          ": add a longer one");
  }
}

/// The length to set up by of a profile comes from a blank that some moulding of it may come from.
void check_spare(const Job& job, const SpareText& spare, Mistakes& mistakes) {
  for (const Mould& mould : job.moulds) {
    double longest = 0;
    for (const Mould& other : job.moulds) {
      if (!same_strip(mould, other)) continue;
      for (const Stock& stock : job.stocks)
        if (serves(stock, other, job)) longest = std::max(longest, stock.length);
    }
    if (longest >= spare.length.value - kSameWidth) continue;
    mistakes.error(spare.length.place, "no blank that " + quoted(mould.name) +
                                           " may come from is so long; write at most " +
                                           show(longest, job.unit) + ", or add a longer one");
    return;
  }
}

}  // namespace

std::optional<Mould> settle_mould(const MouldText& text, const Section& profile, const SawText& saw,
                                  Unit unit, Mistakes& mistakes) {
  std::optional<Section> section = ripped_section(text, profile, unit, mistakes);
  if (!section) return std::nullopt;
  Mould out;
  out.name = text.name.value;
  out.profile = text.profile.value;
  out.section = std::move(*section);
  out.species = text.species ? text.species->value : "";
  out.width = out.section.width;
  out.length = text.length.value;
  out.count = text.count;
  out.mitre = text.mitre;
  out.inside = text.inside;
  out.spring = text.spring ? text.spring->value : saw.spring.value_or(90);
  out.corner = text.corner ? text.corner->value : saw.corner.value_or(90);
  out.across = text.across;
  out.line = text.place.line;
  if (out.mitre == Ends::none) {
    for (const auto* degrees : {&text.spring, &text.corner})
      if (*degrees)
        mistakes.warn((*degrees)->place,
                      "no mitre uses this angle; expected 'mitre left', 'right' or 'both'");
    return out;
  }
  const double back = runs_back(out) * (out.mitre == Ends::both ? 2 : 1);
  if (!(back < out.length)) {
    mistakes.error(text.mitre_place, "the length is too short for this mitre: it runs back " +
                                         show(back, unit, true) + ", and the moulding is " +
                                         show(out.length, unit) + " long; check the length and the angles");
    return std::nullopt;
  }
  return out;
}

void check_blanks(const Job& job, const std::vector<MouldText>& texts, const std::vector<StockText>& stocks,
                  const std::optional<SpareText>& spare, Mistakes& mistakes) {
  const std::size_t errors = mistakes.errors;
  for (const Mould& mould : job.moulds) {
    const auto text = std::find_if(texts.begin(), texts.end(),
                                   [&](const MouldText& one) { return one.place.line == mould.line; });
    check_mould(mould, *text, job, mistakes);
  }
  if (mistakes.errors > errors || job.moulds.size() < texts.size()) return;
  if (spare) check_spare(job, *spare, mistakes);
  for (const StockText& text : stocks) {
    const bool used = std::any_of(job.moulds.begin(), job.moulds.end(),
                                  [&](const Mould& mould) { return serves(text.stock, mould, job); });
    if (!used)
      mistakes.warn(text.place,
                    "no moulding of this job can come from this blank; check its measures, or leave it out");
  }
}

}  // namespace arrisline
