// SPDX-License-Identifier: MIT
// A line of a page with a reader on it: what each token is, where the reader stands, what it has
// settled, and its question.
#pragma once

#include <algorithm>

#include "page.hpp"

namespace lodebook::fair_copy {

/// What the readers of lines have in common. A question about a token behind the last is answered
/// with no.
class PageLine {
 protected:
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);

  PageLine(std::string_view line, Tokens& tokens, Page& page)
      : line_(line), tokens_(tokens), page_(page) {}

  bool is(std::size_t i, Meaning meaning) const {
    return i < tokens_.size() && tokens_[i].is(meaning);
  }
  bool is(std::size_t i, char mark) const { return i < tokens_.size() && tokens_[i].is(mark); }
  bool is_figure(std::size_t i) const { return i < tokens_.size() && tokens_[i].is_figure(); }
  bool is_point(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].type == Token::Type::point;
  }
  /// Nobody has settled its use.
  bool is_free(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].use == Token::Use::none;
  }
  bool is_free_figure(std::size_t i) const { return is_free(i) && tokens_[i].is_figure(); }
  /// It may be one: a bearing, a point of the compass, a figure.
  bool is_bearing(std::size_t i) const {
    return is_free(i) && (tokens_[i].type == Token::Type::bearing || is_point(i) || is_figure(i));
  }
  /// A free figure in metres, feet or paces.
  bool is_length(std::size_t i) const {
    return is_free_figure(i) && (is(i + 1, Meaning::metres) || is(i + 1, Meaning::feet) ||
                                 is(i + 1, Meaning::paces) || tokens_[i].is_minutes);
  }
  bool has(Meaning meaning) const {
    return std::ranges::any_of(tokens_, [&](const Token& token) { return token.is(meaning); });
  }

  /// The bytes of the tokens from `first` up to `end`.
  std::string_view typed(std::size_t first, std::size_t end) const {
    return fair_copy::typed(line_, tokens_, first, end);
  }
  /// They go into a statement.
  void settle(std::size_t first, std::size_t end) {
    for (; first < end && first < tokens_.size(); ++first)
      tokens_[first].use = Token::Use::stated;
  }

  const Token& here() const { return tokens_[at_]; }
  /// Settles tokens from where the reader stands, and steps behind them.
  void take(std::size_t count = 1) {
    settle(at_, at_ + count);
    at_ = std::min(at_ + count, tokens_.size());
  }
  /// The first question is the one that is asked.
  void ask(std::string question) {
    if (question_.empty()) question_ = std::move(question);
  }

  std::string_view line_;
  Tokens& tokens_;
  Page& page_;
  std::size_t at_ = 0;
  std::string question_;
};

}  // namespace lodebook::fair_copy
