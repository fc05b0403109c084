// SPDX-License-Identifier: MIT
// Summaries of the readings of many logs, as text, JSON or CSV.
#pragma once

#include <span>

#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/summary.hpp>

namespace lodebook::output {

/// All that a summary says: its groups, and how they were made.
struct SummaryDocument {
  const reduction::Attitudes& attitudes;
  std::span<const reduction::Summary> summaries;
  reduction::Grouping grouping;
  reduction::Selection selection;
  reduction::Repeats repeats = reduction::Repeats::each;
  PlanesAs planes = PlanesAs::strike;

  /// For people: in quadrant notation where all logs have a quadrant dial.
  ShownIn shown_in() const { return {attitudes.notation(), planes}; }
};

/// For a person: a paragraph for each group. Directions are in quadrant notation where all logs
/// have a quadrant dial.
void append_summary_text(std::string& out, const SummaryDocument& document, bool color);

/// One document, by docs/summary.schema.json; missing figures are null.
void append_summary_json(std::string& out, const SummaryDocument& document);

/// One row for each group (RFC 4180); missing figures are empty.
void append_summary_csv(std::string& out, const SummaryDocument& document);

/// `bedding`, `bedding, grey schist, station H1`: what a group is of; and the same without its
/// kind.
std::string title_of(const reduction::Attitudes& attitudes, const reduction::Group& group);
std::string place_of(const reduction::Attitudes& attitudes, const reduction::Group& group);

/// `plane`, `line` or, of a kind that points somewhere, `arrow`.
std::string_view type_of(const reduction::Group& group);

/// `32 readings of 12 surfaces, 2 suspect; 3 more without a plunge; left out: 1 rejected`
std::string counts_of(const reduction::Group& group);

/// `declination 24.9E`, `declination 31.4W to 31.6W from the geomagnetic model`; `declination
/// unknown`.
std::string declination_of(const reduction::AttitudeLog& log);

/// The name that outputs show of a log, and the place of a reading in it as in the table.
std::string_view file_of(const reduction::AttitudeLog& log);
std::string source_of(const reduction::Attitudes& attitudes, const reduction::Attitude& attitude);

/// A plane (given by its pole) and a line, rounded to so many decimals: without an azimuth where
/// they are then horizontal or vertical.
struct ShownPlane {
  std::optional<double> strike;
  double dip = 0;
};
ShownPlane shown_plane(Vector pole, int decimals);
struct ShownLine {
  std::optional<double> trend;
  double plunge = 0;  ///< negative of an arrow that rises
};
ShownLine shown_line(Vector line, int decimals);

/// `N36.2W 47.0NE` of a pole, `N38.0W 15.2` of a line, `340.0/-2.1` of an arrow that rises; rounded
/// to one decimal.
std::string plane_words(Vector pole, ShownIn shown_in);
std::string line_words(Vector line, notebook::Notation notation);

/// `no single mean: two clear sets`.
std::string no_mean_words(reduction::NoMean why);

/// `N34.3W`: the mean of strikes or trends, which must have one.
std::string mean_azimuth_words(const reduction::Summary& summary, notebook::Notation notation);

}  // namespace lodebook::output
