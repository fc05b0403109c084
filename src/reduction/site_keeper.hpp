// SPDX-License-Identifier: MIT
// Keeps where readings are made while a log goes by, and gives settings what follows from place and
// date: the geomagnetic models' field, the grid, and the declination where the model is to give it.
#pragma once

#include <lodebook/reduction/field_ahead.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

/// Puts `settings` at another place on the same day, with the declination there if the model gives
/// it.
void put_at(Settings& settings, const earth::Position& position, double height_m, bool wants_grid);

class SiteKeeper {
 public:
  explicit SiteKeeper(const Options& options)
      : wants_grid_(options.grid_columns || options.north == North::grid) {}

  /// A page begins, with all that belongs to its whole station. `known` is a field that it may ask
  /// for, worked out before.
  void enter(const Page& page, const std::optional<KnownField>& known = std::nullopt);
  /// Takes the page's next entry: a landmark's position may stand in for a station's.
  void pass(const notebook::Entry& entry);

  /// Fills `settings.site`, and the declination if the model gives it. Without a position of the
  /// station's own, the last station's above holds, or else the last landmark's. `settings` are the
  /// same ones from call to call; true if place or date have changed since the last.
  bool settle(Settings& settings);

 private:
  struct Place {
    earth::Position position;
    double height_m = 0;

    friend bool operator==(const Place&, const Place&) = default;
  };

  bool wants_grid_;
  std::optional<Place> own_;
  std::optional<Place> station_above_;
  std::optional<Place> landmark_above_;
  std::optional<KnownField> known_;
  /// What `site_` was last computed for.
  std::optional<Place> place_;
  std::optional<notebook::Date> date_;
  bool settled_ = false;
  Site site_;
};

}  // namespace lodebook::reduction
