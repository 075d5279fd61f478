// The statements of a job as written, each sound by itself.
#pragma once

#include <optional>
#include <string>

#include "arrisline/job.h"
#include "text/statement.h"

namespace arrisline {

/// A figure or a word, and where it stands; for later messages about it.
template <class T>
struct Stated {
  T value{};
  Place place;
};

struct MouldText {
  bool sound = true;  // the options; else only the name and the profile count
  Place place;        // of the whole line
  Stated<std::string> name;
  Stated<std::string> profile;
  std::optional<Stated<double>> width;
  Stated<double> length;
  int count = 1;
  Ends mitre = Ends::none;
  Place mitre_place;
  bool inside = false;
  std::optional<Stated<double>> spring;
  std::optional<Stated<double>> corner;
  std::optional<Stated<std::string>> species;
  std::optional<double> across;
};

struct StockText {
  Place place;
  Stock stock;
};

struct SawText {
  Saw saw;
  std::optional<double> spring;  // of every moulding that says nothing itself
  std::optional<double> corner;
};

struct SpareText {
  Stated<double> length;
  int count = 1;
};

struct RippingText {
  std::optional<double> kerf;
  double trued = 0;
  std::optional<Stated<double>> hold;
};

/// A word, or words in quotation marks, without the marks.
std::optional<Stated<std::string>> read_word(Statement& statement, const std::string& what);

/// Nothing where there is no name or no profile.
std::optional<MouldText> read_mould(Statement& statement);
/// `blank …` on hand, or `buy …`.
std::optional<StockText> read_stock_line(Statement& statement, bool to_buy);
std::optional<SawText> read_saw(Statement& statement);
std::optional<RippingText> read_rip(Statement& statement);
std::optional<SpareText> read_spare(Statement& statement);
std::optional<Moisture> read_moisture(Statement& statement);

}  // namespace arrisline
