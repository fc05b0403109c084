// SPDX-License-Identifier: MIT
#include "joins.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

class Joiner {
 public:
  Joiner(Tokens& tokens, const Words& words) : tokens_(tokens), words_(words) {}

  void join() {
    join_degrees();
    promote_small_points();
    join_bearings();
    join_phrases();
    join_denials();
    join_roughness();
  }

 private:
  /// `14 deg 30 min`; `200ish`; and figures with letters in them, which may be anything.
  void join_degrees() {
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      Token& figure = tokens_[i];
      const Token& next = tokens_[i + 1];
      if (!figure.is_figure() || next.type != Type::word) continue;
      const std::string word = folded(next.text);
      const bool degrees = word == "deg" || word == "degs" || word == "degrees" ||
                           word == "degree" || word == "grad";
      if (degrees) {
        figure.is_degrees = true;
      } else if (word == "ish" && !next.spaced) {
        figure.is_rough = true;
      } else {
        const bool known = words_.find(word).has_value();
        if (!next.spaced && !known && word != "th" && word != "x") figure.is_unclear = true;
        continue;
      }
      figure.end = next.end;
      tokens_.erase(tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      if (degrees) join_minutes(i);
    }
  }

  void join_minutes(std::size_t i) {
    if (i + 1 >= tokens_.size() || !tokens_[i + 1].is_figure()) return;
    const Token& minutes = tokens_[i + 1];
    if (minutes.value >= 60) return;
    if (minutes.is_minutes) {
      tokens_[i].text += fmt::format("°{}'", minutes.text);
      tokens_[i].value += minutes.value / 60;
      tokens_[i].end = minutes.end;
      tokens_.erase(tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      return;
    }
    if (i + 2 >= tokens_.size()) return;
    const std::string unit = folded(tokens_[i + 2].text);
    if (unit != "min" && unit != "mins" && unit != "minutes") return;
    tokens_[i].text += fmt::format("°{}'", minutes.text);
    tokens_[i].value += minutes.value / 60;
    tokens_[i].end = tokens_[i + 2].end;
    const auto first = tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1;
    tokens_.erase(first, first + 2);
  }

  /// `n82w`, `s 46 w`, `dips 34 to s`: a small letter is a point only where one must stand.
  void promote_small_points() {
    const auto is_small = [&](std::size_t i, std::string_view letters) {
      return i < tokens_.size() && tokens_[i].type == Type::word && tokens_[i].text.size() == 1 &&
             letters.find(tokens_[i].text[0]) != std::string_view::npos &&
             !words_.is_own(tokens_[i].text);
    };
    const auto says = [&](std::size_t i, std::string_view word) {
      return tokens_[i].type == Type::word && folded(tokens_[i].text) == word;
    };
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!is_small(i, "nsew")) continue;
      const bool bearing = is_small(i, "ns") && i + 2 < tokens_.size() &&
                           tokens_[i + 1].is_figure() &&
                           (is_small(i + 2, "ew") || is_letter_of(i + 2, "EW"));
      const bool side = i > 0 && (tokens_[i - 1].is_figure() || says(i - 1, "to") ||
                                  says(i - 1, "towards") || says(i - 1, "the"));
      if (!bearing && !side) continue;
      tokens_[i].type = Type::point;
      tokens_[i].text[0] = static_cast<char>(tokens_[i].text[0] - 'a' + 'A');
    }
  }

  bool is_close(std::size_t first, std::size_t second) const {
    return tokens_[second].begin - tokens_[first].end <= 1;
  }

  /// N or S, a figure, E or W: a bearing. Glued together also what cannot be one.
  void join_bearings() {
    Tokens joined;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const std::size_t length = bearing_at(i);
      if (length == 0) {
        joined.push_back(std::move(tokens_[i]));
        continue;
      }
      joined.push_back(bearing_of(i, length));
      i += length - 1;
    }
    tokens_ = std::move(joined);
  }

  bool is_letter_of(std::size_t i, std::string_view letters) const {
    return i < tokens_.size() && tokens_[i].type == Type::point &&
           tokens_[i].end - tokens_[i].begin == 1 &&
           letters.find(tokens_[i].text[0]) != std::string_view::npos;
  }

  std::size_t bearing_at(std::size_t i) const {
    if (i + 1 >= tokens_.size() || !tokens_[i + 1].is_figure() || tokens_[i + 1].is_percent ||
        tokens_[i + 1].has_sign || !is_close(i, i + 1))
      return 0;
    const bool glued = !tokens_[i + 1].spaced;
    const bool closed = is_close(i + 1, std::min(i + 2, tokens_.size() - 1));
    if (is_letter_of(i, "NS")) {
      if (closed && is_letter_of(i + 2, "EW")) return 3;
      // `N045`: the azimuth, as in France.
      if (glued && tokens_[i].text == "N" && tokens_[i + 1].digits == 3) return 2;
      return glued && tokens_[i + 1].digits <= 2 ? 2 : 0;
    }
    if (is_letter_of(i, "EW") && glued && is_letter_of(i + 2, "NS") && !tokens_[i + 2].spaced)
      return 3;
    return 0;
  }

  Token bearing_of(std::size_t i, std::size_t length) const {
    const Token& figure = tokens_[i + 1];
    Token bearing = figure;
    bearing.type = Type::bearing;
    bearing.begin = tokens_[i].begin;
    bearing.end = tokens_[i + length - 1].end;
    bearing.spaced = tokens_[i].spaced;
    // `N 125 E` on a page of azimuths, as in the Indies, is the azimuth from north by east.
    const bool whole_circle = length == 3 && words_.has_azimuths() && figure.digits == 3 &&
                              tokens_[i].text == "N" && tokens_[i + 2].text == "E";
    if ((length == 2 && figure.digits == 3) || whole_circle) {
      bearing.type = Type::figure;
      return bearing;
    }
    bearing.text = tokens_[i].text + figure.text + (length == 3 ? tokens_[i + 2].text : "");
    bearing.is_loose = figure.spaced && length == 3 && tokens_[i + 2].spaced;
    const bool ordered = length == 3 && is_letter_of(i, "NS");
    bearing.is_faulty = !ordered || figure.value > 90 || figure.is_unclear;
    if (bearing.is_faulty) return bearing;
    const bool north = tokens_[i].text == "N";
    const bool east = tokens_[i + 2].text == "E";
    bearing.value = north == east ? figure.value : -figure.value;
    if (!north) bearing.value += 180;
    if (bearing.value < 0) bearing.value += 360;
    return bearing;
  }

  /// Words that make a phrase of the trade become one; the longest phrase counts.
  void join_phrases() {
    Tokens joined;
    for (std::size_t i = 0; i < tokens_.size();) {
      const std::size_t length = phrase_at(i);
      Token token = std::move(tokens_[i]);
      for (std::size_t k = 1; k < length; ++k)
        token.end = tokens_[i + k].end;
      i += std::max<std::size_t>(length, 1);
      // The point of an abbreviation belongs to it.
      if (token.type == Type::word && i < tokens_.size() && tokens_[i].is('.') &&
          !tokens_[i].spaced)
        token.end = tokens_[i++].end;
      joined.push_back(std::move(token));
    }
    tokens_ = std::move(joined);
  }

  /// Tokens of the phrase at `i`, which learns its meaning; 0 for none.
  std::size_t phrase_at(std::size_t i) {
    std::string phrase;
    std::size_t words = 0;
    std::size_t found = 0;
    Word meaning;
    for (std::size_t k = i; k < tokens_.size() && words < Words::longest; ++k) {
      const Token& token = tokens_[k];
      if (token.is(Meaning::named)) break;
      const bool joins = token.is('-') || token.is('.');
      if (joins && k > i && !token.spaced) continue;
      const bool may_stand = token.type == Type::word || token.type == Type::point ||
                             (k == i && token.type == Type::mark && !folded(token.text).empty());
      if (!may_stand) break;
      if (!phrase.empty()) phrase += ' ';
      phrase += folded(token.text);
      ++words;
      // A capital letter alone is somebody's name for something.
      const bool is_letter =
          words == 1 && token.text.size() == 1 && token.text[0] >= 'A' && token.text[0] <= 'Z';
      const bool is_point =
          words == 1 && (token.type == Type::point || (is_letter && !words_.is_own(token.text)));
      if (const auto known = words_.find(phrase); known && !is_point) {
        meaning = *known;
        found = k - i + 1;
      }
    }
    if (found == 0) return 0;
    tokens_[i].type = Type::word;
    tokens_[i].meaning = meaning.meaning;
    tokens_[i].says = meaning.says;
    return found;
  }

  /// `no striae`, `no doubt`: what is not there.
  void join_denials() {
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      Token& no = tokens_[i];
      if (!no.is(Meaning::contrary) || folded(no.text) != "no") continue;
      const Token& next = tokens_[i + 1];
      const bool is_thing = next.is(Meaning::unknown) || next.is(Meaning::kind) ||
                            next.is(Meaning::direction) || next.is(Meaning::doubt);
      if (!is_thing) continue;
      no.meaning = Meaning::which;
      no.end = next.end;
      tokens_.erase(tokens_.begin() + static_cast<std::ptrdiff_t>(i) + 1);
    }
  }

  /// `~` or `ca.` belongs to the figure behind it.
  void join_roughness() {
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      Token& next = tokens_[i + 1];
      const bool glued = i > 0 && !tokens_[i].spaced && tokens_[i - 1].is_figure();
      if (!tokens_[i].is(Meaning::rough) || glued ||
          (!next.is_figure() && next.type != Type::bearing))
        continue;
      next.is_rough = true;
      next.is_about = tokens_[i].text != "~";
      next.begin = tokens_[i].begin;
      next.spaced = tokens_[i].spaced;
      tokens_.erase(tokens_.begin() + static_cast<std::ptrdiff_t>(i));
    }
  }

  Tokens& tokens_;
  const Words& words_;
};

}  // namespace

void join_tokens(Tokens& tokens, const Words& words) {
  Joiner(tokens, words).join();
}

}  // namespace lodebook::fair_copy
