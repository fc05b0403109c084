// SPDX-License-Identifier: MIT
#include "places.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

bool leads_to_place(const Token& token) {
  if (token.type != Type::word) return false;
  const std::string said = folded(token.text);
  return token.is(Meaning::where) || token.is(Meaning::on) || token.is(Meaning::from) ||
         token.is(Meaning::up) || token.is(Meaning::down) || said == "by" || said == "of" ||
         said == "at";
}

bool is_article(const Token& token) {
  const std::string said = folded(token.text);
  return token.type == Type::word && (said == "the" || said == "this" || said == "that");
}

/// No word of a place: it parts one thing said from the next.
bool is_break(const Token& token) {
  return token.type == Type::mark && token.text != "-" && token.text != "\"";
}

/// A word, or what was set aside, such as `10 m`.
bool may_be_between(const Token& token) {
  return token.type == Type::word || token.use == Token::Use::aside;
}

/// A point stands behind the word before `at`, and a capital follows.
bool begins_sentence(const Tokens& tokens, std::size_t at) {
  const Token& before = tokens[at - 1];
  const bool has_point = before.is('.') || (before.type == Type::word &&
                                            before.end - before.begin > before.text.size());
  const char first = tokens[at].text.front();
  return has_point && first >= 'A' && first <= 'Z';
}

}  // namespace

bool is_in_place(const Tokens& tokens, std::size_t at) {
  while (at > 0 && may_be_between(tokens[at - 1]) && tokens[at - 1].use != Token::Use::stated &&
         !begins_sentence(tokens, at)) {
    --at;
    if (leads_to_place(tokens[at])) return true;
  }
  return false;
}

bool has_strange_word(const Tokens& tokens, std::size_t begin, std::size_t at) {
  bool is_strange = false;
  for (std::size_t i = at; i > begin; --i) {
    const Token& token = tokens[i - 1];
    if (is_break(token) && is_strange) return true;
    if (leads_to_place(token) || is_article(token)) is_strange = false;
    if (token.is(Meaning::unknown) && token.use == Token::Use::none) is_strange = true;
  }
  return is_strange;
}

}  // namespace lodebook::fair_copy
