// SPDX-License-Identifier: MIT
// A position among the tokens of a statement, and the collector of its faults.
#pragma once

#include <algorithm>

#include <lodebook/notebook/wording.hpp>

#include "tokens.hpp"

namespace lodebook::notebook {

/// Tells whether the reader would accept the statement if it were typed differently.
class Judge {
 public:
  /// The `candidates` that are accepted, the most likely first. If only a second fault remains, its
  /// fix is added to the offer. Empty where nobody would see the offers.
  virtual Offers accepted(Offers candidates) = 0;
  /// The `settings` (lines) that would make the statement acceptable if they stood above it.
  virtual std::vector<std::string> accepted_above(std::vector<std::string> settings) = 0;

 protected:
  ~Judge() = default;
};

/// Collects the diagnostics of the line being read.
class Faults {
 public:
  Faults(const Source& source, std::vector<Diagnostic>& out) : source_(source), out_(&out) {}
  /// Drops all diagnostics.
  explicit Faults(const Source& source) : source_(source) {}

  /// From here on `judge` judges the offers.
  void ask(Judge& judge) { judge_ = &judge; }
  Judge* judge() const { return judge_; }

  /// Further diagnostics go to `out`.
  void collect_in(std::vector<Diagnostic>& out) { out_ = &out; }

  /// Further diagnostics belong to `line`, and to `reading` unless it is `no_reading`.
  void start(std::uint32_t line, std::uint32_t reading = no_reading) {
    line_ = line;
    reading_ = reading;
  }
  void add(Span span, Diagnostic diagnostic) {
    if (!out_) return;
    diagnostic.place = source_.place(line_, span);
    diagnostic.reading = reading_;
    out_->push_back(std::move(diagnostic));
  }

 private:
  const Source& source_;
  std::vector<Diagnostic>* out_ = nullptr;
  Judge* judge_ = nullptr;
  std::uint32_t line_ = 1;
  std::uint32_t reading_ = no_reading;
};

/// The mark between a statement and a remark, as advice types it.
inline constexpr std::string_view remark_mark = "; ";

/// Advice if the letter O was typed for the digit 0.
inline constexpr std::string_view letter_for_zero = "the digit 0 for the letter O?";

/// An offer to type `text` in place of `span`.
inline Offer in_place(Span span, std::string text, std::string meaning = {}) {
  return {{span, std::move(text)}, std::move(meaning), {}, {}};
}
inline Offers each_in_place(Span span, std::vector<std::string> texts) {
  Offers offers;
  for (std::string& text : texts)
    offers.push_back(in_place(span, std::move(text)));
  return offers;
}

/// Walks through tokens. A function that fails reports one fault and returns nothing; its caller
/// then gives up the statement or the repeat.
class Cursor {
 public:
  Cursor(std::string_view text, const Tokens& tokens, Faults& faults)
      : text_(text), tokens_(tokens), faults_(faults) {}

  /// A copy at the same token that reports nothing.
  Cursor quiet() const {
    static const Source nowhere("", "");
    static Faults dropped(nowhere);
    Cursor silent(text_, tokens_, dropped);
    silent.at_ = at_;
    return silent;
  }

  bool at_end() const { return at_ >= tokens_.size(); }
  /// Whether any token of the statement is of type `comma`.
  bool has_comma() const { return tokens_.has_comma(); }
  /// The token that is `ahead` tokens after the next one, or null.
  const Token* peek(std::size_t ahead = 0) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  /// The token before the next one, or null.
  const Token* previous() const {
    return at_ > 0 && at_ <= tokens_.size() ? &tokens_[at_ - 1] : nullptr;
  }
  void skip(std::size_t count = 1) { at_ += count; }
  /// Skips all tokens that start before `offset`.
  void skip_to(std::uint32_t offset) {
    while (!at_end() && tokens_[at_].offset < offset)
      ++at_;
  }
  std::size_t position() const { return at_; }
  /// The number of `~` and `±` of all tokens.
  std::size_t mark_count() const { return tokens_.mark_count(); }
  /// The last token with `~` or `±`, or null.
  const Token* last_marked() const {
    for (std::size_t i = tokens_.size(); i > 0; --i) {
      if (tokens_[i - 1].rough || tokens_[i - 1].has_sigma) return &tokens_[i - 1];
    }
    return nullptr;
  }

  /// The last of all tokens that is that word.
  const Token* last_word(std::string_view lower) const {
    for (std::size_t i = tokens_.size(); i > 0; --i) {
      const Token& token = tokens_[i - 1];
      if (token.type == Token::Type::word && equals_word(text(token), lower)) return &token;
    }
    return nullptr;
  }

  std::string_view text(const Token& token) const { return text(token.span()); }
  std::string_view text(Span span) const { return text_.substr(span.offset, span.length); }

  /// Whether the token `ahead` is the word `lower`, ignoring case.
  bool is_word(std::string_view lower, std::size_t ahead = 0) const {
    const Token* token = peek(ahead);
    return token && token->type == Token::Type::word && !token->rough &&
           equals_word(text(*token), lower);
  }
  bool is(Token::Type type, std::size_t ahead = 0) const {
    const Token* token = peek(ahead);
    return token && token->type == type;
  }
  /// Whether the token `ahead` begins with the letter O and touches a figure before it.
  bool is_letter_for_zero(std::size_t ahead = 0) const {
    const Token* token = peek(ahead);
    return token && token->type == Token::Type::word && !token->spaced && at_ + ahead > 0 &&
           tokens_[at_ + ahead - 1].type == Token::Type::angle &&
           (text(*token).front() == 'O' || text(*token).front() == 'o');
  }
  bool skip_if(Token::Type type) {
    if (!is(type)) return false;
    skip();
    return true;
  }

  /// The text from token number `first` to the last token before the cursor.
  Span since(std::size_t first) const {
    const std::size_t end = std::min(at_, tokens_.size());
    if (first >= end) return here();
    const std::uint32_t begin = tokens_[first].offset;
    return {begin, tokens_[end - 1].end() - begin};
  }
  /// The text from the next token on; at the end, the empty place behind the text.
  Span rest() const {
    if (at_end()) return {tokens_.end_offset(), 0};
    return {tokens_[at_].offset, tokens_.end_offset() - tokens_[at_].offset};
  }
  /// The next token, or the empty place behind the text.
  Span here() const { return at_end() ? rest() : tokens_[at_].span(); }

  std::nullopt_t fail(Span span, Diagnostic diagnostic) {
    faults_.add(span, std::move(diagnostic));
    return std::nullopt;
  }
  /// See Judge.
  Offers accepted(Offers candidates) const {
    return faults_.judge() ? faults_.judge()->accepted(std::move(candidates)) : Offers();
  }
  std::vector<std::string> accepted_above(std::vector<std::string> settings) const {
    return faults_.judge() ? faults_.judge()->accepted_above(std::move(settings))
                           : std::vector<std::string>();
  }
  void report(Span span, Diagnostic diagnostic) { faults_.add(span, std::move(diagnostic)); }

 private:
  std::string_view text_;
  const Tokens& tokens_;
  Faults& faults_;
  std::size_t at_ = 0;
};

/// The text of the next token; empty at the end.
inline std::string_view first_word(const Cursor& cursor) {
  return cursor.text(cursor.here());
}

}  // namespace lodebook::notebook
