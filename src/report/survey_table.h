// The table of which kit cuts which profile.
#pragma once

#include <string>
#include <vector>

namespace arrisline {

enum class Cuts { yes, no, undecided };

/// Answers of a survey: `cuts[p * kits.size() + k]` is that of profile p and kit k.
struct Survey {
  std::vector<std::string> profiles;  // their names, in order
  std::vector<std::string> kits;
  std::vector<Cuts> cuts;
};

/// At most 80 columns wide: many kits make several tables, one under another, each with every profile. Names
/// have their control bytes made visible, long ones are shortened. REQUIRES: a profile and a kit at least.
std::string survey_table(const Survey& survey);

}  // namespace arrisline
