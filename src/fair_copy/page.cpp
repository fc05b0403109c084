// SPDX-License-Identifier: MIT
#include "page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace lodebook::fair_copy {

namespace {

constexpr std::array<std::string_view, 7> lines = {
    "lineation", "slickenline", "fold-axis", "intersection", "stretching", "flute", "current"};

constexpr std::array<std::string_view, 4> axes = {"striation", "groove", "crest", "alignment"};

}  // namespace

void Page::add_name(const std::string& name) {
  words.add_name(*kept.insert(name).first);
}

void Page::add_mark(const std::string& name, bool is_known) {
  if (is_known) {
    add_name(name);
    // `TP-4` of `Portal pillar TP-4`.
    const std::size_t part = name.rfind(' ') + 1;
    if (part > 0 && name.find_first_of("0123456789", part) != std::string::npos)
      words.add_name(*kept.insert(name.substr(part)).first, *kept.insert(name).first);
  }
  Mark mark;
  mark.name = name;
  mark.is_known = is_known;
  const std::string lower = folded(name);
  for (std::size_t begin = 0; begin < lower.size();) {
    const std::size_t end = std::min(lower.find(' ', begin), lower.size());
    if (end > begin) mark.words.push_back(lower.substr(begin, end - begin));
    begin = end + 1;
  }
  const auto same = std::ranges::find(marks, mark.words, &Mark::words);
  if (same == marks.end()) {
    marks.push_back(std::move(mark));
  } else {
    same->is_known = same->is_known || is_known;
  }
}

void Page::remember(const std::string& of_kind, const Meant& meant) {
  constexpr std::size_t most = 3;
  std::vector<Meant>& last_few = neighbours[of_kind];
  if (last_few.size() == most) last_few.erase(last_few.begin());
  last_few.push_back(meant);
}

bool Page::is_station(std::string_view name) const {
  return std::ranges::any_of(
      stations, [&](const std::string& other) { return folded(other) == folded(name); });
}

bool Page::is_here(std::string_view name) const {
  return in_station && folded(station) == folded(name);
}

std::string Page::full_name(std::string_view name) const {
  const std::size_t digits = name.find_first_of("0123456789");
  const std::size_t own = station.find_first_of("0123456789");
  const bool initial = digits == 1 && own != std::string_view::npos && own > 2 &&
                       folded(name.substr(0, 1)) == folded(std::string_view(station).substr(0, 1));
  return initial ? station.substr(0, own) + std::string(name.substr(digits)) : std::string(name);
}

void Page::begin_station(const std::string& name) {
  in_station = true;
  add_name(name);
  station = name;
  stations.push_back(name);
  kind.clear();
  list_kind.clear();
  plane_kind.clear();
  last = {};
  neighbours.clear();
}

void Page::want_kind(const std::string& name, KindType type) {
  if (!wanted_kinds.insert(name).second) return;
  own_kinds[name] = type;
  words.add(name, {Meaning::kind, *kept.insert(name).first});
}

std::string_view stripped(std::string_view text) {
  constexpr std::string_view stray = " \t,;:.-()[]";
  constexpr std::array<std::string_view, 3> longer = {"–", "—", "\u00A0"};
  const auto strip = [&](auto starts, auto remove) {
    bool more = true;
    while (more && !text.empty()) {
      more = false;
      for (const std::string_view mark : longer) {
        if (starts(mark)) {
          remove(mark.size());
          more = true;
        }
      }
      for (const char& c : stray) {
        if (starts(std::string_view(&c, 1))) {
          remove(1);
          more = true;
        }
      }
    }
  };
  strip([&](std::string_view mark) { return text.starts_with(mark); },
        [&](std::size_t length) { text.remove_prefix(length); });
  strip([&](std::string_view mark) { return text.ends_with(mark); },
        [&](std::size_t length) { text.remove_suffix(length); });
  return text;
}

std::string name_text(std::string_view typed) {
  std::string name(typed);
  std::erase(name, '"');
  if (name.empty()) return "unnamed";
  std::ranges::replace(name, ' ', '-');
  const bool plain = name.find_first_of(",;>") == std::string_view::npos && name[0] != '#';
  return plain ? name : '"' + name + '"';
}

KindType type_of(const Page& page, std::string_view kind) {
  if (const auto own = page.own_kinds.find(std::string(kind)); own != page.own_kinds.end())
    return own->second;
  if (const auto* const noun = std::ranges::find(nouns, kind, &Noun::name); noun != nouns.end())
    return noun->type;
  if (std::ranges::find(axes, kind) != axes.end()) return KindType::axis;
  return std::ranges::find(lines, kind) == lines.end() ? KindType::plane : KindType::line;
}

bool is_noun(std::string_view kind) {
  return std::ranges::find(nouns, kind, &Noun::name) != nouns.end();
}

bool is_plane(const Page& page, std::string_view kind) {
  return type_of(page, kind) == KindType::plane;
}

bool may_stand_bare(const Page& page, std::string_view kind) {
  return type_of(page, kind) == KindType::axis || kind == "flute" || kind == "current";
}

std::optional<Line> declaration_of(Page& page, std::string_view kind) {
  const auto* const noun = std::ranges::find(nouns, kind, &Noun::name);
  if (noun == nouns.end() || page.own_kinds.contains(std::string(kind))) return std::nullopt;
  page.own_kinds[std::string(kind)] = noun->type;
  Line line;
  line.text = fmt::format("kind {} {}", kind, word_of(noun->type));
  return line;
}

std::string_view word_of(KindType type) {
  return type == KindType::plane ? "plane" : type == KindType::line ? "line" : "axis";
}

}  // namespace lodebook::fair_copy
