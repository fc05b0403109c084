// SPDX-License-Identifier: MIT
// Lines of a heading in prose: dates, the dial and what was turned into it, declination, the rule,
// the order of pairs, the pace, words of the page's own.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <lodebook/orientation/decimal.hpp>

#include "asides.hpp"
#include "compass.hpp"
#include "dates.hpp"
#include "page_line.hpp"
#include "positions.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// What the two words of an order stand for: s (strike), d (dip), a (its direction), t (trend),
/// p (plunge); and the setting.
struct Order {
  std::string_view parts;
  std::string_view said;
  notebook::PlaneOrder planes = notebook::PlaneOrder::unstated;
  notebook::LineOrder lines = notebook::LineOrder::unstated;
};
constexpr Order orders[] = {
    {"sd", "strike/dip", notebook::PlaneOrder::strike_dip},
    {"ad", "direction/dip", notebook::PlaneOrder::direction_dip},
    {"da", "dip/direction", notebook::PlaneOrder::dip_direction},
    {"ds", "dip/strike"},  // the conventions of pairs have it apart
    {"tp", "trend/plunge", notebook::PlaneOrder::unstated, notebook::LineOrder::trend_plunge},
    {"pt", "plunge/trend", notebook::PlaneOrder::unstated, notebook::LineOrder::plunge_trend},
};

class SettingsLine : PageLine {
 public:
  SettingsLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    if (page_.in_station && has_reading()) return std::nullopt;
    if (auto own = own_words_of(line_, tokens_, page_)) {
      lines_ = *std::move(own);
      const bool is_all = std::ranges::all_of(tokens_, [](const Token& token) {
        return token.use != Token::Use::none || token.type == Type::mark;
      });
      if (is_all) return std::move(lines_);
    }
    read_day();
    for (Line& line : compass_of(line_, tokens_, page_))
      lines_.push_back(std::move(line));
    read_rule();
    read_orders();
    read_dial();
    read_pace();
    read_accuracy();
    read_names();
    if (lines_.empty()) return std::nullopt;
    // A figure that belongs to no setting: another setting may have been meant.
    set_aside(tokens_, false);
    const std::size_t left = first_unsettled(tokens_);
    if (left < tokens_.size() && tokens_[left].type != Type::point) {
      if (page_.in_station) return std::nullopt;
      if (page_.is_title) return std::move(lines_);
      Line& line = lines_.emplace_back();
      line.text = fmt::format("ask note {}  ; what is '{}'?", stripped(line_), tokens_[left].text);
    }
    return std::move(lines_);
  }

 private:
  void state(std::string text) { lines_.emplace_back().text = std::move(text); }

  /// At a station a kind with a figure, or a sight, is no heading.
  bool has_reading() const {
    return has(Meaning::kind) || has(Meaning::sight) || has(Meaning::leg);
  }

  void read_day() {
    const auto day = day_on(tokens_);
    if (!day) return;
    settle(day->begin, day->end);
    if (day->other.empty()) return state("date " + day->iso);
    state(fmt::format("ask date {}  ; or {}?", day->iso, day->other));
  }

  // ---- the others

  void read_rule() {
    std::string_view said;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!tokens_[i].is(Meaning::rule)) continue;
      if (!said.empty() && said != tokens_[i].says) return state("ask rule right  ; or left?");
      said = tokens_[i].says;
      settle(i, i + 1);
    }
    if (said.empty()) return;
    page_.conventions.rule = said == "right" ? HandRule::right : HandRule::left;
    state(fmt::format("rule {}", said));
  }

  /// What a word in an order of pairs stands for: s, d (a dip), a (its direction), t, p.
  char part_at(std::size_t i) const {
    if (is(i, Meaning::strike)) return 's';
    if (is(i, Meaning::dip)) return 'd';
    if (is(i, Meaning::direction)) return 'a';
    if (is(i, Meaning::trend)) return 't';
    if (is(i, Meaning::azimuth)) return 'z';
    if (is(i, Meaning::plunge)) return 'p';
    return ' ';
  }

  bool has_free_figure() const {
    return std::ranges::any_of(tokens_, [](const Token& token) {
      return token.use == Token::Use::none && (token.is_figure() || token.type == Type::bearing);
    });
  }

  /// Between the two parts of a pair in an order.
  bool joins_parts(std::size_t i) const {
    if (is(i, '/') || is(i, '-') || is(i, '>') || is(i, '@') || is(i, Meaning::together))
      return true;
    if (is(i, ',')) return is(0, Meaning::order) || !has_free_figure();
    const std::string word = folded(tokens_[i].text);
    return word == "then" || word == "first" || word == "followed" || word == "by" ||
           word == "at" || word == "1st";
  }

  void read_orders() {
    bool planes = false;
    bool lines = false;
    for (std::size_t i = 0; i + 2 < tokens_.size(); ++i) {
      if (part_at(i) == ' ') continue;
      const std::size_t other = other_part(i);
      if (other == npos) continue;
      char a = part_at(i);
      char b = part_at(other);
      if (a == 'z') a = b == 'p' ? 't' : 'a';
      if (b == 'z') b = a == 'p' ? 't' : 'a';
      const auto* const row =
          std::ranges::find(orders, std::string{a, b}, [](const Order& one) { return one.parts; });
      if (row == std::end(orders)) continue;
      bool& said = row->lines == notebook::LineOrder::unstated ? planes : lines;
      if (std::exchange(said, true)) continue;
      auto& stated = page_.conventions.order;
      if (row->planes != notebook::PlaneOrder::unstated) stated.planes = row->planes;
      if (row->lines != notebook::LineOrder::unstated) stated.lines = row->lines;
      page_.conventions.is_dip_strike = page_.conventions.is_dip_strike || row->parts == "ds";
      settle(i, other + 1);
      state(fmt::format("order {}", row->said));
    }
  }

  /// The second part of the pair whose first is at `i`: `dip direction first then dip`, `dip / dip
  /// direction`, `strike (0-360), dip`.
  std::size_t other_part(std::size_t i) const {
    constexpr std::size_t farthest = 4;
    std::size_t next = i + 1;
    std::size_t joins = 0;
    while (next < tokens_.size() && part_at(next) == ' ') {
      if (is(next, '(')) {
        while (next < tokens_.size() && !is(next, ')'))
          ++next;
      } else if (joins++ == farthest || !joins_parts(next)) {
        return npos;
      }
      ++next;
    }
    return joins > 0 && next < tokens_.size() ? next : npos;
  }

  void read_dial() {
    bool quadrant = has(Meaning::quadrant);
    // In an order of pairs an azimuth is a part of the pair.
    bool azimuth = std::ranges::any_of(tokens_, [](const Token& token) {
      return token.is(Meaning::azimuth) && token.use == Token::Use::none;
    });
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      // `0-360`, `360°`
      const bool whole = is_free_figure(i) && tokens_[i].digits == 3 &&
                         (tokens_[i].value == 360 || (tokens_[i].value == 180 && i >= 2 &&
                                                      is(i - 1, '-') && is_figure(i - 2)));
      if (!whole) continue;
      azimuth = true;
      settle(i, i + 1);
      if (i >= 2 && (is(i - 1, '-') || is(i - 1, Meaning::toward)) && is_figure(i - 2) &&
          tokens_[i - 2].value == 0)
        settle(i - 2, i);
    }
    if (quadrant && azimuth) return;
    if (quadrant) state("dial quadrant");
    if (!azimuth) return;
    if (page_.has_north_east) page_.words.take_azimuths();
    state("dial azimuth");
  }

  /// `my pace = .75 m`, `128 of my paces = 100 m`
  void read_pace() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (!is(i, Meaning::pace) && !is(i, Meaning::paces)) continue;
      const bool has_equals = has_mark('=') || is_equal(i + 1) || is(i + 1, Meaning::filler) ||
                              is(i + 1, ':') || is_figure(i + 1);
      std::size_t length = npos;
      std::size_t count = npos;
      for (std::size_t k = 0; k < tokens_.size(); ++k) {
        if (!is_free_figure(k)) continue;
        const bool is_length = is(k + 1, Meaning::metres) || is(k + 1, Meaning::feet) ||
                               (is(k + 1, Meaning::unit) && folded(tokens_[k + 1].text) == "cm");
        if (is_length && length == npos && k > i) {
          length = k;
        } else if (k < i && k + 5 > i) {
          count = k;
        }
      }
      if (length == npos || !has_equals || (is(i, Meaning::paces) && !is_equal(i + 1))) continue;
      double metres = tokens_[length].value;
      if (is(length + 1, Meaning::feet)) metres *= notebook::metres_per_foot;
      if (is(length + 1, Meaning::unit)) metres /= 100;
      const bool counted = count != npos && tokens_[count].value > 1;
      const bool whole = is(length + 1, Meaning::metres) || is(length + 1, Meaning::feet);
      if (!counted && whole) {
        state(fmt::format("pace {}{}", tokens_[length].text,
                          is(length + 1, Meaning::feet) ? "ft" : "m"));
      } else {
        state(fmt::format("pace {}m",
                          trimmed_text(counted ? metres / tokens_[count].value : metres, 5)));
      }
      settle(length, length + 2);
      if (count != npos) settle(count, count + 1);
      return;
    }
  }

  bool is_equal(std::size_t i) const {
    if (i >= tokens_.size()) return false;
    const std::string word = folded(tokens_[i].text);
    return is(i, '=') || word == "make" || word == "makes" || word == "is" || word == "are" ||
           word == "equals" || word == "equal";
  }
  bool has_mark(char mark) const {
    return std::ranges::any_of(tokens_, [&](const Token& token) { return token.is(mark); });
  }

  /// `accuracy bearings 1°, dips 2°`
  void read_accuracy() {
    if (!has(Meaning::accuracy)) return;
    std::string text = "accuracy";
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      const bool bearing = tokens_[i].is(Meaning::sight) || tokens_[i].text == "bearings" ||
                           tokens_[i].text == "bearing";
      const bool dip = tokens_[i].is(Meaning::dip);
      std::size_t k = i + 1;
      while (is(k, ':') || is(k, '=') || (k < tokens_.size() && tokens_[k].text == "±"))
        ++k;
      if ((!bearing && !dip) || !is_free_figure(k)) continue;
      text += fmt::format(" {} {}", bearing ? "bearing" : "dip", tokens_[k].text);
      std::erase_if(text, [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
      settle(i, k + 1);
    }
    if (text != "accuracy") state(text);
  }

  /// `Obs.: H. Wendlik`, `Area: north slope`, `WGS84`
  void read_names() {
    if (tokens_.empty()) return;
    const bool marked = is(1, ':') || is(1, '=');
    set_aside(tokens_, false);
    for (const auto& [meaning, word] :
         {std::pair{Meaning::observer, "observer"}, std::pair{Meaning::area, "area"}}) {
      if (!is(0, meaning) || is_figure(1)) continue;
      const std::size_t begin = marked ? 2 : 1;
      if (begin >= tokens_.size() || first_unsettled(tokens_) < tokens_.size()) return;
      std::size_t end = begin;
      while (end < tokens_.size() &&
             (meaning == Meaning::area || (!is(end, ',') && !is(end, ';') &&
                                           (end == begin || !ends_clause(line_, tokens_, end)))))
        ++end;
      state(fmt::format("{} {}", word, stripped(typed(begin, end))));
      settle(0, end);
      return;
    }
    // Beside a position it belongs to the place.
    const auto datum = position_on(line_, tokens_) ? std::nullopt : datum_on(tokens_);
    if (!datum || (page_.in_station && first_unsettled(tokens_) < tokens_.size())) return;
    settle(datum->begin, datum->end);
    state("datum " + datum->text);
  }

  Lines lines_;
};

}  // namespace

std::optional<Lines> settings_of(std::string_view line, Tokens& tokens, Page& page) {
  return SettingsLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
