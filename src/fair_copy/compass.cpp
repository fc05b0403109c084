// SPDX-License-Identifier: MIT
#include "compass.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>

#include "page_line.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class CompassLine : PageLine {
 public:
  CompassLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  Lines read() {
    for (std::size_t begin = 0; begin < tokens_.size();) {
      std::size_t end = begin;
      while (end < tokens_.size() && (end == begin || !ends_clause(line_, tokens_, end)))
        ++end;
      read_clause(begin, end);
      const bool is_mark = end < tokens_.size() &&
                           (tokens_[end].type == Type::mark || tokens_[end].is(Meaning::together) ||
                            tokens_[end].text == "but");
      begin = is_mark ? end + 1 : std::max(end, begin + 1);
    }
    Lines lines;
    if (!set_.empty()) lines.emplace_back().text = "set " + set_;
    if (as_set_) declination_ = "as-set";
    if (!declination_.empty()) lines.emplace_back().text = "declination " + declination_;
    page_.has_set = page_.has_set || !set_.empty();
    page_.has_declination = page_.has_declination || !declination_.empty();
    return lines;
  }

 private:
  bool is_east_west(std::size_t i) const {
    return is_point(i) && is_free(i) && (tokens_[i].text == "E" || tokens_[i].text == "W");
  }

  /// An angle towards east or west, or naught.
  struct Offset {
    std::string text;  ///< `4.5W`, `0`
    bool found = false;
  };

  Offset offset_in(std::size_t begin, std::size_t end, bool naught) {
    for (std::size_t i = begin; i < end; ++i) {
      if (!is_free_figure(i)) continue;
      std::size_t letter = npos;
      if (i + 1 < end && is_east_west(i + 1)) letter = i + 1;
      if (letter == npos && i > begin && is_east_west(i - 1)) letter = i - 1;
      const bool range = is(i + 1, '-') || is(i + 1, Meaning::toward);
      if (letter == npos && (!naught || tokens_[i].value != 0 || range)) continue;
      Offset offset;
      offset.found = true;
      offset.text = plain(tokens_[i]) + (letter == npos ? "" : tokens_[letter].text);
      if (tokens_[i].value == 0) offset.text = std::string(1, '0');
      settle(i, i + 1);
      if (letter != npos) settle(letter, letter + 1);
      return offset;
    }
    return {};
  }

  /// With decimals where minutes have a short one.
  static std::string plain(const Token& figure) {
    const double hundredths = figure.value * 100;
    if (figure.text.find("°") == std::string_view::npos ||
        std::abs(hundredths - std::round(hundredths)) > 1e-6)
      return figure.text;
    return trimmed_text(figure.value, 2);
  }

  void read_clause(std::size_t begin, std::size_t end) {
    const auto within = [&](Meaning meaning) {
      for (std::size_t i = begin; i < end; ++i) {
        if (tokens_[i].is(meaning)) return true;
      }
      return false;
    };
    const auto says = [&](std::string_view word) {
      for (std::size_t i = begin; i < end; ++i) {
        if (folded(tokens_[i].text) == word) return true;
      }
      return false;
    };
    const bool says_declination = within(Meaning::declination) || says("dec");
    const bool says_dialled =
        within(Meaning::dialled) || within(Meaning::set_word) || says("on it");
    bool says_none = within(Meaning::none);
    for (std::size_t i = begin; i < end; ++i) {
      const std::string word = folded(tokens_[i].text);
      // `set on the compass: no`
      says_none = says_none || (says_dialled && (word == "no" || word == "not" || word == "never"));
    }
    if (says_none) {
      // `nothing set on the dial`, `4.5W, not set`: a figure beside it is the declination.
      const Offset offset = offset_in(begin, end, false);
      if (offset.found) declination_ = offset.text;
      if (set_.empty() &&
          (says_dialled || offset.found || !declination_.empty() || is_about_dial(begin, end)))
        set_ = std::string(1, '0');
      return;
    }
    if (!says_declination && !says_dialled) {
      if (within(Meaning::same) && !set_.empty() && declination_.empty()) declination_ = set_;
      if (declination_.empty() && has(Meaning::declination) && begin > 0) {
        const Offset offset = offset_in(begin, end, false);
        if (offset.found) declination_ = offset.text;
      }
      return;
    }
    const Offset offset = offset_in(begin, end, says_dialled);
    if (says_dialled) {
      if (offset.found) {
        set_ = offset.text;
        as_set_ = as_set_ || says_declination;
      } else if (!declination_.empty() && set_.empty()) {
        set_ = declination_;
        as_set_ = true;
      }
    } else if (offset.found) {
      declination_ = offset.text;
    } else if (!set_.empty() && declination_.empty()) {
      // `1 E on it, which is the local declination`
      as_set_ = true;
    }
  }

  bool is_about_dial(std::size_t begin, std::size_t end) const {
    const std::string said = folded(typed(begin, end));
    return said.find("dial") != std::string_view::npos ||
           said.find("compass") != std::string_view::npos ||
           said.find("set") != std::string_view::npos ||
           said.find("turned") != std::string_view::npos;
  }

  std::string declination_;  ///< `4.5W`; empty where nothing is said
  std::string set_;
  /// What was set is the declination.
  bool as_set_ = false;
};

}  // namespace

bool ends_clause(std::string_view line, const Tokens& tokens, std::size_t i) {
  // As in columns.
  const std::string_view gap =
      i == 0 ? std::string_view()
             : line.substr(tokens[i - 1].end, tokens[i].begin - tokens[i - 1].end);
  if (gap.find('\t') != std::string_view::npos) return true;
  // A point that is no abbreviation's ends a sentence.
  const bool capital =
      tokens[i].begin < line.size() && line[tokens[i].begin] >= 'A' && line[tokens[i].begin] <= 'Z';
  if (i > 0 && capital && tokens[i].type != Type::point && line[tokens[i - 1].end - 1] == '.')
    return true;
  return tokens[i].is(',') || tokens[i].is(';') || tokens[i].is('.') || tokens[i].is('(') ||
         tokens[i].is(Meaning::together) || tokens[i].text == "but";
}

Lines compass_of(std::string_view line, Tokens& tokens, Page& page) {
  return CompassLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
