// SPDX-License-Identifier: MIT
#include <lodebook/output/feature_collection.hpp>

namespace lodebook::output {

void FeatureCollection::begin(std::string& out, std::string_view name) {
  out += "{\"type\":\"FeatureCollection\",\"name\":\"";
  out += name;
  out += "\",\"features\":[";
}

void FeatureCollection::end(std::string& out) {
  out += "\n]}\n";
}

}  // namespace lodebook::output
