// Rounding and writing of lengths.
#include "report/figures.h"

#include <string>
#include <vector>

#include "arrisline/report.h"
#include "catch.h"

using namespace arrisline;

namespace {
constexpr double kIn = kMmPerInch;
}

TEST_CASE("decimals of an inch to the nearest 64th", "[report]") {
  // ICS Building Trades Pocketbook, decimal equivalents to the nearest 64th.
  CHECK(show_length(0.1330 * kIn, Unit::inch, kIn / 64) == "9/64");
  CHECK(show_length(0.3670 * kIn, Unit::inch, kIn / 64) == "23/64");
  CHECK(show_length(0.8979 * kIn, Unit::inch, kIn / 64) == "57/64");
}

TEST_CASE("every multiple of a division prints in lowest terms and reads back as itself", "[report]") {
  int mixed = 0;
  for (const int division : {2, 4, 8, 10, 12, 16, 32, 64, 128}) {
    for (int steps = -2 * division; steps <= 3 * division; ++steps) {
      const std::string text = show_length(steps * kIn / division, Unit::inch, kIn / division);
      const std::size_t slash = text.find('/');
      const std::size_t space = text.find(' ');
      const bool negative = text.front() == '-';
      const std::string digits = negative ? text.substr(1) : text;
      double value = 0;
      if (slash == std::string::npos) {
        value = std::stod(digits);
      } else {
        const std::size_t from = space == std::string::npos ? (negative ? 1 : 0) : space + 1;
        const int over = std::stoi(text.substr(from, slash - from));
        const int under = std::stoi(text.substr(slash + 1));
        value = static_cast<double>(over) / under;
        if (space != std::string::npos) {
          value += std::stod(digits);
          ++mixed;
        }
        INFO(text);
        CHECK(over < under);
        for (int common = 2; common <= over; ++common) CHECK((over % common != 0 || under % common != 0));
      }
      INFO(text << " for " << steps << "/" << division);
      CHECK((negative ? -value : value) == Approx(static_cast<double>(steps) / division).margin(1e-12));
    }
  }
  CHECK(mixed > 100);
}

TEST_CASE("ties go to the even multiple", "[report]") {
  // NIST SP 811 B.7 (from memory).
  CHECK(show_length(0.5 * kIn / 32, Unit::inch, kIn / 32) == "0");
  CHECK(show_length(1.5 * kIn / 32, Unit::inch, kIn / 32) == "1/16");
  CHECK(show_length(2.5 * kIn / 32, Unit::inch, kIn / 32) == "1/16");
  CHECK(show_length(31.5 * kIn / 32, Unit::inch, kIn / 32) == "1");
  CHECK(show_length(0.25, Unit::mm, 0.5) == "0");
  CHECK(show_length(0.75, Unit::mm, 0.5) == "1");
  CHECK(show_length(9.25, Unit::mm, 0.5) == "9");
  CHECK(show_length(0.15, Unit::mm, 0.1) == "0.2");
  CHECK(show_length(-1.5 * kIn / 32, Unit::inch, kIn / 32) == "-1/16");
}

TEST_CASE("millimetres and odd divisions print as decimals", "[report]") {
  CHECK(show_length(9.525, Unit::mm, 0.5) == "9.5");
  CHECK(show_length(12, Unit::mm, 0.5) == "12");
  CHECK(show_length(12.34, Unit::mm, 0.1) == "12.3");
  CHECK(show_length(-0.01, Unit::mm, 0.5) == "0");
  CHECK(show_length(12.5, Unit::inch, 0.5) == "0.492");  // 1/2 mm is no whole part of an inch
  CHECK(show_length(1e300, Unit::mm, 0.5).size() > 300);
}

TEST_CASE("a figure already round is not rounded again", "[report]") {
  CHECK(exact(1.375 * kIn, Unit::inch) == "1 3/8 in");
  CHECK(exact(61 * kIn / 128, Unit::inch) == "61/128 in");
  CHECK(exact(0.7 * kIn, Unit::inch) == "0.7 in");
  CHECK(exact(9.3, Unit::mm) == "9.3 mm");
  CHECK(exact(kIn, Unit::mm) == "25.4 mm");
}

TEST_CASE("thickness of wood never rounds to nothing", "[report]") {
  CHECK(thickness(0, Unit::inch) == "nothing");
  CHECK(thickness(0.2, Unit::inch) == "0.008 in");
  CHECK(thickness(0.002, Unit::inch) == "less than 0.001 in");
  CHECK(thickness(0.002, Unit::mm) == "less than 0.01 mm");
  CHECK(thickness(0.25, Unit::mm) == "0.25 mm");
}

TEST_CASE("what lies no farther is rounded up", "[report][figures]") {
  CHECK(no_more_than(0, Unit::inch) == "nothing");
  CHECK(no_more_than(0.0125 * kMmPerInch, Unit::inch) == "0.013 in");
  CHECK(no_more_than(0.012 * kMmPerInch, Unit::inch) == "0.012 in");
  CHECK(no_more_than(0.1875, Unit::mm) == "0.19 mm");
  CHECK(no_more_than(0.181, Unit::mm) == "0.19 mm");
  CHECK(no_more_than(0.18, Unit::mm) == "0.18 mm");
}

TEST_CASE("two thicknesses that differ never read alike", "[report]") {
  using Two = std::pair<std::string, std::string>;
  CHECK(told_apart(0.3, 0.2, Unit::inch) == Two("0.012 in", "0.008 in"));
  CHECK(told_apart(0.2021, 0.2, Unit::inch) == Two("0.008 in", "0.0079 in"));
  CHECK(told_apart(0.2003, 0.2, Unit::inch) == Two("0.00789 in", "0.00787 in"));
  CHECK(told_apart(0.203, 0.2, Unit::mm) == Two("0.203 mm", "0.2 mm"));
  CHECK(told_apart(0.0015, 0, Unit::mm) == Two("0.002 mm", "0 mm"));
}

TEST_CASE("figures of a drawing print as fractions where they are or come near", "[report]") {
  CHECK(about(0.375 * kIn, Unit::inch) == "3/8 in");
  CHECK(about(1.25 * kIn, Unit::inch) == "1 1/4 in");
  CHECK(about(19 * kIn / 64, Unit::inch) == "19/64 in");
  CHECK(about(0.2949 * kIn, Unit::inch) == "about 19/64 in");
  CHECK(about(0.254 * kIn, Unit::inch) == "0.254 in");
  CHECK(about(0.004 * kIn, Unit::inch) == "0.004 in");
  CHECK(about(0, Unit::inch) == "0 in");
  CHECK(about(7.49, Unit::mm) == "7.49 mm");
  CHECK(about(7.5, Unit::mm) == "7.5 mm");
}
