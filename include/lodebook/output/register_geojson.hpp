// SPDX-License-Identifier: MIT
// Samples, photos and notes as GeoJSON points (RFC 7946).
#pragma once

#include <lodebook/output/feature_collection.hpp>
#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

/// Writes one FeatureCollection with a feature for each item: begin, page for each page, end. Each
/// log is written by a copy of its own; `between` stands between those that have features. The
/// properties are the columns of the CSV; an item of a station without a position has no geometry.
class RegisterGeoJson {
 public:
  static constexpr std::string_view between = FeatureCollection::between;

  void begin(std::string& out);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end(std::string& out);

 private:
  FeatureCollection features_;
};

}  // namespace lodebook::output
