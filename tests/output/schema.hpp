// SPDX-License-Identifier: MIT
// JSON documents held against their schemas.
#pragma once

#include <cstdlib>
#include <fstream>
#include <string>

#include <nlohmann/json.hpp>

namespace lodebook::test {

/// Whether the document fits the schema in `docs`, as an independent validator sees it.
inline bool fits(const nlohmann::ordered_json& document, const std::string& schema) {
  const std::string file = std::string(LODEBOOK_SCRATCH) + "/document.json";
  std::ofstream(file) << document.dump();
  const std::string command = std::string(LODEBOOK_PYTHON) + " " + LODEBOOK_VALIDATE + " " +
                              LODEBOOK_DOCS + "/" + schema + " " + file;
  return std::system(command.c_str()) == 0;
}

}  // namespace lodebook::test
