// SPDX-License-Identifier: MIT
// Where a station is: its heading, position, height and time; landmarks.
#include <fmt/format.h>

#include <algorithm>

#include "asides.hpp"
#include "clock.hpp"
#include "page_line.hpp"
#include "positions.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class PlaceLine : PageLine {
 public:
  PlaceLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read(bool opens_block, bool stands_alone) {
    if (tokens_.empty()) return std::nullopt;
    const bool headed = take_heading();
    find_position();
    if (position_.empty()) find_faulty(headed);
    if (!headed && !name_place(opens_block, stands_alone)) return said_of_station();
    return heading();
  }

 private:
  /// `Stop 4`, `St. 31`, `Pt. 101`, `Loc 2`
  bool take_heading() {
    if (take_station_again()) return true;
    if (tokens_.front().is(Meaning::named)) return take_known_name();
    // `obs 11`: an observation, no observer.
    const bool observed = tokens_.front().is(Meaning::observer) && is_figure(1);
    if (!tokens_.front().is(Meaning::station) && !observed) return false;
    std::size_t i = 1;
    while (is(i, '.') || is(i, '#') || is(i, ':') || is(i, Meaning::label))
      ++i;
    if (i >= tokens_.size()) return false;
    std::size_t end = i + 1;
    const bool figure = tokens_[i].is_figure() && !tokens_[i].has_sign && !tokens_[i].is_degrees;
    const bool word =
        tokens_[i].type == Type::word && tokens_[i].text.find_first_of("0123456789") != npos;
    const bool letter = tokens_[i].type == Type::word && tokens_[i].end - tokens_[i].begin == 1;
    const bool point = tokens_[i].type == Type::point && tokens_[i].text.size() == 1;
    if (!figure && !word && !letter && !point) return false;
    // `14a`, `3-2`
    while (end < tokens_.size() && !tokens_[end].spaced && !is(end, ',') && !is(end, ':') &&
           !is(end, ';') && !is(end, '.') && !is(end, '('))
      ++end;
    // `Stop 1 to Stop 2`: a leg.
    if (is(end, Meaning::toward) || is(end, '>')) return false;
    const std::string_view id = stripped(typed(i, end));
    const std::string_view kept = tokens_.front().says;
    name_ = kept.empty() ? std::string(id) : fmt::format("{}-{}", kept, id);
    settle(0, end);
    return true;
  }

  /// `at 2 bedding 215/22`, where 2 is a station.
  bool take_station_again() {
    if (folded(tokens_.front().text) != "at" || tokens_.size() < 3) return false;
    const std::string name(typed(1, 2));
    const bool is_place = page_.is_station(name) || page_.leg_ends.contains(folded(name));
    const bool reads = is(2, Meaning::kind) || is(2, Meaning::named) || is(2, Meaning::sight) ||
                       is(2, ':') || is(2, Meaning::filler) || is(2, Meaning::ditto);
    if (!is_place || !reads) return false;
    name_ = name;
    settle(0, is(2, ':') ? 3 : 2);
    return true;
  }

  /// The first line of a block in a series, or `E4:` before what was read at another station.
  bool take_known_name() {
    const std::string name(tokens_.front().says);
    const bool is_leg_end = page_.leg_ends.contains(folded(name));
    const bool apart = is_leg_end && tokens_.size() > 1 && tokens_[1].type == Type::word &&
                       !is(1, Meaning::named) && tokens_[1].begin - tokens_[0].end >= 2;
    const bool leads =
        is(1, ':') || ((page_.series.contains(name) || apart) && !page_.is_station(name));
    const bool is_place = is_leg_end || page_.series.contains(name) || page_.is_station(name);
    if (!leads || !is_place || page_.is_here(name)) return false;
    if (is(1, Meaning::toward) || is(1, '>') || is(1, '-')) return false;
    name_ = name;
    settle(0, is(1, ':') ? 2 : 1);
    return true;
  }

  void find_position() {
    const auto found = position_on(line_, tokens_);
    if (!found) return;
    position_ = found->text;
    begin_ = found->begin;
    settle(found->begin, found->end);
    find_accuracy(found->end);
  }

  /// What was meant for a position, and is none.
  void find_faulty(bool headed) {
    if (has_reading_words()) return;
    const auto found = faulty_position_on(line_, tokens_, headed);
    if (!found) return;
    faulty_ = found->text;
    begin_ = found->begin;
    settle(found->begin, found->end);
  }

  void find_accuracy(std::size_t from) {
    for (std::size_t i = from; i + 1 < tokens_.size(); ++i) {
      const bool mark = tokens_[i].text == "±" || tokens_[i].is(Meaning::accuracy);
      std::size_t k = i + 1;
      while (is(k, ':') || is(k, '=') || is(k, '~') ||
             (k < tokens_.size() && tokens_[k].text == "±"))
        ++k;
      if (!mark || k >= tokens_.size() || !tokens_[k].is_figure()) continue;
      accuracy_ = tokens_[k].text;
      settle(i, is(k + 1, Meaning::metres) ? k + 2 : k + 1);
      return;
    }
  }

  /// A place without the word station: by its position, or a name that a leg goes to.
  bool name_place(bool opens_block, bool stands_alone) {
    const bool is_placed = !position_.empty() || !faulty_.empty();
    const std::size_t end = is_placed ? begin_ : name_end();
    // Behind the last sentence, or a word with a colon.
    std::size_t first = 0;
    for (std::size_t i = 0; i < end && is_placed; ++i) {
      const bool stop = is(i, ':') || is(i, ';') || (is(i, '.') && i + 1 < end);
      if (stop) first = i + 1;
    }
    const std::size_t from = first < tokens_.size() ? tokens_[first].begin : line_.size();
    const std::size_t until = end == tokens_.size() ? line_.size() : tokens_[end].begin;
    if (until <= from) return false;
    std::string_view name = stripped(line_.substr(from, until - from));
    for (const std::string_view mark : {"(", " - ", " – ", ",", "  ", " = "})
      name = stripped(name.substr(0, std::min(name.find(mark), name.size())));
    if (name.empty() || end == 0) return false;
    const bool leg_end = page_.leg_ends.contains(folded(name));
    if (!is_placed && is_like_last(first_words(name))) {
      name_ = first_words(name);
      settle(0, 2);
      return true;
    }
    if (!is_placed) {
      if (!opens_block || !(leg_end || has_time_behind(end))) return false;
      // A name and a time; a sentence is no name.
      if (!leg_end && std::ranges::count(name, ' ') > 1) return false;
    } else {
      if (page_.in_station && !opens_block && !leg_end && !is_like_last(name)) return false;
      is_landmark_ =
          !page_.in_station && stands_alone && !leg_end && !page_.series.contains(name_text(name));
    }
    name_ = name;
    settle(first, end);
    return true;
  }

  /// Named as the station before, with another number: `Corner 2` behind `Corner 1`, `w2`.
  bool is_like_last(std::string_view name) const {
    const auto letters = [](std::string_view text) {
      const std::size_t end = text.find_first_of("0123456789");
      return end == std::string_view::npos ? std::string() : folded(stripped(text.substr(0, end)));
    };
    // `face 002/80 W` is no `FACE 2`.
    const bool reads =
        position_.empty() && (is(2, '/') || is(2, '>') || is_figure(2) || is_point(2) ||
                              is(2, Meaning::vertical) || (is_figure(1) && tokens_[1].digits == 3));
    const std::string own = letters(name);
    return page_.in_station && !reads && tokens_.front().is(Meaning::unknown) && !own.empty() &&
           own == letters(page_.station) && folded(name) != folded(page_.station);
  }
  /// A word and its number.
  std::string_view first_words(std::string_view name) const {
    const bool two = tokens_.size() > 1 && tokens_[0].type == Type::word && tokens_[1].is_figure();
    return two ? stripped(typed(0, 2)) : name;
  }

  /// Where the words at the line's start end.
  std::size_t name_end() const {
    std::size_t i = 0;
    while (i < tokens_.size() && (tokens_[i].type == Type::word || is(i, '-')))
      ++i;
    return i;
  }
  bool has_time_behind(std::size_t i) const {
    if (i >= tokens_.size() || !tokens_[i].is_figure() || tokens_.front().is(Meaning::from))
      return false;
    const bool minutes = is(i + 1, ':') && i + 2 < tokens_.size() && tokens_[i + 2].is_figure() &&
                         !tokens_[i + 2].spaced;
    return is(i + 1, Meaning::clock) || minutes;
  }

  std::optional<Lines> heading() {
    Lines lines;
    add_datum(lines);
    Line& line = lines.emplace_back();
    line.text = fmt::format("{} {}", is_landmark_ ? "landmark" : "station", name_text(name_));
    if (!position_.empty()) {
      line.text += fmt::format("{}{}", is_landmark_ ? " " : " at ", position_);
      if (!accuracy_.empty()) line.text += " ±" + accuracy_;
    }
    if (is_landmark_) {
      page_.add_mark(name_);
      page_.below_landmark = true;
      if (const auto height = take_elevation(tokens_, true)) line.text += " elevation " + *height;
    } else {
      page_.begin_station(name_);
    }
    add_details(lines, true);
    add_faulty(lines);
    return lines;
  }

  /// Below a heading: position, height, time.
  std::optional<Lines> said_of_station() {
    Lines lines;
    if (position_.empty()) {
      if (faulty_.empty() && has_reading()) return std::nullopt;
      add_details(lines, !faulty_.empty());
      add_faulty(lines);
      if (lines.empty()) return std::nullopt;
      return lines;
    }
    add_datum(lines);
    std::string text = "at " + position_;
    if (!accuracy_.empty()) text += " ±" + accuracy_;
    lines.emplace_back().text = (page_.in_station ? "" : "ask ") + text;
    add_details(lines, true);
    return lines;
  }

  bool has_reading() const {
    return std::ranges::any_of(tokens_, [](const Token& token) {
      return token.type == Type::bearing || token.is(Meaning::kind) || token.is(Meaning::sight) ||
             token.is(Meaning::leg) || token.is(Meaning::paces);
    });
  }

  bool has_reading_words() const {
    return std::ranges::any_of(tokens_, [](const Token& token) {
      return token.is(Meaning::kind) || token.is(Meaning::sight) || token.is(Meaning::strike) ||
             token.is(Meaning::dip) || token.is('>') || token.is(Meaning::back);
    });
  }
  void add_faulty(Lines& lines) {
    if (faulty_.empty()) return;
    lines.emplace_back().text = fmt::format("ask at {}  ; no position as it stands", faulty_);
  }

  void add_datum(Lines& lines) {
    const auto datum = datum_on(tokens_);
    if (!datum) return;
    settle(datum->begin, datum->end);
    lines.emplace_back().text = "datum " + datum->text;
  }

  void add_details(Lines& lines, bool is_place) {
    const auto time = take_time(tokens_, is_place);
    if (time) lines.emplace_back().text = "time " + *time;
    if (const auto height = take_elevation(tokens_, is_place || time))
      lines.emplace_back().text = "elevation " + *height;
    if (lines.empty()) return;
    set_aside(tokens_, true);
    const std::string rest = unstated(line_, tokens_);
    const bool has_datum = lines.size() > 1 && lines.front().text.starts_with("datum ");
    if (!rest.empty()) lines[has_datum ? 1 : 0].text += "  ; " + rest;
  }

  std::string name_;
  bool is_landmark_ = false;
  std::string position_;
  std::string faulty_;  ///< what was meant for one
  std::string accuracy_;
  std::size_t begin_ = npos;  ///< of the position
};

}  // namespace

std::optional<Lines> place_of(std::string_view line, Tokens& tokens, Page& page, bool opens_block,
                              bool stands_alone) {
  return PlaceLine(line, tokens, page).read(opens_block, stands_alone);
}

}  // namespace lodebook::fair_copy
