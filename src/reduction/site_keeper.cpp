// SPDX-License-Identifier: MIT
#include "site_keeper.hpp"

#include <algorithm>
#include <cmath>

#include <lodebook/notebook/wording.hpp>

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// A declared declination may be so far from the model, degrees, whatever the model's uncertainty:
/// maps and field books give whole or half degrees.
constexpr double declared_floor = 1;
/// The other side fits far better: it is off by less than this part of what the stated side is.
constexpr double far_better = 0.25;

double degrees_apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

}  // namespace

void SiteKeeper::enter(const Page& page) {
  if (own_) station_above_ = own_;
  own_.reset();
  if (page.position) own_ = page.position->position;
  height_m_ = page.elevation_m.value_or(0);
}

void SiteKeeper::pass(const Entry& entry) {
  const auto* landmark = std::get_if<Landmark>(&entry.what);
  if (landmark && landmark->position) landmark_above_ = landmark->position->position;
}

void SiteKeeper::settle(Settings& settings) {
  const std::optional<earth::Position>& position = own_             ? own_
                                                   : station_above_ ? station_above_
                                                                    : landmark_above_;
  const bool moved = position != site_.position;
  if (moved) {
    site_.grid.reset();
    if (position && wants_grid_) site_.grid = earth::grid_position(*position);
  }
  if (moved || settings.date != date_ || height_m_ != site_height_m_) {
    site_.position = position;
    date_ = settings.date;
    site_height_m_ = height_m_;
    site_.field.reset();
    if (position && date_)
      site_.field = earth::magnetic_field(*position, height_m_, decimal_year(*date_));
  }
  site_.borrowed = position && !own_;
  settings.site = site_;
  if (!settings.from_model() || !settings.declination_known()) return;
  settings.declination = settings.site.field->declination();
  settings.declination_sigma = settings.site.field->declination_sigma();
}

std::optional<Diagnostic> model_unusable(const Settings& settings) {
  if (!settings.from_model() || settings.site.field) return std::nullopt;
  if (!settings.date) return wording::model_without_date();
  if (!settings.site.position) return wording::model_without_position();
  return wording::model_out_of_years(iso_date(*settings.date));
}

std::optional<Diagnostic> held_against_model(const Settings& settings, double height_m) {
  const Site& site = settings.site;
  const bool stated = settings.declination_from != From::nowhere && !settings.from_model() &&
                      (!settings.as_set() || settings.set_from != From::nowhere);
  if (!stated || !site.field) return std::nullopt;
  const double declared = settings.declination.degrees_east();
  const double model = site.field->declination().degrees_east();
  const double off = degrees_apart(declared, model);
  const double sigma = site.field->declination_sigma();
  if (off <= std::max(declared_floor, std::hypot(sigma, settings.declination_sigma)))
    return std::nullopt;
  const wording::ModelDeclination known{model, sigma, name_of(site.field->model()),
                                        iso_date(*settings.date)};
  if (degrees_apart(-declared, model) < far_better * off)
    return wording::declination_sign(declared, known);
  const double year = decimal_year(*settings.date);
  const auto when =
      earth::year_of_declination(*site.position, height_m, settings.declination, year);
  return wording::declination_stale(declared, known, when, year);
}

}  // namespace lodebook::reduction
