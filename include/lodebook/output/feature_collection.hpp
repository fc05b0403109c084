// SPDX-License-Identifier: MIT
// The frame of a GeoJSON document (RFC 7946), written a feature at a time.
#pragma once

#include <string>
#include <string_view>

namespace lodebook::output {

/// Writes begin, then for each feature: feature, its geometry, properties, their object,
/// end_feature; then end; features go to a string or to a pen. Where copies write features apart,
/// `between` joins their texts.
class FeatureCollection {
 public:
  static constexpr std::string_view between = ",";

  void begin(std::string& out, std::string_view name);
  template <class Text>
  void feature(Text& out) {
    out += first_ ? "\n" : ",\n";
    first_ = false;
    out += "{\"type\":\"Feature\",\"geometry\":";
  }
  template <class Text>
  void properties(Text& out) {
    out += ",\"properties\":";
  }
  template <class Text>
  void end_feature(Text& out) {
    out.push_back('}');
  }
  void end(std::string& out);

 private:
  bool first_ = true;
};

}  // namespace lodebook::output
