// What a run reads or has written already is not written over.
#include "app/same_file.h"

#include <filesystem>
#include <fstream>

#include "app/folder.h"
#include "catch.h"

using namespace arrisline;
namespace fs = std::filesystem;

TEST_CASE("one file by two names is one file", "[app]") {
  const test::Folder folder;
  const std::string at = folder.path.string() + "/";
  std::ofstream(at + "a.profile") << "a\n";
  std::ofstream(at + "b.profile") << "a\n";
  fs::create_symlink(at + "a.profile", at + "link");
  fs::create_directory(at + "more");
  CHECK(same_file(at + "a.profile", at + "a.profile"));
  CHECK(same_file(at + "a.profile", at + "more/../a.profile"));
  CHECK(same_file(at + "a.profile", at + "link"));
  CHECK(same_file(at + "link", at + "a.profile"));
  CHECK_FALSE(same_file(at + "a.profile", at + "b.profile"));
  SECTION("whether it is there yet or not") {
    CHECK(same_file(at + "new", at + "more/../new"));
    CHECK(same_file(at + "new", at + "./new"));
    CHECK_FALSE(same_file(at + "new", at + "newer"));
    CHECK_FALSE(same_file(at + "new", at + "a.profile"));
    CHECK_FALSE(same_file(at + "a.profile", at + "new"));
    CHECK_FALSE(same_file("", ""));
  }
  SECTION("but what is no file takes any number") {
    CHECK_FALSE(same_file("/dev/null", "/dev/null"));
    CHECK_FALSE(same_file(at + "more", at + "more"));
  }
}

TEST_CASE("files to be written are other ones than those read, and than one another", "[app]") {
  const test::Folder folder;
  const std::string at = folder.path.string() + "/";
  std::ofstream(at + "in") << "in\n";
  std::string messages;
  CHECK(kept_apart({at + "in"}, {{"--output", at + "out"}, {"--redrawn", std::nullopt}}, "plan", messages));
  CHECK(messages.empty());
  CHECK_FALSE(kept_apart({at + "other", at + "in"},
                         {{"--output", at + "./in"}, {"--redrawn", at + "x"}, {"--sheet", at + "./x"}},
                         "plan", messages));
  CHECK(messages == "arrisline plan: error: --output '" + at +
                        "./in' is read in the same run, and what it holds would be lost; name another\n" +
                        "arrisline plan: error: --sheet '" + at +
                        "./x': this file is named twice; name another\n");
}
