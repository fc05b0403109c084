// SPDX-License-Identifier: MIT
#include "attitude.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>

#include "values.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Form = Attitude::Form;

/// Reads one attitude of a line.
class AttitudeReader : ValueReader {
 public:
  AttitudeReader(const Tokens& tokens, std::size_t at, bool directions)
      : ValueReader(tokens, at), directions_(directions) {
    attitude_.begin = at;
  }

  std::optional<Attitude> read() {
    if (!read_form()) return std::nullopt;
    attitude_.end = at_;
    attitude_.problem = problem_;
    // `about N60E 70 SE`
    const bool about = tokens_[attitude_.begin].is_about && attitude_.first && attitude_.second;
    if (about) attitude_.first.is_rough = attitude_.second.is_rough = true;
    return attitude_;
  }

 private:
  bool read_form() {
    if (is(Meaning::vertical)) return read_vertical();
    if (is(Meaning::horizontal)) return read_horizontal();
    if (is(Meaning::rake)) return read_rake();
    if (is(Meaning::strike)) return read_strike();
    if (is(Meaning::dip) || is(Meaning::plunge)) return read_angle();
    if (is(Meaning::trend)) return read_trend();
    if (is(Meaning::direction)) return read_direction();
    const bool from = is(Meaning::from);
    if (directions_ && (from || is(Meaning::toward)) && starts_value(1)) {
      ++at_;
      attitude_.is_from = from;
      attitude_.first = take_value();
      attitude_.form = Form::direction;
      return true;
    }
    return read_bare();
  }

  bool read_vertical() {
    ++at_;
    attitude_.form = Form::vertical;
    const std::size_t start = at_;
    skip(',');
    const bool says = skip(Meaning::strike) || skip(Meaning::trend);
    const bool dip_direction = skip(Meaning::direction);
    attitude_.says_strike = says;
    if (starts_value() && (says || dip_direction || peek()->type != Type::point)) {
      attitude_.first = take_value();
      if (dip_direction) fault("a vertical plane with a dip direction");
    } else {
      at_ = start;
    }
    return true;
  }

  bool read_horizontal() {
    ++at_;
    attitude_.form = Form::horizontal;
    return true;
  }

  bool read_rake() {
    ++at_;
    skip(Meaning::filler);
    if (!starts_figure()) return false;
    attitude_.form = Form::rake;
    attitude_.second = take_value();
    const bool says_from = skip(Meaning::from);
    if (!says_from) skip(Meaning::toward);
    if (!starts_value()) {
      fault("a rake from which end of the strike?");
      return true;
    }
    if (!says_from) fault("a rake from that end of the strike?");
    attitude_.first = take_value();
    skip(Meaning::end);
    return true;
  }

  bool read_strike() {
    ++at_;
    skip('=');
    skip(':');
    if (!starts_value()) return false;
    attitude_.says_strike = true;
    attitude_.first = take_value();
    read_dip_behind();
    return true;
  }

  /// Behind a strike: `dip 55 to the NW`, `, 12`, `/37 NW`; or nothing.
  void read_dip_behind() {
    const std::size_t start = at_;
    attitude_.form = Form::strike_dip;
    if (skip('/') && skip(Meaning::vertical)) {
      attitude_.form = Form::vertical;
      return;
    }
    const bool comma = skip(',');
    skip(';');
    if (is(Meaning::dip, 1) || is(Meaning::vertical, 1)) skip(Meaning::together);
    const bool says = skip(Meaning::dip);
    if (says) skip('=');
    if (!says && is(Meaning::vertical)) {
      ++at_;
      attitude_.form = Form::vertical;
      return;
    }
    if (!starts_figure() || (comma && !says && goes_on_as_list())) {
      at_ = start;
      attitude_.form = Form::direction;
      return;
    }
    attitude_.second = take_value();
    read_side();
  }

  static constexpr double across = 10;  ///< degrees; our own choice

  /// Behind a comma: the figure is followed by others like it.
  bool goes_on_as_list() const { return is(',', 1) && starts_figure(2); }

  void read_side() {
    const std::size_t start = at_;
    const bool says = skip(Meaning::toward);
    if (!says) skip('/');
    const bool is_point = starts_value() && peek()->type == Type::point;
    // `E side down` is said of a fault's blocks.
    const bool is_block = is(Meaning::block, 1) || is(Meaning::place, 1);
    if (is_point && !is_block) {
      attitude_.side = peek()->text;
      ++at_;
    } else if (says && starts_value()) {
      const Value direction = take_value();
      const double off =
          std::abs(std::remainder(direction.degrees - attitude_.first.degrees, 180.0));
      attitude_.side = name_of(nearest_eighth(direction.degrees));
      if (std::abs(off - 90) > across) fault("the dip is not across the strike");
    } else {
      at_ = start;
    }
  }

  /// `dips 40 to SE`, `plunges 9 to NE`, `dip 13`.
  bool read_angle() {
    const bool plunge = is(Meaning::plunge);
    attitude_.says_plunge = plunge;
    ++at_;
    skip('=');
    if (!starts_figure()) return false;
    attitude_.second = take_value();
    const std::size_t start = at_;
    skip(',');
    if (skip(Meaning::toward) || skip('>') || skip(Meaning::direction) || skip(Meaning::trend) ||
        (starts_value() && peek()->type != Type::figure && start == at_)) {
      skip('=');
      if (starts_value()) {
        attitude_.form = Form::towards;
        attitude_.first = std::exchange(attitude_.second, take_value());
        if (!plunge) join_strike();
        return true;
      }
    }
    at_ = start;
    attitude_.form = Form::dip;
    if (plunge) fault("a plunge without its trend");
    return true;
  }

  /// `dips 64 to S30W, i.e. strike N60W`: the same plane said once more.
  void join_strike() {
    const std::size_t start = at_;
    if (!skip(',') && !skip(';')) skip('(');
    while (skip(Meaning::so) || skip(Meaning::filler)) {
    }
    const bool says = skip(Meaning::strike);
    skip('=');
    if (!says || !starts_value()) {
      at_ = start;
      return;
    }
    const Value strike = take_value();
    const std::size_t behind = is(',') || is(';') || is(Meaning::together) ? 1 : 0;
    if (is('/') || is(Meaning::dip, behind) || starts_value()) {
      at_ = start;  // of the next plane
      return;
    }
    skip(')');
    const Value& direction = attitude_.second;
    const bool is_point = direction.type == Value::Type::point;
    const double off = std::abs(std::remainder(direction.degrees - strike.degrees - 90, 180.0));
    if (off > (is_point ? Plane<north::dial>::side_tolerance : across))
      return fault(
          fmt::format("a plane that strikes {} cannot dip to {}", strike.text, direction.text));
    if (!is_point) return;
    attitude_.side = direction.text;
    attitude_.second = std::exchange(attitude_.first, strike);
    attitude_.form = Form::strike_dip;
  }

  bool read_trend() {
    ++at_;
    skip('=');
    if (!starts_value()) return false;
    attitude_.first = take_value();
    attitude_.form = Form::direction;
    take_other_end(attitude_.first);
    const std::size_t start = at_;
    skip(',');
    skip('/');
    if (skip(Meaning::plunge) && starts_figure()) {
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
    } else {
      at_ = start;
    }
    return true;
  }

  /// `dip direction 332 dip 37`
  bool read_direction() {
    ++at_;
    skip('=');
    if (!starts_value()) return false;
    const Value direction = take_value();
    skip(',');
    skip('/');
    if (!skip(Meaning::dip) || !starts_figure()) return false;
    attitude_.form = Form::towards;
    attitude_.first = take_value();
    attitude_.second = direction;
    return true;
  }

  bool read_bare() {
    if (!starts_value()) return false;
    const bool figure = starts_figure();
    attitude_.first = take_value();
    if (directions_ && take_other_end(attitude_.first)) {
      attitude_.form = Form::direction;
      return true;
    }
    // `58@112`: a dip, at its direction.
    const bool at_direction =
        is('@') && attitude_.first.digits <= 2 && starts_figure(1) && peek(1)->digits == 3;
    attitude_.says_to = is(Meaning::toward) && starts_value(1);
    const bool points = figure && (at_direction        ? skip('@')
                                   : attitude_.says_to ? skip(Meaning::toward)
                                                       : skip('>'));
    if (points) {
      if (!starts_value()) return false;
      attitude_.form = Form::towards;
      attitude_.second = take_value();
      const bool angles = attitude_.says_to && attitude_.second.digits < 3 &&
                          attitude_.second.type == Value::Type::figure;
      if (angles) fault("a range, or an angle and its direction?");
      join_strike();
      return true;
    }
    if (!figure && is('>') && starts_figure(1)) {
      ++at_;
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
      return true;
    }
    if (skip(Meaning::plunge)) {
      if (!starts_figure()) return false;
      attitude_.form = Form::trend_plunge;
      attitude_.second = take_value();
      return true;
    }
    return figure ? read_pair() : read_lettered();
  }

  bool read_lettered() {
    read_dip_behind();
    if (attitude_.form == Form::strike_dip && !attitude_.says_strike) attitude_.form = Form::pair;
    // A point alone, with nothing that says strike, is seldom a reading.
    return attitude_.form != Form::direction || attitude_.first.type != Value::Type::point ||
           directions_;
  }

  bool read_pair() {
    const std::size_t start = at_;
    const bool slash = skip('/');
    const bool dash =
        !slash && is('-') && starts_figure(1) && peek()->spaced == peek(1)->spaced && skip('-');
    const bool comma = !slash && !dash && skip(',');
    // `033 vertical`
    const bool stands_behind = !dash && (slash || comma || attitude_.first.digits == 3);
    if (stands_behind && skip(Meaning::vertical)) {
      attitude_.form = Form::vertical;
      return true;
    }
    const bool says = skip(Meaning::dip);
    if (slash && starts_value() && !starts_figure()) {
      attitude_.form = Form::pair;
      attitude_.second = take_value();
      return true;
    }
    const bool one_bearing =
        starts_figure() && (attitude_.first.digits == 3) != (peek()->digits == 3);
    // Two figures alone are a pair, or nobody knows.
    const bool two =
        starts_figure() && peek()->digits < 3 && attitude_.first.digits < 3 && !starts_figure(1);
    const bool as_pair = !directions_ || one_bearing || two;
    const bool glued = slash || dash || says || (!comma && as_pair);
    const bool listed = comma && !directions_ && attitude_.first.digits == 3 && starts_figure() &&
                        peek()->digits <= 2 && !goes_on_as_list();
    if (starts_figure() && (glued || listed)) {
      attitude_.form = Form::pair;
      attitude_.second = take_value();
      if (attitude_.second.text.starts_with('-')) fault("a figure with a minus sign");
      read_side();
      return true;
    }
    at_ = start;
    attitude_.form = Form::direction;
    return attitude_.first.digits == 3 || directions_;
  }

  bool directions_;
  Attitude attitude_;
};

}  // namespace

std::optional<Attitude> attitude_at(const Tokens& tokens, std::size_t at, bool directions) {
  return AttitudeReader(tokens, at, directions).read();
}

}  // namespace lodebook::fair_copy
