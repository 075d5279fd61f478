// What a careless or a malicious hand might change in a plan, each as the text it would leave.
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

#include "referee/judge.h"

namespace arrisline::referee {

using Json = nlohmann::ordered_json;
using Random = std::mt19937;

struct Edit {
  std::string kind;  // of tampering, as the table of the test names it
  std::string text;  // the plan as edited
};

/// Edits of the geometry: poses, planes, order, target, stock. Their figures stand as they were.
std::vector<Edit> edits_of_the_work(const Json& plan, Random& random, int of_each);
/// Edits of what is stated: figures, words, members, and of the text itself.
std::vector<Edit> edits_of_the_statement(const Json& plan, Random& random, int of_each);

/// The plan with the figures that the judge found in it, so that nothing but the work itself can give it
/// away.
std::string restated(const std::string& text, const Found& found);

}  // namespace arrisline::referee
