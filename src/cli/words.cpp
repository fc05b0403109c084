// SPDX-License-Identifier: MIT
#include <lodebook/cli/words.hpp>

namespace lodebook::cli {

std::string joined(std::span<const std::string> words) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += ' ';
    text += word;
  }
  return text;
}

bool is_blank(std::string_view text) {
  return text.find_first_not_of(" \t") == text.npos;
}

}  // namespace lodebook::cli
