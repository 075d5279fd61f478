// A row for each profile, a column for each kit. Shown by tests/report/survey_table_test.cpp.
#include "report/survey_table.h"

#include <algorithm>

#include "arrisline/report.h"
#include "report/page.h"

namespace arrisline {
namespace {

constexpr std::size_t kLongestName = 40;
constexpr std::size_t kMargin = 2;
constexpr std::size_t kGap = 2;

const char* word(Cuts cuts) {
  return cuts == Cuts::yes ? "yes" : cuts == Cuts::no ? "no" : "?";
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t used = columns(text);
  return text + std::string(width > used ? width - used : 0, ' ');
}

/// Without blanks at the end of the line.
std::string ended(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

class Tables {
 public:
  explicit Tables(const Survey& survey) : survey_(survey) {
    for (const std::string& name : survey.profiles) {
      names_.push_back(shorten(name, kLongestName));
      names_width_ = std::max(names_width_, columns(names_.back()));
    }
    column_ = std::max(std::to_string(survey.kits.size()).size(), std::size_t{3});
  }

  std::string all() const {
    const std::size_t fit = (kPageColumns - kMargin - names_width_) / (kGap + column_);
    std::string out;
    for (std::size_t from = 0; from < survey_.kits.size(); from += fit)
      out += table(from, std::min(from + fit, survey_.kits.size()));
    return out;
  }

 private:
  std::string table(std::size_t from, std::size_t to) const {
    std::string out = "\n";
    std::string head(kMargin + names_width_, ' ');
    for (std::size_t k = from; k < to; ++k) head += cell(std::to_string(k + 1));
    out += ended(head);
    for (std::size_t p = 0; p < names_.size(); ++p) {
      std::string row = std::string(kMargin, ' ') + padded(names_[p], names_width_);
      for (std::size_t k = from; k < to; ++k) row += cell(word(survey_.cuts[p * survey_.kits.size() + k]));
      out += ended(row);
    }
    return out;
  }
  std::string cell(const std::string& text) const { return std::string(kGap, ' ') + padded(text, column_); }

  const Survey& survey_;
  std::vector<std::string> names_;
  std::size_t names_width_ = 0;
  std::size_t column_ = 0;
};

std::string names_in(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) out += (out.empty() ? "" : ", ") + shorten(name, kLongestName);
  return out;
}

/// What the table comes to.
std::string sum(const Survey& survey) {
  const std::size_t kits = survey.kits.size();
  std::vector<std::string> by_none, open;
  for (std::size_t p = 0; p < survey.profiles.size(); ++p) {
    const auto begin = survey.cuts.begin() + static_cast<std::ptrdiff_t>(p * kits);
    const auto end = begin + static_cast<std::ptrdiff_t>(kits);
    if (std::find(begin, end, Cuts::yes) != end) continue;
    (std::find(begin, end, Cuts::undecided) == end ? by_none : open).push_back(survey.profiles[p]);
  }
  Page page;
  page.blank();
  if (by_none.empty() && open.empty())
    page.line(0, "Each of the profiles is cut by at least one of the kits.");
  if (!by_none.empty()) page.item(0, "Cut by none of the kits: ", names_in(by_none) + ".");
  if (!open.empty()) page.item(0, "Not known to be cut by any: ", names_in(open) + ".");
  if (std::find(survey.cuts.begin(), survey.cuts.end(), Cuts::undecided) != survey.cuts.end())
    page.line(0, "?: the search reached its limit before it found a plan; --limit makes it longer.");
  return in_columns(page.take(), false);
}

}  // namespace

std::string survey_table(const Survey& survey) {
  std::string out = "Which kit cuts which profile\n\n";
  const std::size_t digits = std::to_string(survey.kits.size()).size();
  for (std::size_t k = 0; k < survey.kits.size(); ++k) {
    const std::string number = std::to_string(k + 1);
    out += std::string(kMargin + digits - number.size(), ' ') + number + "  " +
           shorten(survey.kits[k], kPageColumns - kMargin - digits - 2) + "\n";
  }
  return out + Tables(survey).all() + sum(survey);
}

}  // namespace arrisline
