// The options --sheet and --paper, and the sheets that they ask for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/commands.h"
#include "app/same_file.h"
#include "arrisline/sheet.h"

namespace arrisline {

struct SheetFile {
  enum class Kind { svg, pdf, html };
  Kind kind = Kind::svg;
  std::string path;
};

/// The files named by --sheet, the kind by the ending; what is no such file, cannot be written or is named
/// twice (so too by --output) adds to `messages`.
std::optional<std::vector<SheetFile>> sheet_option(const std::vector<std::string>& paths,
                                                   const std::optional<std::string>& output,
                                                   const std::string& command, std::string& messages);

/// What --output and --sheet ask to be written.
std::vector<ToWrite> to_write(const std::optional<std::string>& output,
                              const std::optional<std::vector<SheetFile>>& sheets);

/// The paper named by --paper, or where it is absent the usual one of the country whose locale is set.
std::optional<Paper> paper_option(const std::optional<std::string>& word, const std::string& command,
                                  std::string& messages);

/// Letter in the countries whose locales say so, such as en_US.UTF-8; else A4.
Paper usual_paper(const std::string& locale);

/// The files with what they are to hold: each is one of a plan, or of a job.
template <class... Of>
std::vector<Outcome::File> sheets(const std::vector<SheetFile>& files, const SheetOptions& options,
                                  const Of&... of) {
  std::vector<Outcome::File> out;
  for (const SheetFile& file : files) {
    switch (file.kind) {
      case SheetFile::Kind::svg:
        out.push_back({file.path, svg_sheet(of..., options)});
        break;
      case SheetFile::Kind::pdf:
        out.push_back({file.path, pdf_sheet(of..., options)});
        break;
      case SheetFile::Kind::html:
        out.push_back({file.path, html_sheet(of..., options)});
        break;
    }
  }
  return out;
}

}  // namespace arrisline
