// SPDX-License-Identifier: MIT
// The table as GeoJSON points (RFC 7946), written a page at a time.
#pragma once

#include <lodebook/output/feature_collection.hpp>
#include <lodebook/output/table.hpp>

namespace lodebook::output {

/// Writes one FeatureCollection: begin, page for each page, end. Each log is written by a copy of
/// its own; `between` stands between those that have features.
class GeoJsonWriter {
 public:
  explicit GeoJsonWriter(Columns columns) : columns_(columns) {}

  static constexpr std::string_view between = FeatureCollection::between;

  void begin(std::string& out);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end(std::string& out);

 private:
  Columns columns_;
  FeatureCollection features_;
};

}  // namespace lodebook::output
