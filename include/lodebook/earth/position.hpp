// SPDX-License-Identifier: MIT
// Positions in the writings common in the field, read onto the WGS 84 ellipsoid.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

namespace lodebook::earth {

/// Geographic coordinates on WGS 84, or a datum equal to it at compass accuracy.
struct Position {
  double latitude = 0;   ///< degrees, north positive, in [-90, 90]
  double longitude = 0;  ///< degrees, east positive, in [-180, 180)

  friend bool operator==(const Position&, const Position&) = default;
};

/// What a text says. `38S` is latitude band S, in the north, or zone 38 south: both readings are
/// given where both are possible, and the log's other positions decide.
struct WrittenPosition {
  /// The plain meaning; missing only where a letter S cannot be the latitude band.
  std::optional<Position> position;
  /// The meaning if the zone letter S stood for "south".
  std::optional<Position> if_south;
  /// The zone number, for advice (`38 south`); 0 unless `if_south` is given.
  int zone = 0;
};

/// Why a text is not a position.
enum class PositionFault : std::uint8_t {
  unreadable,       ///< none of the forms
  number,           ///< a figure that is not a plain decimal number
  decimal_comma,    ///< 44,65 for 44.65
  latitude_range,   ///< over 90
  longitude_range,  ///< over 180
  minutes_range,    ///< minutes or seconds of 60 or more, or a fraction before minutes
  swapped,          ///< longitude first, without letters
  hemisphere,       ///< a letter on one coordinate only, or a sign and a letter, or two latitudes
  uneven,           ///< figures that do not divide into two coordinates
  loose_figure,     ///< a figure behind a whole position: an accuracy without its mark?
  zone,             ///< a zone outside 1 to 60, or a band letter or zone that does not exist
  band,             ///< the band letter contradicts the northing
  outside_grid,     ///< an easting or northing outside the zone
};

struct PositionError {
  PositionFault fault = PositionFault::unreadable;
  std::size_t offset = 0;  ///< first byte at fault within the text
  std::size_t length = 0;  ///< bytes at fault, at least 1 unless the text is empty
  /// What was probably meant, ready to be typed; may be empty. For loose_figure it is the position
  /// alone.
  std::string meant;
};

/// Reads the whole of `text` as one position: latitude and longitude in decimals, degrees and
/// minutes, or degrees, minutes and seconds (by marks, spaces or colons; letters before or after,
/// or signs; a bare comma allowed between the two), UTM (`59G 345210 5052310`, `59 south 345210
/// 5052310`, with or without `mE` and `mN`) or MGRS (spaced or not; the centre of the square). Tabs
/// and no-break spaces count as spaces. Never throws for a bad text; one fault, the first found.
std::variant<WrittenPosition, PositionError> read_position(std::string_view text);

}  // namespace lodebook::earth
