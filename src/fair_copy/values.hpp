// SPDX-License-Identifier: MIT
// The figures, bearings and points of an attitude, one after the other.
#pragma once

#include "attitude.hpp"

namespace lodebook::fair_copy {

/// Where a reader of an attitude stands, and what stands there. A question about a token behind the
/// last is answered with no.
class ValueReader {
 protected:
  ValueReader(const Tokens& tokens, std::size_t at) : tokens_(tokens), at_(at) {}

  const Token* peek(std::size_t ahead = 0) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  bool is(Meaning meaning, std::size_t ahead = 0) const {
    return peek(ahead) && peek(ahead)->is(meaning);
  }
  bool is(char mark, std::size_t ahead = 0) const { return peek(ahead) && peek(ahead)->is(mark); }
  bool skip(Meaning meaning) {
    const bool found = is(meaning);
    if (found) ++at_;
    return found;
  }
  bool skip(char mark) {
    const bool found = is(mark);
    if (found) ++at_;
    return found;
  }
  void fault(std::string problem) {
    if (problem_.empty()) problem_ = std::move(problem);
  }

  bool starts_value(std::size_t ahead = 0) const {
    const Token* const token = peek(ahead);
    if (!token || token->use != Token::Use::none) return false;
    if (token->type == Token::Type::bearing || token->type == Token::Type::point) return true;
    return token->is_figure() && !token->is_minutes;
  }
  bool starts_figure(std::size_t ahead = 0) const {
    return starts_value(ahead) && peek(ahead)->is_figure();
  }

  /// Steps behind the value that starts here: `62`, `35-40`, `N65E - S65W`, `NW`.
  Value take_value();

  const Tokens& tokens_;
  std::size_t at_;
  /// What is wrong with the attitude; the first is the one that is told.
  std::string problem_;

  /// `200 to 225`: the other end of a range of directions, of which `value` becomes the middle.
  bool take_other_end(Value& value);

 private:
  /// `S55E to S70E`
  void take_lettered_range(Value& value);
  /// `N-S`, `N65E - S65W`: both ends of a strike.
  void skip_other_end(const Value& value);
  /// `35-40`: two figures that are one with its spread.
  bool is_range(const Token& low, const Token& high) const;
  void take_range(Value& value);
};

}  // namespace lodebook::fair_copy
