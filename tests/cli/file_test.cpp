// SPDX-License-Identifier: MIT
#include <unistd.h>

#include <catch.hpp>
#include <filesystem>
#include <fstream>
#include <lodebook/cli/file.hpp>
#include <scratch.hpp>

using namespace lodebook::cli;
using lodebook::test::content;
using lodebook::test::Scratch;
namespace fs = std::filesystem;

namespace {

void put(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

}  // namespace

TEST_CASE("a file is read whole, with every byte") {
  const Scratch folder;
  std::string bytes;
  for (int i = 0; i < 300'000; ++i)
    bytes += static_cast<char>(i % 251);
  put(folder / "log", bytes);
  std::string text;
  CHECK_FALSE(read_file(folder / "log", 1'000'000, text));
  CHECK(text == bytes);
}

TEST_CASE("what cannot be read is said") {
  const Scratch folder;
  std::string text;
  CHECK(read_file(folder / "missing", 100, text) == std::errc::no_such_file_or_directory);
  CHECK(read_file(folder / ".", 100, text) == std::errc::is_a_directory);
  put(folder / "large", std::string(101, 'x'));
  CHECK(read_file(folder / "large", 100, text) == std::errc::file_too_large);
}

TEST_CASE("an endless stream is refused at the limit") {
  std::string text;
  CHECK(read_file("/dev/zero", 1 << 20, text) == std::errc::file_too_large);
}

TEST_CASE("an output appears whole, when it is committed") {
  const Scratch folder;
  put(folder / "table", "old");
  {
    OutputFile file = OutputFile::named(folder / "table");
    CHECK(folder.files() == 1);
    file.write("new ");
    CHECK(content(folder / "table") == "old");
    file.write("bytes");
    file.commit();
    CHECK_FALSE(file.error());
  }
  CHECK(content(folder / "table") == "new bytes");
  CHECK(folder.files() == 1);
}

TEST_CASE("an output that is not committed leaves nothing") {
  const Scratch folder;
  put(folder / "table", "old");
  OutputFile::named(folder / "table").write("new");
  OutputFile::named(folder / "other").write("new");
  CHECK(content(folder / "table") == "old");
  CHECK(folder.files() == 1);
}

TEST_CASE("an empty output is a file too") {
  const Scratch folder;
  OutputFile file = OutputFile::named(folder / "table");
  file.commit();
  CHECK(content(folder / "table").empty());
}

TEST_CASE("a replaced file keeps its permissions") {
  const Scratch folder;
  put(folder / "table", "old");
  fs::permissions(folder / "table", fs::perms::owner_read | fs::perms::owner_write);
  OutputFile file = OutputFile::named(folder / "table");
  file.write("new");
  file.commit();
  CHECK(fs::status(folder / "table").permissions() ==
        (fs::perms::owner_read | fs::perms::owner_write));
}

TEST_CASE("a protected file is not replaced") {
  const Scratch folder;
  put(folder / "table", "old");
  fs::permissions(folder / "table", fs::perms::owner_read | fs::perms::others_read);
  fs::permissions(folder / ".", fs::perms::all);
  const uid_t user = ::geteuid();
  constexpr uid_t nobody = 65534;
  if (user == 0) REQUIRE(::seteuid(nobody) == 0);  // for root no file is protected
  OutputFile file = OutputFile::named(folder / "table");
  file.write("new");
  file.commit();
  REQUIRE(::seteuid(user) == 0);
  CHECK(file.error() == std::errc::permission_denied);
  CHECK(content(folder / "table") == "old");
  CHECK(folder.files() == 1);
}

TEST_CASE("a symbolic link stays, and its target is written") {
  const Scratch folder;
  fs::create_directory(folder / "sub");
  fs::create_symlink("sub/real", folder / "link");
  fs::create_symlink("link", folder / "second");
  OutputFile file = OutputFile::named(folder / "second");
  file.write("new");
  file.commit();
  CHECK_FALSE(file.error());
  CHECK(fs::is_symlink(folder / "link"));
  CHECK(fs::is_symlink(folder / "second"));
  CHECK(content(folder / "sub/real") == "new");
}

TEST_CASE("a circle of links is an error") {
  const Scratch folder;
  fs::create_symlink("b", folder / "a");
  fs::create_symlink("a", folder / "b");
  OutputFile file = OutputFile::named(folder / "a");
  file.write("new");
  CHECK(file.error() == std::errc::too_many_symbolic_link_levels);
}

TEST_CASE("a device is written directly, and its failure is told") {
  OutputFile null = OutputFile::named("/dev/null");
  null.write("text");
  null.commit();
  CHECK_FALSE(null.error());
  OutputFile full = OutputFile::named("/dev/full");
  full.write("text");
  CHECK(full.error() == std::errc::no_space_on_device);
}

TEST_CASE("a folder that is missing is an error of the output") {
  const Scratch folder;
  OutputFile file = OutputFile::named(folder / "none/table");
  file.write("text");
  CHECK(file.error() == std::errc::no_such_file_or_directory);
  OutputFile same = OutputFile::named(folder / ".");
  same.write("text");
  CHECK(same.error() == std::errc::is_a_directory);
}

TEST_CASE("two names of one file have one identity") {
  const Scratch folder;
  put(folder / "log", "text");
  fs::create_symlink("log", folder / "link");
  fs::create_hard_link(folder / "log", folder / "hard");
  put(folder / "other", "text");
  const auto identity = identity_of(folder / "log");
  REQUIRE(identity);
  CHECK(identity_of(folder / "link") == identity);
  CHECK(identity_of(folder / "hard") == identity);
  CHECK(identity_of(folder / "./log") == identity);
  CHECK(identity_of(folder / "other") != identity);
}

TEST_CASE("files that do not exist yet have an identity, devices have none") {
  const Scratch folder;
  fs::create_symlink("new", folder / "link");
  REQUIRE(identity_of(folder / "new"));
  CHECK(identity_of(folder / "new") == identity_of(folder / "./new"));
  CHECK(identity_of(folder / "new") == identity_of(folder / "link"));
  CHECK(identity_of(folder / "new") != identity_of(folder / "newer"));
  CHECK_FALSE(identity_of("/dev/null"));
}
