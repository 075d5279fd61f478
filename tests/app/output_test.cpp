// Files are whole or not there, whatever interrupts the writing.
#include "app/output.h"

#include <fcntl.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <functional>
#include <thread>

#include "app/folder.h"
#include "catch.h"

using namespace arrisline;
using test::contents;
using test::Folder;
namespace fs = std::filesystem;

namespace {

void write(const fs::path& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

int files_in(const fs::path& folder) {
  int count = 0;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder)) count += entry.exists() ? 1 : 0;
  return count;
}

// What the process ended with that did this: its exit code, or minus the signal.
int in_a_process(const std::function<int()>& work) {
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) ::_exit(work());
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

}  // namespace

TEST_CASE("a file is written whole and leaves nothing beside it", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "our list.txt";
  CHECK_FALSE(replace_file(file, "new").has_value());
  CHECK(contents(file) == "new");
  CHECK_FALSE(replace_file(file, "newer").has_value());
  CHECK(contents(file) == "newer");
  CHECK(files_in(folder.path) == 1);
}

TEST_CASE("a file keeps its permissions and a link goes on pointing to it", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "list", link = folder.path / "link", ahead = folder.path / "ahead";
  write(file, "old");
  fs::permissions(file, fs::perms(0640));
  fs::create_symlink("list", link);
  fs::create_symlink("not yet there", ahead);
  CHECK_FALSE(replace_file(link, "new").has_value());
  CHECK(contents(file) == "new");
  CHECK(fs::is_symlink(link));
  CHECK(fs::status(file).permissions() == fs::perms(0640));
  CHECK_FALSE(replace_file(ahead, "new").has_value());
  CHECK(fs::is_symlink(ahead));
  CHECK(contents(folder.path / "not yet there") == "new");
}

TEST_CASE("the old file survives a limit on the size of files", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "list";
  write(file, "old");
  const int code = in_a_process([&] {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small = {4096, 4096};
    ::setrlimit(RLIMIT_FSIZE, &small);
    const auto why = replace_file(file, std::string(100000, 'x'));
    return why == "the file would be too large" ? 0 : 1;
  });
  CHECK(code == 0);
  CHECK(contents(file) == "old");
  CHECK(files_in(folder.path) == 1);
}

TEST_CASE("the old file survives a full disk", "[app]") {
  constexpr int kNotAllowed = 77;
  const Folder folder;
  const auto user = std::to_string(::getuid()), group = std::to_string(::getgid());
  const int code = in_a_process([&] {
    if (::unshare(CLONE_NEWUSER | CLONE_NEWNS) != 0) return kNotAllowed;
    write("/proc/self/setgroups", "deny");
    write("/proc/self/uid_map", "0 " + user + " 1");
    write("/proc/self/gid_map", "0 " + group + " 1");
    if (::mount("none", folder.path.c_str(), "tmpfs", 0, "size=64k") != 0) return kNotAllowed;
    const fs::path file = folder.path / "list";
    write(file, "old");
    if (replace_file(file, std::string(1 << 20, 'x')) != "the disk is full") return 1;
    if (create_file(folder.path / "other", std::string(1 << 20, 'x')) != Created::failed) return 2;
    return contents(file) == "old" && files_in(folder.path) == 1 ? 0 : 3;
  });
  if (code == kNotAllowed) {
    WARN("not tried: this system lets nobody mount a small disk");
    return;
  }
  CHECK(code == 0);
}

TEST_CASE("the old file survives a folder where nothing may be written", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "list";
  write(file, "old");
  fs::permissions(folder.path, fs::perms(0555));
  const int code = in_a_process([&] {
    constexpr uid_t kNobody = 65534;
    if (::geteuid() == 0 && ::setresuid(kNobody, kNobody, kNobody) != 0) return 9;
    if (!replace_file(folder.path / "new", "new")) return 1;
    if (!unwritable(folder.path / "new")) return 2;
    if (create_file(folder.path / "new", "new") != Created::failed) return 3;
    return replace_file(file, "new") ? 0 : 4;
  });
  CHECK(code == 0);
  CHECK(contents(file) == "old");
  CHECK(files_in(folder.path) == 1);
  fs::permissions(folder.path, fs::perms(0755));
}

TEST_CASE("whenever the writing is killed the file is the old one or the new one", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "list";
  const std::string old = "old", fresh(4 << 20, 'n');
  int killed_before = 0, written = 0;
  for (int round = 0; round < 60; ++round) {
    write(file, old);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) ::_exit(replace_file(file, fresh) ? 1 : 0);
    // Early kills land within the writing; the last rounds are left to end.
    if (round < 40) {
      std::this_thread::sleep_for(std::chrono::microseconds(50 * round));
      ::kill(child, SIGKILL);
    }
    REQUIRE(::waitpid(child, nullptr, 0) == child);
    const std::string now = contents(file);
    REQUIRE((now == old || now == fresh));
    ++(now == old ? killed_before : written);
  }
  CHECK(killed_before > 0);
  CHECK(written >= 20);
}

TEST_CASE("a device or a pipe is written to as it is, and a full one says so", "[app]") {
  const Folder folder;
  const fs::path pipe = folder.path / "pipe";
  REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
  const int reader = ::open(pipe.c_str(), O_RDONLY | O_NONBLOCK);
  REQUIRE(reader >= 0);
  CHECK_FALSE(replace_file(pipe, "text").has_value());
  CHECK(fs::is_fifo(pipe));
  char read[8] = {};
  CHECK(::read(reader, read, sizeof read) == 4);
  CHECK(std::string(read) == "text");
  ::close(reader);
  CHECK(replace_file("/dev/full", "text") == "the disk is full");
}

TEST_CASE("what cannot be written is told before there is anything to write", "[app]") {
  const Folder folder;
  CHECK(unwritable(folder.path) == "this is a folder; name a file in it");
  CHECK(unwritable((folder.path / "list/").string()) == "this is a folder; name a file in it");
  CHECK(unwritable(folder.path / "none" / "list") ==
        "there is no such folder; make it first, or name another");
  CHECK_FALSE(unwritable(folder.path / "list").has_value());
  CHECK_FALSE(unwritable("/dev/null").has_value());
  CHECK(files_in(folder.path) == 0);
}

TEST_CASE("a new file never takes the place of one that is there", "[app]") {
  const Folder folder;
  const fs::path file = folder.path / "fault";
  CHECK(create_file(file, "first") == Created::yes);
  CHECK(create_file(file, "second") == Created::exists);
  CHECK(contents(file) == "first");
  CHECK(create_file(folder.path / "none" / "fault", "x") == Created::failed);
  CHECK(files_in(folder.path) == 1);
}
