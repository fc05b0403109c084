// SPDX-License-Identifier: MIT
// The columns of samples, photos and notes: the same for CSV, JSON and GeoJSON.
#pragma once

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// What a row's columns are taken from.
struct RegisterRow {
  const notebook::Source& source;
  const reduction::Page& page;
  const reduction::Item& item;
};

/// One column, as `Column` is one of the readings.
struct RegisterColumn {
  std::string_view name;
  Type type;
  void (*append)(Pen& out, const RegisterRow& row);
};

std::span<const RegisterColumn> register_columns();

}  // namespace lodebook::output
