// Plans to tamper with: every example with every kit, plans made by hand, and small profiles at random.
#pragma once

#include <string>
#include <vector>

namespace arrisline::referee {

struct Good {
  std::string name;
  std::string text;  // the plan as JSON
};

std::vector<Good> example_plans();
std::vector<Good> hand_plans();
std::vector<Good> random_plans(unsigned seed, int count);

}  // namespace arrisline::referee
