// SPDX-License-Identifier: MIT
// The wording of every diagnostic: one factory for each. The message states the fact, and the help
// advises. The caller fills in place and reading.
#pragma once

#include <lodebook/earth/position.hpp>
#include <lodebook/notebook/diagnostic.hpp>
#include <lodebook/notebook/waiting.hpp>
#include <lodebook/notebook/written.hpp>

namespace lodebook::notebook {

/// Text that a help offers to type. A trial has shown that the reader accepts it.
struct Offer {
  Fix fix;
  std::string meaning;  ///< what it means, if the text does not show it; may be empty
  std::string whole;    ///< the statement with the fix, without its first word
  /// What the help shows: for an attitude the whole, otherwise the text if it is clear on its own.
  std::string shown;
};
using Offers = std::vector<Offer>;

}  // namespace lodebook::notebook

namespace lodebook::notebook::wording {

// Offers are texts that the reader accepts in place of what was typed. Settings are lines that make
// the reader accept what was typed, if they stand above it. A help that says what to type quotes
// these alone, because they are known to work.

/// `diagnostic` with offers that correct a slip, such as a stray mark or a letter for a digit. They
/// replace its help; without offers it stays the same.
Diagnostic with_slips(Diagnostic diagnostic, const Offers& offers);

// ---- bearings
Diagnostic quadrant_angle(double angle, QuadrantBearing::Pole pole, QuadrantBearing::Side side,
                          const Offers& offers);
/// `E25N`: the letters are in the wrong order.
Diagnostic quadrant_letters_swapped(std::string_view typed, const Offers& offers);
/// `N50`, `50W`, `N50S`: a letter is missing or wrong. `help` is used if there are no offers.
Diagnostic quadrant_letters(std::string_view typed, std::string_view help, const Offers& offers);
Diagnostic azimuth_range(double azimuth, const Offers& offers);
Diagnostic no_bearing(std::string_view typed, const Offers& offers);
Diagnostic notation_mixed(std::string_view typed, Notation dial);

// ---- planes and lines
Diagnostic dip_range(std::string_view typed, double degrees, const Offers& offers);
Diagnostic dip_side_missing(std::string_view typed, const Offers& offers,
                            const std::vector<std::string>& settings);
/// `N62E 37 N28W`: a bearing where the side should stand.
Diagnostic side_is_bearing(std::string_view typed, const Offers& offers);
Diagnostic dip_side_impossible(std::string_view strike, std::string_view side,
                               const Offers& offers);
/// `N 38 W`; `strike` is how it is typed as a strike alone.
Diagnostic attitude_ambiguous(std::string_view typed, std::string_view strike,
                              const Offers& offers);
/// `37 > 332`, and nothing says whether it is a plane or a line.
Diagnostic plane_or_line(std::string_view typed);
Diagnostic pair_order(std::string_view typed, const Offers& offers,
                      const std::vector<std::string>& settings);
Diagnostic pair_against_order(std::string_view typed, std::string_view order, const Offers& offers);
/// `242 > 37`: a dip or plunge must stand before `>`.
Diagnostic bearing_before_towards(std::string_view typed, const Offers& offers);
Diagnostic plunge_range(std::string_view typed);
/// `from` and `to` name norths; what is missing to go from one to the other is the position, or
/// else the declination.
Diagnostic north_kept(std::string_view from, std::string_view to, bool by_position);
/// A trend alone.
Diagnostic plunge_missing(std::string_view typed);
Diagnostic other_end(std::string_view plunge);
Diagnostic rake_range(std::string_view typed, const Offers& offers);
Diagnostic rake_no_plane(std::string_view why);
Diagnostic rake_end(double off, std::string_view strike);
/// A reading or statement that lacks `part`. `help` is used if there are no offers.
Diagnostic incomplete(std::string_view what, std::string_view part, std::string_view help,
                      const Offers& offers = {});
/// A plane of which only the strike or only the dip was read.
Diagnostic partial(bool strike_alone);
/// `youngs` on a plane that is horizontal, or of which only strike or dip was read.
Diagnostic youngs_without_dip(const Offers& offers);
Diagnostic youngs_along_strike(std::string_view towards, const Offers& offers);
Diagnostic facing_doubtful();
/// `~` or `±` on something that is not a figure of the reading, such as a side.
Diagnostic mark_without_figure(std::string_view typed);
/// A comma inside a reading. `rest`, behind it, is not a reading of its own.
Diagnostic comma_within(std::string_view rest, const Offers& offers);

// ---- sights and legs
Diagnostic slope_range(std::string_view typed, const Offers& offers);
Diagnostic distance_unit(std::string_view typed, bool foot_mark, const Offers& offers);
Diagnostic pace_missing();
/// Two or more readings need the same answer.
Diagnostic readings_wait(Question question, std::uint32_t count);
/// Adds to `diagnostic`, which reports a void statement of `what`, that `count` readings wait for
/// it.
void add_waiting(Diagnostic& diagnostic, std::uint32_t count, std::string_view who,
                 std::string_view what);
Diagnostic landmark_unknown(std::string_view name, std::optional<std::string_view> nearest);
Diagnostic station_unknown(std::string_view name, std::optional<std::string_view> nearest);
Diagnostic own_station(std::string_view name);
Diagnostic back_bearing(double disagreement, double limit, std::string_view help);
/// `of_leg`: it is the slope of a leg, and the leg gives no position.
Diagnostic percent_or_degrees(std::string_view typed, double degrees_if_percent, bool of_leg);

// ---- positions from sights and legs
/// Without a chi-square, the sights have no common point at all. `freedom` counts the degrees of
/// freedom. `help` says what would explain the misfit; it may be empty. If one sight is suspected,
/// the diagnostic is shown there.
Diagnostic sight_misfit(std::optional<double> chi_square, std::size_t freedom, bool one_suspected,
                        std::string_view help);
/// A sight from one stated position to another misses; `off` and `limit` in degrees. If `slips`
/// would explain it, the code is sight-misfit, otherwise sight-off.
Diagnostic sight_off(double off, double limit, std::string_view target, std::string_view slips);
Diagnostic no_fix(std::string_view why, std::string_view help);
Diagnostic legs_without_declination();
Diagnostic weak_cut(double degrees);
Diagnostic no_check();
Diagnostic danger_circle();
Diagnostic implied_declination(double degrees_east, double sigma, std::string_view help);
/// A traverse of `legs` legs, the last of which leads to `to`. Misclosure and length in metres.
Diagnostic misclosure(std::size_t legs, double metres, double length_m, std::string_view to);
Diagnostic heights_disagree(std::size_t count, double lowest_m, double highest_m);
/// `correction` in degrees is to be added to the bearings.
Diagnostic local_attraction(double correction, bool applied);
Diagnostic attraction_unapplied();

// ---- checks across readings
Diagnostic repeat_spread(std::string_view what, double off, double limit, std::string_view help);
Diagnostic line_off_plane(double off, std::string_view plane, double limit, std::string_view help);
Diagnostic plane_unknown(std::string_view kind);
/// The main cause of an uncertainty: a shallow dip or steep plunge, a point of the rose, the
/// accuracy stated for bearings, the plane of a rake, or the declination.
enum class Doubt : std::uint8_t { slope, point, bearing, plane, declination };
Diagnostic strike_uncertain(double sigma, double dip, Doubt cause);
Diagnostic trend_uncertain(double sigma, double plunge, Doubt cause);
Diagnostic doubtful(bool is_leg);
/// A remark that is a complete attitude and nothing else.
Diagnostic remark_reading(std::string_view remark);
/// A second word about the facing of a plane.
Diagnostic facing_twice(std::string_view typed, bool same);

// ---- stations and places
Diagnostic name_missing(std::string_view what);
Diagnostic name_of_two_words(std::string_view second, std::string_view joined,
                             const Offers& offers);
/// A name whose closing quote is missing.
Diagnostic name_unclosed(const Offers& offers);
/// Text that touches the closing quote of a name.
Diagnostic name_touched(const Offers& offers);
/// A name with a colon, and behind it words without a figure: probably a remark.
Diagnostic name_with_remark(std::string_view second, const Offers& offers);
/// A sight with its name behind the bearing.
Diagnostic name_behind(std::string_view bearing, const Offers& offers);
Diagnostic name_character(std::string_view typed);
/// A comma, ; or > inside a name or touching it.
Diagnostic name_mark(std::string_view mark, const Offers& offers);
Diagnostic position(std::string_view typed, const earth::PositionError& error);
/// A zone letter S that the log does not decide.
Diagnostic position_zone_unclear(const earth::WrittenPosition& written);
Diagnostic zone_south(int zone);
Diagnostic accuracy_missing();
Diagnostic datum(std::string_view typed);
Diagnostic already_stated(std::string_view what, Place first);
Diagnostic station_repeated(std::string_view name, Place first);
Diagnostic reading_outside_station();
Diagnostic tally(std::string_view what, std::size_t said, std::size_t counted);

// ---- settings
Diagnostic declination_side(std::string_view typed);
/// A sign and a letter: `-24.6E`.
Diagnostic declination_twice(std::string_view typed, bool negative, bool east);
/// An accuracy that is not above 0.
Diagnostic accuracy_zero(std::string_view typed, std::string_view example);
/// An accuracy in percent where degrees belong, or the other way round.
Diagnostic accuracy_percent(std::string_view typed, bool percent_wanted);
Diagnostic declination_missing(bool set_known);
Diagnostic declination_large(std::string_view typed, bool impossible);
Diagnostic set_missing(double declination);
Diagnostic option_overridden(std::string_view what, std::string_view log, std::string_view option);
Diagnostic word_taken(std::string_view word);
Diagnostic kinds_full(std::string_view word, std::size_t most);
Diagnostic date(std::string_view typed, std::string_view meant);
Diagnostic time(std::string_view typed, std::string_view meant);
Diagnostic date_order(std::string_view date, std::string_view before);

// ---- place and date
/// The declination of the geomagnetic model at a place and date: degrees east, one sigma in
/// degrees, the name of the model, and the ISO date.
struct ModelDeclination {
  double degrees_east = 0;
  double sigma = 0;
  std::string_view model;
  std::string date;
};
Diagnostic model_without_date();
Diagnostic model_without_position();
Diagnostic model_out_of_years(std::string_view date);
Diagnostic model_out_of_heights(double height_m);
/// The same for a date outside a log.
Diagnostic date_outside_models(std::string_view typed);
Diagnostic declination_sign(double declared, const ModelDeclination& model);
/// `true_in` is the decimal year, before or after `year`, in which the declared declination was
/// right; empty if there is none.
Diagnostic declination_stale(double declared, const ModelDeclination& model,
                             std::optional<double> true_in, double year);
/// The angle set on the dial and the declination are on opposite sides of north. Degrees, east
/// positive.
Diagnostic set_side(double set, double declination);
/// The label at a statement that another diagnostic refers to.
std::string stated_here();
/// The label at a station that needs a statement.
std::string needed_here();
/// The horizontal field is too weak for any compass. An error if the log asks the model for the
/// declination, otherwise a warning.
Diagnostic no_compass(double horizontal_nt, bool model_asked);
Diagnostic sluggish_needle(double horizontal_nt);
/// The declination, grid north or both are computed at the nearest position above.
Diagnostic position_borrowed(bool declination, bool grid);
/// Improbably far from the station before it, in metres.
Diagnostic position_far(double metres, std::string_view before);
Diagnostic grid_unknown();

// ---- text
inline constexpr std::string_view figures_look_so = "digits, with a point for decimals";
inline constexpr std::string_view bearings_look_so = "a bearing looks like N50W, 310 or NNW";
/// `help` is used if there are no offers.
Diagnostic number(std::string_view typed, std::string_view help, const Offers& offers = {});
/// A dash that touches the word before it, or stands alone.
Diagnostic number_dash(std::string_view figure, const Offers& offers);
/// `1 200`
Diagnostic number_spaced(std::string_view typed, std::string_view joined);
Diagnostic number_minutes(std::string_view typed);
Diagnostic decimal_comma(std::string_view typed, const Offers& offers);
Diagnostic unknown_word(std::string_view word, std::string_view help);
Diagnostic unknown_start(std::string_view word, std::string_view help);
/// Help for an unknown first word with only words behind it. `may_be_kind`: the log may declare it.
std::string advice_on_words(std::string_view word, bool may_be_kind);
/// Help for an unknown first word with an attitude further on in its line. `kind` reads the
/// attitude; it may be empty.
std::string advice_on_reading(std::string_view kind, std::string_view attitude);
/// Help for an unknown first word right before an attitude: of a line if `is_line`, else of a
/// plane. `count` lines of the log begin with this word.
std::string advice_on_kind(std::string_view word, bool is_line, std::uint32_t count);
/// A misspelt `station`. The line begins a station all the same, without its name and position.
Diagnostic misspelt_station(std::string_view word);
/// A line that starts with an attitude. `kind` is a kind that reads it; it may be empty.
Diagnostic attitude_without_kind(std::string_view line, std::string_view kind);
/// A heading file that cannot be read. `why` is the reason.
Diagnostic heading(std::string_view why);
Diagnostic heading_misplaced();
/// `word` begins a statement that is not allowed in a heading file.
Diagnostic not_in_heading(std::string_view word);
/// A statement behind `ask`. `question` is its remark.
Diagnostic unanswered(std::string_view question);
Diagnostic trailing_text(std::string_view typed, std::string_view help);
Diagnostic encoding_byte(unsigned char byte, Encoding encoding);
Diagnostic encoding_utf_16();
Diagnostic control_character(unsigned code);
Diagnostic line_length(std::size_t bytes, std::size_t limit);

}  // namespace lodebook::notebook::wording
