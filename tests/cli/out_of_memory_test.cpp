// SPDX-License-Identifier: MIT
// The whole program, with memory that ends at one allocation after the other.
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <limits>
#include <lodebook/cli/program.hpp>
#include <new>
#include <scratch.hpp>
#include <string>
#include <vector>

namespace {

constexpr std::size_t endless = std::numeric_limits<std::size_t>::max();
/// Allocations that still succeed; all that come later fail.
std::atomic<std::size_t> left = endless;

void* allocate(std::size_t size, std::size_t alignment) {
  for (std::size_t now = left; now != endless;) {
    if (now == 0) throw std::bad_alloc();
    if (left.compare_exchange_weak(now, now - 1)) break;
  }
  const std::size_t whole =
      (std::max<std::size_t>(size, 1) + alignment - 1) / alignment * alignment;
  void* const memory = std::aligned_alloc(alignment, whole);
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}

}  // namespace

void* operator new(std::size_t size) {
  return allocate(size, alignof(std::max_align_t));
}
void* operator new(std::size_t size, std::align_val_t alignment) {
  return allocate(size, static_cast<std::size_t>(alignment));
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  try {
    return allocate(size, alignof(std::max_align_t));
  } catch (const std::bad_alloc&) {
    return nullptr;
  }
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::align_val_t) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t, std::align_val_t) noexcept {
  std::free(memory);
}

namespace {

namespace fs = std::filesystem;
using lodebook::test::content;

/// Runs the program in the current folder with that many allocations, and its messages in a file.
/// It is a process of its own, since memory may end where nothing can be caught.
int run_with(std::size_t allocations, const std::vector<const char*>& arguments) {
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    const int said = ::open("said", O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    ::dup2(said, STDERR_FILENO);
    left = allocations;
    ::_exit(lodebook::cli::run(arguments));
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status);
}

/// Runs in a folder of its own with every so many allocations, until one run has enough of them.
void exhaust(const std::vector<const char*>& arguments, const std::string& output) {
  const lodebook::test::Scratch folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.path());
  std::string log =
      "set 0\ndeclination model\ndate 2026-02-14\nlandmark Cairn 44.6502S 169.0314E\n";
  for (int i = 0; i < 30; ++i)
    log +=
        "station Q at 44.7S 169.2E\n  bedding N98E 3S, N78E 30S\n  sight Crain N17W\n  lineation "
        "N8";
  std::ofstream("a.txt") << log;
  std::ofstream("b.txt") << log;
  REQUIRE(run_with(endless, arguments) == 1);
  const std::string whole = content(output);

  std::size_t failed = 0;
  int status = 3;
  for (std::size_t allocations = 0; status == 3; allocations += 1 + allocations / 50) {
    std::ofstream(output) << "old";
    status = run_with(allocations, arguments);
    if (status != 3) break;
    ++failed;
    CHECK(content("said") == "lodebook: out of memory\n");
    const std::string written = content(output);
    CHECK((written == "old" || written == whole));
    for (const auto& entry : fs::directory_iterator("."))
      CHECK_FALSE(entry.path().filename().string().starts_with(".lodebook"));
  }
  CHECK(status == 1);
  CHECK(failed > 100);
  CHECK(content(output) == whole);
  fs::current_path(before);
}

}  // namespace

TEST_CASE("wherever memory ends, the run says so and leaves the old output") {
  exhaust({"reduce", "a.txt", "b.txt", "-o", "t.json", "--report", "r.txt", "--jobs", "1"},
          "t.json");
  exhaust({"reduce", "a.txt", "-o", "t.csv", "-q"}, "t.csv");
  exhaust({"fix", "a.txt", "-o", "f.json", "--jobs", "1"}, "f.json");
  exhaust({"summary", "a.txt", "-q", "-o", "s.txt", "--jobs", "1"}, "s.txt");
}

TEST_CASE("memory that ends on another thread ends the run in the same way") {
  exhaust({"reduce", "a.txt", "b.txt", "-o", "t.json", "--report", "r.txt", "--jobs", "2"},
          "t.json");
}
