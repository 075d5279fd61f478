// Shown by tests/text/other_kind_test.cpp.
#include "text/other_kind.h"

#include <algorithm>
#include <optional>

#include "wording/words.h"

namespace arrisline {
namespace {

/// Whether a line of such a file may begin with the word.
bool begins_line(const Word& row, std::string_view word, FileKind kind) {
  return row.within.empty() && row.word == word &&
         std::find(row.in.begin(), row.in.end(), kind) != row.in.end();
}

bool begins_line(std::string_view word, FileKind kind) {
  const std::vector<Word>& rows = vocabulary();
  return std::any_of(rows.begin(), rows.end(), [&](const Word& row) { return begins_line(row, word, kind); });
}

/// The kind of file that the word begins a line of, where `read_as` is not one.
std::optional<FileKind> elsewhere(std::string_view word, FileKind read_as) {
  if (begins_line(word, read_as)) return std::nullopt;
  for (const FileKind kind : {FileKind::profile, FileKind::kit, FileKind::job})
    if (begins_line(word, kind)) return kind;
  return std::nullopt;
}

bool only_here(std::string_view word, FileKind kind) {
  for (const FileKind other : {FileKind::profile, FileKind::kit, FileKind::job})
    if (other != kind && begins_line(word, other)) return false;
  return begins_line(word, kind);
}

/// As remarks begin elsewhere.
bool is_remark(std::string_view word) {
  for (const std::string_view sign : {"//", "/*", "--", ";", "%", "!", "*", "\u2013", "\u2014"})
    if (word.substr(0, sign.size()) == sign) return true;
  return false;
}

/// Planes are named after their soles, mouldings after what those leave.
std::string as_moulding(const std::string& word, FileKind kind) {
  if (kind != FileKind::profile) return "";
  if (word == "hollow") return ", or write 'bead', which is what a hollow makes";
  if (word == "round") return ", or write 'cove', which is what a round makes";
  return "";
}

std::string what_to_do(FileKind is, FileKind read_as, const std::string& file) {
  if (is == FileKind::job) return "; plan it with: arrisline job " + file;
  if (read_as == FileKind::profile) return "; name a profile here, and the kit after --kit";
  if (read_as == FileKind::kit) return "; name the profile first, and a kit after --kit";
  if (is == FileKind::profile) return "; plan it with: arrisline plan " + file + " --kit KIT";
  return "; name a job; to begin one, see: arrisline new --help";
}

}  // namespace

std::string known_words(const std::string& word, const std::vector<std::string_view>& known, FileKind kind) {
  const std::string here(arrisline::word(kind));
  if (const std::optional<FileKind> other = elsewhere(word, kind))
    return "; it belongs in a " + std::string(arrisline::word(*other)) + ", and this is a " + here +
           ": move it there" + as_moulding(word, kind);
  std::string near = suggestion(word, known);
  if (!near.empty()) return near;
  if (is_remark(word)) return "; begin a remark with #";
  return "; see the words of a " + here + " with: arrisline words";
}

bool is_of_another_kind(Mistakes& mistakes, FileKind read_as) {
  std::size_t here = 0;
  std::size_t there = 0;
  std::optional<FileKind> other;
  Place place;
  int number = 0;
  for (const std::string_view line : mistakes.source.lines) {
    const std::vector<Token> tokens = tokenise(line, ++number);
    if (tokens.empty()) continue;
    const std::string word = lower(tokens.front().text);
    here += only_here(word, read_as) ? 1 : 0;
    const std::optional<FileKind> belongs = elsewhere(word, read_as);
    there += belongs ? 1 : 0;
    if (belongs && !other) {
      other = belongs;
      place = tokens.front().place;
    }
  }
  if (!other || there <= here) return false;
  const std::string is(word(*other));
  mistakes.error(place, "this file is a " + is + ", and a " + std::string(word(read_as)) +
                            " is expected here" + what_to_do(*other, read_as, mistakes.source.file));
  return true;
}

}  // namespace arrisline
