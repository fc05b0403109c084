// SPDX-License-Identifier: MIT
// What a remark says by key and value: `spacing=0.3m infill=clay`.
#pragma once

#include <string_view>
#include <vector>

namespace lodebook::notebook {

/// A word `key=value` of a remark. The value is never empty, and has no comma or semicolon behind
/// it.
struct Attribute {
  std::string_view key;
  std::string_view value;
};

/// A small letter, then small letters, digits, `_` or `-`.
bool is_attribute_key(std::string_view word);

/// All of them by their keys, each once: the last of a key wins. Views point into `remark`.
std::vector<Attribute> attributes_of(std::string_view remark);

/// The value of one key; empty where there is none.
std::string_view attribute_of(std::string_view remark, std::string_view key);

}  // namespace lodebook::notebook
