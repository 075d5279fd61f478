// One statement under the reader's finger: a line of tokens, and where reading has got to.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "arrisline/kit.h"
#include "wording/source.h"

namespace arrisline {

/// Mistakes reported of one statement.
inline constexpr int kMaxFaults = 20;

/// A statement being read. Its first token is the word that says what it is; reading starts after it.
/// `failed` is set by every mistake, so that a reader can leave out the consequences of one.
struct Statement {
  const std::vector<Token>& tokens;
  Mistakes& mistakes;
  Unit unit = Unit::inch;
  std::size_t next = 1;
  bool failed = false;
  int faults = 0;  // mistakes found; those past kMaxFaults are not reported

  bool done() const { return next >= tokens.size(); }
  const Token& token() const { return tokens[next]; }
};

/// The whole statement; and the first place after its last word.
Place place_of(const Statement& statement);
Place end_of(const Statement& statement);
/// The words from token `first` to the one last read.
Place read_since(const Statement& statement, std::size_t first);
/// The same as written, blanks between words brought down to one.
std::string text_since(const Statement& statement, std::size_t first);

void fail(Statement& statement, Place place, std::string message);
/// "expected WHAT, found 'x'" at the next word, or "… but the line ends here".
void fail_expected(Statement& statement, const std::string& what);

/// Whether the next word is this one; `accept` reads over it.
bool at_word(const Statement& statement, std::string_view word);
bool at_any(const Statement& statement, const std::vector<std::string_view>& words);
bool accept(Statement& statement, std::string_view word);
/// Reads over one comma between clauses. A comma with nothing after it is a mistake.
void accept_comma(Statement& statement);
/// Goes on to the next of the words, or to the end, after a mistake.
void skip_to(Statement& statement, const std::vector<std::string_view>& words);
/// What to write for a number with a decimal comma, where this comma follows one; or nothing.
std::string decimal_comma(const Statement& statement);
/// A mistake where words are left over.
void expect_end(Statement& statement);

enum class Zero { refused, allowed };

/// A length in mm, after what is named in messages ("the depth after 'down'"). Nothing after a mistake.
std::optional<double> read_length(Statement& statement, const std::string& what, Zero zero = Zero::refused);
/// A plain number from 0 to `most`, a mixed one too.
std::optional<double> read_number(Statement& statement, const std::string& what, double most);
/// A whole number from `least` to `most`.
std::optional<int> read_whole(Statement& statement, const std::string& what, int least, int most);
/// The rest of the line as a name.
std::optional<std::string> read_name(Statement& statement, const std::string& what);
/// Reports a statement that may stand once only. True where it stood before, on `line`; else `line` is kept.
bool stood_before(Statement& statement, int& line);
/// A `units` statement, before the first length of the file, if there was one, on `length_line`.
void read_units(Statement& statement, int& units_line, int length_line, Unit& unit);

}  // namespace arrisline
