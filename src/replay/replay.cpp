// Replays a plan on the blank, pose by pose, and judges it by rules 1 to 5 of docs/model.md. The wood is
// never carried as an outline: depths, contacts and thickness are asked of the exact poses, and only areas
// come from flattened polygons. Shown by tests/replay.
#include "arrisline/replay.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "replay/remains.h"
#include "replay/riding.h"
#include "replay/rules.h"

namespace arrisline {

using namespace replaying;

// Wood below the finished line that is no more than the figures' own play.
static constexpr double kGouge = 0.01;
// A cut that takes less than this takes nothing, mm² of section.
static constexpr double kCutsNothing = 0.01;
// A stated area may be off by 1 % and this much, mm².
static constexpr double kAreaShare = 0.01;
static constexpr double kAreaOff = 0.05;
// A stated thickness may be off by this, mm.
static constexpr double kHeightOff = 0.01;
// A stated imbalance may be off by this share of the width.
static constexpr double kImbalanceOff = 0.03;
// What is found left may exceed a limit by this: the chord error of 0.0005 mm and the search's 0.0001.
static constexpr double kHeightSlack = 0.001;
// Efforts are sums of a few dozen terms.
static constexpr double kEffortSlack = 1e-6;

namespace {

class Replayer {
 public:
  Replayer(const Plan& plan, const ReplayOptions& options)
      : plan_(plan),
        options_(options),
        target_(interior_to_the_left(plan.section.target)),
        far_(far_beyond(plan)),
        wood_(plan.section.width, plan.section.thickness),
        flat_{flatten(std::span<const Edge>(blank_outline(plan.section.width, plan.section.thickness)))},
        flat_target_{flatten(std::span<const Edge>(target_))} {}

  ReplayResult run();

 private:
  void find(int cut, int rule, const std::string& text) { out_.findings.push_back({cut, rule, text}); }
  void judge_cut(const Cut& cut);
  void judge_poses(const Cut& cut);
  void judge_scraper(const Cut& cut, bool last);
  void judge_left();
  void judge_waste();
  void judge_as_set();
  void compare_area(int cut, const std::string& what, double stated, double found);

  const Plan& plan_;
  const ReplayOptions& options_;
  const Loop target_;
  const double far_;
  Standing wood_;
  ClipperLib::Paths flat_;  // the wood as it stands, flattened
  const ClipperLib::Paths flat_target_;
  double by_flat_ = 0;
  ReplayResult out_;
};

void Replayer::compare_area(int cut, const std::string& what, double stated, double found) {
  if (std::abs(stated - found) <= kAreaShare * found + kAreaOff) return;
  find(cut, 0, what + " is stated as " + figure(stated) + " mm², found " + figure(found));
}

void Replayer::judge_poses(const Cut& cut) {
  const std::string what = std::string("the ") + word(cut.plane.kind);
  Depth worst;
  std::string body;
  for (const Pose& pose : cut.poses) {
    const Swept swept = sweep_of(cut.plane, pose, far_);
    worst = gouge(swept, target_, worst);
    flat_ = less(flat_, {flatten(swept)});
    if (body.empty()) body = body_fault(cut.plane, pose, far_, flat_);
    wood_.take(swept);
  }
  out_.deepest_gouge = std::max(out_.deepest_gouge, worst.mm);
  if (worst.mm > kGouge)
    find(cut.number, 1,
         what + " reaches " + figure(worst.mm) + " mm into the finished wood " + near(worst.at));
  if (!body.empty()) find(cut.number, 1, body);
}

void Replayer::judge_cut(const Cut& cut) {
  if (cut.plane.is_curved()) {
    const Riding riding = judge_riding(wood_, target_, cut);
    for (const std::string& fault : riding.faults) find(cut.number, 4, fault);
    if (riding.faults.empty() && cut.rides == Rides::two_arrises &&
        std::abs(riding.imbalance - cut.imbalance) > kImbalanceOff)
      find(cut.number, 0,
           "the imbalance is stated as " + figure(cut.imbalance) + ", found " + figure(riding.imbalance));
  }
  for (const std::string& fault : register_faults(wood_, plan_.section, cut)) find(cut.number, 5, fault);
  for (const std::string& fault : lying_faults(plan_.section, cut)) find(cut.number, 5, fault);
  if (const std::string fault = set_fault(cut); !fault.empty()) find(cut.number, 0, fault);
  const double before = area_of(flat_);
  judge_poses(cut);
  const double removed = before - area_of(flat_);
  if (cut.plane.is_flat()) by_flat_ += removed;
  if (removed <= kCutsNothing) find(cut.number, 2, "takes nothing");
  compare_area(cut.number, "what it takes", cut.removed, removed);
}

void Replayer::judge_scraper(const Cut& cut, bool last) {
  if (!last) find(cut.number, 5, "the scraper comes before a plane");
  if (!plan_.left.scrape)
    find(cut.number, 5, "a scraper is used, but what is left is not said to be scraped");
  const double left = area_of(less(flat_, flat_target_));
  if (left <= kCutsNothing) find(cut.number, 2, "takes nothing");
  compare_area(cut.number, "what it takes", cut.removed, left);
}

void Replayer::judge_left() {
  const Left& stated = plan_.left;
  const ClipperLib::Paths left = less(flat_, flat_target_);
  const Depth thickest = thickest_left(wood_, target_, left);
  out_.left_area = area_of(left);
  out_.max_height = thickest.mm;
  const bool scraped = !plan_.cuts.empty() && plan_.cuts.back().plane.kind == PlaneKind::scraper;
  if (stated.scrape && !scraped)
    find(0, 5, "what is left is said to be scraped, but no scraper ends the plan");
  const double limit = scraped ? std::max(options_.scrape, options_.tolerance) : options_.tolerance;
  if (thickest.mm > limit + kHeightSlack)
    find(0, 3,
         "wood is left " + figure(thickest.mm) + " mm thick " + near(thickest.at) + ", more than the " +
             figure(limit) + " mm allowed");
  else if (stated.max_height > limit + kHeightSlack)
    find(0, 3,
         "the wood left is stated as " + figure(stated.max_height) + " mm thick, more than the " +
             figure(limit) + " mm allowed");
  if (std::abs(stated.max_height - thickest.mm) > kHeightOff)
    find(0, 0,
         "the thickest wood left is stated as " + figure(stated.max_height) + " mm, found " +
             figure(thickest.mm));
  compare_area(0, "what is left", stated.area, out_.left_area);
  for (const std::string& fault : facet_faults(target_, plan_, limit)) find(0, 3, fault);
}

void Replayer::judge_waste() {
  const double blank = plan_.section.width * plan_.section.thickness;
  compare_area(0, "the waste", plan_.waste_area, blank - area(target_));
  compare_area(0, "the waste taken by flat soles", plan_.waste_by_flat, by_flat_);
  if (plan_.bound > plan_.effort + kEffortSlack)
    find(0, 0, "the least effort proved is more than the plan's own");
}

void Replayer::judge_as_set() {
  Standing wood(plan_.section.width, plan_.section.thickness);
  ClipperLib::Paths flat{
      flatten(std::span<const Edge>(blank_outline(plan_.section.width, plan_.section.thickness)))};
  Depth deepest;
  for (const Cut& cut : plan_.cuts) {
    if (cut.poses.size() != cut.set.size()) return;  // a plan that says nothing of how it is set
    for (const Pose& pose : cut.set) {
      const Swept swept = sweep_of(cut.plane, pose, far_);
      deepest = gouge(swept, target_, deepest);
      flat = less(flat, {flatten(swept)});
      wood.take(swept);
    }
  }
  const Depth thickest = thickest_left(wood, target_, less(flat, flat_target_));
  if (std::abs(plan_.left.as_set_max_height - thickest.mm) > kHeightOff)
    find(0, 0,
         "the thickest wood left as set is stated as " + figure(plan_.left.as_set_max_height) +
             " mm, found " + figure(thickest.mm));
  if (std::abs(plan_.left.as_set_deepest_gouge - deepest.mm) > kHeightOff)
    find(0, 0,
         "the deepest gouge as set is stated as " + figure(plan_.left.as_set_deepest_gouge) + " mm, found " +
             figure(deepest.mm));
}

ReplayResult Replayer::run() {
  for (const std::string& fault : outline_faults(plan_.section, target_, flat_target_)) find(0, 0, fault);
  if (!out_.findings.empty()) return out_;
  for (std::size_t i = 0; i < plan_.cuts.size(); ++i) {
    const Cut& cut = plan_.cuts[i];
    if (cut.number != static_cast<int>(i + 1)) find(0, 0, "the cuts are not numbered from 1 upward");
    if (cut.plane.kind == PlaneKind::scraper) {
      judge_scraper(cut, i + 1 == plan_.cuts.size());
    } else {
      judge_cut(cut);
    }
  }
  judge_left();
  judge_waste();
  judge_as_set();
  return out_;
}

}  // namespace

ReplayResult replay(const Plan& plan, const ReplayOptions& options) {
  ReplayResult out;
  if (plan.undecided || !plan.feasible) {
    out.findings.push_back({0, 0, "the plan has no cuts to replay"});
    return out;
  }
  out.findings = unusable(plan);
  if (!out.findings.empty()) return out;
  return Replayer(plan, options).run();
}

}  // namespace arrisline
