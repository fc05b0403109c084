// SPDX-License-Identifier: MIT
// Turns one station's readings into rows and holds them against each other.
#pragma once

#include <span>
#include <unordered_map>

#include <lodebook/notebook/wording.hpp>
#include <lodebook/reduction/reduction.hpp>

#include "reading_accuracy.hpp"
#include "repeats.hpp"

namespace lodebook::reduction {

/// The names of a log that sights and legs may point to.
struct Places {
  /// Where they are, as stated, or for stations found; only of a log that needs it.
  std::unordered_map<notebook::NameId, std::shared_ptr<const Elsewhere>> known;
  std::vector<bool> is_station;            ///< by NameId
  std::vector<bool> is_landmark;           ///< by NameId
  std::vector<std::string_view> targets;   ///< stations and landmarks, for advice
  std::vector<std::string_view> stations;  ///< for advice
};

/// Reduces the readings of one page, a statement at a time.
class Station {
 public:
  Station(const notebook::Notebook& notebook, const Options& options, const Places& places);

  /// Begins a page; rows, checks and diagnostics go there.
  void begin(Page& page);

  /// Adds one statement's entries, which are all readings: one, or the repeats of one surface.
  void add(std::span<const notebook::Entry> statement, const Settings& here, std::string_view unit);

 private:
  /// The north that a plane is kept in. It outlives a change of settings, as the dial does not.
  struct KeptNorth {};
  /// A frame that azimuths are read in: the north they can be kept in, and what is added to them
  /// for it.
  struct Frame {
    notebook::OwnNorth north = notebook::OwnNorth::magnetic;
    Angle turn;
  };
  /// A plane read at this station.
  struct ReadPlane {
    notebook::KindId kind = notebook::no_kind;
    std::uint32_t surface = 0;
    /// Rejected; or one half of it read; or good, but apart from its repeats; or good.
    enum class Worth : std::uint8_t { rejected, half, apart, good } worth = Worth::rejected;
    Plane<KeptNorth> plane{};
    ReadingAccuracy accuracy{};
    /// It was read on the dial; else in the north that it is kept in.
    bool on_dial = true;
    notebook::OwnNorth north = notebook::OwnNorth::magnetic;
  };
  /// One sigma of a trend, degrees: what is the reading's own, and what a rake has from its plane,
  /// which repeats of it share.
  struct TrendError {
    double own = 0;
    double of_plane = 0;
    notebook::wording::Doubt cause = notebook::wording::Doubt::slope;
  };

  /// The parts of a row that every reading has.
  void begin_row(Row& row, const notebook::Entry& entry, const Settings& settings,
                 std::string_view unit) const;
  bool fill_plane(Row& row, const notebook::PlaneAttitude& attitude, const Settings& settings);
  bool fill_line(Row& row, const notebook::LineAttitude& attitude, const Settings& settings);
  void fill_sight(Row& row, const notebook::Sight& sight, const Settings& settings);
  /// The bearing that was read at the target beside the other.
  void check_back_of_sight(Row& row, const notebook::Sight& sight, const Settings& settings);
  /// The two bearings of a leg or sight; `of_back` is the other one's correction.
  void check_back(Row& row, const notebook::Leg& both, const Correction& of_back,
                  const Settings& settings);
  /// `settings` as they are at `name`, where its place is known.
  Settings at_place(const Settings& settings, notebook::NameId name) const;
  std::shared_ptr<const Elsewhere> elsewhere_of(notebook::NameId name) const;
  std::string_view station_of(const Row& row) const;
  /// A leg or sight is read at a station that the log does not have, or leads to its own.
  void check_ends(const Row& row, notebook::NameId from);
  void fill_leg(Row& row, const notebook::Leg& leg, const Settings& settings);
  /// `accuracy` is that of the plane itself.
  void fill_strike(Row& row, const Plane<north::dial>& plane, bool has_side,
                   const ReadingAccuracy& accuracy, const Correction& added_angle);
  /// Of a plane whose dip, if known, stands in the row already; `by_dip` is the share of the dip in
  /// one sigma of the strike.
  void fill_strike_alone(Row& row, Azimuth<north::dial> strike, bool is_axis,
                         const ReadingAccuracy& accuracy, double by_dip,
                         const Correction& added_angle);
  void fill_half_plane(Row& row, const notebook::PlaneAttitude& attitude, const Settings& settings);
  void fill_trend(Row& row, const Line<north::dial>& line, const TrendError& error,
                  const Correction& added_angle);
  /// Of a line whose plunge, if known, stands in the row already.
  void fill_trend_alone(Row& row, Azimuth<north::dial> trend, const TrendError& error,
                        const Correction& added_angle);
  /// Of the row's reading.
  Correction correction_of(const Row& row, const Settings& settings) const;
  /// The north that its figures are counted from as read: a rake has that of its plane.
  notebook::OwnNorth north_read(const notebook::Reading& reading, const Settings& settings) const;
  static Frame frame_of(const Settings& settings, notebook::OwnNorth read);
  /// What takes azimuths as read to where `plane` is kept; nothing where that is not known.
  static std::optional<Angle> turn_to(const ReadPlane& plane, const Settings& settings,
                                      notebook::OwnNorth read);
  /// Says why a bearing stays in its own north, if it does: of the reading's, or of the one behind
  /// `keyword`.
  void tell_north(const Row& row, std::string_view keyword, const Correction& added_angle);
  /// For a line that goes down by `plunge`.
  TrendError trend_error(const notebook::LineAttitude& attitude, Plunge plunge,
                         const ReadingAccuracy& accuracy) const;
  /// Of the mean of those rows that are good, which goes down by `plunge`.
  TrendError mean_error(std::span<Row* const> rows, Plunge plunge, const Settings& settings) const;
  const ReadPlane* plane_of_rake(const notebook::LineAttitude& attitude) const;
  std::optional<Line<north::dial>> line_of_rake(const Row& row,
                                                const notebook::LineAttitude& attitude,
                                                const Settings& settings);
  void check_in_plane(const Row& row, const notebook::LineAttitude& attitude,
                      const Line<north::dial>& line, const Settings& settings);
  void check_slope(const Row& row, std::string_view keyword,
                   const std::optional<notebook::Slope>& slope);
  void check_repeats(std::size_t first_row, const Settings& settings);
  /// Of the mean of `rows`, which has the north of the first that has a direction; the declination
  /// counts as far as they need it.
  Correction mean_correction(std::span<Row* const> rows, const Settings& settings) const;
  /// `turn` takes what was typed to where it is compared.
  std::string explain_apart(const Row& row, Angle turn, const Agreement::Member& member,
                            Ends ends) const;
  /// Notes the mean of `rows`, which agree, in their check; of directions as read.
  void note_mean(Check& check, const DirectionMean& mean, std::span<Row* const> rows,
                 const Settings& settings) const;
  void take_mean(std::size_t first_row, const Settings& settings);
  void fill_mean(Row& row, Vector mean, std::span<Row* const> rows, const Settings& settings);
  // ---- sight_repeats.cpp
  void check_sight_repeats(std::size_t first_row, const Settings& settings);
  void take_sight_mean(std::size_t first_row, const Settings& settings);

  void keep(const ReadPlane& plane);
  /// One past the last of a kind in `planes_`; 0 for none.
  std::size_t end_of(notebook::KindId kind) const;
  /// The surface that ends there, by its last reading that agrees with its repeats, or else by its
  /// last good one. A rejected plane stands for a surface without a good reading. Null for none.
  const ReadPlane* last_plane(std::size_t end) const;
  /// Shown under the whole reading, or under the word after `keyword` (empty: the first one).
  void report(const Row& row, notebook::Diagnostic diagnostic);
  void report_at(const Row& row, std::string_view keyword, notebook::Diagnostic diagnostic);
  void show_at(const Row& row, std::string_view keyword);

  const notebook::Notebook& notebook_;
  const Options& options_;
  const Places& places_;
  notebook::KindId fault_;
  notebook::KindId shear_;
  Page* page_ = nullptr;
  std::uint32_t surfaces_ = 0;
  std::vector<ReadPlane> planes_;
  /// By KindId: one past the last of its kind in `planes_`; 0 or beyond the end for none.
  std::vector<std::size_t> ends_of_kinds_;
};

}  // namespace lodebook::reduction
