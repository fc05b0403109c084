// SPDX-License-Identifier: MIT
// The columns of the stations that `fix` has found: the same for CSV and GeoJSON.
#pragma once

#include <span>

#include <lodebook/output/table.hpp>

#include "fix_pieces.hpp"

namespace lodebook::output {

/// The source of the columns of a row.
struct FixRow {
  const notebook::Source& source;
  const FoundPoint& point;
};

/// One column, as `Column` is one of the readings.
struct FixColumn {
  std::string_view name;
  Type type;
  void (*append)(Pen& out, const FixRow& row);
};

std::span<const FixColumn> fix_columns();

}  // namespace lodebook::output
