// SPDX-License-Identifier: MIT
#include "positions.hpp"
#include "spelling.hpp"

#include <algorithm>
#include <variant>

#include <lodebook/earth/position.hpp>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

constexpr std::size_t npos = static_cast<std::size_t>(-1);
/// Tokens of the longest position.
constexpr std::size_t longest_position = 14;

/// As the language writes it: decimal points, one space.
std::string plain_position(std::string_view typed) {
  std::string text;
  for (std::size_t i = 0; i < typed.size(); ++i) {
    const bool between =
        i > 0 && i + 1 < typed.size() && is_digit(typed[i - 1]) && is_digit(typed[i + 1]);
    char c = typed[i];
    if (c == ',' && between) c = '.';
    if (c == '/' || c == '\t') c = ' ';
    if (c == ' ' && (text.empty() || text.back() == ' ')) continue;
    text.push_back(c);
  }
  return text;
}

/// `44-12-41 N`
std::string without_dashes(std::string text) {
  for (std::size_t i = 1; i + 1 < text.size(); ++i) {
    if (text[i] == '-' && is_digit(text[i - 1])) text[i] = ' ';
  }
  return text;
}

bool is_position(std::string_view text) {
  const auto read = earth::read_position(text);
  const auto* const written = std::get_if<earth::WrittenPosition>(&read);
  return written && (written->position || written->if_south);
}

/// It has figures, alone or in a bearing such as the `N57` of `N57 50.42`.
bool has_figure(const Token& token) {
  return token.is_figure() || token.type == Type::bearing;
}

std::size_t digits_of(const Token& token) {
  return static_cast<std::size_t>(std::ranges::count_if(token.text, is_digit));
}

class PositionFinder {
 public:
  PositionFinder(std::string_view line, const Tokens& tokens) : line_(line), tokens_(tokens) {}

  std::optional<PlaceHere> found() const {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      auto here = starting_at(i);
      if (!here) continue;
      // `Bore 3    44 41.22 S ...`: behind a gap without the number of a name.
      for (std::size_t k = i + 1; k < here->end; ++k) {
        if (tokens_[k].begin - tokens_[k - 1].end < 2) continue;
        const auto later = starting_at(k);
        if (later && later->end == here->end) here = later;
      }
      return here;
    }
    return std::nullopt;
  }

  /// From the first to the last long figure, with the zone or the letter before them.
  std::optional<PlaceHere> faulty(bool headed) const {
    std::size_t first = npos;
    std::size_t last = npos;
    std::size_t figures = 0;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const Token& token = tokens_[i];
      if (token.use != Use::none || !has_figure(token)) continue;
      const bool whole_degrees = has_minutes_behind(i);
      if (digits_of(token) < 6 && token.decimals < 4 && !whole_degrees) continue;
      ++figures;
      if (first == npos) first = i;
      last = token.is_degrees ? i + 1 : i;
    }
    if (figures < 2) return headed ? grid_reference() : std::nullopt;
    while (first > 0 && may_lead(tokens_[first - 1]))
      --first;
    return PlaceHere{std::string(typed(line_, tokens_, first, last + 1)), first, last + 1};
  }

 private:
  bool is_figure(std::size_t i) const { return i < tokens_.size() && tokens_[i].is_figure(); }
  bool is(std::size_t i, char mark) const { return i < tokens_.size() && tokens_[i].is(mark); }

  std::optional<PlaceHere> starting_at(std::size_t i) const {
    if (!may_begin(i)) return std::nullopt;
    for (std::size_t end = std::min(tokens_.size(), i + longest_position); end > i + 1; --end) {
      if (!looks_long(i, end) && !is_lettered(i, end)) break;
      const std::string_view text = typed(line_, tokens_, i, end);
      const std::string plain = plain_position(text);
      for (const std::string& form : {plain, std::string(text), without_dashes(plain)}) {
        if (is_position(form)) return PlaceHere{form, i, end};
      }
    }
    return std::nullopt;
  }

  /// Not within a name such as `TP-4`.
  bool may_begin(std::size_t i) const {
    const Token& token = tokens_[i];
    const bool glued =
        i > 0 && !token.spaced && (tokens_[i - 1].type == Type::word || tokens_[i - 1].is('-'));
    const bool signs = glued && tokens_[i - 1].is('-') && tokens_[i - 1].spaced;
    return token.use == Use::none && (!glued || signs) &&
           (has_figure(token) || token.type == Type::point);
  }

  bool has_minutes_behind(std::size_t i) const {
    return tokens_[i].is_degrees && is_figure(i + 1) && tokens_[i + 1].is_minutes;
  }

  /// Figures as long as those of positions, which no reading has.
  bool looks_long(std::size_t first, std::size_t end) const {
    for (std::size_t i = first; i < end; ++i) {
      const Token& token = tokens_[i];
      if (!has_figure(token)) continue;
      const bool dashed = i + 4 < end && is(i + 1, '-') && is(i + 3, '-') &&
                          !tokens_[i + 3].spaced && is_figure(i + 4);
      if (digits_of(token) >= 5 || token.decimals >= 3 || dashed ||
          (i + 1 < end && has_minutes_behind(i)) || token.text.find('\'') != std::string::npos)
        return true;
    }
    return false;
  }

  /// Degrees and minutes, or seconds too, with a letter for north or south and one for east or
  /// west: `N57 50.42 W4 59.85`, `39 12 44 N / 30 41 10 E`.
  bool is_lettered(std::size_t first, std::size_t end) const {
    std::size_t figures = 0;
    std::size_t minutes = 0;
    bool north = false;
    bool east = false;
    for (std::size_t i = first; i < end; ++i) {
      const Token& token = tokens_[i];
      if (has_figure(token)) {
        ++figures;
        minutes += token.decimals >= 2 ? 1 : 0;
      }
      if (token.type != Type::point && token.type != Type::bearing) continue;
      north = north || token.text.find_first_of("NS") != std::string::npos;
      east = east || token.text.find_first_of("EW") != std::string::npos;
    }
    return north && east && (figures >= 6 || (figures >= 4 && minutes >= 2));
  }

  bool may_lead(const Token& token) const {
    if (token.use != Use::none) return false;
    const bool letters = token.type == Type::word && token.text.size() <= 2 &&
                         token.text.find_first_of("0123456789") == std::string::npos;
    return token.is_figure() || token.type == Type::point || letters;
  }

  /// `NH 223 874`: two capitals, and two figures alike.
  std::optional<PlaceHere> grid_reference() const {
    for (std::size_t i = 0; i + 2 < tokens_.size(); ++i) {
      const std::string_view letters = typed(line_, tokens_, i, i + 1);
      const bool capitals =
          letters.size() == 2 && tokens_[i].type == Type::word &&
          std::ranges::all_of(letters, [](char c) { return c >= 'A' && c <= 'Z'; });
      const bool figures =
          is_figure(i + 1) && is_figure(i + 2) && tokens_[i + 1].digits == tokens_[i + 2].digits &&
          tokens_[i + 1].digits >= 3 && tokens_[i + 1].decimals + tokens_[i + 2].decimals == 0;
      if (capitals && figures && tokens_[i].use == Use::none)
        return PlaceHere{std::string(typed(line_, tokens_, i, i + 3)), i, i + 3};
    }
    return std::nullopt;
  }

  std::string_view line_;
  const Tokens& tokens_;
};

}  // namespace

std::optional<PlaceHere> position_on(std::string_view line, const Tokens& tokens) {
  return PositionFinder(line, tokens).found();
}

std::optional<PlaceHere> faulty_position_on(std::string_view line, const Tokens& tokens,
                                            bool headed) {
  return PositionFinder(line, tokens).faulty(headed);
}

std::optional<PlaceHere> datum_on(const Tokens& tokens) {
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!tokens[i].is(Meaning::datum) || folded(tokens[i].text) == "datum") continue;
    PlaceHere found{tokens[i].text, i, i + 1};
    // `WGS 84`
    const bool apart = i + 1 < tokens.size() && tokens[i + 1].is_figure() &&
                       found.text.find_first_of("0123456789") == std::string::npos;
    if (apart) found.text += tokens[found.end++].text;
    return found;
  }
  return std::nullopt;
}

}  // namespace lodebook::fair_copy
