// SPDX-License-Identifier: MIT
// Keeps where readings are made while a log goes by, and gives settings what follows from place and
// date: the geomagnetic models' field, the grid, and the declination where the model is to give it.
#pragma once

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

class SiteKeeper {
 public:
  explicit SiteKeeper(const Options& options)
      : wants_grid_(options.grid_columns || options.north == North::grid) {}

  /// A page begins, with all that belongs to its whole station.
  void enter(const Page& page);
  /// An entry of the page goes by: a landmark's position may stand in for a station's.
  void pass(const notebook::Entry& entry);

  /// Fills `settings.site`, and the declination if the model gives it. Without a position of the
  /// station's own, the last station's above holds, or else the last landmark's.
  void settle(Settings& settings);

 private:
  bool wants_grid_;
  std::optional<earth::Position> own_;
  std::optional<earth::Position> station_above_;
  std::optional<earth::Position> landmark_above_;
  double height_m_ = 0;
  /// What `site_` was last worked out for.
  std::optional<notebook::Date> date_;
  double site_height_m_ = 0;
  Site site_;
};

/// The warning that the declination of `settings` is not what the models have for its place and
/// date, if so: `declination-sign` or `declination-stale`.
std::optional<notebook::Diagnostic> held_against_model(const Settings& settings, double height_m);

/// Why the model gives no declination, if it is to give one and cannot.
std::optional<notebook::Diagnostic> model_unusable(const Settings& settings);

}  // namespace lodebook::reduction
