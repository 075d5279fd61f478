// Files that are no plain text of ours, by how they begin.
#include "wording/foreign.h"

#include "catch.h"

using namespace arrisline;

static std::string about(std::string_view text) {
  return foreign_file(text, "x.profile");
}

TEST_CASE("a file of another kind is called by its name, with what to do", "[text][foreign]") {
  CHECK(about("\xFF\xD8\xFF\xE0") ==
        "this is a picture (JPEG), and plain text is read; to begin a file, see: arrisline new --help");
  CHECK(about("\x89PNG\r\n") ==
        "this is a picture (PNG), and plain text is read; to begin a file, see: arrisline new --help");
  CHECK(about("%PDF-1.7\n") ==
        "this is a PDF, and plain text is read; to begin a file, see: arrisline new --help");
  const std::string document =
      "this is a document of a word processor or a spreadsheet; save it there as plain text";
  CHECK(about("PK\x03\x04....") == document);
  CHECK(about("{\\rtf1 profile x}") == document);
  CHECK(about("\xD0\xCF\x11\xE0") == document);
  CHECK(about("\x1F\x8B\x08") == "this file is compressed; unpack it first");
  CHECK(about("<?xml version='1.0'?>\n<svg/>") ==
        "this is a drawing (SVG); a profile is made of it by: arrisline trace x.profile");
  CHECK(about("\xEF\xBB\xBF<!DOCTYPE html>") ==
        "this is a page for a browser or a drawing program; save it there as plain text");
  CHECK(about(std::string_view("profile x\0", 10)) ==
        "this is no plain text; check that it is the file you meant; to begin a file, see: arrisline new "
        "--help");
}

TEST_CASE("text of two bytes a letter is known with its mark and without", "[text][foreign]") {
  CHECK(about("\xFF\xFEp") == kSaveAsUtf8);
  CHECK(about("\xFE\xFF") == kSaveAsUtf8);
  CHECK(about(std::string_view("p\0r\0", 4)) == kSaveAsUtf8);
  CHECK(about(std::string_view("\0p\0r", 4)) == kSaveAsUtf8);
  CHECK_FALSE(is_utf16(std::string_view("\0\0\0\0", 4)));
  CHECK_FALSE(is_utf16("pr"));
}

TEST_CASE("plain text may be a profile, a kit or a job", "[text][foreign]") {
  for (const char* text :
       {"", "profile x\n", "# remark\nkit k\n", "PKx", "< what\n", "BM 1\n", "\xEF\xBB\xBF"}) {
    CAPTURE(text);
    CHECK(about(text).empty());
  }
}
