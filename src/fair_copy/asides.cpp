// SPDX-License-Identifier: MIT
#include "asides.hpp"

#include "page.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class Asides {
 public:
  Asides(Tokens& tokens, bool keep_lengths) : tokens_(tokens), keep_lengths_(keep_lengths) {}

  void settle() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].is(Meaning::label) || tokens_[i].is(Meaning::set_word)) {
        settle_label(i);
      } else if (tokens_[i].is(Meaning::station)) {
        settle_station(i);
      } else if (tokens_[i].is_figure() && tokens_[i].use == Use::none) {
        settle_figure(i);
      } else if (tokens_[i].type == Type::point) {
        settle_point(i);
      }
    }
  }

 private:
  const Token* at(std::size_t i) const { return i < tokens_.size() ? &tokens_[i] : nullptr; }
  bool is(std::size_t i, char mark) const { return at(i) && at(i)->is(mark); }
  bool is(std::size_t i, Meaning meaning) const { return at(i) && at(i)->is(meaning); }
  bool is_figure(std::size_t i) const { return at(i) && at(i)->is_figure(); }
  void aside(std::size_t first, std::size_t last) {
    for (std::size_t i = first; i <= last && i < tokens_.size(); ++i)
      if (tokens_[i].use == Use::none) tokens_[i].use = Use::aside;
  }

  /// `photo 0412-0419`, `sp 0.4 m`, `JRC 8-10`, `sample K3`, `set 2`
  void settle_label(std::size_t i) {
    std::size_t k = i + 1;
    while (is(k, ':') || is(k, '=') || is(k, '.') || is(k, '#') || is(k, Meaning::label) ||
           is(k, '~'))
      ++k;
    // A set is numbered by one digit.
    if (tokens_[i].is(Meaning::set_word) && (!is_figure(k) || at(k)->value > 9)) return;
    // `sample RV/26/101`
    if (at(k) && at(k)->type == Type::word && is(k + 1, '/') && !at(k + 1)->spaced) {
      while (at(k + 1) && !at(k + 1)->spaced)
        ++k;
      return aside(i, k);
    }
    if (!is_figure(k)) return;
    // `zone 235/50`: a word that may stand before a reading's figures, too.
    const bool pair = (is(k + 1, '/') || is(k + 1, '>')) && is_figure(k + 2) && at(k)->digits == 3;
    const bool columns = at(k)->digits == 3 && is_figure(k + 1);
    if (pair || columns) return;
    while (is_figure(k)) {
      aside(i, k);
      const bool joined = is(k + 1, '-') || is(k + 1, '/') || is(k + 1, Meaning::together) ||
                          is(k + 1, Meaning::toward) || is(k + 1, '+');
      const bool goes_on = joined && is_figure(k + 2);
      if (!goes_on) break;
      k += 2;
    }
  }

  /// `Stop 2`, as in `from Stop 2`
  void settle_station(std::size_t i) {
    std::size_t k = i + 1;
    while (is(k, '.') || is(k, '#') || is(k, ':'))
      ++k;
    if (is_figure(k)) aside(i, k);
  }

  bool is_length(std::size_t i) const {
    return is(i, Meaning::metres) || is(i, Meaning::feet) || is(i, Meaning::paces);
  }

  void settle_figure(std::size_t i) {
    // `1) bedding`
    const bool opened = i > 0 && is(i - 1, '(');
    if (is(i + 1, ')') && !at(i + 1)->spaced && !opened && at(i)->digits <= 2 &&
        at(i)->decimals == 0)
      return aside(i, i + 1);
    // `12+340`, a chainage
    if (is(i + 1, '+') && !at(i + 1)->spaced && is_figure(i + 2) && !at(i + 2)->spaced &&
        at(i + 2)->digits == 3)
      return aside(i, i + 2);
    // `20-40 cm`, `20 to 40 m`, `2 x 3 m`
    std::size_t last = i;
    const auto joins = [&](std::size_t k) {
      const bool dash = is(k, '-') && !at(k)->spaced && at(k + 1) && !at(k + 1)->spaced;
      return dash || is(k, Meaning::toward) || is(k, 'x') || is(k, '/') || is(k, ',');
    };
    while (joins(last + 1) && is_figure(last + 2) &&
           (last == i || at(last + 1)->text == at(i + 1)->text))
      last += 2;
    const bool one = last == i || !is(i + 1, '/');
    if (one && (is(last + 1, Meaning::unit) || (!keep_lengths_ && is_length(last + 1)))) {
      const bool list = is(i + 1, ',');
      return aside(list ? last : i, last + 1);
    }
    if (is(i + 1, Meaning::unit) || (!keep_lengths_ && is_length(i + 1))) return aside(i, i + 1);
    // `8 in of clay`, `open 4 in`
    const bool inches = at(i + 1) && at(i + 1)->is(Meaning::on) &&
                        at(i + 1)->end - at(i + 1)->begin == 2 && folded(at(i + 1)->text) == "in" &&
                        at(i)->digits < 3 &&
                        (!at(i + 2) || at(i + 2)->type == Type::mark || at(i + 2)->text == "of" ||
                         is(i + 2, Meaning::label));
    if (inches) return aside(i, i + 1);
    // `11.4 °C`; `5 pc` of something, where no reading follows
    const std::size_t unit = at(i + 1) && at(i + 1)->text == "°" ? i + 2 : i + 1;
    const bool celsius = (at(i)->is_degrees || unit == i + 2) && at(unit) && !at(unit)->spaced &&
                         (at(unit)->text == "C" || at(unit)->text == "F");
    const bool percent = at(i + 1) && folded(at(i + 1)->text) == "pc" && !is_figure(i + 2);
    if (celsius || percent) return aside(i, celsius ? unit : i + 1);
    // `14:20`, `9.40 am`, `0915 h`
    if (is(i + 1, ':') && !at(i + 1)->spaced && is_figure(i + 2) && !at(i + 2)->spaced) {
      aside(i, i + 2);
      if (is(i + 3, Meaning::clock)) aside(i + 3, i + 3);
      return;
    }
    if (is(i + 1, Meaning::clock)) return aside(i, i + 1);
    // `n = 4`, `x 3`
    if (i > 0 && (is(i - 1, '=') || is(i - 1, '#'))) return aside(i, i);
    // `14/5/2026`
    if (is(i + 1, '/') && is_figure(i + 2) && is(i + 3, '/') && is_figure(i + 4)) {
      if (at(i + 4)->digits == 4 || at(i)->digits == 4) aside(i, i + 4);
    }
  }

  /// `N side of the gully`, `the E wall`, `verges SE`
  void settle_point(std::size_t i) {
    const bool place =
        is(i + 1, Meaning::place) || (is(i + 1, Meaning::block) && is(i + 2, Meaning::place));
    if (place || (i > 0 && is(i - 1, Meaning::place))) aside(i, i);
  }

  Tokens& tokens_;
  bool keep_lengths_;
};

}  // namespace

void set_aside(Tokens& tokens, bool keep_lengths) {
  Asides(tokens, keep_lengths).settle();
}

std::size_t first_unsettled(const Tokens& tokens, std::size_t from) {
  for (std::size_t i = from; i < tokens.size(); ++i) {
    const bool counts =
        tokens[i].is_figure() || tokens[i].type == Type::bearing || tokens[i].type == Type::point;
    if (counts && tokens[i].use == Use::none) return i;
  }
  return tokens.size();
}

namespace {

/// More than marks and words of no consequence.
bool says_something(const Tokens& tokens, std::size_t first, std::size_t end) {
  for (std::size_t i = first; i < end; ++i) {
    const bool empty = tokens[i].type == Type::mark || tokens[i].is(Meaning::filler) ||
                       tokens[i].is(Meaning::together) || tokens[i].is(Meaning::ditto) ||
                       tokens[i].is(Meaning::toward) || tokens[i].is(Meaning::from) ||
                       tokens[i].is(Meaning::on);
    if (!empty) return true;
  }
  return false;
}

}  // namespace

std::string unstated(std::string_view line, const Tokens& tokens) {
  std::string text;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (tokens[i].use == Use::stated) continue;
    std::size_t end = i + 1;
    while (end < tokens.size() && tokens[end].use != Use::stated)
      ++end;
    const std::string_view part = stripped(typed(line, tokens, i, end));
    const bool telling = says_something(tokens, i, end);
    i = end - 1;
    if (part.empty() || !telling) continue;
    if (!text.empty()) text += ", ";
    text += part;
  }
  return text;
}

}  // namespace lodebook::fair_copy
