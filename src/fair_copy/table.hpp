// SPDX-License-Identifier: MIT
// Readings in columns: a line of headings, and rows below it.
#pragma once

#include "row.hpp"

namespace lodebook::fair_copy {

class Table {
 public:
  /// The table that `line` is the heading of, or nothing: columns of an attitude or of a leg are
  /// named, and the line has no figure.
  static std::optional<Table> headed_by(std::string_view line, const Page& page);

  /// What becomes of its line of headings.
  Lines heading(std::string_view line, Page& page) const;
  /// What a row becomes, or nothing for a line that is none of its rows.
  std::optional<Lines> row(std::string_view line, Page& page);
  /// A row that is in the language already: what a ditto mark below it may stand for. A blank line
  /// may end the table.
  void pass(std::string_view line, const Page& page);
  bool has_stations() const { return has(Column::station); }
  /// Named over it, or by its headings; empty for none.
  const std::string& kind() const { return state_.kind; }

 private:
  Table(std::vector<Heading> headings, Separator separator)
      : headings_(std::move(headings)), separator_(separator) {}

  bool has(Column column) const;
  void turn(Column from, Column to);
  void drop_repeats();
  bool take_as_leg();
  bool take_as_attitude();
  bool is_heading() const;
  void name_kinds(std::string_view line, const Words& words);

  std::vector<std::string> texts_of(std::string_view line, Separator separator, bool strict,
                                    const Words& words) const;
  std::size_t aligned_with(const Span& span) const;
  std::vector<std::string> by_position(std::string_view line, const std::vector<Cell>& cells) const;
  bool is_row(const std::vector<std::string>& texts, Separator separator, bool strict,
              const Words& words) const;
  std::vector<std::string> row_like_above(std::string_view line, const Words& words) const;
  std::vector<std::string> row_of(std::string_view line, const Words& words);
  void keep_spans(std::string_view line);
  std::optional<Lines> units_row(std::string_view line);
  Row fields_of(const std::vector<std::string>& texts, const Words& words) const;
  void add_pair(const Heading& heading, std::size_t column, const std::string& text,
                const Words& words, std::vector<Field>& fields) const;

  std::vector<Heading> headings_;
  std::vector<std::string> above_;  ///< the cells of the row before
  std::vector<Span> spans_;         ///< of the last row with all columns
  Separator separator_;             ///< of the rows, once one was read
  bool is_leg_ = false;
  bool has_rows_ = false;
  bool may_be_over_ = false;  ///< behind a blank line, or a line that is no row
  TableState state_;
};

}  // namespace lodebook::fair_copy
