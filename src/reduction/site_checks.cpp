// SPDX-License-Identifier: MIT
#include "site_checks.hpp"

#include <algorithm>
#include <cmath>

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/notebook/wording.hpp>

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// A stated declination may be so far from the model, degrees, whatever the model's uncertainty:
/// maps and field books give whole or half degrees.
constexpr double stated_floor = 1;
/// The other side fits far better: it is off by less than this part of what the stated side is.
constexpr double far_better = 0.25;
/// By so much more than said before, degrees, a stated declination is off to be said again.
constexpr double said_again = 5;
/// Stations of one log lie nearer to each other than that, metres.
constexpr double log_extent_m = 500'000;

double degrees_apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

/// `a` is `b` with the other letter, or nearly so.
bool is_mirrored(double a, double b) {
  return degrees_apart(-a, b) < far_better * degrees_apart(a, b);
}

bool is_far(const earth::Position& a, const earth::Position& b) {
  // Three degrees each way are within the limit wherever one is, and need no geodesic.
  if (std::abs(a.latitude - b.latitude) < 3 && degrees_apart(a.longitude, b.longitude) < 3)
    return false;
  return earth::distance_m(a, b) > log_extent_m;
}

}  // namespace

void SiteChecks::enter(const Page& page) {
  borrowed_said_ = false;
  if (!page.position) return;
  const earth::Position& here = page.position->position;
  const bool far = !before_.empty() && std::ranges::all_of(before_, [&here](const Located& one) {
    return is_far(here, one.position);
  });
  if (far)
    add(wording::position_far(earth::distance_m(here, before_.back().position),
                              before_.back().name));
  if (before_.size() == 2) before_.erase(before_.begin());
  before_.push_back({page.station, here});
}

void SiteChecks::state(const Entry& entry, const Source& source) {
  if (std::holds_alternative<DeclinationSetting>(entry.what)) {
    declination_at_ = source.place(entry.line, entry.statement);
  } else if (std::holds_alternative<SetSetting>(entry.what)) {
    set_at_ = source.place(entry.line, entry.statement);
  } else if (std::holds_alternative<DateSetting>(entry.what)) {
    date_at_ = source.place(entry.line, entry.statement);
  }
}

bool SiteChecks::is_new(Once what) {
  const auto bit = static_cast<std::size_t>(what);
  if (said_[bit]) return false;
  said_.set(bit);
  return true;
}

void SiteChecks::add_stated(Diagnostic diagnostic, const std::optional<Place>& place) {
  if (place) diagnostic.related.push_back({*place, wording::stated_here()});
  add(std::move(diagnostic));
}

void SiteChecks::check(const Settings& settings) {
  if (settings.from_model() && north_ != North::magnetic) check_model(settings);
  check_needle(settings);
  check_stated(settings);
  check_set(settings);
  check_position(settings);
}

/// Why the model gives no declination.
void SiteChecks::check_model(const Settings& settings) {
  if (settings.site.field) return;
  if (!settings.date) {
    if (!settings.date_void && is_new(Once::no_date)) add(wording::model_without_date());
  } else if (!settings.site.position) {
    if (is_new(Once::no_position)) add(wording::model_without_position());
  } else if (!earth::field_covers_height(settings.site.height_m)) {
    if (is_new(Once::out_of_heights)) add(wording::model_out_of_heights(settings.site.height_m));
  } else if (is_new(Once::out_of_years)) {
    add(wording::model_out_of_years(iso_date(*settings.date)), date_at_);
  }
}

void SiteChecks::check_needle(const Settings& settings) {
  if (!settings.site.field) return;
  const earth::MagneticField& field = *settings.site.field;
  const bool by_model = settings.from_model() && north_ != North::magnetic;
  switch (field.needle()) {
    case earth::Needle::steady:
      break;
    case earth::Needle::sluggish:
      if (is_new(Once::sluggish)) add(wording::sluggish_needle(field.horizontal_nt()));
      break;
    case earth::Needle::useless:
      if (is_new(by_model ? Once::no_model_compass : Once::no_compass))
        add(wording::no_compass(field.horizontal_nt(), by_model));
      break;
  }
}

/// Holds a stated declination against the model.
void SiteChecks::check_stated(const Settings& settings) {
  const Site& site = settings.site;
  if (settings.from_model() || !settings.has_figure() || !site.field ||
      site.field->needle() == earth::Needle::useless)
    return;
  const double stated = settings.declination.degrees_east();
  const double model = site.field->declination().degrees_east();
  const double off = degrees_apart(stated, model);
  const double sigma = site.field->declination_sigma();
  if (off <= std::max(stated_floor, std::hypot(sigma, settings.declination_sigma))) return;
  const Code code = is_mirrored(stated, model) ? Code::declination_sign : Code::declination_stale;
  const auto said = off_said_.find({stated, code});
  if (said != off_said_.end() && off <= said->second + said_again) return;
  off_said_[{stated, code}] = off;
  const wording::ModelDeclination known{model, sigma, name_of(site.field->model()),
                                        iso_date(*settings.date)};
  const auto& place = settings.as_set() ? set_at_ : declination_at_;
  if (code == Code::declination_sign)
    return add_stated(wording::declination_sign(stated, known), place);
  const double year = decimal_year(*settings.date);
  const auto when =
      earth::year_of_declination(*site.position, site.height_m, settings.declination, year);
  add_stated(wording::declination_stale(stated, known, when, year), place);
}

/// Holds what was set on the dial against the declination.
void SiteChecks::check_set(const Settings& settings) {
  const double set = settings.set.degrees_east();
  const double declination = settings.declination.degrees_east();
  if (!settings.has_figure() || settings.as_set() || std::abs(set) < stated_floor ||
      !is_mirrored(set, declination))
    return;
  if (is_new(Once::set_side)) add_stated(wording::set_side(set, declination), set_at_);
}

/// Whose position it is, and whether there is any.
void SiteChecks::check_position(const Settings& settings) {
  if (north_ == North::magnetic || !settings.declination_known()) return;
  const bool on_grid = north_ == North::grid;
  if (on_grid && !settings.site.grid && is_new(Once::grid_unknown)) add(wording::grid_unknown());
  if (!settings.site.borrowed || borrowed_said_ || (!on_grid && !settings.from_model())) return;
  borrowed_said_ = true;
  add(wording::position_borrowed(settings.from_model(), on_grid));
}

void SiteChecks::check_grid(const Settings& settings) {
  if (!settings.site.borrowed || std::exchange(borrowed_said_, true)) return;
  add(wording::position_borrowed(settings.from_model(), true));
}

}  // namespace lodebook::reduction
