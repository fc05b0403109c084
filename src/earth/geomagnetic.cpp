// SPDX-License-Identifier: MIT
// Spherical harmonics of the models' tables, evaluated by GeographicLib.
#include <lodebook/earth/geomagnetic.hpp>

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/SphericalEngine.hpp>
#include <GeographicLib/SphericalHarmonic.hpp>
#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>
#include <span>
#include <vector>

namespace lodebook::earth {
namespace {

/// One line of a table: Schmidt semi-normalised, nanotesla.
struct Coefficient {
  double epoch;
  int degree;
  int order;
  double g;
  double h;
  double g_rate = 0;  ///< a year
  double h_rate = 0;
};

constexpr Coefficient igrf12[] = {
#include "igrf12.inc"
};
constexpr Coefficient wmm2015v2[] = {
#include "wmm2015v2.inc"
};
constexpr Coefficient wmm2020[] = {
#include "wmm2020.inc"
};
constexpr Coefficient wmm2025[] = {
#include "wmm2025.inc"
};

static_assert(igrf12[0].epoch == first_field_year);

/// The mean radius of the earth that the models refer to, metres.
constexpr double reference_radius_m = 6371200;
constexpr double wmm_life = 5;  // years
static_assert(wmm2025[0].epoch + wmm_life == last_field_year);

/// Along x, y and z from the earth's centre: x to 0 N 0 E, z to the north pole.
struct Vector {
  double x = 0;
  double y = 0;
  double z = 0;
};

/// The coefficients of a stretch of time in which they are linear.
class Stretch {
 public:
  /// Of `rows`, which are one epoch's, with their rates as they stand.
  Stretch(std::span<const Coefficient> rows, double until, FieldModel model)
      : from_(rows.front().epoch), until_(until), model_(model) {
    for (const Coefficient& row : rows)
      degree_ = std::max(degree_, row.degree);
    // GeographicLib's one table of square roots grows without a lock. It must not grow later, when
    // several threads ask for fields.
    GeographicLib::SphericalEngine::RootTable(degree_);
    for (std::vector<double>* coefficients : {&g_, &g_rate_})
      coefficients->assign(place(degree_, degree_) + 1, 0);
    // GeographicLib leaves out the sines of order 0.
    for (std::vector<double>* coefficients : {&h_, &h_rate_})
      coefficients->assign(place(degree_, degree_) + 1 - sines_left_out(), 0);
    for (const Coefficient& row : rows) {
      g_[place(row.degree, row.order)] = row.g;
      g_rate_[place(row.degree, row.order)] = row.g_rate;
      if (row.order == 0) continue;
      h_[place(row.degree, row.order) - sines_left_out()] = row.h;
      h_rate_[place(row.degree, row.order) - sines_left_out()] = row.h_rate;
    }
  }

  double until() const { return until_; }
  FieldModel model() const { return model_; }

  /// Nanotesla.
  Vector field(const Vector& at, double year) const {
    return downhill(at, on(year, g_, g_rate_), on(year, h_, h_rate_));
  }
  /// Nanotesla a year.
  Vector rate(const Vector& at) const { return downhill(at, g_rate_, h_rate_); }

 private:
  /// Where GeographicLib looks for a coefficient: order by order.
  std::size_t place(int degree, int order) const {
    return static_cast<std::size_t>(order * degree_ - order * (order - 1) / 2 + degree);
  }
  std::size_t sines_left_out() const { return static_cast<std::size_t>(degree_) + 1; }
  /// One sum over the coefficients of the day takes two thirds of the time of two over both.
  std::vector<double> on(double year, std::span<const double> values,
                         std::span<const double> rates) const {
    std::vector<double> there(values.begin(), values.end());
    for (std::size_t i = 0; i < there.size(); ++i)
      there[i] += (year - from_) * rates[i];
    return there;
  }
  /// The potential is the radius times the sum, and the field is its slope.
  Vector downhill(const Vector& at, const std::vector<double>& g,
                  const std::vector<double>& h) const {
    using GeographicLib::SphericalHarmonic;
    const SphericalHarmonic sum(g, h, degree_, reference_radius_m, SphericalHarmonic::SCHMIDT);
    Vector gradient;
    sum(at.x, at.y, at.z, gradient.x, gradient.y, gradient.z);
    return {-reference_radius_m * gradient.x, -reference_radius_m * gradient.y,
            -reference_radius_m * gradient.z};
  }

  double from_;
  double until_;
  FieldModel model_;
  int degree_ = 0;
  std::vector<double> g_;
  std::vector<double> h_;
  std::vector<double> g_rate_;
  std::vector<double> h_rate_;
};

/// The rows of the epoch that `rows` begins with.
std::span<const Coefficient> first_epoch(std::span<const Coefficient> rows) {
  std::size_t count = 0;
  while (count < rows.size() && rows[count].epoch == rows.front().epoch)
    ++count;
  return rows.first(count);
}

/// All stretches in the order of time.
class Stretches {
 public:
  Stretches() {
    std::span<const Coefficient> rest = igrf12;
    for (std::span<const Coefficient> epoch = first_epoch(rest);;) {
      rest = rest.subspan(epoch.size());
      if (rest.empty()) break;
      const std::span<const Coefficient> next = first_epoch(rest);
      add_between(epoch, next);
      epoch = next;
    }
    add(wmm2015v2, FieldModel::wmm2015v2);
    add(wmm2020, FieldModel::wmm2020);
    add(wmm2025, FieldModel::wmm2025);
  }

  /// The stretch that `year`, which the models cover, lies in; at an epoch, the one that begins
  /// there.
  const Stretch& at(double year) const {
    for (const Stretch& stretch : stretches_) {
      if (year < stretch.until()) return stretch;
    }
    return stretches_.back();
  }

 private:
  /// The rates of IGRF are the differences to the next epoch, whose table may reach a higher
  /// degree.
  void add_between(std::span<const Coefficient> epoch, std::span<const Coefficient> next) {
    const double years = next.front().epoch - epoch.front().epoch;
    std::vector<Coefficient> rows(next.begin(), next.end());
    for (std::size_t i = 0; i < rows.size(); ++i) {
      Coefficient& row = rows[i];
      const bool known = i < epoch.size();
      assert(!known || (epoch[i].degree == row.degree && epoch[i].order == row.order));
      row.epoch = epoch.front().epoch;
      row.g = known ? epoch[i].g : 0;
      row.h = known ? epoch[i].h : 0;
      row.g_rate = (next[i].g - row.g) / years;
      row.h_rate = (next[i].h - row.h) / years;
    }
    stretches_.emplace_back(rows, next.front().epoch, FieldModel::igrf12);
  }
  void add(std::span<const Coefficient> rows, FieldModel model) {
    stretches_.emplace_back(rows, rows.front().epoch + wmm_life, model);
  }

  std::vector<Stretch> stretches_;
};

const Stretch& stretch_at(double year) {
  static const Stretches stretches;
  return stretches.at(year);
}

/// A place from the earth's centre, metres, and the directions east, north and up there.
class Site {
 public:
  Site(const Position& at, double height_m) {
    GeographicLib::Geocentric::WGS84().Forward(at.latitude, at.longitude, height_m, from_centre_.x,
                                               from_centre_.y, from_centre_.z);
    const Angle latitude = *Angle::from_degrees(at.latitude);
    const Angle longitude = *Angle::from_degrees(at.longitude);
    const double sin_latitude = sin(latitude);
    const double cos_latitude = cos(latitude);
    const double sin_longitude = sin(longitude);
    const double cos_longitude = cos(longitude);
    east_ = {-sin_longitude, cos_longitude, 0};
    north_ = {-sin_latitude * cos_longitude, -sin_latitude * sin_longitude, cos_latitude};
    up_ = {cos_latitude * cos_longitude, cos_latitude * sin_longitude, sin_latitude};
  }
  const Vector& from_centre() const { return from_centre_; }
  double east(const Vector& v) const { return dot(east_, v); }
  double north(const Vector& v) const { return dot(north_, v); }
  double up(const Vector& v) const { return dot(up_, v); }

 private:
  static double dot(const Vector& a, const Vector& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

  Vector from_centre_;
  Vector east_;
  Vector north_;
  Vector up_;
};

/// Degrees east of north, in (-180, 180].
double direction(double north, double east) {
  return Angle::atan2(east, north).degrees();
}

}  // namespace

std::string_view name_of(FieldModel model) {
  constexpr std::array<std::string_view, 4> names = {"IGRF-12", "WMM2015v2", "WMM2020", "WMM2025"};
  return names[static_cast<std::size_t>(model)];
}

std::span<const FieldModelYears> field_models() {
  static constexpr std::array<FieldModelYears, 4> models = {{
      {FieldModel::igrf12, igrf12[0].epoch, wmm2015v2[0].epoch},
      {FieldModel::wmm2015v2, wmm2015v2[0].epoch, wmm2020[0].epoch},
      {FieldModel::wmm2020, wmm2020[0].epoch, wmm2025[0].epoch},
      {FieldModel::wmm2025, wmm2025[0].epoch, last_field_year},
  }};
  return models;
}

double MagneticField::horizontal_nt() const {
  return std::hypot(north_nt_, east_nt_);
}

double MagneticField::total_nt() const {
  return std::hypot(north_nt_, east_nt_, down_nt_);
}

Declination MagneticField::declination() const {
  const double east = direction(north_nt_, east_nt_);
  return east < 0 ? *Declination::west(-east) : *Declination::east(east);
}

double MagneticField::magnetic_inclination() const {
  return Angle::atan2(down_nt_, horizontal_nt()).degrees();
}

double MagneticField::declination_sigma() const {
  struct Error {
    double degrees;
    double degree_nt;
  };
  constexpr Error of_2015 = {0.24, 5432};
  constexpr std::array<Error, 4> errors = {of_2015, of_2015, {0.26, 5625}, {0.26, 5417}};
  const Error& error = errors[static_cast<std::size_t>(model_)];
  return std::min(std::hypot(error.degrees, error.degree_nt / horizontal_nt()), 180.0);
}

Needle MagneticField::needle() const {
  const double horizontal = horizontal_nt();
  if (horizontal < useless_below_nt) return Needle::useless;
  return horizontal < sluggish_below_nt ? Needle::sluggish : Needle::steady;
}

std::optional<MagneticField> magnetic_field(const Position& at, double height_m, double year) {
  if (!field_covers_year(year) || !field_covers_height(height_m)) return std::nullopt;
  const Stretch& stretch = stretch_at(year);
  const Site site(at, height_m);
  const Vector field = stretch.field(site.from_centre(), year);
  return MagneticField(site.north(field), site.east(field), -site.up(field), stretch.model());
}

std::optional<double> declination_change(const Position& at, double height_m, double year) {
  if (!field_covers_year(year) || !field_covers_height(height_m)) return std::nullopt;
  const Stretch& stretch = stretch_at(year);
  const Site site(at, height_m);
  const Vector field = stretch.field(site.from_centre(), year);
  const Vector rate = stretch.rate(site.from_centre());
  const double north = site.north(field);
  const double east = site.east(field);
  const double turning = north * site.east(rate) - east * site.north(rate);
  return turning / (north * north + east * east) * 180 / std::numbers::pi;
}

std::optional<double> year_of_declination(const Position& at, double height_m, Declination wanted,
                                          double year) {
  if (!magnetic_field(at, height_m, year)) return std::nullopt;
  // How far the declination of a year lies from the wanted one, in [-180, 180].
  const auto off = [&](double when) {
    const auto field = magnetic_field(at, height_m, when);
    return std::remainder(field->declination().degrees_east() - wanted.degrees_east(), 360);
  };
  // A turn of more than a quarter within a step is the jump from 180 to -180.
  const auto crosses = [](double a, double b) {
    return (a <= 0) != (b <= 0) && std::abs(a - b) < 90;
  };
  const auto search = [&](double step, double last) -> std::optional<double> {
    double from = year;
    double before = off(from);
    while (from != last) {
      double to = std::clamp(from + step, first_field_year, last_field_year);
      const double after = off(to);
      if (!crosses(before, after)) {
        from = to;
        before = after;
        continue;
      }
      while (std::abs(to - from) > 0.01) {
        const double middle = (from + to) / 2;
        (crosses(before, off(middle)) ? to : from) = middle;
      }
      return (from + to) / 2;
    }
    return std::nullopt;
  };
  constexpr double step = 5;  // years, in which the field is nearly linear
  const auto earlier = search(-step, first_field_year);
  return earlier ? earlier : search(step, last_field_year);
}

}  // namespace lodebook::earth
