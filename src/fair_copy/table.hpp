// SPDX-License-Identifier: MIT
// Readings in columns: a line of headings, and rows below it.
#pragma once

#include "page.hpp"

namespace lodebook::fair_copy {

/// What a column holds.
enum class Column : std::uint8_t {
  other,  ///< goes into the remark, with its heading
  remark,
  station,
  kind,
  strike,
  dip,
  side,
  direction,
  trend,
  plunge,
  rake,
  facing,
  sense,
  latitude,
  longitude,
  elevation,
};

class Table {
 public:
  /// The table that `line` is the heading of, or nothing: two columns of an attitude are named, and
  /// the line has no figure.
  static std::optional<Table> headed_by(std::string_view line);

  /// What a row becomes, or nothing for a line that is none of its rows.
  std::optional<Lines> row(std::string_view line, Page& page);
  /// A row that is in the language already: what a ditto mark below it may stand for.
  void pass(std::string_view line);
  bool has_stations() const;

 private:
  std::vector<std::string> cells(std::string_view line) const;
  /// Figures of a column that nobody knows: no part of the reading.
  bool is_row(const std::vector<std::string>& row) const;
  bool is_counted(std::size_t column, std::string_view cell) const;
  std::string doubt_of(const std::vector<std::string>& row, const Page& page) const;
  /// The row as people write it in words, ready for the readers of lines; empty without a reading.
  std::string in_words(const std::vector<std::string>& row, const Page& page) const;
  void add_place(const std::vector<std::string>& row, Page& page, Lines& lines) const;

  struct Heading {
    Column column = Column::other;
    std::string name;
  };
  std::vector<Heading> headings_;
  std::vector<std::string> above_;  ///< the cells of the row before
  char separator_ = '\t';           ///< a blank: two or more
};

}  // namespace lodebook::fair_copy
