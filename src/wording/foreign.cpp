// Known by how they begin. Shown by tests/wording/foreign_test.cpp.
#include "wording/foreign.h"

#include <algorithm>

#include "wording/words.h"

namespace arrisline {
namespace {

std::string_view from(std::string_view text, std::size_t at) {
  return text.substr(std::min(at, text.size()));
}

constexpr std::string_view kSaveAsText = "; save it there as plain text";
constexpr std::string_view kBegin = "; to begin a file, see: arrisline new --help";

}  // namespace

std::string_view kind_of_picture(std::string_view text) {
  if (text.starts_with("\x89PNG")) return "PNG";
  if (text.starts_with("\xFF\xD8\xFF")) return "JPEG";
  if (text.starts_with("GIF8")) return "GIF";
  if (text.starts_with(std::string_view("II*\0", 4)) || text.starts_with(std::string_view("MM\0*", 4)))
    return "TIFF";
  if (text.starts_with("RIFF") && from(text, 8).starts_with("WEBP")) return "WebP";
  if (from(text, 4).starts_with("ftyp")) return "HEIC";
  if (text.starts_with("BM") && text.substr(0, 64).find('\0') != std::string_view::npos) return "BMP";
  return {};
}

bool is_utf16(std::string_view text) {
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) return true;
  if (text.size() < 4) return false;
  const bool low_first = text[1] == '\0' && text[3] == '\0' && text[0] != '\0' && text[2] != '\0';
  const bool high_first = text[0] == '\0' && text[2] == '\0' && text[1] != '\0' && text[3] != '\0';
  return low_first || high_first;
}

std::string foreign_file(std::string_view text, const std::string& file) {
  const std::string_view picture = kind_of_picture(text);
  if (!picture.empty())
    return "this is a picture (" + std::string(picture) + "), and plain text is read" + std::string(kBegin);
  if (text.starts_with("%PDF")) return "this is a PDF, and plain text is read" + std::string(kBegin);
  if (text.starts_with("PK\x03\x04") || text.starts_with("\xD0\xCF\x11\xE0") || text.starts_with("{\\rtf"))
    return "this is a document of a word processor or a spreadsheet" + std::string(kSaveAsText);
  if (text.starts_with("\x1F\x8B")) return "this file is compressed; unpack it first";
  if (is_utf16(text)) return std::string(kSaveAsUtf8);
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  const std::string_view content = from(text, text.find_first_not_of(" \t\r\n"));
  const std::string head = lower(content.substr(0, 1000));
  if (head.starts_with("<") && head.find("<svg") != std::string::npos)
    return "this is a drawing (SVG); a profile is made of it by: arrisline trace " + file;
  if (head.starts_with("<!doctype") || head.starts_with("<html") || head.starts_with("<?xml"))
    return "this is a page for a browser or a drawing program" + std::string(kSaveAsText);
  if (text.find('\0') != std::string_view::npos)
    return "this is no plain text; check that it is the file you meant" + std::string(kBegin);
  return "";
}

}  // namespace arrisline
