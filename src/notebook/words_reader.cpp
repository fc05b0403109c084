// SPDX-License-Identifier: MIT
#include <array>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

constexpr std::array<std::string_view, 14> plane_words = {
    "by",     "about",   "overturned", "upright",   "facing", "youngs",   "doubtful",
    "normal", "reverse", "dextral",    "sinistral", "true",   "magnetic", "grid"};
constexpr std::array<std::string_view, 11> line_words = {
    "by",      "about",     "on",   "doubtful", "normal", "reverse",
    "dextral", "sinistral", "true", "magnetic", "grid"};

}  // namespace

bool is_plane_word(std::string_view word) {
  return std::ranges::any_of(plane_words, [&](auto known) { return equals_word(word, known); });
}

namespace {

bool has_bearing(const PlaneAttitude& plane) {
  using enum PlaneAttitude::Form;
  return plane.form != horizontal && plane.form != dip;
}
bool has_bearing(const LineAttitude& line) {
  return line.form != LineAttitude::Form::vertical;
}

/// The bearings of a reading, each of which may have a north of its own.
template <class Visit>
void for_each_bearing(Reading& reading, Visit visit) {
  if (auto* const plane = std::get_if<PlaneAttitude>(&reading.what)) {
    if (has_bearing(*plane)) visit(plane->bearing);
  } else if (auto* const line = std::get_if<LineAttitude>(&reading.what)) {
    if (has_bearing(*line)) visit(line->bearing);
  } else if (auto* const sight = std::get_if<Sight>(&reading.what)) {
    visit(sight->bearing);
    if (sight->back) visit(*sight->back);
  } else if (auto* const leg = std::get_if<Leg>(&reading.what)) {
    visit(leg->bearing);
    if (leg->back) visit(*leg->back);
  }
}

/// Visits the error of each figure of a reading.
template <class Visit>
void for_each_figure(Reading& reading, Visit visit) {
  for_each_bearing(reading, [&](Bearing& bearing) { visit(bearing.own); });
  if (auto* const plane = std::get_if<PlaneAttitude>(&reading.what)) {
    using enum PlaneAttitude::Form;
    if (plane->form != horizontal && plane->form != vertical && plane->form != strike)
      visit(plane->dip.own);
  } else if (auto* const line = std::get_if<LineAttitude>(&reading.what)) {
    using enum LineAttitude::Form;
    if (line->form != vertical && line->form != horizontal && line->form != trend)
      visit(line->slope.own);
  } else if (auto* const sight = std::get_if<Sight>(&reading.what)) {
    if (sight->vertical) visit(sight->vertical->own);
  } else if (auto* const leg = std::get_if<Leg>(&reading.what)) {
    visit(leg->distance.own);
    if (leg->slope) visit(leg->slope->own);
  }
}

}  // namespace

bool LogReader::settle_norths(Reading& reading, Cursor& cursor) const {
  std::string_view own_word;
  for_each_bearing(reading, [&](const Bearing& bearing) {
    const std::string_view word = word_of(bearing.north);
    if (!word.empty() && vocabulary_.find(word)) own_word = word;
  });
  if (own_word.empty()) return true;
  const Span span = cursor.last_word(own_word)->span();
  cursor.report(span, wording::trailing_text(cursor.text(span), ""));
  return false;
}

bool LogReader::settle_marks(Reading& reading, Cursor& cursor) const {
  if (!settle_norths(reading, cursor)) return false;
  std::size_t count = 0;
  for_each_figure(reading, [&count](const OwnError& own) {
    count += (own.rough ? 1U : 0U) + (own.sigma > 0 ? 1U : 0U);
  });
  if (count != cursor.mark_count()) {
    const Token& marked = *cursor.last_marked();
    cursor.report(marked.span(), wording::mark_without_figure(cursor.text(marked)));
    return false;
  }
  if (is_about_) for_each_figure(reading, [](OwnError& own) { own.rough = true; });
  return true;
}

bool LogReader::read_doubtful(Reading& reading, Cursor& cursor) {
  if (cursor.is_word("by") && reading.by.empty() && cursor.peek(1) &&
      !cursor.is(Token::Type::other, 1)) {
    cursor.skip();
    reading.by = take_word(cursor);
    return true;
  }
  if (cursor.is_word("about") && !is_about_) {
    is_about_ = true;
    cursor.skip();
    return true;
  }
  if (!cursor.is_word("doubtful")) return false;
  if (!reading.doubtful)
    cursor.report(cursor.here(), wording::doubtful(std::holds_alternative<Leg>(reading.what)));
  reading.doubtful = true;
  cursor.skip();
  return true;
}

bool LogReader::read_sense(const Reading& reading, Sense& stated, Cursor& cursor) {
  if (!kinds_[reading.kind].has_sense || stated != Sense::unstated) return false;
  constexpr std::array<std::pair<std::string_view, Sense>, 4> senses = {{
      {"normal", Sense::normal},
      {"reverse", Sense::reverse},
      {"dextral", Sense::dextral},
      {"sinistral", Sense::sinistral},
  }};
  for (const auto& [word, sense] : senses) {
    if (!cursor.is_word(word)) continue;
    cursor.skip();
    stated = sense;
    return true;
  }
  return false;
}

namespace {

/// Behind a dip, side or plunge: the north of the bearing before it.
template <class Attitude>
bool read_north(Attitude& attitude, Cursor& cursor) {
  const OwnNorth north = north_at(cursor);
  if (north == OwnNorth::none || attitude.bearing.north != OwnNorth::none || !has_bearing(attitude))
    return false;
  attitude.bearing.north = north;
  cursor.skip();
  return true;
}

/// `facing doubtful`: only the facing is in doubt, not the plane.
bool read_facing_doubtful(PlaneAttitude& plane, Cursor& cursor) {
  if (!cursor.is_word("facing") || !cursor.is_word("doubtful", 1)) return false;
  const std::size_t start = cursor.position();
  cursor.skip(2);
  if (!plane.facing_doubtful) cursor.report(cursor.since(start), wording::facing_doubtful());
  plane.facing_doubtful = true;
  return true;
}

/// Offers of the words that say the same as `youngs` and a side, which begin at token number
/// `start`.
Offers facing_offers(const Cursor& cursor, std::size_t start) {
  return cursor.accepted(each_in_place(cursor.since(start), {"upright", "overturned"}));
}

/// `youngs NW`: the direction in which the beds get younger, in the frame of the strike. It also
/// gives a vertical plane without a side its side.
bool read_youngs(PlaneAttitude& plane, Cursor& cursor) {
  const std::size_t start = cursor.position();
  cursor.skip();
  const auto bearing = read_bearing_alone(cursor, Behind::words);
  if (!bearing) return false;
  const auto towards = bearing->azimuth();
  const auto dipping = plane.plane();
  if (!dipping || dipping->is_horizontal()) {
    cursor.report(cursor.since(start), wording::youngs_without_dip(facing_offers(cursor, start)));
    return false;
  }
  const auto dip_direction = dipping->dip_direction();
  const double off = separation(towards, dip_direction).degrees();
  constexpr double tolerance = Plane<north::dial>::side_tolerance;
  if (off > tolerance && off < 180 - tolerance) {
    cursor.report(cursor.since(start),
                  wording::youngs_along_strike(cursor.text(cursor.since(start + 1)),
                                               facing_offers(cursor, start)));
    return false;
  }
  plane.facing = off <= tolerance ? Facing::upright : Facing::overturned;
  if (dipping->is_vertical() && !plane.has_side()) {
    const auto side = off <= tolerance ? dip_direction : dip_direction.opposite();
    plane.form = PlaneAttitude::Form::strike_and_side;
    plane.side = nearest_eighth(side.degrees());
    plane.facing = Facing::upright;
  }
  return true;
}

std::optional<Facing> facing_at(const Cursor& cursor) {
  if (cursor.is_word("overturned")) return Facing::overturned;
  if (cursor.is_word("upright")) return Facing::upright;
  if (cursor.is_word("facing") && cursor.is_word("unknown", 1)) return Facing::unknown;
  return std::nullopt;
}

}  // namespace

bool LogReader::read_plane_words(Reading& reading, PlaneAttitude& plane, Cursor& cursor) {
  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (read_sense(reading, plane.sense, cursor)) continue;
    if (read_north(plane, cursor)) continue;
    if (read_facing_doubtful(plane, cursor)) continue;
    if (cursor.is_word("youngs") && plane.facing == Facing::unstated) {
      if (!read_youngs(plane, cursor)) return false;
      continue;
    }
    const auto facing =
        cursor.is_word("youngs") ? std::optional(Facing::unknown) : facing_at(cursor);
    if (facing && plane.facing == Facing::unstated) {
      plane.facing = *facing;
      cursor.skip(*facing == Facing::unknown ? 2 : 1);
    } else if (facing) {
      cursor.report(cursor.rest(),
                    wording::facing_twice(cursor.text(cursor.rest()), plane.facing == *facing));
      return false;
    } else {
      return finish(cursor, near_word(first_word(cursor), plane_words));
    }
  }
  return true;
}

bool LogReader::read_line_words(Reading& reading, LineAttitude& line, Cursor& cursor) {
  while (!cursor.at_end()) {
    if (read_doubtful(reading, cursor)) continue;
    if (read_sense(reading, line.sense, cursor)) continue;
    if (read_north(line, cursor)) continue;
    if (line.on == no_kind && cursor.is_word("on")) {
      cursor.skip();
      const Span span = take_word(cursor);
      const std::string_view word = text(span);
      const auto meaning = vocabulary_.find(word);
      if (!meaning || meaning->asked_at != 0 || meaning->keyword != Keyword::reading ||
          kinds_[meaning->kind].type != Kind::Type::plane) {
        cursor.report(span,
                      word.empty()
                          ? wording::incomplete("'on'", "kind of plane", "on bedding")
                          : wording::unknown_word(word, "a kind of plane, such as on bedding"));
        return false;
      }
      line.on = meaning->kind;
    } else {
      return finish(cursor, near_word(first_word(cursor), line_words));
    }
  }
  return true;
}

}  // namespace lodebook::notebook
