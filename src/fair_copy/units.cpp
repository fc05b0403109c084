// SPDX-License-Identifier: MIT
#include "units.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "words.hpp"

namespace lodebook::fair_copy {

namespace {

constexpr std::string_view lengths[] = {"tape",   "tapes",   "dist",  "distance", "distances",
                                        "length", "lengths", "taped", "chained",  "legs"};
constexpr std::string_view slopes[] = {"slope",       "slopes",       "clino",  "incl",
                                       "inclination", "inclinations", "grade",  "grades",
                                       "gradient",    "gradients",    "inclin", "verticals"};
constexpr std::string_view between[] = {"in", "are", "is", "all", "given", "read", "as"};

template <std::size_t count>
bool is_one_of(const std::string_view (&words)[count], std::string_view word) {
  return std::ranges::find(words, word) != std::end(words);
}

std::vector<std::string> words_of(std::string_view line) {
  constexpr std::string_view marks = " \t,;:()=[]";
  std::vector<std::string> words;
  for (std::size_t at = line.find_first_not_of(marks); at != std::string_view::npos;) {
    const std::size_t end = std::min(line.find_first_of(marks, at), line.size());
    words.push_back(folded(line.substr(at, end - at)));
    at = line.find_first_not_of(marks, end);
  }
  return words;
}

/// `35K`: a zone of the grid and its latitude band.
bool is_zone(std::string_view word) {
  constexpr std::string_view bands = "cdefghjklmnpqrstuvwx";
  const std::size_t digits = std::min(word.find_first_not_of("0123456789"), word.size());
  return (digits == 1 || digits == 2) && word.size() == digits + 1 &&
         bands.find(word.back()) != std::string_view::npos;
}

}  // namespace

Unit unit_named(std::string_view word) {
  constexpr std::pair<std::string_view, Unit> units[] = {
      {"m", Unit::metres},         {"metre", Unit::metres},    {"metres", Unit::metres},
      {"meter", Unit::metres},     {"meters", Unit::metres},   {"mtr", Unit::metres},
      {"ft", Unit::feet},          {"feet", Unit::feet},       {"foot", Unit::feet},
      {"paces", Unit::paces},      {"pace", Unit::paces},      {"steps", Unit::paces},
      {"deg", Unit::degrees},      {"degs", Unit::degrees},    {"degrees", Unit::degrees},
      {"degree", Unit::degrees},   {"°", Unit::degrees},       {"º", Unit::degrees},
      {"pct", Unit::percent},      {"percent", Unit::percent}, {"%", Unit::percent},
      {"per cent", Unit::percent}, {"cm", Unit::other},        {"mm", Unit::other},
      {"km", Unit::other},         {"yd", Unit::other},        {"gon", Unit::other}};
  const std::string lower = folded(word);
  const auto* const found =
      std::ranges::find(units, std::string_view(lower), [](const auto& one) { return one.first; });
  return found == std::end(units) ? Unit::none : found->second;
}

void Units::learn(std::string_view line) {
  const std::vector<std::string> words = words_of(line);
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool grid = i > 0 && (words[i - 1] == "utm" || words[i - 1] == "zone");
    const bool has_half = grid && i + 1 < words.size() &&
                          (words[i + 1] == "south" || words[i + 1] == "north") &&
                          words[i].find_first_not_of("0123456789") == std::string::npos;
    if (has_half) zone = words[i] + " " + words[i + 1];
    if (grid && is_zone(words[i])) {
      zone = words[i];
      zone.back() = static_cast<char>(zone.back() - 'a' + 'A');
    }
    const bool is_length = is_one_of(lengths, words[i]);
    if (!is_length && !is_one_of(slopes, words[i])) continue;
    std::size_t k = i + 1;
    while (k < words.size() && is_one_of(between, words[k]))
      ++k;
    if (k == words.size()) return;
    const Unit unit = unit_named(words[k]);
    const bool is_angle = unit == Unit::degrees || unit == Unit::percent;
    if (unit == Unit::none || unit == Unit::other || is_length == is_angle) continue;
    (is_length ? length : slope) = unit;
  }
}

std::string_view length_unit(Unit unit) {
  return unit == Unit::metres ? "m" : unit == Unit::feet ? "ft" : " paces";
}

}  // namespace lodebook::fair_copy
