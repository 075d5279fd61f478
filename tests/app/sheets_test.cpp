// Which sheets are asked for, and on what paper.
#include "app/sheets.h"

#include "app/folder.h"
#include "catch.h"

using namespace arrisline;

TEST_CASE("the ending says what kind of sheet", "[app][sheets]") {
  const test::Folder folder;
  const std::string at = folder.path.string() + "/";
  std::string messages;
  const auto files =
      sheet_option({at + "a.svg", at + "b.PDF", at + "c.html"}, std::nullopt, "plan", messages);
  CHECK(messages.empty());
  REQUIRE(files.has_value());
  REQUIRE(files->size() == 3);
  CHECK((*files)[0].kind == SheetFile::Kind::svg);
  CHECK((*files)[1].kind == SheetFile::Kind::pdf);
  CHECK((*files)[2].kind == SheetFile::Kind::html);
}

TEST_CASE("every mistake in the sheets asked for is told at once", "[app][sheets]") {
  const test::Folder folder;
  const std::string at = folder.path.string() + "/";
  std::string messages;
  const auto files =
      sheet_option({at + "a.png", "b", at + "c.svg", at + "c.svg", at + "no/d.pdf", at + "o.svg", "e.pfd"},
                   at + "o.svg", "plan", messages);
  CHECK_FALSE(files.has_value());
  CHECK(messages.find("a.png': the ending says what kind of sheet; expected .svg, .pdf or .html\n") !=
        std::string::npos);
  CHECK(messages.find("'b': the ending") != std::string::npos);
  CHECK(messages.find("c.svg': this file is named twice") != std::string::npos);
  CHECK(messages.find("d.pdf' cannot be written: there is no such folder") != std::string::npos);
  CHECK(messages.find("o.svg': this file is named twice") != std::string::npos);
  CHECK(messages.find("'e.pfd': the ending says what kind of sheet; expected .svg, .pdf or .html; did you "
                      "mean '.pdf'?") != std::string::npos);
}

TEST_CASE("the paper is the locale's, or what is asked for", "[app][sheets]") {
  // Countries and their paper as the GNU C library's locales have them; from memory.
  CHECK(usual_paper("en_US.UTF-8") == Paper::letter);
  CHECK(usual_paper("fr_CA") == Paper::letter);
  CHECK(usual_paper("es_MX.UTF-8@euro") == Paper::letter);
  CHECK(usual_paper("en_GB.UTF-8") == Paper::a4);
  CHECK(usual_paper("de_DE@euro") == Paper::a4);
  CHECK(usual_paper("C.UTF-8") == Paper::a4);
  CHECK(usual_paper("POSIX") == Paper::a4);
  CHECK(usual_paper("") == Paper::a4);
  CHECK(usual_paper("en_") == Paper::a4);
  std::string messages;
  CHECK(paper_option("Letter", "plan", messages) == Paper::letter);
  CHECK(paper_option("A4", "plan", messages) == Paper::a4);
  CHECK(messages.empty());
  CHECK_FALSE(paper_option("latter", "plan", messages).has_value());
  CHECK(messages == "arrisline plan: error: --paper is a4 or letter, not 'latter'; did you mean 'letter'?\n");
}
