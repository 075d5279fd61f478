// Valid plans with something changed, judged in exact arithmetic and by the replay: what breaks the model is
// refused, what does not is accepted.
#include <cstdlib>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <map>
#include <set>

#include "arrisline/plan_json.h"
#include "arrisline/replay.h"
#include "catch.h"
#include "referee/edits.h"
#include "referee/judge.h"
#include "referee/small_plans.h"

using namespace arrisline;
using namespace arrisline::referee;

namespace {

constexpr unsigned kSeed = 7;      // ARRISLINE_SEED sets another
constexpr int kRandomPlans = 40;   // ARRISLINE_TAMPER_PLANS sets another number
constexpr int kOfEach = 2;         // edits of a kind, of one plan
constexpr int kLeastOfAKind = 20;  // so that a share of 95 % means something
const char* const kRestated = ", restated";
constexpr std::size_t kShown = 40;  // disagreements

unsigned number_from(const char* name, unsigned otherwise) {
  const char* given = std::getenv(name);
  return given ? static_cast<unsigned>(std::strtoul(given, nullptr, 10)) : otherwise;
}

/// What the replay command has against the plan; empty where it accepts it.
std::string refusal(const std::string& text) {
  const StatedPlan stated = plan_from_json(text);
  if (!stated.faults.empty()) return stated.faults.front();
  std::string out;
  for (const Finding& finding : replay(stated.plan, {}).findings)
    out += "cut " + std::to_string(finding.cut) + ", rule " + std::to_string(finding.rule) + ": " +
           finding.text + "; ";
  return out;
}

struct Tally {
  int broken = 0, broken_refused = 0, valid = 0, valid_accepted = 0, knife_edge = 0, knife_edge_refused = 0;

  int all() const { return broken + valid + knife_edge; }
  double share() const { return broken == 0 ? 1 : static_cast<double>(broken_refused) / broken; }
  Tally& operator+=(const Tally& other) {
    broken += other.broken;
    broken_refused += other.broken_refused;
    valid += other.valid;
    valid_accepted += other.valid_accepted;
    knife_edge += other.knife_edge;
    knife_edge_refused += other.knife_edge_refused;
    return *this;
  }
};

/// Which of the rules a finding of the judge is about: its words up to a colon, without the number of the
/// cut.
std::string rule_of(const std::string& broken) {
  const std::size_t from = broken.rfind("cut ", 0) == 0 ? broken.find(": ") + 2 : 0;
  return broken.substr(from, broken.find(':', from) - from);
}

using Tallies = std::map<std::string, Tally>;

Tally sum(const Tallies& tallies) {
  Tally all;
  for (const auto& [name, tally] : tallies) all += tally;
  return all;
}

class Bench {
 public:
  Tallies work, statement;                         // by kind of edit
  Tallies rules;                                   // edits that break one rule only, by that rule
  std::vector<std::string> missed, refused_valid;  // what the two disagree on

  void tamper(const Good& good, Random& random, int of_each) {
    judge_.forget();
    const Json plan = Json::parse(good.text);
    for (const Edit& edit : edits_of_the_work(plan, random, of_each)) {
      const Judgement judgement = weigh(good, edit, work);
      if (judgement.found) weigh(good, {edit.kind + kRestated, restated(edit.text, *judgement.found)}, work);
    }
    for (const Edit& edit : edits_of_the_statement(plan, random, of_each)) weigh(good, edit, statement);
  }

  Judgement judge(const std::string& text) { return judge_.judge(text); }

 private:
  Judgement weigh(const Good& good, const Edit& edit, Tallies& tallies) {
    const Judgement judgement = judge_.judge(edit.text);
    const std::string why = refusal(edit.text);
    Tally one;
    switch (judgement.verdict()) {
      case Verdict::broken:
        one.broken = 1;
        one.broken_refused = why.empty() ? 0 : 1;
        if (why.empty()) note(missed, good, edit, judgement.broken);
        break;
      case Verdict::valid:
        one.valid = 1;
        one.valid_accepted = why.empty() ? 1 : 0;
        if (!why.empty()) note(refused_valid, good, edit, {why});
        break;
      case Verdict::knife_edge:
        one.knife_edge = 1;
        one.knife_edge_refused = why.empty() ? 0 : 1;
        break;
    }
    tallies[edit.kind] += one;
    std::set<std::string> rules_broken;
    for (const std::string& broken : judgement.broken) rules_broken.insert(rule_of(broken));
    if (rules_broken.size() == 1) rules[*rules_broken.begin()] += one;
    return judgement;
  }

  static void note(std::vector<std::string>& list, const Good& good, const Edit& edit,
                   const std::vector<std::string>& why) {
    std::string line = edit.kind + " | " + good.name.substr(0, good.name.find('\n')) + " |";
    for (const std::string& one : why) line += " " + one + ";";
    list.push_back(line);
    // ARRISLINE_TAMPER_KEEP, a folder, keeps them for a closer look.
    if (const char* folder = std::getenv("ARRISLINE_TAMPER_KEEP")) {
      static int count = 0;
      const std::string name = std::to_string(++count) + ".json";
      std::ofstream(std::string(folder) + "/" + name) << edit.text;
      std::ofstream(std::string(folder) + "/disagreements.txt", std::ios::app) << name << " " << line << "\n";
    }
  }

  Judge judge_;
};

void show(const std::string& head, const Tallies& tallies) {
  std::cout << "\n"
            << std::left << std::setw(58) << head << std::right
            << " broken refused  valid accepted  near refused\n";
  const auto row = [](const std::string& name, const Tally& t) {
    std::cout << std::left << std::setw(58) << name << std::right << std::setw(7) << t.broken << std::setw(8)
              << t.broken_refused << std::setw(7) << t.valid << std::setw(9) << t.valid_accepted
              << std::setw(6) << t.knife_edge << std::setw(8) << t.knife_edge_refused << "\n";
  };
  for (const auto& [name, tally] : tallies) row(name, tally);
  row("in all", sum(tallies));
}

std::string first_of(const std::vector<std::string>& list) {
  std::string out;
  for (std::size_t i = 0; i < std::min(list.size(), kShown); ++i) out += list[i] + "\n";
  return out;
}

}  // namespace

TEST_CASE("the replay refuses what breaks the model, and nothing else", "[referee][tamper]") {
  const unsigned seed = number_from("ARRISLINE_SEED", kSeed);
  const int count = static_cast<int>(number_from("ARRISLINE_TAMPER_PLANS", kRandomPlans));
  std::vector<Good> plans = example_plans();
  for (const auto& more : {hand_plans(), random_plans(seed, count)})
    plans.insert(plans.end(), more.begin(), more.end());

  Bench bench;
  Random random(seed);
  int whole = 0;
  for (const Good& good : plans) {
    INFO(good.name);
    const Judgement judgement = bench.judge(good.text);
    CAPTURE(judgement.broken);
    CHECK(judgement.verdict() != Verdict::broken);
    CHECK(refusal(good.text) == "");
    if (judgement.verdict() != Verdict::valid) continue;
    ++whole;
    bench.tamper(good, random, kOfEach);
  }

  std::cout << "\nseed " << seed << ": " << whole << " of " << plans.size() << " plans tampered with\n";
  show("edits of the work", bench.work);
  show("edits of what is stated", bench.statement);
  show("what alone is broken", bench.rules);
  for (const Tallies* tallies : {&bench.work, &bench.statement}) {
    for (const auto& [kind, tally] : *tallies) {
      INFO(kind << ": " << tally.broken << " broken, " << tally.broken_refused << " refused");
      CHECK(tally.share() >= 0.95);
      // Edits that spoil the form can seldom be restated.
      if (kind.find(kRestated) == std::string::npos) CHECK(tally.all() >= kLeastOfAKind);
    }
    CHECK(sum(*tallies).share() >= 0.99);
  }
  for (const auto& [rule, tally] : bench.rules) {
    INFO(rule << ": " << tally.broken << " broken, " << tally.broken_refused << " refused");
    CHECK(tally.share() >= 0.95);
  }
  INFO("broken, and accepted:\n" << first_of(bench.missed));
  INFO("valid, and refused:\n" << first_of(bench.refused_valid));
  CHECK(bench.missed.size() <= static_cast<std::size_t>(sum(bench.work).broken) / 500);
  CHECK(bench.refused_valid.size() <= static_cast<std::size_t>(sum(bench.work).valid) / 500);
  // Nothing here is vacuous: every rule is broken alone often enough, and much is left valid.
  CHECK(whole >= 40);
  CHECK(sum(bench.work).broken >= 3000);
  CHECK(sum(bench.work).valid >= 500);
  for (const char* rule :
       {"form", "rule 1", "rule 2", "rule 3", "rule 4", "rule 5", "stated", "lies", "set"}) {
    INFO(rule);
    CHECK(bench.rules[rule].broken >= kLeastOfAKind);
  }
}
