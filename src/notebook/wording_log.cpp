// SPDX-License-Identifier: MIT
// The wording of diagnostics on stations, settings and text.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geomagnetic.hpp>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

using fmt::format;

Diagnostic name_missing(std::string_view what) {
  return error(Code::name, format("{} has no name", what),
               "a name of one word, such as Q1 or Trig-Dome");
}

Diagnostic name_of_two_words(std::string_view second, std::string_view joined,
                             const Offers& offers) {
  return offering(
      error(Code::name, format("a name is one word: '{}' is not understood", second),
            offers.empty() ? format("{}?", joined)
                           : format("{} in quotes, or {}?", offers.front().fix.text, joined)),
      offers);
}

Diagnostic name_unclosed(const Offers& offers) {
  return offering(error(Code::name, "a name begins with a quote that is never closed",
                        "type \" behind the name"),
                  offers);
}

Diagnostic name_touched(const Offers& offers) {
  return offering(
      error(Code::name, "text touches the quote that ends a name", "type a space behind the quote"),
      offers);
}

Diagnostic name_with_remark(std::string_view second, const Offers& offers) {
  return offering(error(Code::name, format("a name is one word: '{}' is not understood", second),
                        offers.empty() ? std::string("'; ' before a remark")
                                       : "as a remark: " + either(offers)),
                  offers);
}

Diagnostic name_behind(std::string_view bearing, const Offers& offers) {
  return offering(error(Code::name, format("'{}' stands where the name belongs", bearing),
                        "the name comes first: " + either(offers)),
                  offers);
}

Diagnostic name_character(std::string_view typed) {
  return error(Code::name, format("'{}' cannot be a name", typed),
               "a name has no comma, ; or > and does not start with #");
}

Diagnostic name_mark(std::string_view mark, const Offers& offers) {
  return with_slips(
      error(Code::name, format("a name cannot hold '{}'", mark), "a name has no comma, ; or >"),
      offers);
}

Diagnostic accuracy_missing() {
  return error(Code::number, "± needs a figure in metres behind it, not below 0", "such as ±8");
}

Diagnostic datum(std::string_view typed) {
  return error(
      Code::datum, format("positions on datum '{}' are not on WGS 84", typed),
      "convert the positions to WGS 84; GDA2020, NZGD2000, ETRS89 and NAD83 are near enough");
}

Diagnostic already_stated(std::string_view what, Place first) {
  Diagnostic diagnostic =
      error(Code::already_stated, format("{} was already stated", what), "keep one of the two");
  diagnostic.related.push_back({first, "the first one, which is used"});
  return diagnostic;
}

Diagnostic station_repeated(std::string_view name, Place first) {
  Diagnostic diagnostic =
      warning(Code::station_repeated, 20,
              format("station '{}' comes a second time; both blocks are kept", name),
              "another name for one of them, if it is another place");
  diagnostic.related.push_back({first, "the first block"});
  return diagnostic;
}

Diagnostic reading_outside_station() {
  return warning(Code::reading_outside_station, 25, "readings before the first station",
                 "a line such as 'station Q1' above them");
}

Diagnostic tally(std::string_view what, std::size_t said, std::size_t counted) {
  return warning(Code::tally, 45,
                 format("the tally says {} {}, the log has {}", said, what, counted),
                 "was a line lost, or typed twice?");
}

Diagnostic declination_side(std::string_view typed) {
  return make(Code::declination_side, Severity::error, setting_weight,
              format("'{}' has no side", typed),
              typed.starts_with('-')   ? format("{}W?", typed.substr(1))
              : typed.starts_with('+') ? format("{}E?", typed.substr(1))
                                       : format("{0}E or {0}W?", typed));
}

Diagnostic declination_twice(std::string_view typed, bool negative, bool east) {
  const std::string_view figure = typed.substr(0, typed.find_first_of("eEwW"));
  const std::size_t sign = figure.find_first_of("0123456789.");
  const auto bare = figure.substr(std::min(sign, figure.size()));
  const std::string_view trimmed = bare.substr(0, bare.find_last_not_of(" \t") + 1);
  // A minus before E means west. Before W it may be a habit, or it may mean east.
  std::string help =
      negative ? format("{0}W or {0}E?", trimmed) : format("{}{}?", trimmed, east ? 'E' : 'W');
  if (negative && east) help = format("{}W?", trimmed);
  return make(Code::declination_side, Severity::error, setting_weight,
              format("'{}' has a sign and a letter", typed),
              help + " the letter alone says the side");
}

Diagnostic accuracy_zero(std::string_view typed, std::string_view example) {
  return error(Code::number, format("accuracy '{}' is not above 0", typed),
               format("one standard error, such as {}", example));
}

Diagnostic accuracy_percent(std::string_view typed, bool percent_wanted) {
  if (percent_wanted)
    return error(Code::number, format("'{}' lacks its %", typed), format("{}%?", typed));
  return error(Code::number, format("'{}' is no angle", typed), "degrees, such as 0.5");
}

Diagnostic declination_missing(bool set_known) {
  return warning(Code::declination_missing, 90,
                 set_known ? "no declination is known: bearings stay magnetic, less what was set"
                           : "no declination is known: bearings stay magnetic",
                 "add a line such as 'declination 24.6E' above, or pass --declination");
}

Diagnostic declination_large(std::string_view typed, bool impossible) {
  if (impossible)
    return make(Code::declination_large, Severity::error, setting_weight,
                format("'{}' is over 180 degrees", typed), "");
  return warning(Code::declination_large, 85, format("'{}' is over 60 degrees", typed),
                 "it is so large only near a magnetic pole, where a compass is of little use");
}

Diagnostic set_missing(double declination) {
  return warning(
      Code::set_missing, 80,
      format("assuming the dial was set to 0; the declination is {}", lettered(declination)),
      "'set 0' if nothing was turned into the dial; 'declination as-set' if the right declination "
      "was");
}

Diagnostic option_overridden(std::string_view what, std::string_view log, std::string_view option) {
  return warning(Code::option_overridden, 70,
                 format("the log says {} {}, the command line {}; the log takes precedence", what,
                        log, option),
                 format("leave out --{}, or correct the log", what));
}

Diagnostic kinds_full(std::string_view word, std::size_t most) {
  return error(Code::word_taken,
               format("'{}' cannot be given a meaning: the log has {} kinds", word, most),
               "use one kind for many readings");
}

Diagnostic word_taken(std::string_view word) {
  return error(Code::word_taken, format("'{}' already means something", word),
               "choose another word");
}

Diagnostic date(std::string_view typed, std::string_view meant) {
  return error(
      Code::date, format("'{}' is not a date", typed),
      meant.empty() ? std::string("year-month-day, such as 2026-02-14") : format("{}?", meant));
}

Diagnostic time(std::string_view typed, std::string_view meant) {
  return make(Code::time, Severity::error, line_weight, format("'{}' is not a time of day", typed),
              meant.empty() ? std::string("hours:minutes, such as 09:40") : format("{}?", meant));
}

Diagnostic date_order(std::string_view date, std::string_view before) {
  return warning(Code::date_order, 30, format("date {} comes after {} in the log", date, before),
                 "are pages out of order, or is a date mistyped?");
}

std::string either(const std::vector<std::string>& things) {
  std::string text;
  for (std::size_t i = 0; i < things.size(); ++i) {
    if (i > 0) text += i + 1 < things.size() ? ", " : " or ";
    text += format("'{}'", things[i]);
  }
  return text;
}

std::string either(const Offers& offers) {
  std::string text;
  for (std::size_t i = 0; i < offers.size(); ++i) {
    if (i > 0) text += i + 1 < offers.size() ? ", " : " or ";
    text += format("'{}'", offers[i].shown);
    if (!offers[i].meaning.empty()) text += " for " + offers[i].meaning;
  }
  return text;
}

Diagnostic offering(Diagnostic diagnostic, const Offers& offers) {
  for (const Offer& offer : offers)
    diagnostic.fixes.push_back(offer.fix);
  return diagnostic;
}

Diagnostic with_slips(Diagnostic diagnostic, const Offers& offers) {
  if (!offers.empty()) diagnostic.help = either(offers) + "?";
  return offering(std::move(diagnostic), offers);
}

Diagnostic number(std::string_view typed, std::string_view help, const Offers& offers) {
  return offering(error(Code::number, format("'{}' is not a plain number", typed),
                        offers.empty() ? std::string(help) : either(offers)),
                  offers);
}

Diagnostic number_dash(std::string_view figure, const Offers& offers) {
  std::string help = figure.empty() ? "leave out the dash" : format("{0}, or minus {0}?", figure);
  if (offers.size() > 1) {
    help += ' ' + either(offers);
  } else if (!offers.empty()) {
    help = either(offers);
  }
  return offering(
      error(Code::number, "this dash could be a minus sign or a hyphen", std::move(help)), offers);
}

Diagnostic number_spaced(std::string_view typed, std::string_view joined) {
  return error(Code::number, format("'{}' is two figures", typed), format("{}?", joined));
}

Diagnostic number_minutes(std::string_view typed) {
  return error(Code::number, format("'{}' is not an angle", typed),
               "minutes and seconds must be below 60; only the last may have decimals");
}

Diagnostic decimal_comma(std::string_view typed, const Offers& offers) {
  return offering(
      error(Code::decimal_comma, format("'{}' has a comma between digits", typed),
            offers.empty()
                ? std::string("type a point for decimals; between two readings, a space behind "
                              "the comma")
                : either(offers)),
      offers);
}

Diagnostic unknown_word(std::string_view word, std::string_view help) {
  return error(Code::unknown_word, format("'{}' is not understood here", word), std::string(help));
}

Diagnostic unknown_start(std::string_view word, std::string_view help) {
  return make(Code::unknown_word, Severity::error, line_weight,
              format("'{}' is neither a keyword nor a kind", word), std::string(help));
}

std::string advice_on_words(std::string_view word, bool may_be_kind) {
  if (!may_be_kind) return "'note' before free text";
  return format(
      "'note' before free text; 'kind {0} plane' or 'kind {0} line' above for a kind of your own",
      word);
}

std::string advice_on_reading(std::string_view kind, std::string_view attitude) {
  if (kind.empty()) return "a line with a reading starts with its kind, such as bedding";
  return format("a line with a reading starts with its kind: '{} {}'", kind, attitude);
}

std::string advice_on_kind(std::string_view word, bool is_line, std::uint32_t count) {
  const std::string declared = format("'kind {} {}'", word, is_line ? "line" : "plane");
  const std::string shortened = format("'short {} {}'", word, is_line ? "lineation" : "bedding");
  if (count < 2)
    return format("{} above for a kind of your own; {} if it stands for one", declared, shortened);
  return format(
      "{} lines begin so: {} above them if it stands for that kind; {} for a kind of your own",
      count, shortened, declared);
}

Diagnostic misspelt_station(std::string_view word) {
  return error(Code::unknown_word, format("'{}' is neither a keyword nor a kind", word),
               "station? what stands below belongs to no named station until then");
}

Diagnostic attitude_without_kind(std::string_view line, std::string_view kind) {
  return error(Code::unknown_word, "this reading has no kind",
               kind.empty() ? format("bedding {}?", line) : format("{} {}?", kind, line));
}

Diagnostic trailing_text(std::string_view typed, std::string_view help) {
  return error(Code::trailing_text, format("'{}' follows a complete statement", typed),
               help.empty() ? std::string("'; ' before a remark") : std::string(help));
}

Diagnostic heading(std::string_view why) {
  return error(Code::heading, format("the heading cannot be read: {}", why),
               "name a text file in the log's own folder, or below it");
}

Diagnostic heading_misplaced() {
  return error(Code::heading, "a heading stands above everything else",
               "move the line to the head of the log");
}

Diagnostic not_in_heading(std::string_view word) {
  return error(Code::heading, format("a heading file cannot hold '{}'", word),
               "it holds settings, kinds, short words and landmarks; move the line to the log");
}

Diagnostic unanswered(std::string_view question) {
  return error(
      Code::unanswered,
      question.empty() ? std::string("an open question") : format("an open question: {}", question),
      "correct the statement if need be, and delete the word ask");
}

Diagnostic encoding_byte(unsigned char byte, Encoding encoding) {
  if (encoding == Encoding::windows_1252)
    return error(Code::encoding, format("byte 0x{:02X} is no character of windows-1252", byte),
                 "leave --encoding out if the file is UTF-8; else save it as UTF-8");
  return error(Code::encoding, format("byte 0x{:02X} is not UTF-8", byte),
               "save as UTF-8, or pass --encoding windows-1252");
}

Diagnostic encoding_utf_16() {
  return error(Code::encoding, "the file is UTF-16", "save it as UTF-8");
}

Diagnostic control_character(unsigned code) {
  return error(Code::control_character, format("control character U+{:04X}", code), "delete it");
}

Diagnostic line_length(std::size_t bytes, std::size_t limit) {
  return error(Code::line_length,
               format("the line has {} bytes; at most {} are read", bytes, limit),
               "break it into statements, one a line");
}

Diagnostic remark_reading(std::string_view remark) {
  return warning(Code::remark_reading, 50,
                 format("remark '{}' is a reading, which counts nowhere", remark),
                 "', ' in place of ';' for another reading of the surface");
}

Diagnostic facing_twice(std::string_view typed, bool same) {
  return error(Code::trailing_text,
               same ? format("'{}' is said twice", typed)
                    : format("'{}' contradicts the facing before it", typed),
               "keep one of the two");
}

Diagnostic readings_wait(Question question, std::uint32_t count) {
  constexpr std::string_view by_rule =
      "'rule right' (down to the right, looking along the strike) or 'rule left'";
  const auto ask = [count](Code code, std::string_view readings, std::string_view what,
                           std::string help) {
    return make(code, Severity::error, setting_weight,
                format("{} {} wait for {}", count, readings, what), std::move(help));
  };
  switch (question) {
    case Question::side:
      return ask(Code::dip_side_missing, "planes", "a side, or a rule",
                 format("{} above the first, or the side in each: N62E 37 NW", by_rule));
    case Question::side_or_order:
      return ask(
          Code::dip_side_missing, "planes",
          "'order direction/dip', or 'order strike/dip' with a rule",
          format("'order direction/dip' above the first; or 'order strike/dip' and {}", by_rule));
    case Question::dip_first:
      return ask(Code::pair_order, "planes",
                 "'order dip/direction', or 'order dip/strike' with a rule",
                 format("'order dip/direction' above the first, or > in each (37 > 332); or 'order "
                        "dip/strike' and {}",
                        by_rule));
    case Question::order_of_plane:
      return ask(Code::pair_order, "planes", "an order",
                 format("'order direction/dip' or 'order dip/direction' above the first; or 'order "
                        "strike/dip' or 'order dip/strike' and {}",
                        by_rule));
    case Question::plunge_first:
      return ask(Code::pair_order, "lines", "'order plunge/trend'",
                 "'order plunge/trend' above the first; or > in each: 35 > 310");
    case Question::order_of_line:
      return ask(Code::pair_order, "lines", "an order",
                 "'order trend/plunge' or 'order plunge/trend' above the first");
    case Question::pace:
      break;
  }
  return ask(Code::pace_missing, "legs", "the length of a pace",
             "a line such as 'pace 0.76m' above the first, with your own length");
}

void add_waiting(Diagnostic& diagnostic, std::uint32_t count, std::string_view who,
                 std::string_view what) {
  diagnostic.message += count == 1 ? format("; 1 {} waits for this {}", who, what)
                                   : format("; {} {}s wait for this {}", count, who, what);
  diagnostic.weight = std::max(diagnostic.weight, setting_weight);
}

}  // namespace lodebook::notebook::wording
