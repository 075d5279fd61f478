// Jobs of every statement and form of docs/jobs.md, put together from a stream of choices as plan/grammar.h
// does with profiles and kits; and the files that they name, held in memory.
#pragma once

#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "plan/grammar.h"
#include "text/job_files.h"

namespace arrisline::test {

inline const std::map<std::string, std::string>& grammar_files() {
  static const std::map<std::string, std::string> files = {
      {"shelf.profile",
       "profile shelf edge\nstock 4 wide, 3/4 thick\nstart face 3/8\nbead out 3/8 down 3/8\n"},
      {"my edges/Cove, left #2.profile", "stock 2 wide, 3/4 thick\nstart face 1/2\ncove out 1/2 down 1/2\n"},
      {"back.profile", "stock 2 wide, 3/4 thick\nstart back 1/4\nfillet out 2\n"},
      {"sixes.kit", "kit sixes\nrebate 3/4\nhollow 6\nround 6\n"},
      {"my planes/old,left.kit", "rebate 1\nround 8\nscraper\n"},
      {"my planes/Old  chest.kit", "rebate 1 1/4\nhollow 9\n"}};
  return files;
}

inline JobFiles grammar_job_files() {
  JobFiles out;
  out.missing = [](const std::string& name) -> std::optional<std::string> {
    if (grammar_files().count(name) > 0) return std::nullopt;
    return "";
  };
  out.profile = [](const std::string& name) { return read_profile(grammar_files().at(name), name); };
  out.kit = [](const std::string& name) { return read_kit(grammar_files().at(name), name); };
  return out;
}

class JobWriter {
 public:
  explicit JobWriter(Choices& choices)
      : choices_(choices), metric_(choices.once_in(3)), lengths_(choices, metric_) {
    end_ = choices.one_of<std::string>({"\n", "\r\n", "\r"});
  }

  /// A job whose every statement is sound. Whether its blanks serve its mouldings is left to chance, most do.
  std::string job() {
    if (choices_.once_in(6)) text_ += "\xEF\xBB\xBF" + end_;
    if (metric_) line({word("units"), word("mm")});
    if (!metric_ && choices_.once_in(2))
      line({word("units"), choices_.one_of<std::string>({"inch", "Inches", "in"})});
    std::vector<std::function<void()>> parts = {[this] { kit(); }, [this] { blanks(); },
                                                [this] { mouldings(); }};
    if (choices_.once_in(2))
      parts.push_back([this] {
        line({word("job"),
              choices_.one_of<std::string>({"hall bookcase", "a case,  No. 2", "Wash \u2014 stand"})});
      });
    if (choices_.once_in(2)) parts.push_back([this] { saw(); });
    if (choices_.once_in(2)) parts.push_back([this] { rip(); });
    if (choices_.once_in(3)) parts.push_back([this] { spare(); });
    if (choices_.once_in(3)) parts.push_back([this] { line({word("moisture"), "7", "12.5"}); });
    if (choices_.once_in(3)) parts.push_back([this] { board(); });
    if (choices_.once_in(3)) parts.push_back([this] { shop(); });
    shuffle(parts);
    for (const auto& part : parts) part();
    return text_;
  }

 private:
  std::string word(std::string text) {
    if (choices_.once_in(8))
      for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
  }
  std::string length(int steps) { return lengths_.length(steps); }
  /// So many 32nds of an inch in the unit of the file, to the nearest half millimetre.
  std::string about(int steps) {
    return length(metric_ ? static_cast<int>(std::lround(steps * 25.4 / 16)) : steps);
  }
  std::string gap() { return choices_.one_of<std::string>({" ", " ", "  ", "\t", "     ", " \t"}); }
  template <class T>
  void shuffle(std::vector<T>& parts) {
    for (std::size_t i = parts.size(); i > 1; --i)
      std::swap(parts[i - 1], parts[static_cast<std::size_t>(choices_.from(0, static_cast<int>(i) - 1))]);
  }

  /// `commas` from this part on may stand between the parts.
  void line(const std::vector<std::string>& parts, std::size_t commas = 100) {
    std::string shown = choices_.once_in(6) ? gap() : "";
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (i >= commas && choices_.once_in(8)) shown += choices_.one_of<std::string>({",", " ,", "\t,"});
      if (i > 0) shown += gap();
      shown += parts[i];
    }
    if (choices_.once_in(4))
      shown += choices_.one_of<std::string>(
          {"#close", "  # \"as  drawn\" \t", "\t##  two,  apart", "   # so \u2014 wide"});
    text_ += shown + end_;
    if (choices_.once_in(8))
      text_ += choices_.one_of<std::string>({"# a line  of words ", "\t#", "  #  \"open"}) + end_;
    if (choices_.once_in(8)) text_ += choices_.one_of<std::string>({"", " ", "\t"}) + end_ + end_;
  }

  void kit() {
    // Without quotation marks a name is read to the end of the line, its blanks as one each.
    line({word("kit"),
          choices_.one_of<std::string>({"sixes.kit", "\"sixes.kit\"", "my planes/old,left.kit",
                                        "\"my planes/old,left.kit\"", "\"my planes/Old  chest.kit\""})});
  }
  void blanks() {
    const int lines = choices_.from(1, 3);
    for (int i = 0; i < lines; ++i) {
      const bool buy = choices_.once_in(3);
      std::vector<std::string> measures = {"3/4in " + word("thick"),
                                           about(32 * choices_.from(3, 9)) + " " + word("wide"),
                                           about(32 * choices_.from(60, 96)) + " " + word("long")};
      if (choices_.once_in(2)) measures.push_back(word("count") + " " + std::to_string(choices_.from(1, 20)));
      shuffle(measures);
      std::vector<std::string> parts = {word(buy ? "buy" : "blank")};
      if (i == 0 || choices_.once_in(2))
        parts.push_back(choices_.one_of<std::string>({"poplar", "Poplar", "white  oak"}));
      // No comma between the word and what comes first.
      parts.insert(parts.end(), measures.begin(), measures.end());
      line(parts, 2);
    }
  }
  void mouldings() {
    const std::vector<std::string> names = {"cornice", "\"left return\"", "\"top # shelf\"", "Rails",
                                            "\"a,  b\""};
    const int lines = choices_.from(1, 5);
    for (int i = 0; i < lines; ++i) mould(names[static_cast<std::size_t>(i)]);
  }
  void mould(const std::string& name) {
    const std::string profile =
        choices_.one_of<std::string>({"shelf.profile", "\"my edges/Cove, left #2.profile\"", "back.profile"});
    std::vector<std::string> fields = {word("length") + " " + about(32 * choices_.from(12, 58))};
    if (profile != "back.profile" && choices_.once_in(2))
      fields.push_back(word("width") + gap() + about(choices_.from(32, 90)));
    if (choices_.once_in(2)) fields.push_back(word("count") + " " + std::to_string(choices_.from(1, 12)));
    if (choices_.once_in(2)) {
      fields.push_back(word("mitre") + " " + choices_.one_of<std::string>({"left", "right", "both"}) +
                       choices_.one_of<std::string>({"", " outside", " inside"}));
      if (choices_.once_in(2)) fields.push_back(word("spring") + " " + std::to_string(choices_.from(0, 90)));
      if (choices_.once_in(2))
        fields.push_back(word("corner") + " " + std::to_string(choices_.from(80, 150)) + ".5");
    }
    if (choices_.once_in(6)) fields.push_back(word("of") + " poplar");
    if (choices_.once_in(4)) fields.push_back(word("across") + " " + about(32 * choices_.from(6, 20)));
    shuffle(fields);
    std::vector<std::string> parts = {word("mould"), name, profile};
    parts.insert(parts.end(), fields.begin(), fields.end());
    line(parts, 3);
  }
  void saw() {
    std::vector<std::string> fields = {word("kerf") + " " +
                                       choices_.one_of<std::string>({"0", "1/16in", "1.5mm"})};
    if (choices_.once_in(2)) fields.push_back(word("allowance") + " " + length(1));
    if (choices_.once_in(3)) fields.push_back(word("spring") + " 38");
    if (choices_.once_in(3)) fields.push_back(word("corner") + " 90");
    shuffle(fields);
    fields.insert(fields.begin(), word("saw"));
    line(fields, 2);
  }
  void rip() {
    std::vector<std::string> fields = {word("kerf") + " " + length(2)};
    if (choices_.once_in(2)) fields.push_back(word("true") + " " + length(1));
    if (choices_.once_in(2)) fields.push_back(word("hold") + " " + about(48));
    shuffle(fields);
    fields.insert(fields.begin(), word("rip"));
    line(fields, 2);
  }
  void spare() {
    std::vector<std::string> parts = {word("spare"), about(32 * choices_.from(6, 20))};
    if (choices_.once_in(2)) parts.push_back(word("count") + " " + std::to_string(choices_.from(1, 3)));
    line(parts, 2);
  }
  void board() {
    line({word("board"),
          word("stops") + " " + word("at") + gap() + about(16) + ", " + about(32) + ", " + about(64),
          word("screw") + " " + length(10), word("clear") + " 0"});
  }
  void shop() {
    line(
        {word("shop"), word("weight") + " change 3 " + word("cut") + " 1.5", word("gauge") + " " + length(1)},
        2);
    if (choices_.once_in(2)) line({word("shop"), word("strokes") + " 18"});
  }

  Choices& choices_;
  bool metric_;
  Writer lengths_;
  std::string end_;
  std::string text_;
};

inline std::string make_job(Choices& choices) {
  return JobWriter(choices).job();
}

}  // namespace arrisline::test
