// SPDX-License-Identifier: MIT
// The words of summaries and pictures for groups.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/plane.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/output/summary.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::output {

using reduction::Attitudes;
using reduction::Group;

std::string title_of(const Attitudes& attitudes, const Group& group) {
  std::string title = attitudes.kind(group.kind);
  if (const std::string place = place_of(attitudes, group); !place.empty()) title += ", " + place;
  return title;
}

std::string place_of(const Attitudes& attitudes, const Group& group) {
  std::string place;
  if (group.unit) {
    const std::string& unit = attitudes.unit(*group.unit);
    place = unit.empty() ? "no unit" : unit;
  }
  if (group.station) {
    if (!place.empty()) place += ", ";
    const std::string& station = attitudes.station(*group.station);
    place += station.empty() ? "outside stations" : "station " + station;
    if (attitudes.logs().size() > 1) {
      place += " of ";
      place += file_of(attitudes.logs()[*group.log]);
    }
  }
  return place;
}

std::string_view type_of(const Group& group) {
  return group.is_plane ? "plane" : group.is_arrow ? "arrow" : "line";
}

namespace {

/// `; 3 more without a dip, 1 more without a strike`
std::string halves_of(const Group& group) {
  std::string words;
  for (const notebook::Part part : {notebook::Part::azimuth, notebook::Part::slope}) {
    const auto count = std::ranges::count(group.halves, part, &reduction::Attitude::part);
    if (count == 0) continue;
    const std::string_view lacks = part == notebook::Part::slope ? "a strike"
                                   : group.is_plane              ? "a dip"
                                                                 : "a plunge";
    words += fmt::format("{} {} more without {}", words.empty() ? ";" : ",", count, lacks);
  }
  return words;
}

}  // namespace

std::string counts_of(const Group& group) {
  std::string counts = counted(group.members.size(), "reading", "readings");
  if (group.surfaces != group.members.size()) {
    counts += " of ";
    counts += counted(group.surfaces, group.is_plane ? "surface" : "line",
                      group.is_plane ? "surfaces" : "lines");
  }
  if (group.suspect > 0) counts += fmt::format(", {} suspect", group.suspect);
  counts += halves_of(group);
  std::string_view before = "; left out: ";
  if (group.left_out > 0) {
    counts += fmt::format("{}{} suspect", before, group.left_out);
    before = ", ";
  }
  if (group.rejected > 0) counts += fmt::format("{}{} rejected", before, group.rejected);
  return counts;
}

std::string declination_of(const reduction::AttitudeLog& log) {
  if (!log.least_declination) return "declination unknown";
  std::string words = "declination ";
  append_east_or_west(words, *log.least_declination, 2);
  if (rounded(*log.least_declination, 2) != rounded(*log.most_declination, 2)) {
    words += " to ";
    append_east_or_west(words, *log.most_declination, 2);
  }
  if (log.by_model) words += " from the geomagnetic model";
  return words;
}

std::string_view file_of(const reduction::AttitudeLog& log) {
  return shown_name(std::string_view(log.name));
}

std::string source_of(const Attitudes& attitudes, const reduction::Attitude& attitude) {
  std::string source;
  append_source(source, file_of(attitudes.logs()[attitude.log]), attitude.line, attitude.column);
  return source;
}

ShownPlane shown_plane(Vector pole, int decimals) {
  const StrikeAndDip plane = plane_of_pole(pole);
  if (rounded(plane.dip, decimals) == 0) return {std::nullopt, 0};
  return {plane.strike, plane.dip};
}

ShownLine shown_line(Vector line, int decimals) {
  const TrendAndPlunge found = line_of_arrow(line);
  if (rounded(std::abs(found.plunge), decimals) == rounded(90, decimals))
    return {std::nullopt, found.plunge};
  return {found.trend, found.plunge};
}

std::string plane_words(Vector pole, ShownIn shown_in) {
  const ShownPlane plane = shown_plane(pole, 1);
  std::string words;
  append_converted_plane(words, plane.strike, plane.dip, true, 1, 1, shown_in);
  return words;
}

std::string line_words(Vector line, notebook::Notation notation) {
  const ShownLine shown = shown_line(line, 1);
  std::string words;
  append_converted_line(words, shown.trend, shown.plunge, 1, 1, notation);
  return words;
}

std::string no_mean_words(reduction::NoMean why) {
  return fmt::format("no single mean: {}", reduction::name_of(why));
}

std::string mean_azimuth_words(const reduction::Summary& summary, notebook::Notation notation) {
  double azimuth = *summary.azimuths.azimuth;
  if (summary.group.is_axial()) {
    // Rounded first: the northern end of the strike or line as it is shown, east for east and west.
    azimuth = static_cast<double>(rounded_axis(azimuth, 1)) / 10;
    if (notation == notebook::Notation::quadrant && azimuth > 90) azimuth += 180;
  }
  std::string words;
  append_converted_bearing(words, azimuth, 1, notation);
  return words;
}

}  // namespace lodebook::output
