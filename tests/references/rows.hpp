// SPDX-License-Identifier: MIT
// Reads the reference files: rows of input, expected, tolerance and source.
#pragma once

#include <cmath>
#include <fstream>
#include <istream>
#include <stdexcept>
#include <string>
#include <vector>

namespace lodebook::test {

/// One published value. `check` names the rule that the row tests, and so how its fields are read.
struct ReferenceRow {
  std::string check;
  std::string input;
  std::string expected;
  double tolerance;
  std::string source;
  std::string at;  // file:line, for messages
};

/// The words of `text` between `separator`s, without the spaces around them.
inline std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (c == separator) {
      words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  for (std::string& word : words) {
    while (!word.empty() && word.front() == ' ')
      word.erase(0, 1);
    while (!word.empty() && word.back() == ' ')
      word.pop_back();
  }
  return words;
}

/// `7.5`, `-0.6`, `1e-9`, `136d45'` or `52d39'27.2"`; throws at anything else, so that no field is
/// half read.
inline double number(const std::string& text) {
  std::size_t at = 0;
  const auto part = [&] {
    std::size_t used = 0;
    const double value = std::stod(text.substr(at), &used);
    at += used;
    return value;
  };
  const auto skip = [&](char mark) {
    if (at >= text.size() || text[at] != mark) throw std::invalid_argument("not a number: " + text);
    ++at;
  };
  const double whole = part();
  double fraction = 0;
  if (at < text.size()) {
    skip('d');
    fraction = part() / 60;
    skip('\'');
    if (at < text.size()) {
      fraction += part() / 3600;
      skip('"');
    }
  }
  if (at != text.size()) throw std::invalid_argument("not a number: " + text);
  return std::signbit(whole) ? whole - fraction : whole + fraction;
}

/// Lines of `check | input | expected | tolerance | source`; `#` starts a comment line. Throws
/// where a row is not whole, or where there is none.
inline std::vector<ReferenceRow> read_reference_rows(std::istream& in, const std::string& name) {
  std::vector<ReferenceRow> rows;
  std::string text;
  for (int line = 1; std::getline(in, text); ++line) {
    if (text.empty() || text.front() == '#') continue;
    const std::string at = name + ':' + std::to_string(line);
    const std::vector<std::string> fields = split(text, '|');
    if (fields.size() != 5) throw std::runtime_error(at + ": not five fields");
    for (const std::string& field : fields) {
      if (field.empty()) throw std::runtime_error(at + ": an empty field");
    }
    rows.push_back({fields[0], fields[1], fields[2], number(fields[3]), fields[4], at});
  }
  if (rows.empty()) throw std::runtime_error(name + ": no rows");
  return rows;
}

/// The rows of a file of this folder; throws where it is missing.
inline std::vector<ReferenceRow> reference_rows(const std::string& file) {
  std::ifstream in(std::string(LODEBOOK_REFERENCES "/") + file);
  if (!in) throw std::runtime_error(file + ": cannot be read");
  return read_reference_rows(in, file);
}

}  // namespace lodebook::test
