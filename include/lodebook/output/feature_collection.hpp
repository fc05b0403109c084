// SPDX-License-Identifier: MIT
// The frame of a GeoJSON document (RFC 7946), written a feature at a time.
#pragma once

#include <string>
#include <string_view>

namespace lodebook::output {

/// Writes begin, then for each feature: feature, its geometry, properties, their object,
/// end_feature; then end. Where copies write features apart, `between` joins their texts.
class FeatureCollection {
 public:
  static constexpr std::string_view between = ",";

  void begin(std::string& out, std::string_view name);
  void feature(std::string& out);
  void properties(std::string& out);
  void end_feature(std::string& out);
  void end(std::string& out);

 private:
  bool first_ = true;
};

}  // namespace lodebook::output
