// SPDX-License-Identifier: MIT
// What the fair copy makes of the last line of a page.
#pragma once

#include <catch.hpp>

#include <lodebook/fair_copy/fair_copy.hpp>
#include <string>
#include <vector>

namespace lodebook::test {

inline fair_copy::Copy copied(const std::string& page) {
  const notebook::Source source("page", page);
  return fair_copy::copy_page(notebook::read_log(source));
}

/// What the copy says of the last line of `page`, without indentation and remarks.
inline std::vector<std::string> made_of(const std::string& page) {
  std::vector<std::string> lines;
  const std::string log = copied(page).log;
  for (std::size_t begin = 0; begin < log.size();) {
    const std::size_t end = log.find('\n', begin);
    std::string line = log.substr(begin, end - begin);
    begin = end + 1;
    if (line.starts_with("# page ")) {
      lines.clear();
      continue;
    }
    line.erase(0, line.find_first_not_of(' '));
    line = line.substr(0, line.find("  ; "));
    lines.push_back(line);
  }
  return lines;
}

using Made = std::vector<std::string>;

inline const std::string heading =
    "dial quadrant\nset 0\ndeclination 24.6E\nrule right\nlandmark Cairn\nstation 7\n";
inline const std::string azimuths =
    "dial azimuth\nset 0\ndeclination 24.6E\norder direction/dip\nstation 7\n";

struct Example {
  std::string line;
  Made made;
};

inline void check_all(const std::string& before, const std::vector<Example>& examples) {
  for (const auto& [line, made] : examples) {
    CAPTURE(line);
    CHECK(made_of(before + line + "\n") == made);
  }
}

}  // namespace lodebook::test
