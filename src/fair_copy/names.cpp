// SPDX-License-Identifier: MIT
#include "names.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

}  // namespace

Names::MarkHere Names::mark_at(std::size_t at) const {
  if (is(at, Meaning::named)) return {std::string(tokens_[at].says), true, 1};
  // `Stn 1 273`
  if (is_station_to_sight(at)) return {target(at, at + 2), true, 2};
  MarkHere best;
  for (const Mark& mark : page_.marks) {
    const std::size_t length = words_of(mark, at);
    if (length > best.length) {
      best = {mark.name, mark.is_known, length};
    } else if (length > 0 && length == best.length && best.name != mark.name) {
      best.name.clear();
    }
  }
  return best;
}

/// How many tokens name the mark: all its words, or one of them.
std::size_t Names::words_of(const Mark& mark, std::size_t at) const {
  std::size_t best = 0;
  for (std::size_t first = 0; first < mark.words.size(); ++first) {
    std::size_t k = at;
    std::size_t word = first;
    while (word < mark.words.size() && k < tokens_.size() && tokens_[k].type == Type::word &&
           folded(tokens_[k].text) == mark.words[word]) {
      ++word;
      ++k;
    }
    const bool whole = word - first == mark.words.size();
    // `Spring C` is not `Spring A`.
    const bool telling = word > first && mark.words[first].size() > 2 &&
                         (word == mark.words.size() || !is_other_number(mark.words[word], k));
    if (whole || telling) best = std::max(best, k - at);
  }
  return best;
}

/// A name has a letter or a number there, and the line another one.
bool Names::is_other_number(std::string_view word, std::size_t i) const {
  const bool numbers = word.size() == 1 || word.find_first_of("0123456789") != npos;
  return numbers && i < tokens_.size() && (is_figure(i) || tokens_[i].text.size() == 1) &&
         tokens_[i].type != Type::mark;
}

bool Names::is_name(std::size_t i) const {
  if (is_point(i)) return tokens_[i].text.size() == 1;
  if (is_figure(i)) return tokens_[i].decimals == 0 && !is_length(i);
  return is(i, Meaning::unknown) || is(i, Meaning::named);
}

/// Short, or with a number: no word that somebody could be going to.
bool Names::is_id(std::size_t i) const {
  return is(i, Meaning::named) ||
         (is_name(i) && (tokens_[i].end - tokens_[i].begin <= 2 ||
                         tokens_[i].text.find_first_of("0123456789") != npos));
}

/// The name of a station, with the word before it where that belongs to it (`Peg 611`).
std::string Names::station_at(std::size_t first, std::size_t end) const {
  const std::string name = page_.full_name(stripped(typed(first, end)));
  const bool kept =
      first > 0 && is(first - 1, Meaning::station) && !tokens_[first - 1].says.empty();
  return kept ? fmt::format("{}-{}", tokens_[first - 1].says, name) : name;
}

/// `stake 4 to stake 5: 118`, `entrance to sinkhole 2:`: what stands before a colon is names alone.
std::optional<Names::Ends> Names::ends_before_colon() const {
  std::size_t colon = 0;
  std::size_t middle = npos;
  while (colon < tokens_.size() && !is(colon, ':')) {
    const Token& token = tokens_[colon];
    const bool parts =
        is(colon, Meaning::toward) || is(colon, '>') || (is(colon, '-') && token.spaced);
    if (parts && middle != npos) return std::nullopt;
    if (parts) middle = colon;
    const bool may_be = parts || token.type == Type::word || is_point(colon) ||
                        (is_figure(colon) && token.decimals == 0 && token.digits < 3);
    if (!may_be) return std::nullopt;
    ++colon;
  }
  if (colon == tokens_.size() || middle == npos || middle == 0 || middle + 1 >= colon)
    return std::nullopt;
  std::size_t start = is(0, Meaning::from) ? 1 : 0;
  for (std::size_t i = 0; i < middle; ++i) {
    if (is(i, Meaning::leg)) start = i + 1;
  }
  if (start >= middle) return std::nullopt;
  return Ends{target(start, middle), target(middle + 1, colon), colon};
}

bool Names::is_station_to_sight(std::size_t at) const {
  return at > 0 && is(at, Meaning::station) && is_figure(at + 1) && tokens_[at + 1].decimals == 0 &&
         is_bearing(at + 2);
}

void Names::free_stations() {
  for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
    const bool is_end = is(i - 1, Meaning::toward) && is(i, Meaning::station) && is_figure(i + 1);
    if (is_end || is_station_to_sight(i)) tokens_[i].use = tokens_[i + 1].use = Token::Use::none;
  }
}

void Names::free_ends_of_leg() {
  constexpr std::size_t farthest = 3;  // of the word between them
  for (std::size_t i = 1; i <= farthest; ++i) {
    if (!is(i, Meaning::toward) && !is(i, '>') && !is(i, '-')) continue;
    for (const std::size_t end : {i - 1, i + 1}) {
      const bool id =
          is(end, Meaning::kind) && tokens_[end].text.find_first_of("0123456789") != npos;
      if (id) tokens_[end].meaning = Meaning::unknown;
    }
  }
}

std::optional<Names::Ends> Names::ends_of_leg() const {
  if (auto ends = ends_before_colon()) return ends;
  const std::size_t bullet = is(0, '-') ? 1 : 0;
  const std::size_t start = bullet + (is(bullet, Meaning::station) ? 1 : 0);
  if (!is_name(start)) return std::nullopt;
  std::size_t middle = start + 1;
  while (middle < tokens_.size() && !tokens_[middle].spaced && !is(middle, '-'))
    ++middle;
  // `A0     A1    032    12.0 m`: in columns.
  const auto is_code = [&](std::size_t i) {
    return i < tokens_.size() && tokens_[i].type == Type::word && is_id(i);
  };
  if (is_code(start) && is_code(middle) && tokens_[middle].begin - tokens_[middle - 1].end >= 2)
    return Ends{station_at(start, middle), station_at(middle, middle + 1), middle + 1};
  const std::size_t other = is(middle + 1, Meaning::station) ? middle + 2 : middle + 1;
  const std::string station = page_.full_name(stripped(typed(start, middle)));
  if (is(middle, Meaning::toward) && page_.is_station(station) && !is_id(other))
    return Ends{station, {}, middle};
  const bool joined = is(middle, '-') || is(middle, '>') || is(middle, Meaning::toward);
  if (!joined || !is_name(other)) return std::nullopt;
  std::size_t end = other + 1;
  while (end < tokens_.size() && !tokens_[end].spaced && !is(end, ':'))
    ++end;
  return Ends{station_at(start, middle), station_at(other, end), end};
}

std::size_t Names::behind_article(std::size_t k) const {
  if (is(k, Meaning::filler)) ++k;
  return is(k, Meaning::station) ? k + 1 : k;
}

std::size_t Names::end_of_target(std::size_t k) const {
  const std::size_t first = behind_article(k);
  if (is(first, Meaning::named)) return first + 1;
  std::size_t end = first;
  while (is_free(end) &&
         (tokens_[end].type == Type::word || (end == first && is_figure(end) && !is_length(end))) &&
         !is(end, Meaning::back) && !is(end, Meaning::up) && !is(end, Meaning::down) &&
         !is(end, Meaning::level) && !is(end, Meaning::leg) && !is(end, Meaning::doubt))
    ++end;
  return end == first ? k : end;
}

std::string Names::target(std::size_t first, std::size_t end) const {
  return page_.full_name(stripped(typed(behind_article(first), end)));
}

bool Names::leads(std::size_t i) const {
  return is(i, Meaning::filler) || is(i, Meaning::toward) || is(i, Meaning::sight) ||
         is(i, Meaning::at);
}

std::size_t Names::end_before(std::size_t at, std::size_t first) const {
  while (at > first + 1 && leads(at - 1))
    --at;
  return at;
}

std::size_t Names::start_before(std::size_t at) const {
  std::size_t first = at;
  while (first > 0 && (is_free(first - 1) || is(first - 1, Meaning::sight)) &&
         (is(first - 1, Meaning::unknown) || is(first - 1, Meaning::place) ||
          is(first - 1, Meaning::where) || is(first - 1, Meaning::which) || leads(first - 1)))
    --first;
  while (first < at && leads(first))
    ++first;
  return first;
}

}  // namespace lodebook::fair_copy
