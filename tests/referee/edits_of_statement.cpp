// Edits of figures, words and members, and of the text itself.
#include <algorithm>
#include <functional>
#include <set>
#include <utility>

#include "referee/edits.h"

namespace arrisline::referee {

static std::size_t pick(Random& random, std::size_t count) {
  return static_cast<std::size_t>(random()) % count;
}

using Pointer = Json::json_pointer;

// Every member of the plan and of what is in it.
static void members(const Json& value, const Pointer& at, std::vector<Pointer>& out) {
  if (value.is_object())
    for (auto it = value.begin(); it != value.end(); ++it) {
      out.push_back(at / it.key());
      members(it.value(), at / it.key(), out);
    }
  if (value.is_array())
    for (std::size_t i = 0; i < value.size(); ++i) members(value[i], at / i, out);
}

namespace {

class Pen {
 public:
  Pen(const Json& plan, Random& random, int of_each) : plan_(plan), random_(random), of_each_(of_each) {}

  std::vector<Edit> out;

  void figures();
  void words();
  void leave_out();
  void types();
  void text();

 private:
  double either() { return random_() % 2 == 0 ? 1 : -1; }
  void put(const std::string& kind, const Pointer& at, const Json& value) {
    Json plan = plan_;
    plan[at] = value;
    out.push_back({kind, plan.dump()});
  }
  // A figure off by a share of itself and so much more: just over what is allowed, and just under.
  void off(const std::string& name, const Pointer& at, double share, double more, double most) {
    const double stands = plan_[at].get<double>();
    const double allowed = share * stands + more;
    for (const auto& [word, by] : {std::pair{" just over", 1.3}, std::pair{" just under", 0.7}}) {
      double value = stands + by * allowed * either();
      if (value < 0) value = stands + by * allowed;
      if (value <= most) put(name + word, at, value);
    }
    for (const double wrong : {std::min(most, 2 * stands + 1), stands / 2})
      if (std::abs(wrong - stands) > 2 * allowed) put(name + " far off", at, wrong);
  }
  std::size_t cuts() const { return plan_["cuts"].size(); }
  Pointer cut(std::size_t i) const { return Pointer("/cuts") / i; }

  const Json& plan_;
  Random& random_;
  int of_each_;
};

}  // namespace

void Pen::figures() {
  constexpr double kNoMost = 1e12;
  for (int i = 0; i < of_each_; ++i)
    off("removed", cut(pick(random_, cuts())) / "removed", 0.01, 0.05, kNoMost);
  for (const char* at : {"/left/area", "/waste/area", "/waste/by_flat"})
    off("area", Pointer(at), 0.01, 0.05, kNoMost);
  off("max_height", Pointer("/left/max_height"), 0, 0.01, kNoMost);
  if (plan_["left"].contains("as_set"))
    for (const char* at : {"/left/as_set/max_height", "/left/as_set/deepest_gouge"})
      off("as_set", Pointer(at), 0, 0.01, kNoMost);
  for (std::size_t i = 0; i < cuts(); ++i)
    if (plan_["cuts"][i].contains("imbalance") && plan_["cuts"][i]["rides"] == "two arrises")
      off("imbalance", cut(i) / "imbalance", 0, 0.03, 1);
  if (plan_.contains("bound")) put("bound over effort", Pointer("/bound"), plan_["effort"].get<double>() + 1);
  const std::vector<int> wrong{0, 2, -1, 7, 1000000};
  for (int i = 0; i < of_each_; ++i) {
    const std::size_t k = pick(random_, cuts());
    const int number = wrong[pick(random_, wrong.size())];
    if (number != static_cast<int>(k + 1)) put("numbers not 1…n", cut(k) / "number", number);
    Json plan = plan_;
    for (std::size_t n = 0; n < cuts(); ++n) plan["cuts"][n]["number"] = n;
    out.push_back({"numbers not 1…n", plan.dump()});
    if (cuts() > 1) {
      plan = plan_;
      std::swap(plan["cuts"][0]["number"], plan["cuts"][cuts() - 1]["number"]);
      out.push_back({"numbers not 1…n", plan.dump()});
    }
  }
}

void Pen::words() {
  const std::vector<std::string> rides{"gauge line", "wall", "fence", "two arrises", "own arc", "by hand"};
  const std::vector<std::string> lies{"face up", "underside up", "end for end"};
  for (int i = 0; i < of_each_; ++i) {
    const std::size_t k = pick(random_, cuts());
    const Json& one = plan_["cuts"][k];
    const std::string guide = rides[pick(random_, rides.size())];
    if (one.value("rides", guide) != guide) {
      Json plan = plan_;
      plan[cut(k)]["rides"] = guide;
      plan[cut(k)]["imbalance"] = 0.0;
      out.push_back({"rides falsified", plan.dump()});
    }
    if (one.contains("lies")) {
      const std::string side = lies[pick(random_, lies.size())];
      Json plan = plan_;
      plan[cut(k)]["lies"] = side;
      if (random_() % 2 == 0) plan[cut(k)].erase("planed");
      if (side != one["lies"]) out.push_back({"lies falsified", plan.dump()});
      if (one.contains("planed"))
        put("planed falsified", cut(k) / "planed",
            one["planed"] == "along the arrow" ? "against the arrow" : "along the arrow");
    }
    if (one.contains("overhang"))
      put("overhang falsified", cut(k) / "overhang", !one["overhang"].get<bool>());
  }
  put("scrape falsified", Pointer("/left/scrape"), !plan_["left"]["scrape"].get<bool>());
  put("feasible falsified", Pointer("/feasible"), false);
  put("feasible falsified", Pointer("/undecided"), true);
  put("format falsified", Pointer("/format"), "another");
  put("format falsified", Pointer("/version"), 2);
  put("format falsified", Pointer("/units"), "inch");
  const std::vector<Pointer> all = [&] {
    std::vector<Pointer> found;
    members(plan_, Pointer(), found);
    return found;
  }();
  for (int i = 0; i < of_each_; ++i) {
    const Pointer& at = all[pick(random_, all.size())];
    if (plan_[at].is_string()) put("another word", at, "other");
  }
}

// Its place in every list left out: the poses of all cuts are one kind.
static std::string kind_of(const Pointer& at) {
  std::string out;
  for (const char c : at.to_string())
    if (c < '0' || c > '9') out += c;
  return out;
}

// Every kind of member once, here or there.
void Pen::leave_out() {
  std::vector<Pointer> all;
  members(plan_, Pointer(), all);
  std::shuffle(all.begin(), all.end(), random_);
  std::set<std::string> done;
  for (const Pointer& at : all) {
    if (!done.insert(kind_of(at)).second) continue;
    Json plan = plan_;
    plan[at.parent_pointer()].erase(at.back());
    out.push_back({"member missing", plan.dump()});
  }
}

void Pen::types() {
  std::vector<Pointer> all;
  members(plan_, Pointer(), all);
  const std::vector<Json> odd{"1", true, Json::array(), Json::object(), 1.5, -1, Json::array({1, 2, 3})};
  for (int i = 0; i < 6 * of_each_; ++i) {
    const Pointer& at = all[pick(random_, all.size())];
    put("null", at, nullptr);
    const Json& value = odd[pick(random_, odd.size())];
    if (value.type() != plan_[at].type()) put("wrong type", at, value);
  }
}

void Pen::text() {
  // Figures by the place of a mark in the text, so that what is no JSON can stand there.
  const Json flat = plan_.flatten();
  std::vector<std::string> numbers;
  for (auto it = flat.begin(); it != flat.end(); ++it)
    if (it.value().is_number()) numbers.push_back(it.key());
  const std::string mark = "\"@@\"";
  for (const char* odd :
       {"NaN", "Infinity", "-Infinity", "nan", "1e400", "-1e400", "1e300", "0x10", "1,5", "01", "+1"})
    for (int i = 0; i < of_each_; ++i) {
      Json plan = plan_;
      plan[Pointer(numbers[pick(random_, numbers.size())])] = "@@";
      std::string whole = plan.dump();
      whole.replace(whole.find(mark), mark.size(), odd);
      out.push_back(
          {std::string("no number: ") + (odd[0] == 'N' || odd[0] == 'n' ? "NaN" : "others"), whole});
    }
  const std::string whole = plan_.dump();
  for (int i = 0; i < of_each_; ++i) {
    std::vector<std::size_t> braces;
    for (std::size_t k = 0; k < whole.size(); ++k)
      if (whole[k] == '{' && whole[k + 1] == '"') braces.push_back(k);
    const std::size_t at = braces[pick(random_, braces.size())];
    const std::size_t end = whole.find('"', at + 2);
    std::string twice = whole;
    twice.insert(at + 1, whole.substr(at + 1, end - at) + ":1,");
    out.push_back({"name given twice", twice});
    out.push_back({"text cut short", whole.substr(0, 1 + pick(random_, whole.size() - 2))});
    std::string smudged = whole;
    smudged.erase(pick(random_, whole.size()), 1);
    out.push_back({"a character lost", smudged});
  }
}

std::vector<Edit> edits_of_the_statement(const Json& plan, Random& random, int of_each) {
  Pen pen(plan, random, of_each);
  pen.figures();
  pen.words();
  pen.leave_out();
  pen.types();
  pen.text();
  return std::move(pen.out);
}

}  // namespace arrisline::referee
