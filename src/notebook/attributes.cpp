// SPDX-License-Identifier: MIT
#include <lodebook/notebook/attributes.hpp>

#include <algorithm>

#include "tokens.hpp"

namespace lodebook::notebook {

namespace {

bool is_small(char c) {
  return c >= 'a' && c <= 'z';
}

/// The attribute that a word is, if it is one.
Attribute attribute_in(std::string_view word) {
  const std::size_t equals = word.find('=');
  if (equals == std::string_view::npos || !is_attribute_key(word.substr(0, equals))) return {};
  const std::string_view value = word.substr(equals + 1);
  const std::size_t last = value.find_last_not_of(",;");
  if (last == std::string_view::npos) return {};
  return {word.substr(0, equals), value.substr(0, last + 1)};
}

/// `use` with each attribute, in the order of the text.
template <class Use>
void for_each_attribute(std::string_view remark, Use use) {
  // Most remarks have none.
  if (remark.find('=') == std::string_view::npos) return;
  for (std::size_t at = 0; at < remark.size();) {
    if (const std::size_t space = space_length(remark.substr(at))) {
      at += space;
      continue;
    }
    const std::size_t begin = at;
    while (at < remark.size() && space_length(remark.substr(at)) == 0)
      ++at;
    const Attribute attribute = attribute_in(remark.substr(begin, at - begin));
    if (!attribute.key.empty()) use(attribute);
  }
}

}  // namespace

bool is_attribute_key(std::string_view word) {
  return !word.empty() && is_small(word.front()) && std::ranges::all_of(word, [](char c) {
    return is_small(c) || is_digit(c) || c == '_' || c == '-';
  });
}

std::vector<Attribute> attributes_of(std::string_view remark) {
  std::vector<Attribute> all;
  for_each_attribute(remark, [&all](const Attribute& one) { all.push_back(one); });
  std::ranges::reverse(all);
  std::ranges::stable_sort(all, {}, &Attribute::key);
  const auto same = [](const Attribute& a, const Attribute& b) { return a.key == b.key; };
  all.erase(std::unique(all.begin(), all.end(), same), all.end());
  return all;
}

std::string_view attribute_of(std::string_view remark, std::string_view key) {
  std::string_view value;
  for_each_attribute(remark, [&](const Attribute& one) {
    if (one.key == key) value = one.value;
  });
  return value;
}

}  // namespace lodebook::notebook
