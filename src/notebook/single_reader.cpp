// SPDX-License-Identifier: MIT
#include <algorithm>
#include <iterator>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

bool is_lone_bearing(Cursor cursor) {
  return read_bearing(cursor, Behind::words).has_value() && cursor.at_end();
}

/// Whether a bearing, a figure and a point follow.
bool is_pair_with_side(Cursor cursor) {
  if (!read_bearing(cursor, Behind::figure)) return false;
  cursor.skip_if(Type::slash);
  if (!cursor.is(Type::angle)) return false;
  cursor.skip();
  return point_at(cursor).has_value();
}

bool has_towards(const Cursor& cursor) {
  for (std::size_t i = 0; cursor.peek(i); ++i) {
    if (cursor.is(Type::greater, i) || cursor.is_word("to", i)) return true;
  }
  return false;
}

/// What a reading without a kind is by its form; `own_form` if `>` leaves that open.
ReadAs own_form(const Tokens& tokens, const Source& source, const PairRules& rules) {
  Faults faults(source);
  const Cursor trial(source.text(), tokens, faults);
  if (is_lone_bearing(trial)) return ReadAs::bearing;
  const bool alone = !trial.peek(1);
  if (trial.is_word("horizontal")) return alone ? ReadAs::plane : ReadAs::line;
  if (trial.is_word("vertical")) return alone ? ReadAs::line : ReadAs::plane;
  if (trial.is_word("rake")) return ReadAs::line;
  if (trial.is_word("strike") || trial.is_word("dip")) return ReadAs::plane;
  if (has_towards(trial)) return ReadAs::own_form;
  const bool only_planes =
      rules.planes != PlaneOrder::unstated && rules.lines == LineOrder::unstated;
  if (rules.rule || only_planes || is_pair_with_side(trial)) return ReadAs::plane;
  return alone ? ReadAs::bearing : ReadAs::line;
}

}  // namespace

KindId LogReader::any_kind(Kind::Type type) const {
  KindId id = 0;
  while (kinds_[id].type != type || !kinds_[id].has_sense)
    ++id;
  return id;
}

/// A reading on its own has no remark, comment or second line; reports one.
bool LogReader::has_more(const Statement& statement) {
  const Span beside = statement.remark.empty() ? statement.comment : statement.remark;
  if (beside.empty()) return has_second_line();
  faults_.add(beside, wording::trailing_text(text(beside), alone));
  return true;
}

bool LogReader::has_second_line() {
  if (source_.line_count() < 2) return false;
  faults_.start(2);
  faults_.add(source_.line(2), wording::trailing_text(text(source_.line(2)), "one line"));
  return true;
}

SingleReading LogReader::read_single(ReadAs as) {
  SingleReading single;
  is_single_ = true;
  single_as_ = as;
  const Span whole = source_.line(1);
  faults_.start(1);
  if (!has_sound_bytes(whole)) return single;
  Statement statement;
  statement.whole = trim(whole);
  statement.bytes = meanings_in(whole);
  split_beside(statement);
  if (!statement.whole.empty() && has_more(statement)) return single;
  // `x3` is ignored: the reading is converted once.
  statement.whole.length = times_of(text(statement.whole)).before;
  judged_ = {{}, statement.whole, true, statement.whole.end()};
  const Tokens tokens(source_.text(), statement.whole, Tokens::Marks::own);
  Cursor cursor(source_.text(), tokens, faults_);
  if (has_decimal_comma(cursor)) return single;

  Reading reading;
  reading.rejected = true;
  if (const auto meaning = vocabulary_.find(cursor.text(cursor.here()));
      meaning && meaning->keyword == Keyword::reading) {
    reading.kind = meaning->kind;
    const Kind::Type type = kinds_[meaning->kind].type;
    if (type == Kind::Type::sight || type == Kind::Type::leg) {
      cursor.report(cursor.here(),
                    wording::unknown_word(cursor.text(cursor.here()), "a kind of plane or line"));
      return single;
    }
    as = type == Kind::Type::plane ? ReadAs::plane : ReadAs::line;
    cursor.skip();
  } else if (as == ReadAs::own_form) {
    as = own_form(tokens, source_, rules_);
  }
  switch (as) {
    case ReadAs::own_form:
      cursor.report(cursor.rest(), wording::plane_or_line(cursor.text(cursor.rest())));
      return single;
    case ReadAs::bearing: {
      const auto bearing = read_bearing(cursor, Behind::words);
      if (bearing && finish(cursor, "a plane or line? then --as plane or --as line")) {
        single.what = *bearing;
      }
      return single;
    }
    case ReadAs::plane:
    case ReadAs::line:
      break;
  }
  if (reading.kind == no_kind) {
    const bool is_plane = as == ReadAs::plane;
    if (cursor.at_end()) {
      cursor.report(cursor.here(), wording::incomplete("the reading", "attitude",
                                                       is_plane ? "a plane looks like N62E 37NW"
                                                                : "a line looks like N50W 35"));
      return single;
    }
    reading.kind = any_kind(is_plane ? Kind::Type::plane : Kind::Type::line);
  }
  read_attitude(reading, cursor);
  single.doubtful = reading.doubtful;
  if (reading.rejected) return single;
  if (const auto* plane = std::get_if<PlaneAttitude>(&reading.what)) {
    single.what = *plane;
  } else if (const auto* line = std::get_if<LineAttitude>(&reading.what)) {
    if (line->form == LineAttitude::Form::rake) {
      cursor.report(statement.whole, wording::rake_no_plane("none was read before it"));
      return single;
    }
    single.what = *line;
  }
  return single;
}

std::optional<earth::Position> LogReader::read_single_position() {
  faults_.start(1);
  const Span whole = source_.line(1);
  if (!has_sound_bytes(whole)) return std::nullopt;
  const Span where = trim(whole);
  const auto written = read_coordinates(where);
  if (!written || has_second_line()) return std::nullopt;
  if (written->if_south) {
    faults_.add(where, fault_of_zone(where, *written));
    return std::nullopt;
  }
  return written->position;
}

std::optional<Length> LogReader::read_single_height() {
  faults_.start(1);
  const Span whole = source_.line(1);
  if (!has_sound_bytes(whole)) return std::nullopt;
  const Tokens tokens(source_.text(), whole);
  Cursor cursor(source_.text(), tokens, faults_);
  if (cursor.at_end())
    return cursor.fail(whole, wording::incomplete("the height", "figure", "812, or 2664 ft"));
  if (has_decimal_comma(cursor)) return std::nullopt;
  const auto height = read_height(cursor, "metres, or ft");
  if (!height || has_second_line()) return std::nullopt;
  return height;
}

std::optional<DeclinationSetting> LogReader::read_single_declination() {
  faults_.start(1);
  const Span whole = source_.line(1);
  if (!has_sound_bytes(whole)) return std::nullopt;
  const Tokens tokens(source_.text(), whole);
  Cursor cursor(source_.text(), tokens, faults_);
  const auto setting = read_declination_words(cursor);
  if (!setting || has_second_line()) return std::nullopt;
  if (!cursor.at_end())
    return cursor.fail(cursor.rest(), wording::trailing_text(cursor.text(cursor.rest()), "24.6E"));
  return setting;
}

SingleReading read_single(const Source& source, ReadAs as, const ReadOptions& options) {
  LogReader reader(source, options);
  SingleReading single = reader.read_single(as);
  single.diagnostics = reader.take_diagnostics();
  return single;
}

std::optional<DeclinationSetting> read_declination(const Source& source,
                                                   std::vector<Diagnostic>& diagnostics) {
  LogReader reader(source, {});
  const auto setting = reader.read_single_declination();
  std::ranges::move(reader.take_diagnostics(), std::back_inserter(diagnostics));
  return setting;
}

std::optional<earth::Position> read_position(const Source& source,
                                             std::vector<Diagnostic>& diagnostics) {
  LogReader reader(source, {});
  const auto position = reader.read_single_position();
  std::ranges::move(reader.take_diagnostics(), std::back_inserter(diagnostics));
  return position;
}

std::optional<Length> read_height(const Source& source, std::vector<Diagnostic>& diagnostics) {
  LogReader reader(source, {});
  const auto height = reader.read_single_height();
  std::ranges::move(reader.take_diagnostics(), std::back_inserter(diagnostics));
  return height;
}

}  // namespace lodebook::notebook
