// SPDX-License-Identifier: MIT
// A page with one row, made by hand: figures that no log needs to reach.
#pragma once

#include <algorithm>
#include <lodebook/output/table.hpp>

namespace lodebook::test {

struct OneRow {
  explicit OneRow(notebook::Kind::Type type = notebook::Kind::Type::plane,
                  std::string file = "day3.txt")
      : source(std::move(file), "bedding N78E 41N\n") {
    kind.type = type;
    kind.name = type == notebook::Kind::Type::plane ? "bedding" : "lineation";
    entry.line = 18;
    entry.column = 3;
    page.is_station = true;
    page.station = "Q1";
    reduction::Row row;
    row.reading = &reading;
    row.entry = &entry;
    row.kind = &kind;
    page.rows.push_back(row);
  }
  OneRow(const OneRow&) = delete;
  OneRow& operator=(const OneRow&) = delete;

  reduction::Row& row() { return page.rows.front(); }

  /// What stands in the column of that name.
  std::string cell(std::string_view name) const {
    const auto columns = output::columns(true);
    const auto column = std::ranges::find(columns, name, &output::Column::name);
    if (column == columns.end()) return "no such column";
    std::string out;
    output::Pen pen(out);
    column->append(pen, {source, page, page.rows.front()});
    return std::string(pen.behind(0));
  }

  notebook::Source source;
  notebook::Kind kind;
  notebook::Reading reading;
  notebook::Entry entry;
  reduction::Page page;
};

}  // namespace lodebook::test
