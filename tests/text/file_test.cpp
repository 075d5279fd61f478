// Files that cannot be read are reported, never thrown over.
#include <filesystem>
#include <fstream>

#include "arrisline/limits.h"
#include "catch.h"
#include "text/reading.h"

using namespace arrisline;
using namespace arrisline::testing;

namespace {

/// A folder of its own that goes with the test.
struct Folder {
  std::filesystem::path path;
  // The name keeps tests that run side by side apart.
  explicit Folder(const std::string& name) {
    path = std::filesystem::temp_directory_path() / ("arrisline_test_" + name);
    std::filesystem::create_directories(path);
  }
  ~Folder() { std::filesystem::remove_all(path); }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(path / name, std::ios::binary) << text;
    return (path / name).string();
  }
};

}  // namespace

TEST_CASE("a file from disk reads as its text does", "[text][file]") {
  const Folder folder("as_text");
  const auto kit = read_kit_file(folder.write("shelf.kit", "hollow 6\r\nround 6"));
  REQUIRE(kit.value.has_value());
  CHECK(kit.value->name == "shelf");
  CHECK(kit.value->planes.size() == 2);
}

TEST_CASE("files that cannot be read", "[text][file]") {
  const Folder folder("unreadable");
  const std::string missing = (folder.path / "none.profile").string();
  CHECK(shown(read_profile_file(missing)) ==
        missing + ":1:1: error: there is no such file; check its name, and that it is in this folder\n");
  const std::string directory = folder.path.string();
  CHECK(shown(read_kit_file(directory)) == directory + ":1:1: error: this is a folder; name a file in it\n");
  const std::string below = folder.write("plain", "") + "/x.kit";
  CHECK(messages(read_kit_file(below)).find("1:1: ") == 0);
  CHECK(shown(read_profile_file("")) ==
        ":1:1: error: there is no such file; check its name, and that it is in this folder\n");
  CHECK(messages(read_profile_file(folder.write("empty.profile", ""))) ==
        "1:1: the file is empty; to begin one, see: arrisline new --help\n");
  CHECK(messages(read_profile_file("/dev/zero")) ==
        "1:1: the file is larger than 4 MB, the most that is read; check that it is the file you meant" +
            to_raise("kMaxFileBytes") + "\n");
}
