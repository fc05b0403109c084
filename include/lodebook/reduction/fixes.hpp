// SPDX-License-Identifier: MIT
// Positions that a log does not state but implies: of stations from sights on known points, of
// landmarks from sights at known stations, and along legs; with their errors, and what is wrong.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include <lodebook/reduction/attraction.hpp>
#include <lodebook/reduction/reduction.hpp>
#include <lodebook/reduction/sight_fit.hpp>
#include <lodebook/reduction/traverse.hpp>

namespace lodebook::reduction {

/// A sight that a fix rests on.
struct FixedSight {
  /// The reading's line, and its number in the log.
  std::uint32_t line = 1;
  std::uint32_t reading = 0;
  /// The landmark or station sighted; for the fix of a landmark, the station it was sighted from.
  std::string_view name;
  earth::Position known;
  /// From the observer, degrees from true north (from magnetic north where no declination is
  /// known), and one sigma of it, that of the declination left out.
  double bearing = 0;
  double sigma = 0;
  /// Where a position was found: the residual (observed less computed) in degrees, the same as an
  /// offset in metres at the distance of the target, and that distance.
  std::optional<double> residual;
  std::optional<double> offset_m;
  std::optional<double> distance_m;
  /// The slips that would explain it, as advice; empty where it is not suspected.
  std::string suspicion;
};

/// Two sight lines, by their place among the fix's sights.
struct Cut {
  std::size_t first = 0;
  std::size_t second = 0;
  double degrees = 0;
};

/// The three crossings of three sight lines. The true point lies inside about one time in four.
struct ErrorTriangle {
  std::array<earth::Position, 3> corners;
  double area_m2 = 0;
  double longest_side_m = 0;
};

/// The declination that three sights or more imply.
struct ImpliedDeclination {
  double degrees_east = 0;
  double sigma = 0;
  /// Compared with the one in use: `differs` is by more than the uncertainties allow.
  enum class Verdict : std::uint8_t { fits, differs, none_in_force } verdict = Verdict::fits;
};

/// A slip that would make the sights agree; never applied.
struct SightSlip {
  /// Among the fix's sights; missing where it would be in all of them.
  std::optional<std::size_t> sight;
  std::string words;
  double chi_square = 0;
};

/// A station fixed by sights on known points, or a landmark by sights from known stations.
struct SightFix {
  std::string_view name;
  bool is_landmark = false;
  /// Of the station's heading or the landmark's declaration; of the first sight where there is
  /// none.
  std::uint32_t line = 1;
  std::optional<earth::Position> position;
  Covariance covariance;
  /// The 95 % ellipse, enlarged by sqrt(chi-square / freedom) where the sights disagree.
  ErrorEllipse ellipse;
  std::vector<FixedSight> sights;
  /// All of them, unless there are very many sights.
  std::vector<Cut> cuts;
  double best_cut = 0;
  /// Where there is a position: under 30 degrees at best errors become large.
  bool weak_cut = false;
  std::optional<ErrorTriangle> triangle;
  /// Missing also where a slip in one sight explains why they disagree, and where the dial was set
  /// to a declination that nobody wrote down.
  std::optional<ImpliedDeclination> implied;
  /// The station lies near the circle through its landmarks, where sights cannot check the
  /// declination.
  bool danger_circle = false;
  /// How many different points are sighted; with only two, no number of sights checks the fix.
  std::size_t points = 0;
  double chi_square = 0;
  std::size_t freedom = 0;
  /// The chance of a chi-square as large where nothing is wrong; under 1 % the sights disagree.
  double chance = 1;
  bool agrees = true;
  /// Why there is no position.
  std::optional<SightFault> fault;
  /// No declination is known, so that no position is given.
  bool without_declination = false;
  /// Best first.
  std::vector<SightSlip> slips;
  /// Where they disagree and no slip explains it: the sight without which the others agree, or else
  /// the one that is furthest off.
  std::optional<std::size_t> disagrees_most;
};

/// A height found from vertical angles, metres.
struct FoundElevation {
  double elevation_m = 0;
  double sigma_m = 0;
  std::size_t sights = 0;
  /// The lowest and the highest of them alone.
  double lowest_m = 0;
  double highest_m = 0;
  /// By the chi-square test, at 1 %. Where they do not, sigma is stretched by
  /// sqrt(chi-square / freedom).
  bool agrees = true;
};

/// A station of the log, once for each name.
struct LocatedStation {
  std::string_view name;
  std::uint32_t line = 1;
  std::optional<earth::Position> position;
  PositionFrom from = PositionFrom::at;
  /// Of the position's error; as stated for `at`, nothing where it is not.
  std::optional<Covariance> covariance;
  std::optional<ErrorEllipse> ellipse;
  /// As stated, or found from vertical angles.
  std::optional<double> stated_elevation_m;
  std::optional<FoundElevation> elevation;
};

/// A landmark of the log.
struct LocatedLandmark {
  std::string_view name;
  std::optional<earth::Position> position;
  /// Of its error, where it is stated or found.
  std::optional<Covariance> covariance;
  /// Found from sights.
  bool is_found = false;
  std::optional<double> stated_elevation_m;
  std::optional<FoundElevation> elevation;
};

/// Why a leg places nothing: it leads to its own station, was marked doubtful, its slope may be a
/// percent grade, or nothing known turns it to the north of the other legs.
enum class LeftOut : std::uint8_t { own_station, doubtful, percent_or_degrees, other_north };
/// As a report says it: `marked doubtful`.
std::string_view words_for(LeftOut why);

/// A leg of the log, as the traverse took it.
struct FixLeg {
  std::uint32_t line = 1;
  std::uint32_t reading = 0;
  /// Among Fixes::stations.
  std::size_t from = 0;
  std::size_t to = 0;
  /// As the traverse takes it: azimuth in degrees from true north (from magnetic north without a
  /// declination), and the level distance in metres.
  double azimuth = 0;
  double distance_m = 0;
  /// As measured, and the vertical angle that gives the horizontal distance.
  double measured_m = 0;
  std::optional<double> vertical_angle;
  /// In no traverse, where there is a reason.
  std::optional<LeftOut> left_out;
  /// One sigma of the level distance, metres: by what the distance and the slope are known to.
  double distance_sigma_m = 0;
  /// Fore and back bearings as observed, degrees; back missing where none was read. Their
  /// disagreement is how far they are from being opposite.
  double fore = 0;
  std::optional<double> back;
  std::optional<double> disagreement;
  /// Corrected for local attraction.
  std::optional<CorrectedBearings> corrected;
};

/// Everything that was found.
struct Fixes {
  std::vector<LocatedStation> stations;
  std::vector<LocatedLandmark> landmarks;
  /// In the order in which they were found.
  std::vector<SightFix> sight_fixes;
  std::vector<FixLeg> legs;
  /// Legs and stations are numbered as in `legs` and `stations`.
  std::vector<Traverse> traverses;
  /// Stations are numbered as in `stations`; missing where no leg's two bearings agree.
  std::optional<Attraction> attraction;
  /// The corrections for local attraction were applied to the traverses.
  bool attraction_applied = false;
  /// In the order of their places.
  std::vector<notebook::Diagnostic> diagnostics;
};

/// Finds them. Views point into the notebook, which must outlive the result.
Fixes locate(const notebook::Notebook& notebook, const Options& options);

}  // namespace lodebook::reduction
