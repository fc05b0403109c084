// SPDX-License-Identifier: MIT
// Pages of `lodebook explain` on settings and text.
#pragma once

#include <algorithm>
#include <array>

#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::notebook::pages {

using enum Code;
using enum Severity;

/// A log whose note is one byte longer than a line may be (64 KiB).
inline constexpr auto log_with_long_line = [] {
  constexpr std::string_view head = "station Q1\n  note ";
  constexpr std::size_t line_limit = 64 * 1024;
  constexpr std::size_t line_start = head.find('\n') + 1;
  std::array<char, line_start + line_limit + 2> text{};
  text.fill('x');
  std::copy(head.begin(), head.end(), text.begin());
  text.back() = '\n';
  return text;
}();

inline constexpr auto of_log = std::to_array<CodePage>({
    // ---- settings
    {declination_side, "declination-side", error, "a declination or set has no E or W",
     "An angle alone does not say to which side the needle was off, and the wrong side doubles the "
     "error. Nothing is assumed, not even from the sign; the statement is void.",
     R"(declination 24.6
)",
     "Write 24.6E if magnetic north lies east of true north, 24.6W if west. A 0 needs no letter."},
    {declination_missing, "declination-missing", warning, "no declination is known",
     "Without one no bearing can be turned to true north. Bearings stay magnetic (less what was "
     "set on the dial), and every row names that north. It is said once a log.",
     R"(station Q1
  bedding N85E 32N
)",
     "Add a line with the declination of the place and year, such as declination 24.6E, or pass "
     "--declination 24.6E."},
    {declination_large, "declination-large", warning, "a declination is very large",
     "Over 60 degrees happens only near the magnetic poles, where a compass hardly works, so it is "
     "kept with a warning. Over 180 degrees cannot be and is an error.",
     R"(set 0
declination 65E
station Q1
  bedding N85E 32N
)",
     "Check the figure; a decimal point may be missing."},
    {declination_model, "declination-model", error,
     "the geomagnetic model cannot give the declination",
     "`declination model` takes the declination of the station's own place and date from the "
     "models that are built in. Without a date, without a position here or above, or outside the "
     "years 1900 to 2030, they have none, and the bearings stay magnetic, as every row says. Each "
     "cause is said once a log; the report names the stations.",
     R"(set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Add the date above the station (date 2026-02-14), and its position (at), or state the "
     "declination as a figure."},
    {declination_sign, "declination-sign", warning, "a declination has the wrong side",
     "The geomagnetic model has nearly the same declination for this place and day, but on the "
     "other side of north. East for west is the commonest slip of all, and it turns every bearing "
     "by twice the declination. The statement holds as it stands. It is said once a declination, "
     "and again where it is off by five degrees more.",
     R"(date 2026-02-14
set 0
declination 24.6W
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Look at the map's margin: east if magnetic north is drawn to the right of true north. "
     "Correct the letter, or the position if that has the wrong hemisphere."},
    {declination_stale, "declination-stale", warning,
     "a declination is not the one of this place and day",
     "It is off from the geomagnetic model by more than a degree and by more than the "
     "uncertainties of both. Declination changes over the years, by a tenth of a degree a year and "
     "more, and old maps print that of their own; the help names the year in which the stated one "
     "was true here. The statement holds as it stands. It is said once a declination, and again "
     "where it is off by five degrees more.",
     R"(date 2026-02-14
set 0
declination 22E
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
)",
     "Use the declination of the day (declination model takes it from the model), or correct the "
     "date or the position. Where rocks are magnetic the statement may be right and the model "
     "wrong."},
    {weak_field, "weak-field", warning, "the field is too weak for a compass",
     "Near the magnetic poles the field points down, and little of it is left to turn a needle. "
     "Under 6000 nT of horizontal field a compass is sluggish and its declination doubtful; under "
     "2000 nT there is no compass, and declination model gives an error there instead of a "
     "correction. Each of these is said once a log.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 72.5N 95W
  bedding N85E 32N
)",
     "Take directions that do not come from a needle, or check the compass against a known "
     "direction and state what you find."},
    {position_borrowed, "position-borrowed", note, "a station's place is taken from above",
     "The declination of the model, or grid north, is wanted for this station, which has no "
     "position. That of the last station above is taken, or of the last landmark; over a day's "
     "walk the difference is small. The station itself stays without a position.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N85E 32N
station Q2
  bedding N84E 31N
)",
     "Nothing to do if the station is near. Otherwise give it a position with at."},
    {grid_unknown, "grid-unknown", warning, "grid north is not known without a position",
     "--north grid turns bearings to the north of the map's grid, which leans from true north by "
     "the convergence of each place. Without a position here or above it is not known; bearings "
     "refer to true north, as every row says. It is said once a log.",
     R"(# lodebook reduce --north grid
set 0
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Give the station a position with at, or ask for --north true."},
    {set_missing, "set-missing", warning, "the log does not say what was set on the dial",
     "The log gives a declination of more than a degree but not what was turned into the dial. "
     "Nothing is assumed to have been, so that the whole declination is added. If it had been set, "
     "every bearing is now corrected twice. It is said once a log.",
     R"(declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Look at your compass. Write set 0 if its dial is not turned, set 24.6E if it is, or "
     "declination as-set if it was set right."},
    {set_side, "set-side", warning, "the dial is set to the wrong side",
     "What was turned into the dial and the declination are nearly the same, but on two sides of "
     "north, so that their difference, and not nothing, is added to every bearing. Someone who "
     "sets a compass sets it to the declination; one of the two letters is probably wrong. It is "
     "said once a log.",
     R"(set 24W
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Look at the compass, and correct the letter of set or of declination. If the dial really "
     "stood there, nothing is to be done."},
    {option_overridden, "option-overridden", warning, "the log and an option disagree",
     "An option of the command line stands in for what a log leaves out. This log says otherwise, "
     "and the log wins: it was written by the person who held the compass.",
     R"(# lodebook check --declination 20E
set 0
declination 24.6E
station Q1
  bedding N85E 32N
)",
     "Drop the option for this log; or, if the log is wrong, correct it there, where it stays."},
    {word_taken, "word-taken", error,
     "a word that already means something cannot be given another meaning",
     "`short` and `kind` add words of your own. Keywords, kinds, points of the compass and the "
     "words rake, at, to, on, from and back already mean something; changing them would change "
     "other lines without a trace.",
     R"(short rake bedding
)",
     "Choose another word."},
    {date, "date", error, "not a date, or no such day",
     "Dates are year-month-day with two-digit months and days, since 3/4 means March to some and "
     "April to others. The statement is void and the date before it still holds. `lodebook "
     "declination` takes dates from 1900-01-01 to 2030-01-01, the years of its models.",
     R"(date 2026-02-30
)",
     "Write it as 2026-02-14."},
    {time, "time", error, "not a time of day",
     "A time is hours and minutes on the 24-hour clock with a colon. The statement is void.",
     R"(station Q1
  time 9.40
)",
     "Write 09:40, or 21:40 for the evening."},
    {date_order, "date-order", warning, "a date is earlier than the one before it",
     "A log goes forward in time. Perhaps the pages are in another order, perhaps a month is "
     "wrong. Both dates are kept.",
     R"(date 2026-02-14
station Q1
date 2026-02-13
station Q2
)",
     "Check the dates; if the pages were typed out of order, nothing else depends on it."},

    // ---- text
    {number, "number", error, "not a plain decimal number",
     "Numbers are digits with at most one point. 1e3, nan, 0x10 and two points in one number are "
     "not taken. Nor is a dash that touches the word before it, which may be a minus or only a "
     "stroke, nor minutes of 60 or more.",
     R"(station Q1
  elevation 1e3
)",
     "Write the number out: 1000. Put a space before a minus sign, and none behind it."},
    {decimal_comma, "decimal-comma", error, "a comma stands between two digits",
     "It may be a decimal comma, or the comma between two readings with its space left out. The "
     "first would be one reading, the second two, so neither is guessed.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85,5E 32N
)",
     "Write decimals with a point (N85.5E), and put a space behind the comma between readings."},
    {unknown_word, "unknown-word", error, "a word is not understood",
     "The first word of a line must be a keyword or a kind, and some words behind it must be, too. "
     "This one is neither. The nearest known word is offered. No text is skipped without saying "
     "so.",
     R"(set 0
declination 24.6E
station Q1
  beding N85E 32N
)",
     "Correct the spelling; declare a kind of your own (kind gneissosity plane); or begin the line "
     "with note if it is only text."},
    {trailing_text, "trailing-text", error, "text stands behind a complete statement",
     "The statement is whole, and more follows that is part of nothing. Since it may change what "
     "was meant, it is not ignored.",
     R"(set 0
declination 24.6E
station Q1
  bedding N85E 32N weathered
)",
     "Put a semicolon before a remark that should be kept with the reading, or # before a "
     "comment."},
    {encoding, "encoding", error, "the text is not UTF-8",
     "The log holds bytes that are not UTF-8, the usual encoding of text. Old editors save "
     "accented letters and degree signs in another one. Which one cannot be known from the bytes "
     "alone.",
     "station Q1\n  note caf\xE9\n", "Save the log as UTF-8, or pass --encoding windows-1252."},
    {control_character, "control-character", error, "the line holds a control character",
     "A byte that is no text, such as the page break or vertical tab that pasting from a document "
     "leaves behind. It is invisible and could hide something, so the line is not used.",
     "station Q1\n  note upper\x1Flower\n",
     "Delete the character; the caret in the report stands under it."},
    {line_length,
     "line-length",
     error,
     "a line is longer than 64 KiB",
     "No one types such a line. The file is probably not a station log, or has lost its line ends.",
     {log_with_long_line.data(), log_with_long_line.size()},
     "Check that the file is the log, and that its lines end."},
});

}  // namespace lodebook::notebook::pages
