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
     "An angle alone does not say on which side of true north the needle points, and the wrong "
     "side doubles the error. Nothing is assumed, not even from a sign; the statement is void.",
     R"(declination 24.6
)",
     "Write 24.6E if magnetic north lies east of true north, 24.6W if west. A 0 needs no letter."},
    {declination_missing, "declination-missing", warning, "no declination is known",
     "Without a declination no bearing can be turned to true north. Bearings stay magnetic (what "
     "was set on the dial is still subtracted), and every row says so. Reported once a log.",
     R"(station Q1
  bedding N62E 37NW
)",
     "Add a line with the declination of the place and year, such as 'declination 24.6E', or pass "
     "--declination 24.6E."},
    {declination_large, "declination-large", warning, "a declination is very large",
     "A declination over 60 degrees occurs only near the magnetic poles, where a compass hardly "
     "works, so it is kept with a warning. Over 180 degrees is impossible and is an error.",
     R"(set 0
declination 65E
station Q1
  bedding N62E 37NW
)",
     "Check the figure; a decimal point may be missing."},
    {declination_model, "declination-model", error,
     "the geomagnetic model cannot give the declination",
     "'declination model' takes the declination of each station's own place and date from the "
     "built-in models. They need a date from 1900 to 2030, and a position here or above. Where one "
     "of these is missing the bearings stay magnetic, as every row says. Each cause is reported "
     "once a log; the report names the stations.",
     R"(set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N62E 37NW
)",
     "Above the station add the date ('date 2026-02-14'), and give the station its position ('at "
     "44.6891S 169.0144E'); or state the declination as a figure ('declination 24.6E')."},
    {declination_sign, "declination-sign", warning, "a declination is on the wrong side",
     "The geomagnetic model has nearly the same declination for this place and day, but on the "
     "other side of north. East for west is the commonest slip of all, and it turns every bearing "
     "by twice the declination. The declination is used as stated. Reported once for each "
     "declination, and again where it is wrong by five degrees more.",
     R"(date 2026-02-14
set 0
declination 24.6W
station Q1 at 44.6891S 169.0144E
  bedding N62E 37NW
)",
     "Look at the map's margin: the declination is east if magnetic north is drawn to the right of "
     "true north. Correct the letter, or the position if that has the wrong hemisphere."},
    {declination_stale, "declination-stale", warning,
     "a declination does not fit this place and day",
     "It differs from the geomagnetic model by more than a degree and by more than the "
     "uncertainties of both. Declination drifts by a tenth of a degree a year or more, and an old "
     "map prints the one of its own year; the help names the year in which the stated one was true "
     "here. The declination is used as stated. Reported once for each declination, and again where "
     "it is wrong by five degrees more.",
     R"(date 2026-02-14
set 0
declination 22E
station Q1 at 44.6891S 169.0144E
  bedding N62E 37NW
)",
     "Use the declination of the day ('declination model' takes it from the model), or correct the "
     "date or the position. Over magnetic rock the stated figure may be right and the model "
     "wrong."},
    {weak_field, "weak-field", warning, "the field is too weak for a compass",
     "Near the magnetic poles the field points almost straight down, and little of it is left to "
     "turn a needle. Below 6000 nT of horizontal field a compass is sluggish and its declination "
     "doubtful. Below 2000 nT a compass is useless, and 'declination model' gives an error instead "
     "of a correction. Each is reported once a log.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 72.5N 95W
  bedding N62E 37NW
)",
     "Take directions by other means than a needle, or check the compass against a known direction "
     "and state the declination that you find."},
    {position_borrowed, "position-borrowed", note,
     "a station without a position uses the one above",
     "The declination from the model, or grid north, is needed for this station, which has no "
     "position. The position of the last station above is used, or else that of the last landmark; "
     "over a day's walk the difference is small. The station itself stays without a position.",
     R"(date 2026-02-14
set 0
declination model
station Q1 at 44.6891S 169.0144E
  bedding N62E 37NW
station Q2
  bedding N60E 35NW
)",
     "Nothing to do if the two are close. Otherwise give the station its position with 'at'."},
    {grid_unknown, "grid-unknown", warning, "grid north needs a position",
     "--north grid turns bearings to the north of the map's grid, which differs from true north by "
     "the convergence of each place. Without a position, here or above, the convergence is not "
     "known; bearings refer to true north, as every row says. Reported once a log.",
     R"(# lodebook reduce --north grid
set 0
declination 24.6E
station Q1
  bedding N62E 37NW
)",
     "Give the station its position with 'at', or pass --north true."},
    {set_missing, "set-missing", warning, "the log does not say what was set on the dial",
     "The log gives a declination of more than a degree, but not what was turned into the dial. "
     "Nothing is assumed to have been turned in, so the whole declination is added. If it had been "
     "turned in, every bearing is now corrected twice. Reported once a log.",
     R"(declination 24.6E
station Q1
  bedding N62E 37NW
)",
     "Look at your compass. Write 'set 0' if nothing is turned into the dial, 'set 24.6E' if that "
     "is, or 'declination as-set' if the dial was set correctly."},
    {set_side, "set-side", warning, "the dial may be set to the wrong side",
     "What was turned into the dial and the declination are nearly the same figure, but on "
     "opposite sides of north, so that twice as much is added to every bearing, instead of "
     "nothing. A compass is set to the declination, so one of the two letters is probably wrong. "
     "Reported once a log.",
     R"(set 24W
declination 24.6E
station Q1
  bedding N62E 37NW
)",
     "Look at the compass, and correct the letter of 'set' or of 'declination'. If the dial really "
     "was set like this, leave it."},
    {option_overridden, "option-overridden", warning, "the log and an option disagree",
     "A command-line option fills in what a log leaves out. This log states something else, and "
     "the log wins: it was written by the person who held the compass.",
     R"(# lodebook check --declination 20E
set 0
declination 24.6E
station Q1
  bedding N62E 37NW
)",
     "Drop the option for this log; or, if the log is wrong, correct the log."},
    {word_taken, "word-taken", error, "a word that already has a meaning cannot be given another",
     "'short' and 'kind' add words of your own. Keywords, kinds, points of the compass and the "
     "words rake, at, to, on, from and back already have a meaning; another one would silently "
     "change other lines.",
     R"(short rake bedding
)",
     "Choose another word."},
    {date, "date", error, "not a date, or no such day",
     "A date is year-month-day, with two digits for month and day, because 3/4 is 4 March to some "
     "and 3 April to others. The statement is void and the date before it still holds. 'lodebook "
     "declination' takes dates from 1900-01-01 to 2030-01-01, the years of its models.",
     R"(date 2026-02-30
)",
     "Write it as 2026-02-14."},
    {time, "time", error, "not a time of day",
     "A time is hours and minutes on the 24-hour clock, with a colon between them. The statement "
     "is void.",
     R"(station Q1
  time 9.40
)",
     "Write 09:40, or 21:40 for the evening."},
    {date_order, "date-order", warning, "a date is earlier than the one before it",
     "A log goes forward in time. Perhaps the pages were typed out of order, perhaps a month is "
     "wrong. Both dates are kept.",
     R"(date 2026-02-14
station Q1
date 2026-02-13
station Q2
)",
     "Check the dates. If the pages were typed out of order, leave them: each station has its own "
     "date."},
    {heading, "heading", error, "a heading file cannot be used",
     "'heading FILE' at the head of a log puts the lines of FILE before the log's own. FILE lies "
     "in "
     "the log's folder or below it: a name that begins with / or holds .. is refused, and so is "
     "what is no regular file, is larger than 1 MiB, or is named by a log from standard input. A "
     "heading file holds settings, kinds, short words and landmarks; no station, reading, tally, "
     "question or further heading.",
     R"(heading ../dial.txt
station Q1
)",
     "Put the file beside the log, or pass --heading FILE, which takes any file."},

    // ---- text
    {number, "number", error, "not a plain decimal number",
     "A number is digits with at most one decimal point. 1e3, nan, 0x10 and two points in one "
     "number are refused. So is a dash that touches the word before it, which may be a minus or "
     "only a separator, and so are minutes of 60 or more.",
     R"(station Q1
  elevation 1e3
)",
     "Write the number out: 1000. Put a space before a minus sign, and none after it."},
    {decimal_comma, "decimal-comma", error, "a comma stands between two digits",
     "It may be a decimal comma, or the comma between two readings with its space left out. The "
     "first means one reading, the second two, so neither is assumed.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62,5E 37NW
)",
     "Write decimals with a point (N62.5E), and put a space after the comma between readings."},
    {unknown_word, "unknown-word", error, "a word is not understood",
     "A line begins with a keyword or a kind, and some words after it must be known, too. This one "
     "is not. The nearest known word is offered. No text is skipped silently. A line that was "
     "probably meant to begin a station, such as 'staton Q2', does so, but without name and "
     "position: what stands below it is not the station's above.",
     R"(set 0
declination 24.6E
station Q1
  beding N62E 37NW
)",
     "Correct the spelling; declare a kind of your own ('kind gneissosity plane'); or begin the "
     "line with 'note' if it is only text."},
    {trailing_text, "trailing-text", error, "extra text after a complete statement",
     "The statement is complete, and more text follows that belongs to nothing. It may change what "
     "was meant, so it is not ignored.",
     R"(set 0
declination 24.6E
station Q1
  bedding N62E 37NW weathered
)",
     "Put a semicolon before a remark that is kept with the reading, or # before a comment. If the "
     "text is part of the reading, correct the reading."},
    {unanswered, "unanswered", error, "a statement waits for an answer",
     "'ask' before a statement says that whoever typed it was not sure. The statement is not taken "
     "until the word is deleted: a reading is rejected, a station has no position, and a setting "
     "is as if it were not stated, in this line or above. A line that begins with a kind or short "
     "word that stands behind 'ask' waits with it. The remark, if there is one, is the question.",
     R"(set 0
declination 24.6E
station Q1
  ask bedding N62E 37NW  ; 37 or 57? the page is wet
)",
     "Look at the page, correct the statement if need be, and delete the word 'ask'."},
    {encoding, "encoding", error, "the text is not UTF-8",
     "The log holds bytes that are not UTF-8, the usual encoding of text. Old editors save "
     "accented letters and degree signs in another encoding; which one cannot be told from the "
     "bytes alone.",
     "station Q1\n  note caf\xE9\n", "Save the log as UTF-8, or pass --encoding windows-1252."},
    {control_character, "control-character", error, "the line holds a control character",
     "A byte that is not text, such as a page break or vertical tab that comes with text pasted "
     "from a document. It is invisible and could hide something, so the line is not used.",
     "station Q1\n  note upper\x1Flower\n",
     "Delete the character; the caret in the report points to it."},
    {line_length,
     "line-length",
     error,
     "a line is longer than 64 KiB",
     "Nobody types such a line. The file is probably not a station log, or has lost its line ends.",
     {log_with_long_line.data(), log_with_long_line.size()},
     "Check that the file is the log, and that each of its lines ends with a line break."},
});

}  // namespace lodebook::notebook::pages
