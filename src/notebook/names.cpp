// SPDX-License-Identifier: MIT
#include <lodebook/notebook/notebook.hpp>

#include "tokens.hpp"

namespace lodebook::notebook {

namespace {

/// Simple case folding of one code point: Latin-1, Latin Extended-A, Greek and Cyrillic (Unicode,
/// CaseFolding.txt, status C). Other letters compare as they are.
std::uint32_t folded(std::uint32_t code) {
  if (code >= 0xC0 && code <= 0xDE && code != 0xD7) return code + 32;
  if ((code >= 0x100 && code <= 0x137 && code != 0x130) || (code >= 0x14A && code <= 0x177))
    return code | 1;
  if (code == 0x178) return 0xFF;
  if ((code >= 0x139 && code <= 0x148) || (code >= 0x179 && code <= 0x17E))
    return code + (code & 1);
  if (code >= 0x391 && code <= 0x3A9 && code != 0x3A2) return code + 32;
  if (code >= 0x410 && code <= 0x42F) return code + 32;
  if (code >= 0x400 && code <= 0x40F) return code + 80;
  return code;
}

}  // namespace

std::string fold_case(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    if (static_cast<unsigned char>(c) >= 0x80 && utf8_length(text.substr(at)) == 2) {
      const auto lead = static_cast<unsigned char>(c);
      const auto trail = static_cast<unsigned char>(text[at + 1]);
      const std::uint32_t code = folded((lead & 0x1Fu) << 6 | (trail & 0x3Fu));
      out += static_cast<char>(0xC0 | (code >> 6));
      out += static_cast<char>(0x80 | (code & 0x3F));
      at += 2;
    } else {
      out += c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
      ++at;
    }
  }
  return out;
}

std::string typed_name(std::string_view name) {
  bool plain = !name.empty() && !name.starts_with('#') && !name.starts_with('"');
  for (std::size_t at = 0; plain && at < name.size(); ++at)
    plain = name.find_first_of(",;>", at) != at && !starts_with_space(name, at);
  return plain ? std::string(name) : '"' + std::string(name) + '"';
}

NameId Names::intern(std::string_view name) {
  const auto [found, added] =
      by_folded_.try_emplace(fold_case(name), static_cast<NameId>(shown_.size()));
  if (added) shown_.emplace_back(name);
  return found->second;
}

NameId Names::find(std::string_view name) const {
  const auto found = by_folded_.find(fold_case(name));
  return found == by_folded_.end() ? no_name : found->second;
}

}  // namespace lodebook::notebook
