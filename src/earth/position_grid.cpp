// SPDX-License-Identifier: MIT
// UTM and MGRS. The text is taken apart here and not by GeographicLib, which reads a bare `59S` as
// the southern hemisphere and wants MGRS without spaces.
#include <GeographicLib/MGRS.hpp>
#include <GeographicLib/UTMUPS.hpp>
#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "latitude_band.hpp"
#include "position_text.hpp"

namespace lodebook::earth {
namespace {

using GeographicLib::GeographicErr;

constexpr double band_tolerance = 0.009;  // degrees, 1 km: a fix beside the edge keeps its letter
constexpr std::size_t mgrs_digits_max = 11;  // a coordinate, the micrometre

// What stands before the figures: `59`, then `G`, `south` or `GLM`, the letters spaced as they may.
struct Designation {
  const Token* zone = nullptr;  // none in polar MGRS
  std::array<char, 5> buffer{};
  std::size_t letter_count = 0;
  const Token* first_letter = nullptr;
  const Token* rest = nullptr;  // the token after the letters

  std::string_view letters() const { return {buffer.data(), letter_count}; }
  char band() const { return letters().front(); }
  PositionError letter_fault(PositionFault fault) const {
    return fault_in(fault, *first_letter, rest[-1]);
  }
};

bool all_digits(std::string_view text) {
  return std::all_of(text.begin(), text.end(), is_digit);
}

std::optional<Designation> designation(const PositionText& text) {
  Designation result;
  const Token* token = text.begin();
  if (token->kind == TokenKind::number && token->length <= 3 && all_digits(text.written(*token))) {
    result.zone = token++;
  }
  result.first_letter = token;
  for (; token != text.end() && token->kind == TokenKind::word; ++token) {
    for (const char c : text.written(*token)) {
      if (result.letter_count == result.buffer.size()) return std::nullopt;
      result.buffer[result.letter_count++] = upper(c);
    }
  }
  result.rest = token;
  if (result.letter_count == 0 || token == text.end()) return std::nullopt;
  return result;
}

// `44S 169 30E` and `44S 169030 5052310` differ only in the length of their figures: no degree,
// minute or second has four digits before the point.
bool has_long_figure(const PositionText& text, const Token* from) {
  return std::any_of(from, text.end(), [&text](const Token& token) {
    return token.kind == TokenKind::number &&
           std::min(text.written(token).find('.'), token.length) > 3;
  });
}

bool is_utm(const PositionText& text, const Designation& d) {
  const std::string_view letters = d.letters();
  if (d.zone == nullptr) return false;
  if (hemisphere(letters) != 0) {
    return letters != "EAST" && letters != "WEST" && has_long_figure(text, d.rest);
  }
  return letters.size() == 1;
}

// `DEG` in capitals is band D, square EG only where it cannot be degrees: before two figures of
// equal length, or one that is too long for an angle.
bool is_mgrs(const PositionText& text, const Designation& d) {
  if (d.letter_count != 3 || d.rest->kind != TokenKind::number) return false;
  if (d.zone == nullptr) return std::string_view("ABYZ").find(d.band()) != std::string_view::npos;
  if (d.letters() != "DEG") return true;
  const auto figures = text.end() - d.rest;
  return figures == 1 ? d.rest->length >= 4 : figures == 2 && d.rest->length == d.rest[1].length;
}

// In band X, zones 31, 33, 35 and 37 are wider, and those between them do not exist (DMA TM 8358.1,
// 1990, section 2-5.1; from memory).
bool is_left_out(int zone, char band) {
  return band == 'X' && (zone == 32 || zone == 34 || zone == 36);
}

// A zone outside 1 to 60, or a letter that is no band. Polar squares have neither.
std::optional<PositionError> check_zone(const Designation& d) {
  if (d.zone == nullptr) return std::nullopt;
  if (d.zone->value < 1 || d.zone->value > 60) {
    return fault_in(PositionFault::zone, *d.zone, *d.zone);
  }
  if (d.letter_count < 5 && bands.find(d.band()) == std::string_view::npos) {
    return fault_in(PositionFault::zone, *d.first_letter, *d.first_letter);
  }
  if (d.letter_count < 5 && is_left_out(static_cast<int>(d.zone->value), d.band())) {
    return fault_in(PositionFault::zone, *d.zone, *d.first_letter);
  }
  return std::nullopt;
}

std::optional<Position> from_utm(int zone, bool north, double easting, double northing) {
  try {
    double latitude = 0;
    double longitude = 0;
    const bool within_mgrs_limits = true;  // 100 to 900 km east; to 9500 km north, 9000 km south
    GeographicLib::UTMUPS::Reverse(zone, north, easting, northing, latitude, longitude,
                                   within_mgrs_limits);
    return normalised(latitude, longitude);
  } catch (const GeographicErr&) {
    return std::nullopt;
  }
}

// --- UTM ---------------------------------------------------------------------------------------

struct UtmFigures {
  const Token* easting = nullptr;
  const Token* northing = nullptr;
  const Token* south_mark = nullptr;  // of `5052310 mS`
};

// `m`, `E`, `N`, `S`, `mE`, `mN` or `mS` in any case: the letter, `m` for metres alone, or 0.
char figure_mark(std::string_view word) {
  if (equal_ignoring_case(word, "M")) return 'm';
  if (word.size() == 2 && upper(word.front()) == 'M') word.remove_prefix(1);
  const char letter = word.size() == 1 ? hemisphere(word) : '\0';
  return letter == 'W' ? '\0' : letter;
}

std::optional<PositionError> read_figures(const PositionText& text, const Designation& d,
                                          UtmFigures& out) {
  std::array<const Token*, 2> figures{};
  std::array<char, 2> marks{};
  std::size_t count = 0;
  for (const Token* token = d.rest; token != text.end(); ++token) {
    if (token->kind == TokenKind::number && count < 2) {
      figures[count++] = token;
    } else if (token->kind == TokenKind::number) {
      const Token* const comma = std::find_if(
          d.rest, text.end(), [](const Token& t) { return t.kind == TokenKind::comma; });
      if (comma == text.end() || !is_between_digits(text, comma)) {
        return fault_in(PositionFault::uneven, *token, *token);
      }
      return fault_in(PositionFault::decimal_comma, comma[-1], comma[1]);
    } else if (token->kind == TokenKind::comma) {
      const bool divides = count == 1 || token == d.rest;
      if (!divides || token + 1 == text.end() || token[1].kind != TokenKind::number) {
        return fault_in(PositionFault::unreadable, *token, *token);
      }
    } else {
      const char mark = token->kind == TokenKind::word ? figure_mark(text.written(*token)) : '\0';
      if (mark == 0 || count == 0 || marks[count - 1] != 0) {
        return fault_in(PositionFault::unreadable, *token, *token);
      }
      if (mark != 'm') marks[count - 1] = mark;
      if (mark == 'S') out.south_mark = token;
    }
  }
  if (count < 2) return fault_in(PositionFault::uneven, *text.begin(), text.end()[-1]);
  const bool northing_first = marks[1] == 'E' || (marks[0] != 0 && marks[0] != 'E');
  const bool both_alike = marks[0] != 0 && (marks[0] == 'E') == (marks[1] == 'E');
  if (both_alike && marks[1] != 0) {
    return fault_in(PositionFault::unreadable, *figures[0], text.end()[-1]);
  }
  out.easting = figures[northing_first ? 1 : 0];
  out.northing = figures[northing_first ? 0 : 1];
  return std::nullopt;
}

bool is_in_band(double latitude, char letter) {
  const std::size_t index = bands.find(letter);
  const double south_edge = -80 + 8 * static_cast<double>(index);
  const double north_edge = letter == 'X' ? 84 : south_edge + 8;
  return latitude >= south_edge - band_tolerance && latitude <= north_edge + band_tolerance;
}

// The UTM reader's pieces, with the figures as written, for the two faults that can say what was
// meant.
struct Utm {
  const PositionText& text;
  const Designation& designation;
  UtmFigures figures;
  int zone;

  std::optional<Position> read(bool north) const {
    return from_utm(zone, north, figures.easting->value, figures.northing->value);
  }
  std::string rewritten(std::string_view zone_suffix, const Token& first,
                        const Token& second) const {
    std::string out(text.written(*designation.zone));
    out.append(zone_suffix).append(" ").append(text.written(first));
    return out.append(" ").append(text.written(second));
  }

  PositionError band_fault(double latitude, bool north) const {
    PositionError error = designation.letter_fault(PositionFault::band);
    const char right = band_at(latitude, north);
    if (designation.band() == 'N') {  // meant for "north"
      error.meant = rewritten(" north", *figures.easting, *figures.northing);
    } else if (right != 0) {
      error.meant = rewritten({&right, 1}, *figures.easting, *figures.northing);
    }
    return error;
  }

  PositionError grid_fault(bool north) const {
    const double easting = figures.easting->value;
    const double northing = figures.northing->value;
    const Token& at = easting < 100'000 || easting > 900'000 ? *figures.easting : *figures.northing;
    PositionError error = fault_in(PositionFault::outside_grid, at, at);
    if (const auto swapped = from_utm(zone, north, northing, easting);
        swapped &&
        (designation.letter_count > 1 || is_in_band(swapped->latitude, designation.band()))) {
      const std::size_t from = designation.zone->offset + designation.zone->length;
      const Token& letter = *designation.first_letter;
      error.meant = rewritten(text.text.substr(from, letter.offset + letter.length - from),
                              *figures.northing, *figures.easting);
    }
    return error;
  }
};

PositionResult read_utm(const PositionText& text, const Designation& d) {
  if (auto error = check_zone(d)) return *std::move(error);
  Utm utm{text, d, {}, static_cast<int>(d.zone->value)};
  if (auto error = read_figures(text, d, utm.figures)) return *std::move(error);

  const bool is_word = d.letter_count > 1;
  const bool letter_s = !is_word && d.band() == 'S';
  const Token* const south_mark = utm.figures.south_mark;
  const bool north =
      is_word ? d.band() == 'N'
              : d.band() >= bands[first_northern_band] && !(letter_s && south_mark != nullptr);
  if (north && south_mark != nullptr) {
    return fault_in(PositionFault::hemisphere, *south_mark, *south_mark);
  }
  const std::optional<Position> plain = utm.read(north);
  if (is_word || (letter_s && !north)) {
    if (!plain) return utm.grid_fault(north);
    return WrittenPosition{plain, std::nullopt, 0};
  }

  WrittenPosition result;
  if (plain && is_in_band(plain->latitude, d.band())) result.position = plain;
  if (letter_s) result.if_south = utm.read(false);
  if (result.if_south) result.zone = utm.zone;
  if (result.position || result.if_south) return result;
  return plain ? utm.band_fault(plain->latitude, north) : utm.grid_fault(north);
}

// --- MGRS --------------------------------------------------------------------------------------

// The digits of both coordinates, as one run for GeographicLib.
std::variant<std::string, PositionError> mgrs_digits(const PositionText& text,
                                                     const Designation& d) {
  std::array<const Token*, 2> figures{};
  std::size_t count = 0;
  for (const Token* token = d.rest; token != text.end(); ++token) {
    const bool divides = token->kind == TokenKind::comma && count == 1 && token + 1 != text.end();
    if (divides && token[1].kind == TokenKind::number) continue;
    if (token->kind != TokenKind::number) {
      return fault_in(PositionFault::unreadable, *token, *token);
    }
    if (count == 2) return fault_in(PositionFault::uneven, *token, *token);
    if (!all_digits(text.written(*token))) return fault_in(PositionFault::number, *token, *token);
    figures[count++] = token;
  }
  std::string digits(text.written(*figures[0]));
  const bool even = count == 1 ? digits.size() % 2 == 0 : digits.size() == figures[1]->length;
  if (count == 2) digits.append(text.written(*figures[1]));
  if (!even || digits.size() > 2 * mgrs_digits_max) {
    return fault_in(PositionFault::uneven, *figures[0], text.end()[-1]);
  }
  return digits;
}

PositionResult read_mgrs(const PositionText& text, const Designation& d) {
  if (auto error = check_zone(d)) return *std::move(error);
  auto digits = mgrs_digits(text, d);
  if (auto* const error = std::get_if<PositionError>(&digits)) return std::move(*error);

  std::string square;
  if (d.zone != nullptr) square = std::to_string(static_cast<int>(d.zone->value));
  square.append(d.letters()).append(*std::get_if<std::string>(&digits));
  try {
    int zone = 0;
    int precision = 0;
    bool north = false;
    double easting = 0;
    double northing = 0;
    double latitude = 0;
    double longitude = 0;
    GeographicLib::MGRS::Reverse(square, zone, north, easting, northing, precision);
    GeographicLib::UTMUPS::Reverse(zone, north, easting, northing, latitude, longitude);
    return WrittenPosition{normalised(latitude, longitude), std::nullopt, 0};
  } catch (const GeographicErr&) {
    return d.letter_fault(PositionFault::outside_grid);
  }
}

}  // namespace

std::optional<PositionResult> read_grid(const PositionText& text) {
  const std::optional<Designation> d = designation(text);
  if (!d) return std::nullopt;
  if (is_mgrs(text, *d)) return read_mgrs(text, *d);
  if (is_utm(text, *d)) return read_utm(text, *d);
  return std::nullopt;
}

}  // namespace lodebook::earth
