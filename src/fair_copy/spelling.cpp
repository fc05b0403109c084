// SPDX-License-Identifier: MIT
#include "spelling.hpp"

#include <algorithm>
#include <array>
#include <lodebook/orientation/quadrant.hpp>
#include <utility>

#include "words.hpp"

namespace lodebook::fair_copy {

namespace {

/// Longer ones stand first.
constexpr auto spellings = std::to_array<Spelling>({
    {"-->", ">"}, {"->", ">"},  {"=>", ">"}, {"→", ">"},  {"➔", ">"},   {"⇒", ">"},   {"−", "-"},
    {"–", "-"},   {"—", "-"},   {"°", "°"},  {"º", "°"},  {"˚", "°"},   {"''", "\""}, {"′′", "\""},
    {"″", "\""},  {"”", "\""},  {"“", "\""}, {"„", "\""}, {"〃", "\""}, {"′", "'"},   {"’", "'"},
    {"‘", "'"},   {"+/-", "±"}, {"+-", "±"}, {"±", "±"},  {"×", "x"},   {"≈", "~"},   {"∼", "~"},
    {"½", "½"},   {"¼", "¼"},   {"¾", "¾"},  {"⅓", "⅓"},  {"⅔", "⅔"},   {"•", "-"},
});

}  // namespace

const Spelling* spelling_at(std::string_view text) {
  const auto* const found = std::ranges::find_if(
      spellings, [&](const Spelling& one) { return text.starts_with(one.typed); });
  return found == spellings.end() ? nullptr : found;
}

std::size_t blank_at(std::string_view line, std::size_t at) {
  if (at >= line.size()) return 0;
  if (line[at] == ' ' || line[at] == '\t') return 1;
  for (const std::string_view space : {"\u00A0", "\u202F", "\u2009"}) {
    if (line.substr(at).starts_with(space)) return space.size();
  }
  return 0;
}

double part_of(std::string_view fraction) {
  if (fraction == "½") return 0.5;
  if (fraction == "¼") return 0.25;
  if (fraction == "¾") return 0.75;
  if (fraction == "⅓") return 1.0 / 3;
  if (fraction == "⅔") return 2.0 / 3;
  return 0;
}

std::string point_by_initials(const std::string& word, bool glued) {
  // A strike by both its ends: `NS`, `EW`.
  if (word == "NS" || word == "SN") return "N";
  if (word == "EW" || word == "WE") return "E";
  if (word == "Ø") return "E";  // øst
  const bool capitals = std::ranges::none_of(word, [](char c) { return c >= 'a' && c <= 'z'; });
  const bool may_be = word.size() <= 3 && (capitals || glued || word.size() == 2);
  const auto point = may_be ? point_named(word) : std::nullopt;
  return point ? std::string(name_of(*point)) : std::string();
}

std::string point_spelled(const std::string& word) {
  std::string said;
  std::string lower = folded(word);
  for (const std::string_view ending : {"erly", "ern", "wards", "ward", "ly"}) {
    if (lower.ends_with(ending) && lower.size() > ending.size() + 3)
      lower.resize(lower.size() - ending.size());
  }
  constexpr std::array<std::pair<std::string_view, char>, 4> names = {
      {{"north", 'N'}, {"south", 'S'}, {"east", 'E'}, {"west", 'W'}}};
  std::string_view left = lower;
  while (!left.empty()) {
    const auto* const name =
        std::ranges::find_if(names, [&](const auto& one) { return left.starts_with(one.first); });
    if (name == names.end()) return {};
    said += name->second;
    left.remove_prefix(name->first.size());
  }
  const auto point = point_named(said);
  return point ? std::string(name_of(*point)) : std::string();
}

}  // namespace lodebook::fair_copy
