// SPDX-License-Identifier: MIT
// The words of diagnostics on stations, settings and text.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/earth/geomagnetic.hpp>

#include "wording_parts.hpp"

namespace lodebook::notebook::wording {

using fmt::format;

Diagnostic name_missing(std::string_view what) {
  return error(Code::name, format("{} has no name", what), "one word, such as Q1 or Trig-Dome");
}

Diagnostic name_of_two_words(std::string_view second, std::string_view joined) {
  return error(Code::name, format("a name is one word: '{}' is not understood", second),
               format("{}?", joined));
}

Diagnostic name_character(std::string_view typed) {
  return error(Code::name, format("'{}' cannot be a name", typed),
               "a name has no comma, ; or > and does not start with #");
}

Diagnostic accuracy_missing() {
  return error(Code::number, "a figure in metres must follow the plus-or-minus", "±8");
}

Diagnostic datum(std::string_view typed) {
  return error(
      Code::datum, format("datum '{}' is not WGS 84 at compass accuracy", typed),
      "convert the positions first; WGS84, GDA2020, NZGD2000, ETRS89 and NAD83 are taken as "
      "they are");
}

Diagnostic already_stated(std::string_view what, Place first) {
  Diagnostic diagnostic =
      error(Code::already_stated, format("{} was already stated", what), "keep one of the two");
  diagnostic.related.push_back({first, "the first one, which counts"});
  return diagnostic;
}

Diagnostic station_repeated(std::string_view name, Place first) {
  Diagnostic diagnostic = warning(Code::station_repeated, 20,
                                  format("station '{}' has a block already; both are kept", name),
                                  "another name, if it is another place");
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
                 "a line lost, or typed twice?");
}

Diagnostic declination_side(std::string_view typed) {
  return make(Code::declination_side, Severity::error, setting_weight,
              format("'{}' has no side", typed),
              typed.starts_with('-')   ? format("{}W?", typed.substr(1))
              : typed.starts_with('+') ? format("{}E?", typed.substr(1))
                                       : format("{0}E or {0}W?", typed));
}

Diagnostic declination_missing(bool set_known) {
  return warning(Code::declination_missing, 90,
                 set_known ? "no declination is known: bearings are read - set, magnetic"
                           : "no declination is known: bearings stay magnetic",
                 "a line such as 'declination 24.6E' above, or --declination");
}

Diagnostic declination_large(std::string_view typed, bool impossible) {
  if (impossible)
    return make(Code::declination_large, Severity::error, setting_weight,
                format("'{}' is over 180 degrees", typed), "");
  return warning(Code::declination_large, 85, format("'{}' is over 60 degrees", typed),
                 "so much only near a magnetic pole, where a compass is of little use");
}

Diagnostic set_missing(double declination) {
  return warning(
      Code::set_missing, 80,
      format("no 'set': the dial is taken as set to 0, under a declination of {}",
             lettered(declination)),
      "'set 0' if nothing was turned into the dial; 'declination as-set' if it was right");
}

Diagnostic option_overridden(std::string_view what, std::string_view log, std::string_view option) {
  return warning(
      Code::option_overridden, 70,
      format("the log says {} {}, the command line {}; the log's holds", what, log, option),
      format("leave out --{}, or correct the log", what));
}

Diagnostic kinds_full(std::string_view word, std::size_t most) {
  return error(Code::word_taken,
               format("'{}' cannot be given a meaning: the log has {} kinds", word, most),
               "a kind for many");
}

Diagnostic word_taken(std::string_view word) {
  return error(Code::word_taken, format("'{}' already means something", word), "another word");
}

Diagnostic date(std::string_view typed, std::string_view meant) {
  return error(
      Code::date, format("'{}' is no date", typed),
      meant.empty() ? std::string("year-month-day, such as 2026-02-14") : format("{}?", meant));
}

Diagnostic time(std::string_view typed) {
  return make(Code::time, Severity::error, line_weight, format("'{}' is no time of day", typed),
              "hours:minutes, such as 09:40");
}

Diagnostic date_order(std::string_view date, std::string_view before) {
  return warning(Code::date_order, 30, format("{} comes after {} in the log", date, before),
                 "pages out of order, or a date mistyped?");
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
  std::string help = figure.empty() ? "leave it out" : format("{0}, or minus {0}?", figure);
  if (offers.size() > 1) {
    help += ' ' + either(offers);
  } else if (!offers.empty()) {
    help = either(offers);
  }
  return offering(
      error(Code::number, "a dash that could be a minus sign or a hyphen", std::move(help)),
      offers);
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

Diagnostic unknown_start(std::string_view word, std::optional<std::string_view> nearest) {
  return make(Code::unknown_word, Severity::error, line_weight,
              format("no statement or kind is called '{}'", word),
              nearest ? format("{}?", *nearest)
                      : format("'note' before free text; 'kind {} plane' or 'kind {} line' for a "
                               "kind of your own",
                               word, word));
}

Diagnostic attitude_without_kind(std::string_view line, std::string_view kind) {
  return error(Code::unknown_word, "a reading without its kind",
               kind.empty() ? format("bedding {}?", line) : format("{} {}?", kind, line));
}

Diagnostic trailing_text(std::string_view typed, std::string_view help) {
  return error(Code::trailing_text, format("'{}' after a complete statement", typed),
               help.empty() ? std::string("'; ' before a remark") : std::string(help));
}

Diagnostic encoding_byte(unsigned char byte) {
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
  return error(Code::line_length, format("a line of {} bytes; at most {} are read", bytes, limit),
               "break it into statements, one a line");
}

}  // namespace lodebook::notebook::wording
