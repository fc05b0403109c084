// SPDX-License-Identifier: MIT
// Reads a page line by line: each line to its own reader, with what the lines above it said.
#pragma once

#include <optional>

#include "copied_page.hpp"
#include "table.hpp"
#include "verify.hpp"

namespace lodebook::fair_copy {

class PageReader {
 public:
  /// `page` must outlive the reader and what it reads.
  explicit PageReader(const notebook::Notebook& page);

  /// Every line is in the language, and hides no reading in a remark.
  bool is_log() const;
  /// What becomes of the page, as far as the page itself says.
  CopiedPage read();
  /// The words that the page has declared so far.
  const Words& words() const { return page_.words; }

 private:
  std::string_view line_of(std::uint32_t number) const;
  bool hides_reading(const StrictLine& line) const;
  Copied read_line(std::uint32_t number);
  Lines understood(std::uint32_t number, std::string_view line);
  std::optional<Lines> in_table(std::string_view line);
  std::size_t begin_of_marks(std::string_view line, const Tokens& tokens) const;
  Lines listed_marks(std::string_view line, std::size_t begin_of_names, const Tokens& tokens);
  Lines unplaced_landmark(std::string_view line);
  bool stands_alone(std::uint32_t number) const;
  Lines with_rest(Lines lines, std::string_view line, Tokens& tokens);
  Lines title(std::string_view line) const;
  Lines kept(std::string_view line, const Tokens& tokens, std::uint32_t number) const;

  const notebook::Notebook& notebook_;
  const notebook::Source& source_;
  std::vector<StrictLine> strict_;
  Page page_;
  std::optional<Table> table_;
};

}  // namespace lodebook::fair_copy
