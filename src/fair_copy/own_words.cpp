// SPDX-License-Identifier: MIT
// Words of a page's own: `ss bedding, k joint`, `x-bed = foreset plane`.
#include <fmt/format.h>

#include <algorithm>

#include "page_line.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class OwnWords : PageLine {
 public:
  OwnWords(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    read_own_words();
    if (lines_.empty()) return std::nullopt;
    return std::move(lines_);
  }

 private:
  void state(std::string text) { lines_.emplace_back().text = std::move(text); }

  /// A word of the page's own, and what the page says it means.
  struct Own {
    std::string_view word;
    Word meaning;
    bool is_new_kind = false;
    bool is_plane = true;
  };

  /// `ss bedding, k joint`, `f=foliation j=jt`, `x-bed = foreset plane`
  void read_own_words() {
    std::vector<Own> found;
    bool equals = false;
    bool unread = false;
    // Words are declared without a figure beside them.
    if (std::ranges::any_of(tokens_, [](const Token& token) {
          return token.is_figure() || token.type == Type::bearing;
        }))
      return;
    for (std::size_t begin = 0; begin < tokens_.size();) {
      const std::size_t end = end_of_own(begin);
      std::size_t mark = begin;
      while (mark < end && !tokens_[mark].is('=') && !tokens_[mark].is(':'))
        ++mark;
      const bool marked = mark < end && mark > begin;
      const auto own = marked ? own_word(mark - 1, mark, mark + 1, end, true)
                              : own_word(begin, begin + 1, begin + 1, end, false);
      equals = equals || (marked && is(mark, '='));
      unread = unread || !own;
      if (own) found.push_back(*own);
      begin = end < tokens_.size() && (is(end, ',') || is(end, ';')) ? end + 1 : end;
    }
    if (found.empty() || (!equals && (found.size() < 2 || unread))) return;
    for (const Own& own : found)
      declare(own.word, own.meaning, own.is_new_kind, own.is_plane);
    settle(0, tokens_.size());
  }

  /// At a comma, or before the next word that has `=` behind it.
  std::size_t end_of_own(std::size_t begin) const {
    std::size_t end = begin;
    bool marked = false;
    while (end < tokens_.size() && !is(end, ',') && !is(end, ';')) {
      if (marked && is(end + 1, '=')) return end;
      marked = marked || is(end, '=');
      ++end;
    }
    return end;
  }

  std::optional<Own> own_word(std::size_t begin, std::size_t word_end, std::size_t meaning,
                              std::size_t end, bool marked) const {
    const std::string_view word = typed(begin, word_end);
    if (meaning >= end || word.empty() || word.find(' ') != std::string_view::npos)
      return std::nullopt;
    for (std::size_t i = meaning; i < end; ++i) {
      if (tokens_[i].is_figure() || tokens_[i].type == Type::bearing) return std::nullopt;
    }
    Own own;
    own.word = word;
    // The kind may stand behind other words: `S1 = main cleavage`.
    std::size_t telling = meaning;
    while (marked && telling < end && !tokens_[telling].is(Meaning::kind))
      ++telling;
    if (telling >= end) telling = meaning;
    // Of several kinds the intersection is meant (`L01 = S0/S1 intersection`), or nobody knows.
    for (std::size_t i = telling; i < end; ++i) {
      if (tokens_[i].is(Meaning::kind) && tokens_[i].says == "intersection") telling = i;
    }
    for (std::size_t i = meaning; i < end; ++i) {
      const bool other = tokens_[i].is(Meaning::kind) && tokens_[i].says != tokens_[telling].says;
      if (other && tokens_[telling].says != "intersection") return std::nullopt;
    }
    own.meaning = {tokens_[telling].meaning, tokens_[telling].says};
    std::size_t closing = end - 1;
    while (closing > meaning && tokens_[closing].type == Type::mark)
      --closing;
    const std::string last = folded(tokens_[closing].text);
    own.is_plane = last != "line";
    own.is_new_kind =
        !tokens_[telling].is(Meaning::kind) && marked && (last == "plane" || last == "line");
    if (own.is_new_kind || tokens_[telling].is(Meaning::kind)) return own;
    // Another word for one that the page uses as the trade does: `yg = youngs`.
    const bool renames = marked && tokens_[telling].meaning != Meaning::unknown &&
                         !tokens_[telling].is(Meaning::filler);
    const bool is_setting = tokens_[begin].type == Type::word &&
                            tokens_[begin].meaning != Meaning::unknown &&
                            tokens_[begin].meaning != tokens_[telling].meaning;
    if (!renames || is_setting) return std::nullopt;
    return own;
  }

  void declare(std::string_view word, Word meaning, bool is_new_kind, bool is_plane) {
    const std::string_view kept = *page_.kept.emplace(word).first;
    if (is_new_kind) {
      page_.words.add(word, {Meaning::kind, kept});
      page_.is_plane[std::string(word)] = is_plane;
      return state(fmt::format("kind {} {}", word, is_plane ? "plane" : "line"));
    }
    page_.words.add(word, meaning);
    if (meaning.meaning == Meaning::kind && word != meaning.says)
      return state(fmt::format("short {} {}", word, meaning.says));
    state(fmt::format("note {}", word));
    lines_.back().is_note = true;
  }

  Lines lines_;
};

}  // namespace

std::optional<Lines> own_words_of(std::string_view line, Tokens& tokens, Page& page) {
  return OwnWords(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
