// SPDX-License-Identifier: MIT
// Sights and legs, as people write them: the name and a bearing, a bearing and a distance.
#include <fmt/format.h>

#include <algorithm>

#include <lodebook/orientation/decimal.hpp>

#include "asides.hpp"
#include "page.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

constexpr std::size_t npos = static_cast<std::size_t>(-1);

/// A sight or a leg that is being read.
struct Ray {
  std::string target;
  std::string from;
  std::string bearing;
  std::string back;
  std::string vertical;
  std::string distance;
  bool south_end = false;
  bool doubtful = false;
  bool is_known = true;
  std::string own_north;
};

class BearingLine {
 public:
  BearingLine(std::string_view line, Tokens& tokens, Page& page)
      : line_(line), tokens_(tokens), page_(page) {}

  std::optional<Lines> read() {
    settle_vertical_angles();
    if (std::ranges::any_of(tokens_, is_of_attitude)) return std::nullopt;
    if (tokens_.empty()) return std::nullopt;
    const bool leg = leg_ = is_leg();
    set_aside(tokens_, leg);
    if (has_pair(leg)) return std::nullopt;
    at_ = 0;
    if (tokens_.front().is(Meaning::ditto) && !page_.last_leg.empty()) return same_leg();
    if (leg) take_pair_of_stations();
    while (at_ < tokens_.size())
      step(leg);
    close();
    if (rays_.empty()) return std::nullopt;
    if (!says_sight_ && !leg &&
        std::ranges::none_of(rays_, [](const Ray& ray) { return ray.is_known; }) &&
        page_.marks.empty() && !page_.kind.empty())
      return std::nullopt;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].use == Use::none &&
          (tokens_[i].is(Meaning::either) || tokens_[i].is(Meaning::contrary) ||
           tokens_[i].is(Meaning::from)))
        ask(fmt::format("'{}': what is meant?", tokens_[i].text));
    }
    if (const std::size_t left = first_unsettled(tokens_); left < tokens_.size())
      ask(fmt::format("what is '{}'?", tokens_[left].text));
    return lines(leg);
  }

 private:
  /// `N44E vertical 3`: behind a bearing, and before a short figure without a unit, it is an angle.
  void settle_vertical_angles() {
    for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
      const bool angle = is_figure(i + 1) && tokens_[i + 1].digits <= 2 && !is_length(i + 1) &&
                         !is(i + 2, Meaning::unit);
      if (is(i, Meaning::vertical) && tokens_[i - 1].type == Type::bearing && angle)
        tokens_[i].meaning = Meaning::slope;
    }
  }
  /// A word that only an attitude has.
  static bool is_of_attitude(const Token& token) {
    if (token.type != Type::word || token.use != Use::none) return false;
    switch (token.meaning) {
      case Meaning::kind:
      case Meaning::strike:
      case Meaning::dip:
      case Meaning::direction:
      case Meaning::trend:
      case Meaning::plunge:
      case Meaning::rake:
      case Meaning::youngs:
      case Meaning::facing:
      case Meaning::sense:
      case Meaning::vertical:
        return true;
      default:
        return false;
    }
  }
  const Token& here() const { return tokens_[at_]; }
  bool is(std::size_t i, Meaning meaning) const {
    return i < tokens_.size() && tokens_[i].is(meaning);
  }
  bool is(std::size_t i, char mark) const { return i < tokens_.size() && tokens_[i].is(mark); }
  bool is_free(std::size_t i) const { return i < tokens_.size() && tokens_[i].use == Use::none; }
  bool is_figure(std::size_t i) const { return is_free(i) && tokens_[i].is_figure(); }
  bool is_bearing(std::size_t i) const {
    return is_free(i) && (tokens_[i].type == Type::bearing || tokens_[i].type == Type::point ||
                          tokens_[i].is_figure());
  }
  void take(std::size_t count = 1) {
    for (; count > 0 && at_ < tokens_.size(); --count)
      tokens_[at_++].use = Use::stated;
  }
  void ask(std::string why) {
    if (question_.empty()) question_ = std::move(why);
  }
  bool is_length(std::size_t i) const {
    return is_figure(i) && (is(i + 1, Meaning::metres) || is(i + 1, Meaning::feet) ||
                            is(i + 1, Meaning::paces) || tokens_[i].is_minutes);
  }

  /// A bearing and a length on a line without a kind.
  bool is_leg() const {
    bool length = false;
    bool bearing = false;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (is_length(i)) {
        length = true;
        ++i;
      } else if (is_bearing(i)) {
        bearing = true;
      }
    }
    return length && bearing;
  }

  /// `152/34`, `35 > 120`: an attitude.
  bool has_pair(bool leg) const {
    for (std::size_t i = 1; i + 1 < tokens_.size(); ++i) {
      const bool joins = is(i, '/') || is(i, '>');
      if (joins && is_free(i - 1) && is_free(i + 1) && tokens_[i - 1].is_figure() &&
          tokens_[i + 1].is_figure())
        return true;
    }
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      // `N24W 62`, `130 8 NE`: a sight has no second figure right behind its bearing.
      const bool bearing =
          is_free(i) && (tokens_[i].type == Type::bearing || tokens_[i].is_figure());
      const bool figure =
          is_figure(i + 1) && !tokens_[i + 1].has_sign && !tokens_[i + 1].is_percent;
      if (!bearing || !figure) continue;
      const bool side =
          i + 2 < tokens_.size() && tokens_[i + 2].type == Type::point && is_free(i + 2);
      if (leg ? side && !is_length(i + 1) : true) return true;
    }
    return false;
  }

  Ray& ray() {
    if (!is_open_) {
      Ray& added = rays_.emplace_back();
      added.target = target_;
      added.is_known = target_known_;
      added.from = from_;
      is_open_ = true;
    }
    return rays_.back();
  }
  void close() {
    if (is_open_ && rays_.back().bearing.empty() && rays_.back().back.empty()) rays_.pop_back();
    is_open_ = false;
  }

  void step(bool leg) {
    if (here().use != Use::none) {
      ++at_;
      return;
    }
    if (take_from() || take_mark(leg) || take_back() || take_slope(leg)) return;
    if (leg && is_length(at_)) return take_length();
    if (here().is(Meaning::south_end)) {
      ray().south_end = true;
      return take();
    }
    if (here().is(Meaning::north_of) && is_open_ && !rays_.back().bearing.empty()) {
      rays_.back().own_north = here().says;
      return take();
    }
    if (here().is(Meaning::doubt) || here().is(Meaning::rough)) {
      if (!rays_.empty()) rays_.back().doubtful = true;
      doubtful_ahead_ = rays_.empty();
      return take();
    }
    if (here().is(Meaning::sight) || here().is(Meaning::leg)) {
      says_sight_ = says_sight_ || here().is(Meaning::sight);
      says_leg_ = says_leg_ || here().is(Meaning::leg);
      return take();
    }
    if (is_bearing(at_)) return take_bearing(leg);
    if (here().is(';')) close();
    ++at_;
  }

  /// The name of a station, with the word before it where that belongs to it (`Peg 611`).
  std::string name_behind(std::size_t first, std::size_t end) const {
    const std::string name = page_.full_name(stripped(typed(line_, tokens_, first, end)));
    const bool kept =
        first > 0 && is(first - 1, Meaning::station) && !tokens_[first - 1].says.empty();
    return kept ? fmt::format("{}-{}", tokens_[first - 1].says, name) : name;
  }

  /// `30 - 31`, `C1 to C2`: a leg's two ends.
  void take_pair_of_stations() {
    const auto is_name = [&](std::size_t i) {
      if (i < tokens_.size() && tokens_[i].type == Type::point && tokens_[i].text.size() == 1)
        return true;
      return i < tokens_.size() && !is_length(i) &&
             ((tokens_[i].is_figure() && tokens_[i].decimals == 0) ||
              (tokens_[i].type == Type::word && tokens_[i].meaning == Meaning::unknown));
    };
    // `Peg 611 to peg 612`
    const std::size_t bullet = is(0, '-') ? 1 : 0;
    const std::size_t start = bullet + (is(bullet, Meaning::station) ? 1 : 0);
    std::size_t middle = start + 1;
    while (middle < tokens_.size() && !tokens_[middle].spaced && !is(middle, '-'))
      ++middle;
    const std::size_t other = is(middle + 1, Meaning::station) ? middle + 2 : middle + 1;
    const std::string station =
        page_.full_name(stripped(typed(line_, tokens_, start, std::min(middle, tokens_.size()))));
    const auto is_id = [&](std::size_t i) {
      return is_name(i) && (tokens_[i].end - tokens_[i].begin <= 2 ||
                            tokens_[i].text.find_first_of("0123456789") != npos);
    };
    if (is_name(start) && is(middle, Meaning::toward) && page_.is_station(station) &&
        !is_id(other)) {
      // `D to the gate`
      if (!page_.is_here(station)) {
        ask(fmt::format("from {}: at its own station", station));
        from_ = station;
      }
      return take(middle);
    }
    if (!is_name(start) || !(is(middle, '-') || is(middle, Meaning::toward) || is(middle, '>')) ||
        !is_name(other))
      return;
    std::size_t end = other + 1;
    while (end < tokens_.size() && !tokens_[end].spaced && !is(end, ':'))
      ++end;
    // A bearing must follow.
    const std::string first = name_behind(start, middle);
    const std::string second = name_behind(other, end);
    if (page_.is_here(second)) {
      from_ = first;
      to_here_ = true;
    } else {
      target_ = second;
      if (!page_.is_here(first)) {
        if (page_.is_station(first)) ask(fmt::format("from {}: at its own station", first));
        opens_station_ = first;
      }
    }
    says_leg_ = true;
    take(end);
    if (is(at_, ':')) ++at_;
  }

  /// `ditto, second taping 64.3 m`: the leg above with another length.
  std::optional<Lines> same_leg() const {
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      if (!tokens_[i].is_figure() ||
          !(is(i + 1, Meaning::metres) || is(i + 1, Meaning::feet) || is(i + 1, Meaning::paces)))
        continue;
      std::string text = page_.last_leg;
      const std::size_t begin = text.find(' ', text.find(' ') + 1) + 1;
      const std::size_t end = text.find(' ', begin);
      const std::string_view unit = is(i + 1, Meaning::metres) ? "m"
                                    : is(i + 1, Meaning::feet) ? "ft"
                                                               : " paces";
      text.replace(begin, end == std::string_view::npos ? end : end - begin,
                   fmt::format("{}{}", tokens_[i].text, unit));
      Lines lines;
      lines.emplace_back().text = fmt::format("ask {}  ; the same leg again?", text);
      lines.back().readings = 1;
      return lines;
    }
    return std::nullopt;
  }

  /// `from 14`, `from Stop 2`
  bool take_from() {
    if (!here().is(Meaning::from)) return false;
    std::size_t k = at_ + 1;
    std::size_t name = npos;
    if (is(k, Meaning::station)) {
      name = k + 1;
      while (is(name, '.'))
        ++name;
    } else if (k < tokens_.size() && (tokens_[k].is_figure() || tokens_[k].type == Type::word)) {
      name = k;
    }
    if (name == npos || name >= tokens_.size()) return false;
    const std::string text = page_.full_name(stripped(typed(line_, tokens_, name, name + 1)));
    if (!page_.is_station(text)) return false;
    from_ = text;
    says_leg_ = true;
    take(name + 1 - at_);
    if (is(at_, ':')) ++at_;
    return true;
  }

  /// The longest mark or station name that starts here; in a leg, any words behind `to`.
  bool take_mark(bool leg) {
    const bool untold = is_open_ && rays_.back().target.empty();
    if (is(at_, Meaning::toward) && (leg || untold)) {
      if (take_end()) return true;
    }
    std::size_t length = 0;
    const Mark* found = nullptr;
    for (const Mark& mark : page_.marks) {
      const std::size_t matched = matches(mark);
      if (matched > length) {
        length = matched;
        found = &mark;
      } else if (matched > 0 && matched == length && found && found->name != mark.name) {
        found = nullptr;
      }
    }
    if (!found) return false;
    close();
    target_ = found->name;
    target_known_ = found->is_known || says_sight_;
    take(length);
    return true;
  }

  /// Tokens that name the mark: all its words, or one of them.
  std::size_t matches(const Mark& mark) const {
    std::size_t best = 0;
    for (std::size_t first = 0; first < mark.words.size(); ++first) {
      std::size_t k = at_;
      std::size_t word = first;
      while (word < mark.words.size() && k < tokens_.size() && tokens_[k].type == Type::word &&
             folded(tokens_[k].text) == mark.words[word]) {
        ++word;
        ++k;
      }
      const bool whole = word - first == mark.words.size();
      const bool telling = word > first && mark.words[first].size() > 2;
      if (whole || telling) best = std::max(best, k - at_);
    }
    return best;
  }

  /// `to R4`, `to the sign post`, `to here`
  bool take_end() {
    std::size_t k = at_ + 1;
    if (k >= tokens_.size()) return false;
    if (folded(tokens_[k].text) == "here" || folded(tokens_[k].text) == "this") {
      to_here_ = true;
      says_leg_ = true;
      take(k + 1 - at_);
      return true;
    }
    if (is(k, Meaning::filler)) ++k;
    if (is(k, Meaning::station)) ++k;
    std::size_t end = k;
    while (end < tokens_.size() && is_free(end) &&
           (tokens_[end].type == Type::word ||
            (end == k && tokens_[end].is_figure() && !is_length(end))) &&
           !is(end, Meaning::back) && !is(end, Meaning::up) && !is(end, Meaning::down) &&
           !is(end, Meaning::level) && !is(end, Meaning::leg) && !is(end, Meaning::doubt))
      ++end;
    if (end == k) return false;
    says_leg_ = leg_;
    target_ = std::string(stripped(typed(line_, tokens_, k, end)));
    target_ = page_.full_name(target_);
    if (is_open_) rays_.back().target = target_;
    if (!leg_) {
      page_.add_mark(target_);
      target_.clear();
    }
    target_known_ = true;
    take(end - at_);
    return true;
  }

  bool take_back() {
    if (!here().is(Meaning::back)) return false;
    std::size_t k = at_ + 1;
    while (is(k, ':') || is(k, '=') || is(k, Meaning::sight))
      ++k;
    if (!is_bearing(k)) return false;
    ray().back = bearing_text(k);
    take(k + 1 - at_);
    return true;
  }

  /// `up 6%`, `down 4`, `+9`, `flat`
  bool take_slope(bool leg) {
    if (here().is(Meaning::slope)) {
      take();
      if (at_ < tokens_.size() && is_figure(at_) && is_open_ && rays_.back().vertical.empty()) {
        rays_.back().vertical = here().text;
        take();
      }
      return true;
    }
    const bool words = here().is(Meaning::up) || here().is(Meaning::down);
    if (words && is_figure(at_ + 1)) {
      const std::string_view sign = here().is(Meaning::down) ? "-" : "";
      ray().vertical = fmt::format("{}{}", sign, tokens_[at_ + 1].text);
      take(2);
      return true;
    }
    if (is_figure(at_) && here().has_sign && is_open_) {
      if (!rays_.back().vertical.empty()) return false;
      rays_.back().vertical = here().text;
      take();
      return true;
    }
    const bool flat = here().is(Meaning::level) || (leg && here().is(Meaning::horizontal));
    if (flat && is_open_) {
      rays_.back().vertical = std::string(1, '0');
      take();
      return true;
    }
    return false;
  }

  void take_length() {
    const Token& unit = tokens_[std::min(at_ + 1, tokens_.size() - 1)];
    const bool marked = here().is_minutes;
    Ray& now = ray();
    std::string length = here().text;
    const bool range =
        at_ >= 2 && is_figure(at_ - 2) && (is(at_ - 1, Meaning::toward) || is(at_ - 1, '-'));
    if (range) {
      tokens_[at_ - 2].use = tokens_[at_ - 1].use = Use::stated;
      ask(fmt::format("{} to {} is a range: its middle?", tokens_[at_ - 2].text, here().text));
      length = trimmed_text((tokens_[at_ - 2].value + here().value) / 2, 2);
    }
    if (!now.distance.empty()) {
      ask(fmt::format("which distance, {} or {}?", now.distance, here().text));
    } else {
      now.distance = length;
      says_leg_ = says_leg_ || unit.is(Meaning::paces);
      now.distance += marked || unit.is(Meaning::feet) ? "ft"
                      : unit.is(Meaning::metres)       ? "m"
                                                       : " paces";
    }
    if (here().is_rough) now.doubtful = true;
    take(marked ? 1 : 2);
  }

  void take_bearing(bool leg) {
    // A second bearing of a mark without a word for it: read again.
    const bool is_done = is_open_ && !rays_.back().bearing.empty();
    if (is_done) {
      if (leg) {
        ++at_;  // left for the question, or the start of a range
        return;
      }
      close();
    }
    const bool has_words =
        (is_done || !rays_.empty()) && at_ > 0 && tokens_[at_ - 1].use == Use::none &&
        (tokens_[at_ - 1].is(Meaning::unknown) || tokens_[at_ - 1].is(Meaning::place));
    if (!leg && (target_.empty() || has_words) && !words_for_target() && target_.empty() &&
        !says_sight_) {
      ++at_;
      return;
    }
    const Token& token = here();
    if (token.is_faulty) ask(fmt::format("'{}' is no bearing", token.text));
    if (token.is_figure() && token.digits > 3) ask(fmt::format("what is '{}'?", token.text));
    if (token.is_figure() && token.value > 360) ask(fmt::format("{} is over 360", token.text));
    if (token.is_unclear || token.is_percent) ask(fmt::format("what is '{}'?", token.text));
    const std::string text = bearing_text(at_);
    ray().bearing = text;
    if (token.is_rough) rays_.back().doubtful = true;
    if (std::exchange(doubtful_ahead_, false)) rays_.back().doubtful = true;
    take();
  }

  std::string bearing_text(std::size_t i) const {
    std::string text = tokens_[i].text;
    if (tokens_[i].is_figure() && tokens_[i].digits < 3)
      text.insert(0, 3u - tokens_[i].digits, '0');
    return text;
  }

  /// The words before a bearing as the name of something nobody has declared.
  bool words_for_target() {
    std::size_t first = at_;
    while (first > 0 && tokens_[first - 1].use == Use::none &&
           (tokens_[first - 1].is(Meaning::unknown) || tokens_[first - 1].is(Meaning::place) ||
            tokens_[first - 1].is(Meaning::filler) || tokens_[first - 1].is(Meaning::toward) ||
            tokens_[first - 1].is(Meaning::sight)))
      --first;
    while (first < at_ &&
           (is(first, Meaning::toward) || is(first, Meaning::filler) || is(first, Meaning::sight)))
      ++first;
    // Beside an unknown name only what can be nothing else.
    const bool plain =
        tokens_[at_].is_figure() && tokens_[at_].digits < 3 && !says_sight_ && rays_.empty();
    if (first == at_ || plain) return false;
    target_ = std::string(stripped(typed(line_, tokens_, first, at_)));
    target_known_ = says_sight_;
    for (std::size_t i = first; i < at_; ++i)
      tokens_[i].use = Use::stated;
    page_.add_mark(target_, says_sight_);
    return true;
  }

  Lines lines(bool leg) {
    Lines lines;
    if (!opens_station_.empty() && question_.empty()) {
      lines.emplace_back().text = "station " + name_text(opens_station_);
      page_.begin_station(opens_station_);
    }
    const std::string remark = unstated(line_, tokens_);
    for (Ray& ray : rays_) {
      Line& line = lines.emplace_back();
      const bool is_leg = leg && !ray.distance.empty();
      std::string question = question_;
      if (ray.target.empty() && !is_leg) {
        if (question.empty()) question = "to what?";
        ray.target = "mark";
      }
      if (question.empty() && !is_leg && !ray.is_known)
        question = fmt::format("is '{}' a landmark?", ray.target);
      if (question.empty() && is_leg && !says_leg_ && page_.last_leg.empty())
        question = "is this a leg?";
      const bool two_ends = is_leg && !ray.from.empty() && !page_.is_here(ray.from) &&
                            !ray.target.empty() && !to_here_;
      if (question.empty() && two_ends)
        question = fmt::format("from {} to {}: at which of them is this?", ray.from, ray.target);
      if (question.empty() && leg && !is_leg) question = "a leg needs its distance";
      if (question.empty() && !page_.in_station && ray.from.empty())
        question = "read at which station?";
      if (!question.empty()) line.text = "ask ";
      const std::string said = is_leg ? leg_text(ray) : sight_text(ray);
      if (is_leg) page_.last_leg = said;
      line.text += said;
      if (ray.south_end) line.text += " south-end";
      if (ray.doubtful) line.text += " doubtful";
      if (!question.empty()) {
        line.text += "  ; " + question;
      } else if (&ray == &rays_.back() && !remark.empty()) {
        line.text += "  ; " + remark;
      }
      line.readings = 1;
    }
    return lines;
  }

  std::string leg_text(const Ray& ray) {
    std::string text = "leg ";
    if (!ray.from.empty() && folded(ray.from) != folded(page_.station))
      text += fmt::format("from {} ", name_text(ray.from));
    text += fmt::format("{} {}", ray.bearing, ray.distance);
    if (!ray.vertical.empty()) text += " slope " + ray.vertical;
    if (!ray.back.empty()) text += " back " + ray.back;
    if (!ray.target.empty() && !to_here_ && (ray.from.empty() || page_.is_here(ray.from))) {
      text += " to " + name_text(ray.target);
      page_.leg_ends.insert(folded(ray.target));
    }
    return text;
  }

  std::string sight_text(const Ray& ray) const {
    std::string text = fmt::format("sight {}", name_text(ray.target));
    if (!ray.bearing.empty()) text += " " + ray.bearing;
    if (!ray.own_north.empty()) text += " " + ray.own_north;
    if (!ray.from.empty() && folded(ray.from) != folded(page_.station))
      text += fmt::format(" from {}", name_text(ray.from));
    if (!ray.back.empty()) text += " back " + ray.back;
    if (!ray.vertical.empty()) text += " vertical " + ray.vertical;
    return text;
  }

  std::string_view line_;
  Tokens& tokens_;
  Page& page_;
  std::size_t at_ = 0;
  std::vector<Ray> rays_;
  std::string target_;
  std::string from_;
  std::string question_;
  std::string opens_station_;  ///< where the leg begins, if that is not here
  bool target_known_ = true;
  bool is_open_ = false;
  bool says_sight_ = false;
  bool says_leg_ = false;
  bool leg_ = false;
  bool to_here_ = false;
  bool doubtful_ahead_ = false;
};

}  // namespace

std::optional<Lines> bearings_of(std::string_view line, Tokens& tokens, Page& page) {
  return BearingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
