// SPDX-License-Identifier: MIT
#include <fcntl.h>
#include <unistd.h>

#include <catch.hpp>
#include <filesystem>
#include <fstream>
#include <lodebook/cli/file.hpp>
#include <lodebook/cli/watch.hpp>
#include <scratch.hpp>
#include <thread>

using namespace lodebook::cli;
using lodebook::test::Scratch;
using std::chrono::milliseconds;
namespace fs = std::filesystem;

namespace {

constexpr milliseconds moment(30);
constexpr milliseconds long_enough(10'000);

void put(const std::string& path, const std::string& text) {
  std::ofstream(path, std::ios::binary) << text;
}

/// Waits until that is noticed, and until all of it is.
bool notices(Watch& watch) {
  const bool noticed = watch.wait(long_enough);
  while (watch.wait(moment)) {
  }
  return noticed;
}

std::unique_ptr<Watch> new_watch(bool by_events) {
  auto watch = by_events ? watch_by_events() : watch_by_looking();
  REQUIRE(watch);
  return watch;
}

}  // namespace

TEST_CASE("a file is seen to change, however it is saved") {
  const Scratch folder;
  const std::string log = folder / "day.txt";
  put(log, "station Q1\n");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({log});
  CHECK_FALSE(watch->wait(moment));

  put(log, "station Q2\n");
  CHECK(notices(*watch));
  std::ofstream(log, std::ios::app) << "note wet\n";
  CHECK(notices(*watch));
  put(folder / "new", "station Q1\n");
  fs::rename(folder / "new", log);
  CHECK(notices(*watch));
  CHECK_FALSE(watch->misses_one());
  fs::remove(log);
  CHECK(notices(*watch));
  CHECK(watch->misses_one());
  put(log, "station Q2\n");
  CHECK(notices(*watch));
  CHECK_FALSE(watch->misses_one());
  CHECK_FALSE(watch->wait(moment));
}

TEST_CASE("one file of several is seen to change, and no other") {
  const Scratch folder;
  fs::create_directory(folder / "ours");
  put(folder / "one", "");
  put(folder / "ours/dial", "");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({folder / "one", folder / "ours/dial", folder / "none"});
  put(folder / "other", "station Q1\n");
  CHECK_FALSE(watch->wait(moment));
  put(folder / "ours/dial", "set 0\n");
  CHECK(notices(*watch));
  put(folder / "none", "");
  CHECK(notices(*watch));
  watch->look_at({folder / "one"});
  put(folder / "ours/dial", "set 4E\n");
  CHECK_FALSE(watch->wait(moment));
}

TEST_CASE("what happens between a look and the wait is not missed") {
  const Scratch folder;
  put(folder / "day.txt", "station Q1\n");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({folder / "day.txt"});
  put(folder / "day.txt", "station Q10\n");
  watch->look_at({folder / "day.txt", folder / "dial.txt"});
  CHECK(notices(*watch));
}

TEST_CASE("a file is watched behind its link, and in a folder that comes again") {
  const Scratch folder;
  fs::create_directory(folder / "season");
  put(folder / "season/day", "station Q1\n");
  fs::create_symlink("season/day", folder / "today");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({folder / "today"});
  put(folder / "season/day", "station Q2\n");
  CHECK(notices(*watch));
  fs::rename(folder / "season", folder / "other");
  CHECK(notices(*watch));
  watch->look_at({folder / "today"});
  fs::create_directory(folder / "season");
  put(folder / "season/day", "station Q3\n");
  CHECK(notices(*watch));
  watch->look_at({folder / "today"});
  put(folder / "season/day", "station Q4\n");
  CHECK(notices(*watch));
}

TEST_CASE("a save of many steps is one") {
  const Scratch folder;
  const std::string log = folder / "day.txt";
  put(log, "");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({log});
  for (int i = 0; i < 50; ++i) {
    fs::remove(log);
    put(log, "station Q" + std::to_string(i));
  }
  CHECK(wait_for_save(*watch, std::nullopt));
  CHECK_FALSE(watch->wait(moment));
  fs::remove(log);
  std::jthread slow([&] {
    std::this_thread::sleep_for(moment);
    put(log, "station Q1\n");
  });
  const auto begin = std::chrono::steady_clock::now();
  CHECK(wait_for_save(*watch, std::nullopt));
  // Whoever saves that slowly has a quarter of a second for it.
  const bool is_late = std::chrono::steady_clock::now() - begin >= milliseconds(250);
  CHECK((is_late || !watch->misses_one()));
}

TEST_CASE("nothing is waited for where nobody reads") {
  const Scratch folder;
  put(folder / "day.txt", "");
  const auto watch = new_watch(GENERATE(true, false));
  watch->look_at({folder / "day.txt"});
  std::array<int, 2> ends{};
  REQUIRE(::pipe2(ends.data(), O_CLOEXEC) == 0);
  Descriptor reader(ends[0]);
  const Descriptor writer(ends[1]);
  CHECK(has_reader(writer.number()));
  reader.close();
  CHECK_FALSE(wait_for_save(*watch, writer.number()));
}
