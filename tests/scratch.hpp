// SPDX-License-Identifier: MIT
// Files that a test makes for itself.
#pragma once

#include <unistd.h>

#include <catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>

namespace lodebook::test {

/// An empty folder that goes with its contents.
class Scratch {
 public:
  Scratch() {
    const std::string stem = "lodebook-test-" + std::to_string(::getpid()) + '-';
    int attempt = 0;
    do {
      path_ = std::filesystem::temp_directory_path() / (stem + std::to_string(attempt++));
    } while (!std::filesystem::create_directory(path_));  // false where there is one already
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  ~Scratch() { std::filesystem::remove_all(path_); }

  const std::filesystem::path& path() const { return path_; }
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  std::size_t files() const {
    return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(path_),
                                                  std::filesystem::directory_iterator()));
  }

 private:
  std::filesystem::path path_;
};

/// The bytes of a file.
inline std::string content(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  REQUIRE(file);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace lodebook::test
