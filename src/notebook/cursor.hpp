// SPDX-License-Identifier: MIT
// A place in a statement's tokens, and where its faults go.
#pragma once

#include <algorithm>

#include <lodebook/notebook/wording.hpp>

#include "tokens.hpp"

namespace lodebook::notebook {

/// Knows whether the statement being read would be accepted if it were typed otherwise.
class Judge {
 public:
  /// Those of `candidates` that are accepted, the likeliest first; where only a second fault stands
  /// in the way, together with its mend. None where nobody would see them.
  virtual Offers accepted(Offers candidates) = 0;
  /// Those of `settings` (lines) with which above it the statement is accepted as it stands.
  virtual std::vector<std::string> accepted_above(std::vector<std::string> settings) = 0;

 protected:
  ~Judge() = default;
};

/// Collects the diagnostics of the line being read.
class Faults {
 public:
  Faults(const Source& source, std::vector<Diagnostic>& out) : source_(source), out_(&out) {}
  /// Drops all of them.
  explicit Faults(const Source& source) : source_(source) {}

  /// Has offers judged by `judge`.
  void ask(Judge& judge) { judge_ = &judge; }
  Judge* judge() const { return judge_; }

  /// What comes next goes to `out`.
  void collect_in(std::vector<Diagnostic>& out) { out_ = &out; }

  /// What comes next belongs to `line`, and to `reading` if to one.
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

/// What parts a remark from a statement.
inline constexpr std::string_view remark_mark = "; ";

/// Advice where a letter O stands in for the digit.
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

/// Walks through tokens. A reader that fails reports one fault and returns nothing; its caller then
/// gives up the statement, or the repeat.
class Cursor {
 public:
  Cursor(std::string_view text, const Tokens& tokens, Faults& faults)
      : text_(text), tokens_(tokens), faults_(faults) {}

  /// The same place, from where nothing is reported.
  Cursor quiet() const {
    static const Source nowhere("", "");
    static Faults dropped(nowhere);
    Cursor silent(text_, tokens_, dropped);
    silent.at_ = at_;
    return silent;
  }

  bool at_end() const { return at_ >= tokens_.size(); }
  /// Whether any of all tokens is of type `comma`.
  bool has_comma() const { return tokens_.has_comma(); }
  /// The token `ahead` of the next one, or none.
  const Token* peek(std::size_t ahead = 0) const {
    return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
  }
  /// The token before the next one, or none.
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
  /// Of all tokens.
  std::size_t mark_count() const { return tokens_.mark_count(); }
  /// The last token with a mark of its own.
  const Token* last_marked() const {
    for (std::size_t i = tokens_.size(); i > 0; --i) {
      if (tokens_[i - 1].rough || tokens_[i - 1].has_sigma) return &tokens_[i - 1];
    }
    return nullptr;
  }

  std::string_view text(const Token& token) const { return text(token.span()); }
  std::string_view text(Span span) const { return text_.substr(span.offset, span.length); }

  /// The token `ahead` is that word, ignoring case.
  bool is_word(std::string_view lower, std::size_t ahead = 0) const {
    const Token* token = peek(ahead);
    return token && token->type == Token::Type::word && !token->rough &&
           equals_word(text(*token), lower);
  }
  bool is(Token::Type type, std::size_t ahead = 0) const {
    const Token* token = peek(ahead);
    return token && token->type == type;
  }
  /// The token `ahead` begins with the letter O, right behind a figure.
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

  /// From token number `first` to the last one before the cursor.
  Span since(std::size_t first) const {
    const std::size_t end = std::min(at_, tokens_.size());
    if (first >= end) return here();
    const std::uint32_t begin = tokens_[first].offset;
    return {begin, tokens_[end - 1].end() - begin};
  }
  /// From the next token on; at the end, the empty place behind the text.
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
