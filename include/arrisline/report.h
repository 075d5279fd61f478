// What the maker reads: the cut list and the answers of `check`.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "arrisline/plan.h"
#include "arrisline/slips.h"

namespace arrisline {

inline constexpr std::size_t kPageColumns = 80;  // no line of any report is wider

struct ReportOptions {
  Unit unit = Unit::inch;
  bool colour = false;
  double tolerance = 0.2;
  double scrape = 0.4;
  bool plain = false;  // to be read aloud: one fact a line, however long; colour is not minded
};

/// The numbered cut list, at most 80 columns wide, with what a gauge set wrong does where that is given. A
/// plan that is not feasible gives its reasons instead, as check_answer() does. Text from files appears with
/// its control bytes made visible, long names shortened.
std::string cut_list(const Plan& plan, const Kit& kit, const ReportOptions& options,
                     const GaugeError* gauge_error = nullptr);

/// The answer of `check` for one profile: "yes" and what it takes, or "no" and for each element the reason
/// and the nearest size that would do. At most 80 columns wide, ends with a newline.
std::string check_answer(const Plan& plan, const ReportOptions& options);

/// A length as the maker reads it: a fraction in lowest terms at `division` ("1 3/8") or decimal mm ("9.5"),
/// rounded to the nearest, ties to the even multiple. A division that is not one n-th of an inch gives inches
/// as decimals. REQUIRES: division_mm > 0, mm finite.
std::string show_length(double mm, Unit unit, double division_mm);

/// Text fit for a terminal: control bytes, bytes that are not UTF-8, and characters that reorder or hide text
/// are written out ("\x1b", "\u{202e}"); a tab becomes a space.
std::string visible(std::string_view text);

}  // namespace arrisline
