// SPDX-License-Identifier: MIT
// Words of a page's own: `ss bedding, k joint`, `x-bed = foreset plane`.
#include <fmt/format.h>

#include <algorithm>
#include <lodebook/orientation/quadrant.hpp>

#include "page_line.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class OwnWords : PageLine {
 public:
  OwnWords(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    read_letter_o();
    if (!lines_.empty()) return std::move(lines_);
    for (std::size_t begin = 0; begin < tokens_.size();) {
      const std::size_t end = end_of_sentence(begin);
      read_own_words(begin, end);
      begin = end;
    }
    if (lines_.empty()) return std::nullopt;
    return std::move(lines_);
  }

 private:
  /// `O for west`, `SO = SW`, `N30O = N30W`
  void read_letter_o() {
    const std::string said = ' ' + folded(line_) + ' ';
    const auto says = [&](std::string_view words) { return said.find(words) != std::string::npos; };
    const bool west = says(" o for west") || says(" o = west") || says(" o = w ") ||
                      says(" o is west") || says(" o means west") || says("so = sw");
    const bool east = says(" o for east") || says(" o = east") || says(" o = e ") ||
                      says(" o is east") || says(" o means east") || says("so = se");
    if (west == east || line_.find('O') == std::string_view::npos) return;
    page_.words.set_letter_o(west ? 'W' : 'E');
    state(fmt::format("note {}", stripped(line_)));
    lines_.back().is_note = true;
    settle(0, tokens_.size());
  }

  void state(std::string text) { lines_.emplace_back().text = std::move(text); }

  /// A word of the page's own, and what the page says it means.
  struct Own {
    std::string_view word;
    Word meaning;
    std::optional<KindType> new_kind;
    std::size_t begin = 0;  ///< its tokens
    std::size_t end = 0;
  };

  /// `ss bedding, k joint`, `f=foliation j=jt`, `x-bed = foreset plane`
  void read_own_words(std::size_t start, std::size_t stop) {
    std::vector<Own> found;
    bool equals = false;
    bool unread = false;
    for (std::size_t begin = start; begin < stop;) {
      const std::size_t end = std::min(end_of_own(begin), stop);
      std::size_t mark = begin;
      while (mark < end && !tokens_[mark].is('=') && !tokens_[mark].is(':'))
        ++mark;
      const bool marked = mark < end && mark > begin;
      // `J1 J2 J3 = joint sets`, `S1 S2 cleavages`: several words that mean the same.
      const std::size_t word = marked ? mark - 1 : last_code(begin, end);
      const auto own = has_figure(word, end) ? std::nullopt
                       : marked              ? marked_word(mark, end)
                                             : plain_word(word, end);
      equals = equals || (own && marked && is(mark, '='));
      unread = unread || !own;
      // `nor rev = normal, reverse`: which is which?
      if (marked && word > begin && !is_code(word) && tokens_[word - 1].type == Type::word) {
        begin = end < stop ? end + 1 : end;
        unread = true;
        continue;
      }
      std::size_t first = word;
      while (own && first > begin && is_code(word) && is_code(first - 1))
        --first;
      for (std::size_t i = first; i < word; ++i)
        found.push_back({typed(i, i + 1), own->meaning, own->new_kind, i, i + 1});
      if (own) {
        found.push_back(*own);
        found.back().begin = word;
        found.back().end = end;
      }
      begin = end < stop && (is(end, ',') || is(end, ';')) ? end + 1 : std::max(end, begin + 1);
    }
    if (found.empty() || (!equals && (found.size() < 2 || unread))) return;
    for (const Own& own : found) {
      declare(own);
      settle(own.begin, own.end);
    }
  }

  /// Behind a point that the next sentence follows.
  std::size_t end_of_sentence(std::size_t begin) const {
    std::size_t end = begin + 1;
    while (end < tokens_.size() && !(line_[tokens_[end - 1].end - 1] == '.' && tokens_[end].spaced))
      ++end;
    return end;
  }

  /// Words are declared without a figure beside them.
  bool has_figure(std::size_t begin, std::size_t end) const {
    return std::any_of(at(begin), at(end), [](const Token& token) {
      return token.is_figure() || token.type == Type::bearing;
    });
  }

  /// `S1`, `K2`
  bool is_code(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].type == Type::word && tokens_[i].text.size() <= 3 &&
           tokens_[i].text.find_first_of("0123456789") != std::string::npos;
  }
  std::size_t last_code(std::size_t begin, std::size_t end) const {
    while (begin + 1 < end && is_code(begin) && is_code(begin + 1))
      ++begin;
    return begin;
  }

  /// At a comma outside brackets, or before the next word that has `=` behind it.
  std::size_t end_of_own(std::size_t begin) const {
    std::size_t end = begin;
    bool marked = false;
    bool in_brackets = false;
    while (end < tokens_.size() && (in_brackets || (!is(end, ',') && !is(end, ';')))) {
      if (marked && is(end + 1, '=')) return end;
      marked = marked || is(end, '=');
      in_brackets = (in_brackets || is(end, '(')) && !is(end, ')');
      ++end;
    }
    return end;
  }

  /// The kind that is meant by the words from `begin` up to `end`: the last, or the intersection of
  /// others (`S0/S1 intersection`); nothing where nobody knows.
  const Token* kind_in(std::size_t begin, std::size_t end) const {
    const Token* found = nullptr;
    for (std::size_t i = begin; i < end; ++i) {
      const bool beats = !found || tokens_[i].says == "intersection";
      if (tokens_[i].is(Meaning::kind) && beats) found = &tokens_[i];
    }
    for (std::size_t i = begin; found && i < end; ++i) {
      const bool other = tokens_[i].is(Meaning::kind) && tokens_[i].says != found->says;
      if (other && found->says != "intersection") return nullptr;
    }
    return found;
  }

  /// The kind that `word` becomes for a noun of the trade, or for a line said to have two ends.
  std::optional<KindType> new_kind(std::string_view kind, std::size_t begin,
                                   std::size_t end) const {
    const KindType type = type_of(page_, kind);
    const std::string said = folded(typed(begin, end));
    const bool two_ends = said.find("two end") != std::string::npos ||
                          said.find("both ends") != std::string::npos ||
                          said.find("2 end") != std::string::npos;
    if (two_ends && type == KindType::line) return KindType::axis;
    return is_noun(kind) ? std::optional(type) : std::nullopt;
  }

  /// `word = meaning`: the kind may stand behind other words (`S1 = main cleavage`).
  std::optional<Own> marked_word(std::size_t mark, std::size_t end) const {
    const std::size_t meaning = mark + 1;
    Own own;
    own.word = typed(mark - 1, mark);
    if (meaning >= end || own.word.find(' ') != std::string_view::npos) return std::nullopt;
    // `fb = foliation (flow banding)`
    std::size_t bracket = meaning + 1;
    while (bracket < end && !is(bracket, '('))
      ++bracket;
    const Token* const kind =
        kind_in(meaning, bracket) ? kind_in(meaning, bracket) : kind_in(meaning, end);
    if (kind) {
      own.meaning = {Meaning::kind, kind->says};
      own.new_kind = new_kind(kind->says, meaning, end);
      return own;
    }
    if (has_kind(meaning, end) || is_order(meaning, end)) return std::nullopt;
    std::size_t closing = end - 1;
    while (closing > meaning && tokens_[closing].type == Type::mark)
      --closing;
    const std::string last = folded(tokens_[closing].text);
    if (last == "plane" || last == "line" || last == "axis") {
      own.new_kind = last == "plane"  ? KindType::plane
                     : last == "line" ? KindType::line
                                      : KindType::axis;
      return own;
    }
    // Another word for one that the page uses as the trade does: `yg = youngs`.
    own.meaning = {tokens_[meaning].meaning, tokens_[meaning].says};
    const bool renames =
        own.meaning.meaning != Meaning::unknown && own.meaning.meaning != Meaning::filler;
    const Token& word = tokens_[mark - 1];
    const bool is_setting = word.type == Type::word && word.meaning != Meaning::unknown &&
                            word.meaning != own.meaning.meaning;
    if (!renames || is_setting) return std::nullopt;
    return own;
  }

  /// `dip / dip direction`: the two parts of a pair.
  bool is_order(std::size_t begin, std::size_t end) const {
    return std::count_if(at(begin), at(end), [](const Token& token) {
             return token.is(Meaning::strike) || token.is(Meaning::dip) ||
                    token.is(Meaning::direction) || token.is(Meaning::trend) ||
                    token.is(Meaning::azimuth) || token.is(Meaning::plunge);
           }) > 1;
  }

  bool has_kind(std::size_t begin, std::size_t end) const {
    return std::any_of(at(begin), at(end),
                       [](const Token& token) { return token.is(Meaning::kind); });
  }
  Tokens::const_iterator at(std::size_t i) const {
    return tokens_.begin() + static_cast<std::ptrdiff_t>(i);
  }

  /// `joint sets`
  bool is_set(std::size_t i) const {
    const std::string word = folded(tokens_[i].text);
    return word == "set" || word == "sets";
  }

  /// `cl slaty cleavage`, `rc ripple crest (two ended)`: a short word, and in the page's heading
  /// words of which the last is a kind.
  std::optional<Own> plain_word(std::size_t begin, std::size_t end) const {
    constexpr std::size_t longest = 5;
    Own own;
    own.word = typed(begin, std::min(begin + 1, end));
    const bool is_short = begin < end && tokens_[begin].type == Type::word &&
                          own.word.size() <= longest &&
                          own.word.find(' ') == std::string_view::npos;
    if (!is_short || page_.in_station) return std::nullopt;
    std::size_t last = begin + 1;
    while (last < end && !is(last, '('))
      ++last;
    std::size_t closing = last;
    while (closing > begin + 1 && (is(closing - 1, '.') || is_set(closing - 1)))
      --closing;
    if (closing <= begin + 1 || !is(closing - 1, Meaning::kind)) return std::nullopt;
    const bool plain = std::all_of(at(begin + 1), at(closing), [](const Token& token) {
      return token.is(Meaning::kind) || token.is(Meaning::unknown) || token.is(Meaning::filler) ||
             token.is(Meaning::ordinal) || token.is('/');
    });
    if (!plain) return std::nullopt;
    own.meaning = {Meaning::kind, tokens_[closing - 1].says};
    own.new_kind = new_kind(own.meaning.says, last, end);
    return own;
  }

  void declare(const Own& own) {
    const std::string_view kept = *page_.kept.emplace(own.word).first;
    if (own.new_kind) {
      page_.words.add(kept, {Meaning::kind, kept});
      page_.own_kinds[std::string(kept)] = *own.new_kind;
      return state(fmt::format("kind {} {}", kept, word_of(*own.new_kind)));
    }
    page_.words.add(kept, own.meaning);
    // The language leaves the points of the compass what they are; the copy has the kind instead.
    const bool is_point = point_named(kept).has_value();
    if (own.meaning.meaning == Meaning::kind && kept != own.meaning.says && !is_point)
      return state(fmt::format("short {} {}", kept, own.meaning.says));
    state(fmt::format("note {}", kept));
    lines_.back().is_note = true;
  }

  Lines lines_;
};

}  // namespace

std::optional<Lines> own_words_of(std::string_view line, Tokens& tokens, Page& page) {
  return OwnWords(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
