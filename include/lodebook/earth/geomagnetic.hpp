// SPDX-License-Identifier: MIT
// The earth's main magnetic field by place and time, from models that are built in.
//
// IGRF-12 for 1900.0 to 2015.0, then WMM2015v2, WMM2020 and WMM2025 for five years each, to 2030.0;
// an epoch belongs to the model that begins there. Coefficients are linear in time: between epochs
// of IGRF, and by the published yearly change after the epoch of a WMM. The models hold the field
// of the core to degree 12 or 13; what rocks and iron add at a place is in none of them. Their
// seams and how good they are: docs/mathematics.md.
#pragma once

#include <cstdint>
#include <lodebook/earth/position.hpp>
#include <lodebook/orientation/declination.hpp>
#include <optional>
#include <span>
#include <string_view>

namespace lodebook::earth {

enum class FieldModel : std::uint8_t { igrf12, wmm2015v2, wmm2020, wmm2025 };
/// `IGRF-12`, `WMM2015v2`, ...
std::string_view name_of(FieldModel model);

/// The decimal years for which a model is used; an epoch at their end belongs to the next one.
struct FieldModelYears {
  FieldModel model;
  double from;
  double until;
};
/// All models, in the order of time.
std::span<const FieldModelYears> field_models();

/// The time that the models cover, decimal years, both ends included.
inline constexpr double first_field_year = 1900;
inline constexpr double last_field_year = 2030;
constexpr bool field_covers_year(double year) {
  return year >= first_field_year && year <= last_field_year;
}

/// The heights that are taken, metres. The reports of the WMM end at 850 km above the ground (from
/// memory); below it, published test values of IGRF reach 70 km down.
inline constexpr double lowest_field_height_m = -100'000;
inline constexpr double highest_field_height_m = 850'000;
constexpr bool field_covers_height(double height_m) {
  return height_m >= lowest_field_height_m && height_m <= highest_field_height_m;
}

/// What a compass is worth, by the horizontal field: under 6000 nT it is sluggish and its
/// declination doubtful, under 2000 nT it shows nothing (the caution and blackout zones of the
/// WMM2020 technical report, NOAA and BGS).
enum class Needle : std::uint8_t { steady, sluggish, useless };
inline constexpr double sluggish_below_nt = 6000;
inline constexpr double useless_below_nt = 2000;

/// The field at a place and time, in nanotesla, along the ellipsoid's north, east and down.
class MagneticField {
 public:
  MagneticField(double north_nt, double east_nt, double down_nt, FieldModel model)
      : north_nt_(north_nt), east_nt_(east_nt), down_nt_(down_nt), model_(model) {}

  double north_nt() const { return north_nt_; }
  double east_nt() const { return east_nt_; }
  double down_nt() const { return down_nt_; }
  double horizontal_nt() const;
  double total_nt() const;
  FieldModel model() const { return model_; }
  Needle needle() const;

  Declination declination() const;
  /// Degrees below the horizontal, in [-90, 90]: positive where the north end of a needle dips.
  double magnetic_inclination() const;
  /// One sigma of the declination against what a compass shows, degrees, at most 180:
  /// sqrt(a^2 + (b / H)^2), a and b in the technical reports of the WMM: WMM2015 (0.24, 5432),
  /// WMM2020 (0.26, 5625), WMM2025 (0.26, 5417). Most of it is the field of rocks, which does not
  /// change, so that the figures of WMM2015 are used for IGRF too, which publishes none.
  double declination_sigma() const;

 private:
  double north_nt_;
  double east_nt_;
  double down_nt_;
  FieldModel model_;
};

/// The field at a height above the ellipsoid in metres (one above the sea does: a hundred metres
/// are 0.001 degrees of declination). `year` is decimal; nothing outside the models' years or
/// heights.
std::optional<MagneticField> magnetic_field(const Position& at, double height_m, double year);

/// How fast the declination changes by the model in force, degrees a year, east positive. Nothing
/// where magnetic_field gives nothing.
std::optional<double> declination_change(const Position& at, double height_m, double year);

/// The decimal year nearest before `year`, or else after it, in which the declination at a place
/// was `wanted`, to a tenth of a year; nothing if in none of the models' years. Takes some forty
/// evaluations of the field.
std::optional<double> year_of_declination(const Position& at, double height_m, Declination wanted,
                                          double year);

}  // namespace lodebook::earth
