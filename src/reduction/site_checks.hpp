// SPDX-License-Identifier: MIT
// Checks of the settings against place and date: the model cannot be used, a stated declination
// belongs elsewhere, a compass does not work here. Each is reported once.
#pragma once

#include <bitset>
#include <map>
#include <utility>
#include <vector>

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

class SiteChecks {
 public:
  explicit SiteChecks(const Options& options) : north_(options.north) {}

  /// A page begins. Says so if its station lies improbably far from those before it.
  void enter(const Page& page);
  /// A statement of a declination, of what was set or of a date goes by.
  void state(const notebook::Entry& entry, const notebook::Source& source);
  /// A good reading is made under `settings`.
  void check(const Settings& settings);
  /// The same where a reading was made from grid north.
  void check_grid(const Settings& settings);

  /// Something found; without a place of its own the caller fills one in.
  struct Found {
    notebook::Diagnostic diagnostic;
    std::optional<notebook::Place> stated_at;
  };
  /// What has been found since the last call.
  std::vector<Found> take_found() { return std::exchange(found_, {}); }

 private:
  enum class Once : std::uint8_t {
    no_date,
    no_position,
    out_of_years,
    out_of_heights,
    no_compass,
    no_model_compass,
    sluggish,
    grid_unknown,
    set_side,
  };
  static constexpr std::size_t once_count = static_cast<std::size_t>(Once::set_side) + 1;

  /// True the first time only.
  bool is_new(Once what);
  void add(notebook::Diagnostic diagnostic, const std::optional<notebook::Place>& at = {}) {
    found_.push_back({std::move(diagnostic), at});
  }
  void check_model(const Settings& settings);
  void check_needle(const Settings& settings);
  void check_stated(const Settings& settings);
  void check_set(const Settings& settings);
  void check_position(const Settings& settings);
  /// Adds a fault of what was stated at `place`.
  void add_stated(notebook::Diagnostic diagnostic, const std::optional<notebook::Place>& place);

  North north_;
  std::bitset<once_count> said_;
  bool borrowed_said_ = false;
  /// By stated declination and code, how far off it has been said to be, degrees.
  std::map<std::pair<double, notebook::Code>, double> off_said_;
  std::optional<notebook::Place> declination_at_;
  std::optional<notebook::Place> set_at_;
  std::optional<notebook::Place> date_at_;
  /// The last two stations with a position.
  struct Located {
    std::string_view name;
    earth::Position position;
  };
  std::vector<Located> before_;
  std::vector<Found> found_;
};

}  // namespace lodebook::reduction
