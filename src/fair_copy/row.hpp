// SPDX-License-Identifier: MIT
// A row of a table: its cells by their columns, and what becomes of them.
#pragma once

#include <map>

#include "columns.hpp"
#include "page.hpp"

namespace lodebook::fair_copy {

/// A part of a row: a cell, or half a cell that holds a pair.
struct Field {
  const Heading* heading = nullptr;  ///< none behind the last column
  Column column = Column::other;
  std::string text;
  bool is_used = false;  ///< its text is in a statement, or in a remark
};

/// What a table says to its rows.
struct TableState {
  std::string kind;         ///< named over the table
  std::string rake_kind;    ///< of the line in a plane, by the heading of its column
  bool has_senses = false;  ///< a letter such as D for dextral stands above
  std::string date;         ///< of the last row with one
  /// The kinds of the rows by their numbers: `slick on 7`.
  std::map<std::string, std::string> kinds;
  std::vector<std::string> asked;  ///< headings that a question was asked about
};

class Row {
 public:
  explicit Row(std::vector<Field> fields) : fields_(std::move(fields)) {}

  bool has(Column column) const;
  /// What stands in the first such column that has something; empty for none. It counts as used.
  std::string take(Column column);
  std::string_view peek(Column column) const;
  /// The unit that the column's heading names.
  Unit unit_of(Column column) const;
  bool is_angle_named(Column column) const;
  /// What nobody took, each with its heading: `height ft 12, L 1.2`.
  std::string rest() const;

  std::vector<Field>& fields() { return fields_; }
  const std::vector<Field>& fields() const { return fields_; }

 private:
  const Field* find(Column column) const;

  std::vector<Field> fields_;
};

/// Joins two remarks.
std::string both(std::string first, std::string_view second);
/// Puts a remark behind a statement or a question.
void add_remark(Line& line, std::string_view remark);
/// Makes a question of a statement, unless it is one.
void ask(Line& line, std::string_view why);

/// A leg in columns, or a sight where there is no column of distances.
Lines leg_of(Row& row, Page& page);

/// Attitudes in columns; nothing for a row without any.
std::optional<Lines> attitudes_of(Row& row, TableState& table, Page& page);

/// The station of a row, its position and height, and its day, where they are new.
void add_place(Row& row, TableState& table, Page& page, Lines& lines);
/// The words of remarks, and of columns that nobody knows, that may be about the reading.
std::string take_spoken(Row& row, const Words& words);
/// A remark that names another kind, or says how often, is about the reading.
std::string doubt_in(const Row& row, const Words& words);
/// The note that a row with a mean below its readings becomes; nothing for another row.
std::optional<Lines> mean_in(const Row& row, const Words& words);
/// The cell of a column that nobody knows which holds a point of the compass; none for no such.
const Field* unplaced_point(const Row& row, const Words& words);
/// Asks once what a column holds whose heading says nothing, and whose cells are bearings.
void ask_about_columns(const Row& row, TableState& table, const Words& words, Lines& lines);

/// The kind that a cell names, in any words.
struct KindCell {
  std::string kind;      ///< empty if the cell names none
  std::string remark;    ///< the words beside it: `W flank`
  std::string on;        ///< the plane that it lies in
  bool is_plain = true;  ///< else the words of the cell stand in `kind`, for the readers of lines
};
KindCell kind_in(std::string_view cell, bool is_plane, const TableState& table, Page& page);

/// The sense that a cell names; a question for a letter that nobody declared.
struct SenseCell {
  std::string words;
  std::string remark;
  std::string question;
};
SenseCell sense_in(std::string_view cell, TableState& table, const Page& page);

}  // namespace lodebook::fair_copy
