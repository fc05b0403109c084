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

std::vector<std::string> split_at_commas(std::string_view text) {
  std::vector<std::string> words;
  while (true) {
    const std::size_t comma = text.find(',');
    std::string_view word = text.substr(0, comma);
    while (word.starts_with(' '))
      word.remove_prefix(1);
    while (word.ends_with(' '))
      word.remove_suffix(1);
    words.emplace_back(word);
    if (comma == std::string_view::npos) return words;
    text.remove_prefix(comma + 1);
  }
}

bool is_blank(std::string_view text) {
  return text.find_first_not_of(" \t") == std::string_view::npos;
}

}  // namespace lodebook::cli
