// SPDX-License-Identifier: MIT
// What a page has said so far, and what its lines become.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "attitude.hpp"
#include "nouns.hpp"
#include "units.hpp"

namespace lodebook::fair_copy {

/// A statement of the copy.
struct Line {
  std::string text;
  /// What it must mean to the strict reader; nothing for what is no attitude.
  std::optional<Meant> meant;
  /// Readings that it holds.
  std::uint32_t readings = 0;
  bool is_note = false;
  Statement::Wait waits = Statement::Wait::none;

  bool is_question() const { return text.starts_with("ask "); }
};

/// A name that sights go to.
struct Mark {
  std::string name;
  std::vector<std::string> words;  ///< folded
  bool is_known = true;            ///< the page says that it is a mark
};

/// What the next line may repeat by a ditto mark.
struct Last {
  std::string kind;
  std::optional<Attitude> attitude;
  std::string facing;
  std::string sense;
  bool kind_behind = false;  ///< the kind stands behind its figures
};

/// Everything that a line may depend on.
struct Page {
  Words words;
  Conventions conventions;
  bool decimal_commas = false;
  bool has_north_east = false;  ///< several bearings such as `N 125 E`
  // ---- what the heading says
  bool has_set = false;
  bool has_declination = false;
  std::map<std::string, KindType> own_kinds;  ///< that a statement has declared
  /// Of these, kinds in its tables that neither the trade nor the page has a word for: asked once.
  std::set<std::string> wanted_kinds;
  /// What a letter in a column of senses means; empty for one that says none.
  std::map<std::string, std::string> sense_letters;
  Units units;
  /// Names in the page's own words, which the table of words keeps as views.
  std::set<std::string> kept;
  // ---- where it is
  bool in_station = false;
  std::string station;
  std::vector<std::string> stations;
  std::set<std::string> series;    ///< stations that the page's order shows
  std::set<std::string> leg_ends;  ///< folded names that legs go to
  std::vector<Mark> marks;
  // ---- the kind in force
  std::string kind;
  std::string list_kind;   ///< of a heading over a list
  std::string plane_kind;  ///< the last plane's
  Last last;
  std::string last_leg;  ///< its statement
  bool below_landmark = false;
  bool is_title = false;  ///< the page's first line is read
  /// By kind, what was read of it at this station.
  std::map<std::string, std::vector<Meant>> neighbours;

  /// It is the name of a station, or of this one.
  bool is_station(std::string_view name) const;
  bool is_here(std::string_view name) const;
  /// `Corner 3` for `C3` where this station is called `Corner 2`; else the name itself.
  std::string full_name(std::string_view name) const;
  /// Lines below may have it as one word.
  void add_name(const std::string& name);
  void add_mark(const std::string& name, bool is_known = true);
  /// Keeps a reading beside which those to come must look likely: the last few, since a page's
  /// readings drift.
  void remember(const std::string& of_kind, const Meant& meant);
  void begin_station(const std::string& name);
  /// From here on its word is one of a kind, whose readings wait for the answer to a question.
  void want_kind(const std::string& name, KindType type);
};

/// A name as a statement has it: its words joined by hyphens, and in quotes where it needs them.
std::string name_text(std::string_view typed);

/// `text` without white space and stray marks at its ends.
std::string_view stripped(std::string_view text);

KindType type_of(const Page& page, std::string_view kind);
bool is_plane(const Page& page, std::string_view kind);
/// A kind that may have a direction alone.
bool may_stand_bare(const Page& page, std::string_view kind);
/// A noun of the trade that is no kind of the language.
bool is_noun(std::string_view kind);
/// `plane`, `line` or `axis`.
std::string_view word_of(KindType type);
/// The statement that declares a kind which the page has not declared yet and the language does not
/// have; nothing for another.
std::optional<Line> declaration_of(Page& page, std::string_view kind);

// ---- the readers of lines: each gives nothing for a line that is not its own

using Lines = std::vector<Line>;

/// A line of a page's heading: dates, the dial, declination, rule, order, pace, own words.
std::optional<Lines> settings_of(std::string_view line, Tokens& tokens, Page& page);
/// What the letters in a column of senses mean: `sense: N normal, R reverse`.
std::optional<Lines> sense_letters_of(std::string_view line, Page& page);
/// Words that the page declares, alone on their line.
std::optional<Lines> own_words_of(std::string_view line, Tokens& tokens, Page& page);
/// A station's heading, a landmark, or what is said of a station: position, height, time.
std::optional<Lines> place_of(std::string_view line, Tokens& tokens, Page& page, bool opens_block,
                              bool stands_alone);
/// Sights and legs.
std::optional<Lines> bearings_of(std::string_view line, Tokens& tokens, Page& page);
/// Attitudes of planes and lines.
std::optional<Lines> readings_of(std::string_view line, Tokens& tokens, Page& page);

}  // namespace lodebook::fair_copy
