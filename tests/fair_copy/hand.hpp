// SPDX-License-Identifier: MIT
// How one person writes readings: habits drawn once for a page, and a pen that keeps to them.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "fair_copy/draw.hpp"

namespace lodebook::test {

/// What a plane's figures look like.
enum class PlaneHabit : std::uint8_t {
  strike_dip_side,     ///< `N62E 37NW`
  strike_dip_by_rule,  ///< `N62E 37`, under a rule that the heading states
  words,               ///< `strike N62E dips 37 to the NW`
  dip_towards,         ///< `37 -> 332`
  dip_direction_pair,  ///< `37/332`, in an order that the heading states
  direction_dip_pair,  ///< `332/37`, likewise
};
/// What a line's figures look like.
enum class LineHabit : std::uint8_t {
  trend_plunge,    ///< `310/35`
  plunge_trend,    ///< `35/310`, azimuths only
  plunge_towards,  ///< `35 -> 310`
  plunges_to,      ///< `plunges 35 to N50W`
  trends_plunges,  ///< `trends N50W plunges 35`
};
enum class Letters : std::uint8_t { capitals, small };
/// How a side stands behind its dip.
enum class SideHabit : std::uint8_t { glued, spaced, to, to_the };
/// How stations are set out.
enum class Layout : std::uint8_t { kind_first, kind_as_heading, table };

/// The habits of a page. Those that would make a reading ambiguous are never drawn together.
struct Hand {
  explicit Hand(Draw& draw);

  bool quadrant;
  PlaneHabit planes;
  LineHabit lines;
  bool left_hand;
  Layout layout;
  SideHabit side;
  Letters letters;
  bool degree_signs;
  bool spaced_quadrants;
  bool drops_noughts;
  bool halves_as_fractions;
  bool has_halves;
  bool upper_case_kinds;
  /// Between the figures of a reading, and between readings.
  std::string_view inner;
  std::string_view between;
  std::string_view behind_kind;
  std::string_view arrow;
  std::string_view ditto;
  std::string_view bullet;
  std::string_view before_remark;
  std::string_view doubt;
  std::string_view cell;
  std::size_t station_word;
};

/// A plane's strike with the dip to its right, and dip; half degrees.
struct Surface {
  double strike = 0;
  double dip = 0;
};
/// A line's trend and plunge; half degrees.
struct Axis {
  double trend = 0;
  double plunge = 0;
};

/// `degrees` as the language writes it, `37` or `37.5`.
std::string plain_figure(double degrees);
/// The point of the rose with eight points that is nearest to an azimuth.
std::string_view nearest_point(double azimuth);
/// `azimuth` in [0, 360).
double turned(double azimuth);

/// Writes figures as its hand does.
class Pen {
 public:
  Pen(const Hand& hand, Draw& draw) : hand_(hand), draw_(draw) {}

  std::string slope(double degrees) const;
  std::string bearing(double azimuth) const;
  /// As typed behind a kind.
  std::string plane(Surface surface);
  /// The same with the side of one end of the strike, which no plane can have.
  std::string impossible_plane(Surface surface);
  std::string line(Axis axis) const;
  std::string point(double azimuth) const;
  /// One end of the strike, as a hand that does not keep to a rule writes it.
  double either_end(double strike) { return draw_.one_in(2) ? strike : turned(strike + 180); }
  std::string strike_dip(double strike, double dip) const;

 private:
  std::string figure(double degrees, bool three_digits) const;
  std::string with_side(std::string dip, double azimuth) const;
  std::string by_rule(Surface surface) const;
  std::string in_words(Surface surface);

  const Hand& hand_;
  Draw& draw_;
};

}  // namespace lodebook::test
