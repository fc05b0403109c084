// SPDX-License-Identifier: MIT
#include <lodebook/drawing/rose.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <lodebook/drawing/panels.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/text.hpp>

#include "group_words.hpp"
#include "paragraph.hpp"

namespace lodebook::drawing {
namespace {

using output::SummaryDocument;
using reduction::Attitude;
using reduction::Summary;

constexpr double rim_space = 7;  // for ticks and the points of the compass
constexpr double tick_length = 1.6;
constexpr double legend_spacing = 3.6;

/// Counts of each bin over the whole horizon, from north on; an axis counts at both its ends.
std::vector<std::size_t> count_bins(const Summary& summary, int bin_degrees) {
  constexpr int decimals = 6;  // finer than any reading, coarser than the dust of sums
  constexpr std::int64_t degree = 1'000'000;
  constexpr std::int64_t turn = 360 * degree;
  const std::int64_t width = bin_degrees * degree;
  std::vector<std::size_t> bins(static_cast<std::size_t>(turn / width));
  for (const double direction : summary.directions) {
    const std::int64_t azimuth = rounded_azimuth(direction, decimals);
    ++bins[static_cast<std::size_t>(azimuth / width)];
    if (summary.group.is_axial())
      ++bins[static_cast<std::size_t>((azimuth + turn / 2) % turn / width)];
  }
  return bins;
}

std::vector<Point> arc(Point center, double radius, double from, double to) {
  constexpr double step = 1;
  const int steps = std::max(1, static_cast<int>(std::ceil((to - from) / step)));
  std::vector<Point> points;
  for (int i = 0; i <= steps; ++i)
    points.push_back(towards(center, from + (to - from) * i / steps, radius));
  return points;
}

/// Counts worth a ring: the largest and about half and a quarter of it.
std::vector<std::size_t> rings_for(std::size_t largest) {
  std::vector<std::size_t> rings = {largest};
  for (const std::size_t part : {largest / 2, largest / 4}) {
    if (part > 0 && part < rings.back()) rings.push_back(part);
  }
  return rings;
}

/// Where figures hide least: an azimuth between the lines of the scale, with the fewest readings
/// about it.
double emptiest(const std::vector<std::size_t>& bins, int bin_degrees) {
  constexpr std::array<int, 12> candidates = {45,  135, 225, 315, 75,  105,
                                              165, 195, 255, 285, 345, 15};
  constexpr int reach = 10;
  const auto readings_about = [&](int azimuth) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < bins.size(); ++i) {
      const int from = static_cast<int>(i) * bin_degrees;
      if (from < azimuth + reach && from + bin_degrees > azimuth - reach) count += bins[i];
    }
    return count;
  };
  return *std::ranges::min_element(candidates, {}, readings_about);
}

void draw_scale(Picture& picture, Point center, double radius, std::size_t largest,
                double azimuth) {
  const bool is_right = azimuth < 180;
  const bool is_below = azimuth > 90 && azimuth < 270;
  for (const std::size_t count : rings_for(largest)) {
    const double share = std::sqrt(static_cast<double>(count) / static_cast<double>(largest));
    if (count < largest) picture.circle(Role::grid, center, share * radius);
    const Point at = towards(center, azimuth, share * radius);
    picture.words(Role::figure,
                  {is_right ? at.x + 0.4 : at.x - 0.4,
                   is_below ? at.y + 0.4 + 0.75 * height_of(Role::figure) : at.y - 0.4},
                  std::to_string(count), is_right ? Words::Anchor::start : Words::Anchor::end);
  }
  for (int line = 0; line < 180; line += 30)
    picture.line(Role::grid, {towards(center, line, radius), towards(center, line + 180, radius)});
}

void draw_rim(Picture& picture, Point center, double radius) {
  picture.circle(Role::frame, center, radius);
  constexpr std::array<std::string_view, 4> points = {"N", "E", "S", "W"};
  for (std::size_t i = 0; i < points.size(); ++i) {
    Point at = towards(center, 90.0 * static_cast<double>(i), radius + 4.6);
    at.y += height_of(Role::label) * 0.36;
    picture.words(Role::label, at, std::string(points[i]), Words::Anchor::middle);
  }
}

void draw_reading(Picture& picture, Point center, double radius, const SummaryDocument& document,
                  const Attitude& reading, bool is_axial) {
  if (!reading.has_direction) return;
  picture.begin_reading(output::source_of(document.attitudes, reading),
                        words_of(document, reading));
  picture.line(Role::tick, {towards(center, *reading.azimuth, radius),
                            towards(center, *reading.azimuth, radius + tick_length)});
  if (is_axial) {
    const double opposite = *reading.azimuth + 180;
    picture.line(Role::tick, {towards(center, opposite, radius),
                              towards(center, opposite, radius + tick_length)});
  }
  picture.end();
}

void draw_readings(Picture& picture, Point center, double radius, const SummaryDocument& document,
                   const Summary& summary) {
  for (const auto* const readings : {&summary.group.members, &summary.group.halves}) {
    for (const Attitude* const reading : *readings)
      draw_reading(picture, center, radius, document, *reading, summary.group.is_axial());
  }
}

bool has_mean_azimuth(const Summary& summary) {
  return summary.azimuths.is_meaningful() && !summary.no_azimuth;
}

/// The azimuths that the mean is drawn at.
std::vector<double> ends_of_mean(const Summary& summary) {
  if (!has_mean_azimuth(summary)) return {};
  std::vector<double> ends = {*summary.azimuths.azimuth};
  if (summary.group.is_axial()) ends.push_back(ends.front() + 180);
  return ends;
}

/// What holds the mean with 95 % confidence, under all else.
void draw_sector(Picture& picture, Point center, double radius, const Summary& summary) {
  for (const double azimuth : ends_of_mean(summary)) {
    const double half = *summary.azimuths.arc95;
    std::vector<Point> sector = arc(center, radius, azimuth - half, azimuth + half);
    sector.push_back(center);
    picture.area(Role::sector, std::move(sector), summary.group.kind);
  }
}

void draw_mean(Picture& picture, Point center, double radius, const Summary& summary) {
  for (const double azimuth : ends_of_mean(summary))
    picture.line(Role::mean, {center, towards(center, azimuth, radius)}, summary.group.kind);
}

std::string words_of_rose(const SummaryDocument& document, const Summary& summary) {
  const CircularMean& mean = summary.azimuths;
  std::string words = output::counted(mean.count, summary.group.is_plane ? "strike" : "trend",
                                      summary.group.is_plane ? "strikes" : "trends");
  if (summary.undirected > 0)
    words += fmt::format(", {} more without a direction", summary.undirected);
  if (has_mean_azimuth(summary)) {
    words +=
        fmt::format("; mean {} ±{}°, resultant {}",
                    output::mean_azimuth_words(summary, document.attitudes.notation()),
                    output::figure_text(*mean.arc95, 1), output::figure_text(mean.resultant, 2));
  } else if (summary.no_azimuth) {
    words += fmt::format("; {}, resultant {}", output::no_mean_words(*summary.no_azimuth),
                         output::figure_text(mean.resultant, 2));
  } else if (mean.count > 1) {
    words += fmt::format("; no mean: resultant {}, which chance gives {} times in 100",
                         output::figure_text(mean.resultant, 2),
                         output::figure_text(100 * mean.chance, 0));
  }
  return words;
}

Picture draw(const SummaryDocument& document, const Summary& summary, std::string_view title,
             int bin_degrees, double width) {
  Picture picture("rose-drawing", "", "", width, width);
  double y = 0;
  for (const std::string& line : heading_of(title, Role::label, width)) {
    y += height_of(Role::label) + 1;
    picture.words(Role::label, {width / 2, y}, line, Words::Anchor::middle);
  }
  const double radius = width / 2 - rim_space;
  const Point center = {width / 2, y + width / 2};
  const std::vector<std::size_t> bins = count_bins(summary, bin_degrees);
  const std::size_t largest = *std::ranges::max_element(bins);
  draw_sector(picture, center, radius, summary);
  if (largest > 0) draw_scale(picture, center, radius, largest, emptiest(bins, bin_degrees));
  for (std::size_t i = 0; i < bins.size(); ++i) {
    if (bins[i] == 0) continue;
    const double share = std::sqrt(static_cast<double>(bins[i]) / static_cast<double>(largest));
    const double from = static_cast<double>(i) * bin_degrees;
    std::vector<Point> petal = arc(center, share * radius, from, from + bin_degrees);
    petal.push_back(center);
    picture.area(Role::petal, std::move(petal), summary.group.kind);
  }
  draw_rim(picture, center, radius);
  draw_readings(picture, center, radius, document, summary);
  draw_mean(picture, center, radius, summary);

  y += width + 2;
  for (const std::string& line : lines_of(words_of_rose(document, summary), Role::figure, width)) {
    picture.words(Role::figure, {width / 2, y}, line, Words::Anchor::middle);
    y += legend_spacing;
  }
  picture.resize(width, y - legend_spacing + 1);
  return picture;
}

}  // namespace

Picture rose_picture(const SummaryDocument& document, int bin_degrees) {
  std::vector<Picture> panels;
  const double width = panel_width(document.summaries.size());
  const bool by_north = has_norths(document);
  for (const Summary& summary : document.summaries) {
    const std::string title = panel_title(document, summary.group, true, by_north);
    panels.push_back(draw(document, summary, title, bin_degrees, width));
  }
  std::vector<std::string> footer = {fmt::format(
      "Bins of {} degrees, the first from 000 to {:03}; the area of a petal goes by its count "
      "(radius by the square root), figures on rings are counts. Strikes and two-ended lines count "
      "at both ends; other trends are arrows. Ticks on the rim: readings. Thick line: the mean; "
      "the shaded "
      "sector about it holds it with 95 % confidence.",
      bin_degrees, bin_degrees)};
  append_frame_words(footer, document);
  return arranged("rose", title_of_picture("Rose", document), describe(document, words_of_rose),
                  panels, footer);
}

bool shows_on_rose(const SummaryDocument& document) {
  const auto has_direction = [](const Attitude* reading) { return reading->has_direction; };
  return std::ranges::any_of(document.summaries, [&](const Summary& summary) {
    return std::ranges::any_of(summary.group.members, has_direction) ||
           std::ranges::any_of(summary.group.halves, has_direction);
  });
}

}  // namespace lodebook::drawing
