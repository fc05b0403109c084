// SPDX-License-Identifier: MIT
// What GIS programs look for beside a CSV table: the types of its columns, and what its coordinates
// refer to.
#pragma once

#include <string>

#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// The text of FILE.csvt, by the convention of GDAL: the types of `columns` on one line, in their
/// order. `longitude` and `latitude` are the coordinates X and Y of a point.
std::string column_types(Columns columns);

/// The text of FILE.prj: geographic coordinates on WGS 84, as well-known text on one line.
std::string_view coordinate_system();

}  // namespace lodebook::output
