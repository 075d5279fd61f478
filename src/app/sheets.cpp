// Which sheets to write. Shown by tests/app/sheets_test.cpp and tests/cli.
#include "app/sheets.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

#include "app/inputs.h"
#include "app/output.h"
#include "app/same_file.h"
#include "wording/words.h"

namespace arrisline {
namespace {

std::optional<SheetFile::Kind> kind_of(const std::string& path) {
  const std::string small = lower(path);
  if (small.ends_with(".svg")) return SheetFile::Kind::svg;
  if (small.ends_with(".pdf")) return SheetFile::Kind::pdf;
  if (small.ends_with(".html")) return SheetFile::Kind::html;
  return std::nullopt;
}

std::string ending_of(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  const std::size_t dot = path.find_last_of('.');
  if (dot == std::string::npos || (slash != std::string::npos && dot < slash)) return "";
  return path.substr(dot);
}

/// The first of these that is set and not empty decides, as for the locale of any program.
std::string paper_locale() {
  for (const char* name : {"LC_ALL", "LC_PAPER", "LANG"}) {
    const char* value = std::getenv(name);
    if (value != nullptr && *value != '\0') return value;
  }
  return "";
}

}  // namespace

std::optional<std::vector<SheetFile>> sheet_option(const std::vector<std::string>& paths,
                                                   const std::optional<std::string>& output,
                                                   const std::string& command, std::string& messages) {
  std::vector<SheetFile> out;
  bool good = true;
  const auto refuse = [&](const std::string& path, const std::string& why) {
    messages += usage_error(command, "--sheet " + quoted(path) + why);
    good = false;
  };
  for (const std::string& path : paths) {
    const std::optional<SheetFile::Kind> kind = kind_of(path);
    const auto named = [&path](const SheetFile& file) { return same_file(file.path, path); };
    if (!kind) {
      refuse(path, ": the ending says what kind of sheet; expected .svg, .pdf or .html" +
                       suggestion(lower(ending_of(path)), {".svg", ".pdf", ".html"}));
    } else if ((output && same_file(*output, path)) || std::any_of(out.begin(), out.end(), named)) {
      refuse(path, ": this file is named twice; name another");
    } else if (const std::optional<std::string> why = unwritable(path)) {
      refuse(path, " cannot be written: " + *why);
    } else {
      out.push_back({*kind, path});
    }
  }
  if (!good) return std::nullopt;
  return out;
}

std::vector<ToWrite> to_write(const std::optional<std::string>& output,
                              const std::optional<std::vector<SheetFile>>& sheets) {
  std::vector<ToWrite> out = {{"--output", output}};
  for (const SheetFile& sheet : sheets.value_or(std::vector<SheetFile>{}))
    out.push_back({"--sheet", sheet.path});
  return out;
}

Paper usual_paper(const std::string& locale) {
  // The countries whose LC_PAPER is Letter in the GNU C library's locales (from memory).
  constexpr std::array<std::string_view, 15> kLetter = {"US", "CA", "MX", "PH", "PR", "CL", "CO", "CR",
                                                        "GT", "NI", "PA", "SV", "VE", "BZ", "DO"};
  const std::size_t line = locale.find('_');
  if (line == std::string::npos) return Paper::a4;
  const std::string_view country = std::string_view(locale).substr(line + 1, 2);
  return std::find(kLetter.begin(), kLetter.end(), country) == kLetter.end() ? Paper::a4 : Paper::letter;
}

std::optional<Paper> paper_option(const std::optional<std::string>& word, const std::string& command,
                                  std::string& messages) {
  if (!word) return usual_paper(paper_locale());
  const std::string small = lower(*word);
  if (small == "a4") return Paper::a4;
  if (small == "letter") return Paper::letter;
  messages += usage_error(
      command, "--paper is a4 or letter, not " + quoted(*word) + suggestion(small, {"a4", "letter"}));
  return std::nullopt;
}

}  // namespace arrisline
