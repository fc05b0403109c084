// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/notebook/nearest.hpp>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// The largest distance expected between two positions of one log, metres.
constexpr double log_extent_m = 500'000;

std::size_t find_plus_minus(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (plus_minus_length(text.substr(at)) > 0) return at;
  }
  return std::string_view::npos;
}

/// `200` behind the `1` of `1 200`.
bool is_thousands(const Cursor& cursor) {
  const Token* next = cursor.peek();
  return next && next->type == Type::angle && next->spaced && !next->has_sign &&
         next->digits == 3 && next->fault == Token::Fault::none;
}

/// `elev`, for `elevation`.
bool is_elevation(std::string_view typed) {
  constexpr std::array<std::string_view, 1> known = {"elevation"};
  constexpr std::size_t shortest = 3;
  return nearest(typed, known) || (typed.size() >= shortest && typed.size() < known[0].size() &&
                                   equals_word(typed, known[0].substr(0, typed.size())));
}

/// Whether `word` names the source of a position or height without `from` before it.
bool is_origin(std::string_view word) {
  constexpr std::array<std::string_view, 6> origins = {"map",       "receiver",  "phone",
                                                       "barometer", "altimeter", "estimated"};
  return std::ranges::any_of(origins, [&](auto origin) { return equals_word(word, origin); });
}

std::optional<GivenPosition>* given_position_of(Entry& entry) {
  if (auto* heading = std::get_if<StationHeading>(&entry.what)) return &heading->position;
  if (auto* landmark = std::get_if<Landmark>(&entry.what)) return &landmark->position;
  return nullptr;
}

std::optional<earth::Position> position_of(Entry& entry) {
  if (const auto* at = std::get_if<At>(&entry.what)) return at->position.position;
  const auto* given = given_position_of(entry);
  if (!given || !*given) return std::nullopt;
  return (*given)->position;
}

/// Puts the decided meaning of a position with the zone letter S into its entry.
void set_position(Entry& entry, const earth::WrittenPosition& written, ZoneS zone) {
  const auto& settled = zone == ZoneS::south ? written.if_south : written.position;
  if (auto* at = std::get_if<At>(&entry.what)) {
    if (zone == ZoneS::unclear) {
      entry.what = Unread{};
    } else {
      at->position.position = *settled;
    }
  } else if (auto* given = given_position_of(entry)) {
    if (zone == ZoneS::unclear) {
      given->reset();
    } else {
      (*given)->position = *settled;
    }
  }
}

}  // namespace

std::pair<Span, Span> cut(Span whole, std::size_t at) {
  const std::uint32_t before =
      at == std::string_view::npos ? whole.length : static_cast<std::uint32_t>(at);
  return {{whole.offset, before}, {whole.offset + before, whole.length - before}};
}

Span LogReader::take_origin(Span& span) const {
  const std::string_view words = text(span);
  std::size_t last = 0;
  std::size_t before = 0;
  for (std::size_t at = 1; at < words.size(); ++at) {
    if (space_length(words.substr(at)) > 0 || !ends_with_space(words.substr(0, at))) continue;
    before = last;
    last = at;
  }
  const bool is_said =
      last > 0 && equals_word(trimmed(words.substr(before, last - before)), "from");
  if (!is_said && !is_origin(words.substr(last))) return {};
  const auto [rest, origin] = cut(span, last);
  span = trim(is_said ? cut(span, before).first : rest);
  return origin;
}

std::optional<GivenPosition> LogReader::read_position(
    Span span, std::optional<earth::WrittenPosition>& zone_s) {
  GivenPosition given;
  given.origin = take_origin(span);
  const auto [position_span, accuracy_span] = cut(span, find_plus_minus(text(span)));
  Span where = trim(position_span);
  if (given.origin.empty()) given.origin = take_origin(where);
  if (!accuracy_span.empty()) {
    const Tokens tokens(source_.text(), accuracy_span);
    Cursor cursor(source_.text(), tokens, faults_);
    cursor.skip();
    if (cursor.at_end()) return cursor.fail(accuracy_span, wording::accuracy_missing());
    if (has_decimal_comma(cursor)) return std::nullopt;
    const auto accuracy = read_height(cursor);
    if (!accuracy) return std::nullopt;
    if (accuracy->value < 0) return cursor.fail(accuracy_span, wording::accuracy_missing());
    given.accuracy_m = accuracy->metres(1);
  }
  if (where.empty()) {
    faults_.add(where,
                wording::incomplete("the statement", "position", "such as 44.6891S 169.0144E ±8"));
    return std::nullopt;
  }
  const auto written = read_coordinates(where);
  if (!written) return std::nullopt;
  if (written->if_south) {
    zone_s = written;
  } else {
    given.position = *written->position;
  }
  return given;
}

std::optional<earth::WrittenPosition> LogReader::read_coordinates(Span where) {
  const auto read = earth::read_position(text(where));
  if (const auto* written = std::get_if<earth::WrittenPosition>(&read)) return *written;
  const auto& error = std::get<earth::PositionError>(read);
  const Span fault{where.offset + static_cast<std::uint32_t>(error.offset),
                   static_cast<std::uint32_t>(error.length)};
  Diagnostic diagnostic = wording::position(text(fault), error);
  if (is_elevation(text(fault)))
    diagnostic.help = "elevation? (of a station, on a line of its own)";
  if (error.fault == earth::PositionFault::loose_figure) {
    diagnostic = mended(std::move(diagnostic), {fault.offset, 0}, "\u00B1");
  } else if (!error.meant.empty()) {
    diagnostic = mended(std::move(diagnostic), where, error.meant);
  }
  faults_.add(fault, std::move(diagnostic));
  return std::nullopt;
}

namespace {

/// The error typed with a height, in its unit: `790m ±10`, `790±10m`, `~790`.
std::optional<OwnError> read_height_error(Cursor& cursor, const Token& figure, const Token& last) {
  auto own = own_error(cursor, figure, last.has_sigma ? last : figure);
  if (!own || !cursor.is(Token::Type::plus_minus)) return own;
  cursor.skip();
  const Token* const sigma = figure_at(cursor);
  if (!sigma) return std::nullopt;
  if (!(sigma->signed_value() > 0) || sigma->percent || sigma->marked)
    return cursor.fail(sigma->span(), wording::accuracy_zero(cursor.text(*sigma), "±10"));
  own->sigma = sigma->value;
  cursor.skip();
  return own;
}

}  // namespace

std::optional<Length> LogReader::read_height(Cursor& cursor, std::string_view help) {
  const std::size_t start = cursor.position();
  const Token* token = figure_at(cursor);
  if (!token) return std::nullopt;
  if (token->percent || token->marked)
    return cursor.fail(token->span(), wording::number(cursor.text(*token), "metres, or ft"));
  cursor.skip();
  if (is_thousands(cursor)) {
    cursor.skip();
    const Span span = cursor.since(start);
    const std::string joined =
        std::string(cursor.text(*token)) + std::string(cursor.text(*cursor.previous()));
    return cursor.fail(span,
                       mended(wording::number_spaced(cursor.text(span), joined), span, joined));
  }
  Length length{token->signed_value(), LengthUnit::metres};
  if (cursor.is_word("ft")) length.unit = LengthUnit::feet;
  const Token* last = token;
  if (cursor.is_word("m") || cursor.is_word("ft")) {
    last = cursor.peek();
    cursor.skip();
  }
  const auto own = read_height_error(cursor, *token, *last);
  if (!own) return std::nullopt;
  length.own = *own;
  if (cursor.is(Token::Type::angle)) help = "a figure without a space in it";
  if (cursor.is_word("metres") || cursor.is_word("meters")) help = "m?";
  if (cursor.is_word("feet") || cursor.is_word("foot")) help = "ft?";
  if (!finish(cursor, help)) return std::nullopt;
  return length;
}

void LogReader::take_zone_s(Span span, const earth::WrittenPosition& written) {
  Entry& entry = block_->entries.back();
  if (!notebook_) {
    waiting_.push_back({block_->entries.size() - 1, span.offset, written});
    return;
  }
  const ZoneS zone = notebook_->zones.at(span.offset);
  if (zone == ZoneS::south) faults_.add(span, wording::zone_south(written.zone));
  if (zone == ZoneS::unclear) faults_.add(span, fault_of_zone(span, written));
  set_position(entry, written, zone);
}

Diagnostic LogReader::fault_of_zone(Span position, const earth::WrittenPosition& written) const {
  Diagnostic fault = wording::position_zone_unclear(written);
  const std::size_t letter = text(position).find_first_of("sS");
  if (letter == std::string_view::npos) return fault;
  const Span zone{position.offset + static_cast<std::uint32_t>(letter), 1};
  if (written.position) fault = mended(std::move(fault), zone, " north");
  return mended(std::move(fault), zone, " south");
}

void LogReader::settle_zones(Notebook& notebook) {
  std::vector<earth::Position> known;
  auto waiting = waiting_.begin();
  for (std::size_t i = 0; !waiting_.empty() && i < own_block_.entries.size(); ++i) {
    if (waiting != waiting_.end() && waiting->entry == i) {
      ++waiting;
    } else if (const auto position = position_of(own_block_.entries[i])) {
      known.push_back(*position);
    }
  }
  const auto fits = [&known](const std::optional<earth::Position>& candidate) {
    return candidate && std::any_of(known.begin(), known.end(), [&](const earth::Position& other) {
             return earth::distance_m(*candidate, other) <= log_extent_m;
           });
  };
  for (const WaitingPosition& one : waiting_) {
    const bool north = fits(one.written.position);
    const bool south = fits(one.written.if_south);
    const bool plainly_north = one.written.position && (north || (!south && known.empty()));
    const ZoneS zone = plainly_north ? ZoneS::band : south ? ZoneS::south : ZoneS::unclear;
    notebook.zones.emplace(one.offset, zone);
    set_position(own_block_.entries[one.entry], one.written, zone);
  }
}

}  // namespace lodebook::notebook
