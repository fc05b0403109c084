// SPDX-License-Identifier: MIT
#include "list_heading.hpp"

namespace lodebook::fair_copy {

namespace {

/// `till pit A, 5 m above the creek, a-axes of 8 stones:`
bool is_in_last_clause(Tokens& tokens, const Token& kind) {
  for (std::size_t i = tokens.size() - 1; i > 0 && &tokens[i] != &kind; --i) {
    if (tokens[i].is(',') || tokens[i].is(';')) return false;
    const bool count = tokens[i].is_figure() && tokens[i].use == Token::Use::none &&
                       tokens[i].digits < 3 && i + 1 < tokens.size() &&
                       tokens[i + 1].is(Meaning::unknown);
    if (count) tokens[i].use = Token::Use::aside;
  }
  return true;
}

}  // namespace

void keep_heading_kind(Tokens& tokens, Page& page) {
  std::size_t words = 0;
  bool unknown = false;
  const Token* kind = nullptr;
  for (const Token& token : tokens) {
    if (token.type != Token::Type::word || token.is(Meaning::ordinal)) continue;
    ++words;
    if (token.is(Meaning::kind)) kind = &token;
    unknown = unknown || token.is(Meaning::unknown);
  }
  constexpr std::size_t most_words = 3;
  const bool colon = !tokens.empty() && tokens.back().is(':');
  const bool first = kind && !tokens.empty() && kind == &tokens.front();
  // A noun of the trade is often no more than talk of the rock.
  const bool noun = kind && is_noun(kind->says);
  const bool ends = colon && kind && is_in_last_clause(tokens, *kind);
  // `fabric, a-axis of clasts`
  const bool is_bare = !tokens.empty() && tokens.front().is(Meaning::kind) && !unknown;
  const bool heads = first || is_bare || ends || (kind && words <= most_words);
  if (heads && (!noun || colon || words == 1 || is_bare)) {
    page.kind = page.list_kind = page.last.kind = kind->says;
  } else if (colon || (unknown && words > 0 && words <= most_words)) {
    // Over a list of something else the kind above ends.
    page.kind = page.list_kind = page.last.kind = std::string();
  }
}

}  // namespace lodebook::fair_copy
