// SPDX-License-Identifier: MIT
// The stations and how well they are known, as GeoJSON points (RFC 7946).
#pragma once

#include <lodebook/output/feature_collection.hpp>
#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// Writes one FeatureCollection with a feature for each station: begin, log for each log, end. Each
/// log is written by a copy of its own; `between` stands between those that have features. The
/// properties are the columns of the CSV; a station without a position has no geometry.
class FixGeoJson {
 public:
  static constexpr std::string_view between = FeatureCollection::between;

  void begin(std::string& out);
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes);
  void end(std::string& out);

 private:
  FeatureCollection features_;
};

}  // namespace lodebook::output
