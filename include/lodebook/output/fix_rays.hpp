// SPDX-License-Identifier: MIT
// What a fix looks like on a map: sight lines, error ellipses and legs as GeoJSON (RFC 7946).
#pragma once

#include <lodebook/output/feature_collection.hpp>
#include <lodebook/reduction/fixes.hpp>

namespace lodebook::output {

/// Writes one FeatureCollection: begin, log for each log, end. Each log is written by a copy of its
/// own; `between` stands between those that have features. The property `what` of a feature is
/// `sight` (a line from the observer to the target), `ellipse` (a polygon that holds the true point
/// with 95 % confidence) or `leg`. What crosses the antimeridian is cut there.
class FixRays {
 public:
  static constexpr std::string_view between = FeatureCollection::between;

  void begin(std::string& out);
  void log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes);
  void end(std::string& out);

 private:
  FeatureCollection features_;
};

}  // namespace lodebook::output
