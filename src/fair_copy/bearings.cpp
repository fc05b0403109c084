// SPDX-License-Identifier: MIT
// Sights and legs, as people write them: the name and a bearing, a bearing and a distance.
#include <fmt/format.h>

#include <algorithm>

#include <lodebook/orientation/decimal.hpp>

#include "asides.hpp"
#include "bearing_signs.hpp"
#include "names.hpp"
#include "page_line.hpp"
#include "places.hpp"
#include "rays.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class BearingLine : PageLine {
 public:
  BearingLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    if (tokens_.empty()) return std::nullopt;
    const bool leg = found_.is_leg = signs_.is_leg();
    if (leg) names_.free_ends_of_leg();
    signs_.settle_vertical_angles();
    if (signs_.has_attitude(leg)) return std::nullopt;
    set_aside(tokens_, leg);
    if (!(leg && names_.ends_of_leg()) && signs_.has_pair(leg)) return std::nullopt;
    names_.free_stations();
    at_ = 0;
    if (tokens_.front().is(Meaning::ditto) && !page_.last_leg.empty())
      return same_leg(page_.last_leg, tokens_);
    if (leg) take_ends();
    while (at_ < tokens_.size())
      step(leg);
    close();
    if (found_.rays.empty()) return std::nullopt;
    if (!says_sight_ && !leg &&
        std::ranges::none_of(found_.rays, [](const Ray& ray) { return ray.is_known; }) &&
        page_.marks.empty() && !page_.kind.empty())
      return std::nullopt;
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].use == Use::none &&
          (tokens_[i].is(Meaning::either) || tokens_[i].is(Meaning::contrary) ||
           tokens_[i].is(Meaning::from) || tokens_[i].is(Meaning::back) ||
           (tokens_[i].is(Meaning::toward) && i + 1 == tokens_.size())))
        ask(fmt::format("'{}': what is meant?", tokens_[i].text));
    }
    if (const std::size_t left = first_unsettled(tokens_); left < tokens_.size())
      ask(fmt::format("what is '{}'?", tokens_[left].text));
    if (found_.to_here && page_.is_here(from_))
      ask(fmt::format("from {} to here: at which of them is this?", from_));
    found_.question = std::move(question_);
    return stated(std::move(found_), unstated(line_, tokens_), page_);
  }

 private:
  Ray& ray() {
    if (!is_open_) {
      Ray& added = found_.rays.emplace_back();
      added.target = target_;
      added.is_known = target_known_;
      added.from = from_;
      is_open_ = true;
    }
    return found_.rays.back();
  }
  void close() {
    if (is_open_ && found_.rays.back().bearing.empty() && found_.rays.back().back.empty())
      found_.rays.pop_back();
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
      // `off the south end of the needle`
      std::size_t first = at_;
      while (first > 0 && (is(first - 1, Meaning::filler) || is(first - 1, Meaning::from)))
        --first;
      settle(first, at_);
      ray().south_end = true;
      return take();
    }
    if (here().is(Meaning::north_of) && is_open_ && !found_.rays.back().bearing.empty()) {
      found_.rays.back().own_north = here().says;
      return take();
    }
    if (here().is(Meaning::rough) && !found_.rays.empty()) {
      found_.rays.back().about = true;
      return take();
    }
    if (here().is(Meaning::doubt) || here().is(Meaning::rough)) {
      if (!found_.rays.empty()) found_.rays.back().doubtful = true;
      doubtful_ahead_ = found_.rays.empty();
      return take();
    }
    if (here().is(Meaning::sight) || here().is(Meaning::leg)) {
      says_sight_ = says_sight_ || here().is(Meaning::sight);
      found_.says_leg = found_.says_leg || here().is(Meaning::leg);
      return take();
    }
    if (is_bearing(at_)) return take_bearing(leg);
    if (here().is(';')) close();
    ++at_;
  }

  /// `30 - 31`, `C1 to C2`, `D to the gate`: a leg's two ends, or its start.
  void take_ends() {
    const auto ends = names_.ends_of_leg();
    if (!ends) return;
    const bool is_start = ends->second.empty();
    if (!is_start && page_.is_here(ends->second)) {
      from_ = ends->first;
      found_.to_here = true;
    } else if (!page_.is_here(ends->first)) {
      if (page_.is_station(ends->first))
        ask(fmt::format("from {}: at its own station", ends->first));
      (is_start ? from_ : found_.opens_station) = ends->first;
    }
    if (!is_start) {
      if (!found_.to_here) target_ = ends->second;
      found_.says_leg = true;
    }
    take(ends->end);
    if (!is_start && is(at_, ':')) ++at_;
  }

  /// `from 14`, `from Stop 2`; `from the spring:` before sights, where the writer stands.
  bool take_from() {
    if (!here().is(Meaning::from)) return false;
    std::size_t name = at_ + 1;
    if (is(name, Meaning::station)) ++name;
    while (is(name, '.'))
      ++name;
    if (name >= tokens_.size() || tokens_[name].type == Type::mark) return false;
    if (folded(tokens_[name].text) == "here") {
      take(name + 1 - at_);
      return true;
    }
    const std::string text = page_.full_name(stripped(typed(name, name + 1)));
    if (page_.is_station(text)) {
      from_ = text;
      if (is_open_) found_.rays.back().from = text;
      found_.says_leg = !says_sight_;
      take(name + 1 - at_);
      if (is(at_, ':')) ++at_;
      return true;
    }
    if (page_.leg_ends.contains(folded(text)) && is(name + 1, ':')) {
      found_.opens_station = text;
      take(name + 2 - at_);
      return true;
    }
    std::size_t colon = name;
    while (colon < tokens_.size() && tokens_[colon].type == Type::word)
      ++colon;
    if (!is(colon, ':') || !says_sight_ || !page_.in_station) return false;
    for (; at_ <= colon; ++at_)
      tokens_[at_].use = Use::aside;
    return true;
  }

  /// The longest mark or station name that starts here; in a leg, any words behind `to`.
  bool take_mark(bool leg) {
    const bool untold = is_open_ && found_.rays.back().target.empty();
    if (is(at_, Meaning::toward) && (leg || untold)) {
      if (take_end()) return true;
    }
    const Names::MarkHere mark = names_.mark_at(at_);
    if (mark.name.empty()) return false;
    close();
    target_ = mark.name;
    target_known_ = mark.is_known || says_sight_;
    take(mark.length);
    return true;
  }

  /// `to R4`, `to the sign post`, `to here`
  bool take_end() {
    const std::size_t k = at_ + 1;
    if (k >= tokens_.size()) return false;
    if (folded(tokens_[k].text) == "here" || folded(tokens_[k].text) == "this") {
      found_.to_here = true;
      found_.says_leg = true;
      take(k + 1 - at_);
      return true;
    }
    const std::size_t end = names_.end_of_target(k);
    if (end == k) return false;
    found_.says_leg = found_.is_leg;
    target_ = names_.target(k, end);
    if (is_open_) found_.rays.back().target = target_;
    if (!found_.is_leg) {
      page_.add_mark(target_);
      target_.clear();
    }
    target_known_ = true;
    take(end - at_);
    return true;
  }

  bool take_back() {
    // `no BS`
    if (here().is(Meaning::contrary) && folded(here().text) == "no" && is(at_ + 1, Meaning::back)) {
      take(2);
      return true;
    }
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
      if (at_ < tokens_.size() && is_free_figure(at_) && is_open_ &&
          found_.rays.back().vertical.empty()) {
        found_.rays.back().vertical = here().text;
        take();
      }
      return true;
    }
    const bool words = here().is(Meaning::up) || here().is(Meaning::down);
    if (words && is_free_figure(at_ + 1)) {
      const std::string_view sign = here().is(Meaning::down) ? "-" : "";
      ray().vertical = fmt::format("{}{}", sign, tokens_[at_ + 1].text);
      take(2);
      return true;
    }
    if (is_free_figure(at_) && here().has_sign && is_open_) {
      if (!found_.rays.back().vertical.empty()) return false;
      found_.rays.back().vertical = here().text;
      take();
      return true;
    }
    // `190 / -2`, `176 / 0`
    const bool open = leg && is_open_ && !found_.rays.back().bearing.empty() &&
                      found_.rays.back().vertical.empty();
    if (open && here().is('/') && is_free_figure(at_ + 1) && tokens_[at_ + 1].digits <= 2) {
      found_.rays.back().vertical = tokens_[at_ + 1].text;
      take(2);
      return true;
    }
    const bool flat = here().is(Meaning::level) || (leg && here().is(Meaning::horizontal));
    if (flat && is_open_) {
      found_.rays.back().vertical = std::string(1, '0');
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
        at_ >= 2 && is_free_figure(at_ - 2) && (is(at_ - 1, Meaning::toward) || is(at_ - 1, '-'));
    if (range) {
      tokens_[at_ - 2].use = tokens_[at_ - 1].use = Use::stated;
      ask(fmt::format("{} to {} is a range: its middle?", tokens_[at_ - 2].text, here().text));
      length = trimmed_text((tokens_[at_ - 2].value + here().value) / 2, 2);
    }
    if (!now.distance.empty()) {
      ask(fmt::format("which distance, {} or {}?", now.distance, here().text));
    } else {
      now.distance = length;
      found_.says_leg = found_.says_leg || unit.is(Meaning::paces);
      now.distance += marked ? "ft" : unit_of(unit);
    }
    // What is only guessed places nothing.
    if (here().is_rough) now.doubtful = true;
    take(marked ? 1 : 2);
  }

  void take_bearing(bool leg) {
    // A second bearing of a mark without a word for it: read again.
    const bool is_done = is_open_ && !found_.rays.back().bearing.empty();
    if (is_done) {
      if (leg) {
        ++at_;  // left for the question, or the start of a range
        return;
      }
      close();
    }
    const bool has_words = (is_done || !found_.rays.empty()) && names_.start_before(at_) < at_;
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
    const std::string text = (token.is_rough && !leg ? "~" : "") + bearing_text(at_);
    ray().bearing = text;
    if (token.is_rough && leg) found_.rays.back().doubtful = true;
    if (std::exchange(doubtful_ahead_, false)) found_.rays.back().doubtful = true;
    take();
  }

  std::string bearing_text(std::size_t i) const {
    const Token& token = tokens_[i];
    return token.is_figure() ? azimuth_text(token.text, token.digits) : token.text;
  }

  /// The words before a bearing as the name of something nobody has declared.
  bool words_for_target() {
    const std::size_t first = names_.start_before(at_);
    // `Hito 3 064`: the number of the name.
    const bool numbered = first < at_ && is_free_figure(at_) && tokens_[at_].digits <= 2 &&
                          tokens_[at_].decimals == 0 && is_bearing(at_ + 1) && !is_point(at_ + 1);
    if (numbered) ++at_;
    // Beside an unknown name only what can be nothing else.
    const bool plain =
        tokens_[at_].is_figure() && tokens_[at_].digits < 3 && !says_sight_ && found_.rays.empty();
    if (first == at_ || plain) return false;
    // `older set in the hollow 012`
    if (!says_sight_ && !page_.kind.empty() && is_in_place(tokens_, at_)) return false;
    target_ = std::string(stripped(typed(first, names_.end_before(at_, first))));
    target_known_ = says_sight_;
    settle(first, at_);
    page_.add_mark(target_, says_sight_);
    return true;
  }

  BearingSigns signs_{line_, tokens_, page_};
  Names names_{line_, tokens_, page_};
  FoundRays found_;
  std::string target_;
  std::string from_;
  bool target_known_ = true;
  bool is_open_ = false;
  bool says_sight_ = false;
  bool doubtful_ahead_ = false;
};

}  // namespace

std::optional<Lines> bearings_of(std::string_view line, Tokens& tokens, Page& page) {
  return BearingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
