// SPDX-License-Identifier: MIT
// Letters for senses of movement, as a page declares them: `sense: N normal, R reverse`.
#include <fmt/format.h>

#include <algorithm>

#include "page.hpp"

namespace lodebook::fair_copy {

namespace {

constexpr std::size_t longest_letters = 3;

/// `N normal`, `N = normal`: what one letter means.
struct Declared {
  std::string letter;
  std::string sense;  ///< empty for `X not clear`
  bool has_mark = false;
};

std::optional<Declared> declared_in(std::string_view part, const Words& words) {
  part = stripped(part);
  const std::size_t end = part.find_first_of(" =:");
  if (end > longest_letters) return std::nullopt;  // or there is none
  Declared found;
  found.letter = folded(part.substr(0, end));
  const std::size_t begin = part.find_first_not_of(" =:", end);
  if (begin == std::string_view::npos) return std::nullopt;
  found.has_mark = part.substr(end, begin - end).find_first_of("=:") != std::string_view::npos;
  const auto word = words.find(folded(part.substr(begin)));
  if (word && word->meaning == Meaning::sense) found.sense = word->says;
  return found;
}

}  // namespace

std::optional<Lines> sense_letters_of(std::string_view line, Page& page) {
  const std::size_t mark = line.find_first_of(":=");
  const std::string before = folded(line.substr(0, std::min(mark, line.size())));
  const bool headed = mark != std::string_view::npos &&
                      (before.find("sense") != std::string::npos || before.starts_with("movement"));
  const std::string_view list = headed ? line.substr(mark + 1) : line;
  std::vector<Declared> found;
  for (std::size_t begin = 0; begin <= list.size();) {
    const std::size_t end = std::min(list.find_first_of(",;", begin), list.size());
    auto one = declared_in(list.substr(begin, end - begin), page.words);
    begin = end + 1;
    if (!one || (!headed && !one->has_mark)) return std::nullopt;
    found.push_back(*std::move(one));
  }
  const auto senses =
      std::ranges::count_if(found, [](const Declared& one) { return !one.sense.empty(); });
  if (senses < 2) return std::nullopt;
  for (const Declared& one : found)
    page.sense_letters[one.letter] = one.sense;
  Lines lines;
  lines.emplace_back().text = fmt::format("note {}", stripped(line));
  lines.back().is_note = true;
  return lines;
}

}  // namespace lodebook::fair_copy
