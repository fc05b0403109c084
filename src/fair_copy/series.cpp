// SPDX-License-Identifier: MIT
#include "series.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "spelling.hpp"

namespace lodebook::fair_copy {

namespace {

/// A word with a number behind it, at the start of a line.
struct Numbered {
  std::string letters;  ///< folded
  std::string name;     ///< as typed
  unsigned number = 0;
  bool opens = false;  ///< it begins a block
  bool reads = false;  ///< figures of a reading stand behind it
};

constexpr std::size_t longest_word = 10;
constexpr std::size_t most_digits = 3;

/// `062/37`, `35 > 120`
bool has_pair_at(std::string_view line, std::size_t at) {
  const auto skip = [&](auto is) {
    while (at < line.size() && is(line[at]))
      ++at;
  };
  const auto is_blank = [](char c) { return c == ' ' || c == '\t'; };
  skip(is_blank);
  const std::size_t begin = at;
  skip(is_digit);
  if (at == begin) return false;
  skip(is_blank);
  return at < line.size() && std::string_view("/>@").find(line[at]) != std::string_view::npos;
}

std::optional<Numbered> numbered_at_start(std::string_view line, const Words& words) {
  std::size_t begin = 0;
  while (const std::size_t blank = blank_at(line, begin))
    begin += blank;
  std::size_t at = begin;
  while (at < line.size() && is_letter(line[at]))
    ++at;
  const std::string_view word = line.substr(begin, at - begin);
  if (word.empty() || word.size() > longest_word || at >= line.size()) return std::nullopt;
  // A word apart from its number must be no word of the trade.
  const bool apart = line[at] == ' ';
  if (apart && words.find(folded(word))) return std::nullopt;
  if (apart || line[at] == '-') ++at;
  const std::size_t digits = at;
  while (at < line.size() && is_digit(line[at]))
    ++at;
  if (at == digits || at - digits > most_digits) return std::nullopt;
  const bool ends = at == line.size() || line[at] == ':' || line[at] == '.' || line[at] == ',' ||
                    line[at] == '(' || blank_at(line, at) > 0;
  const bool decimal = at + 1 < line.size() && line[at] != ':' && is_digit(line[at + 1]);
  if (!ends || (decimal && blank_at(line, at) == 0)) return std::nullopt;
  Numbered found;
  found.reads = has_pair_at(line, at);
  found.letters = folded(word);
  found.name = line.substr(begin, at - begin);
  for (const char c : line.substr(digits, at - digits))
    found.number = found.number * 10 + static_cast<unsigned>(c - '0');
  return found;
}

bool is_series(const std::vector<Numbered>& all) {
  const Numbered* before = nullptr;
  std::set<unsigned> seen;
  for (const Numbered& one : all) {
    // `L1: joint ...`, `L1 to L2` further down are about L1 again.
    if (!seen.insert(one.number).second && !one.reads) continue;
    if (!one.opens || one.reads) return false;
    if (before && one.number <= before->number) return false;
    before = &one;
  }
  return seen.size() >= 2;
}

}  // namespace

std::vector<std::string> names_in_series(const std::function<std::string_view(std::uint32_t)>& line,
                                         std::uint32_t count, const Words& words) {
  std::map<std::string, std::vector<Numbered>> by_letters;
  bool opens = true;
  for (std::uint32_t number = 1; number <= count; ++number) {
    const std::string_view text = line(number);
    const bool blank = text.find_first_not_of(" \t\r") == std::string_view::npos;
    if (auto found = blank ? std::nullopt : numbered_at_start(text, words)) {
      found->opens = opens;
      by_letters[found->letters].push_back(*found);
    }
    opens = blank;
  }
  std::vector<std::string> names;
  for (const auto& [letters, all] : by_letters) {
    if (!is_series(all)) continue;
    for (const Numbered& one : all)
      names.push_back(one.name);
  }
  return names;
}

}  // namespace lodebook::fair_copy
