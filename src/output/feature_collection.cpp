// SPDX-License-Identifier: MIT
#include <lodebook/output/feature_collection.hpp>

namespace lodebook::output {

void FeatureCollection::begin(std::string& out, std::string_view name) {
  out += "{\"type\":\"FeatureCollection\",\"name\":\"";
  out += name;
  out += "\",\"features\":[";
}

void FeatureCollection::feature(std::string& out) {
  out += first_ ? "\n" : ",\n";
  first_ = false;
  out += "{\"type\":\"Feature\",\"geometry\":";
}

void FeatureCollection::properties(std::string& out) {
  out += ",\"properties\":";
}

void FeatureCollection::end_feature(std::string& out) {
  out.push_back('}');
}

void FeatureCollection::end(std::string& out) {
  out += "\n]}\n";
}

}  // namespace lodebook::output
