// SPDX-License-Identifier: MIT
// What is wrong or unusual in a log: a value with a place. Other rooms print it.
#pragma once

#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <lodebook/notebook/source.hpp>

namespace lodebook::notebook {

/// error: the reading is rejected, or the statement has no effect. warning: it is kept, but needs a
/// second look. note: it is kept.
enum class Severity : std::uint8_t { error, warning, note };
std::string_view name_of(Severity severity);

/// One enumerator for each fault; `catalogue.hpp` has its page. The order is that of the list in
/// `lodebook explain`.
enum class Code : std::uint8_t {
  // bearings
  quadrant_angle,
  quadrant_letters,
  azimuth_range,
  notation_mixed,
  north_kept,
  // planes and lines
  dip_range,
  dip_side_missing,
  dip_side_impossible,
  attitude_ambiguous,
  pair_order,
  plunge_range,
  plunge_missing,
  other_end,
  rake_range,
  rake_no_plane,
  rake_end,
  incomplete,
  partial,
  facing_impossible,
  facing_doubtful,
  // sights and legs
  slope_range,
  distance_unit,
  pace_missing,
  landmark_unknown,
  station_unknown,
  own_station,
  back_bearing,
  percent_or_degrees,
  // positions from sights and legs
  sight_misfit,
  sight_off,
  no_fix,
  weak_cut,
  no_check,
  implied_declination,
  danger_circle,
  misclosure,
  heights_disagree,
  local_attraction,
  attraction_unapplied,
  // checks across readings
  repeat_spread,
  line_off_plane,
  plane_unknown,
  strike_uncertain,
  trend_uncertain,
  doubtful,
  remark_reading,
  // stations and places
  name,
  position,
  zone_south,
  datum,
  already_stated,
  station_repeated,
  position_far,
  reading_outside_station,
  tally,
  // settings
  declination_side,
  declination_missing,
  declination_large,
  declination_model,
  declination_sign,
  declination_stale,
  weak_field,
  position_borrowed,
  grid_unknown,
  set_missing,
  set_side,
  option_overridden,
  word_taken,
  date,
  time,
  date_order,
  heading,
  // text
  number,
  decimal_comma,
  unknown_word,
  trailing_text,
  unanswered,
  encoding,
  control_character,
  line_length,
};
inline constexpr std::size_t code_count = static_cast<std::size_t>(Code::line_length) + 1;

/// The kebab-case name that users see, such as `quadrant-angle`.
std::string_view name_of(Code code);

/// Another place that a diagnostic points to.
struct Related {
  Place place;
  std::string message;
};

/// A change to the log that corrects a fault: if `text` replaces `span`, the reader accepts the
/// statement, with the meaning that the help gives. An empty span means that `text` is inserted.
struct Fix {
  Span span;
  std::string text;
};

/// The value of `Diagnostic::reading` if the diagnostic belongs to no reading.
inline constexpr std::uint32_t no_reading = std::numeric_limits<std::uint32_t>::max();

/// One fault. `message` states the fact and `help` advises; both in lower case without a full stop.
struct Diagnostic {
  Code code = Code::number;
  Severity severity = Severity::error;
  Place place;
  std::string message;
  std::string help;  ///< may be empty
  std::vector<Related> related;
  std::vector<Fix> fixes;  ///< alternatives, the most likely first
  /// The reading it belongs to (see Reading::number), or no_reading.
  std::uint32_t reading = no_reading;
  /// How urgently it needs a second look: 0 for a note, larger is more urgent. An error has 100;
  /// more if it also makes other rows wrong, less if no reading is lost.
  double weight = 0;
};

/// `diagnostic` with one more fix.
inline Diagnostic mended(Diagnostic diagnostic, Span span, std::string text) {
  diagnostic.fixes.push_back({span, std::move(text)});
  return diagnostic;
}

}  // namespace lodebook::notebook
