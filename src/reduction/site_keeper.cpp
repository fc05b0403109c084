// SPDX-License-Identifier: MIT
#include "site_keeper.hpp"

namespace lodebook::reduction {

using namespace notebook;

namespace {

void take_model(Settings& settings) {
  if (!settings.from_model() || !settings.declination_known()) return;
  settings.declination = settings.site.field->declination();
  settings.declination_sigma = settings.site.field->declination_sigma();
}

}  // namespace

void put_at(Settings& settings, const earth::Position& position, double height_m, bool wants_grid) {
  settings.site = {};
  settings.site.position = position;
  settings.site.height_m = height_m;
  if (wants_grid) settings.site.grid = earth::grid_position(position);
  if (settings.date) settings.site.field = field_of({position, height_m, *settings.date});
  take_model(settings);
}

void SiteKeeper::enter(const Page& page, const std::optional<KnownField>& known) {
  known_ = known;
  if (own_) station_above_ = own_;
  own_.reset();
  if (page.position) own_ = {page.position->position, page.elevation_m.value_or(0)};
}

void SiteKeeper::pass(const Entry& entry) {
  const auto* landmark = std::get_if<Landmark>(&entry.what);
  if (!landmark || !landmark->position) return;
  landmark_above_ = {landmark->position->position,
                     landmark->elevation ? landmark->elevation->metres(1) : 0};
}

bool SiteKeeper::settle(Settings& settings) {
  const std::optional<Place>& place = own_             ? own_
                                      : station_above_ ? station_above_
                                                       : landmark_above_;
  const bool borrowed = place && !own_;
  const bool moved = place != place_;
  const bool changed = !settled_ || moved || settings.date != date_ || borrowed != site_.borrowed;
  if (changed) {
    if (moved) {
      place_ = place;
      site_ = {};
      if (place_) {
        site_.position = place_->position;
        site_.height_m = place_->height_m;
        if (wants_grid_) site_.grid = earth::grid_position(place_->position);
      }
    }
    if (moved || settings.date != date_) {
      date_ = settings.date;
      site_.field.reset();
      if (place_ && date_) {
        const PlaceAndDate at{place_->position, place_->height_m, *date_};
        site_.field = known_ && known_->at == at ? known_->field : field_of(at);
      }
    }
    site_.borrowed = borrowed;
    settings.site = site_;
    settled_ = true;
  }
  take_model(settings);
  return changed;
}

}  // namespace lodebook::reduction
