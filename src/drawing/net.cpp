// SPDX-License-Identifier: MIT
#include <lodebook/drawing/net.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <lodebook/drawing/panels.hpp>
#include <lodebook/drawing/style.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/output/text.hpp>
#include <map>
#include <optional>
#include <tuple>

#include "group_words.hpp"
#include "net_contours.hpp"
#include "net_projection.hpp"
#include "paragraph.hpp"

namespace lodebook::drawing {
namespace {

using output::SummaryDocument;
using reduction::Fabric;
using reduction::Summary;

constexpr double curve_step = 2;     // degrees along a curve
constexpr double mark_radius = 0.9;  // millimetres
constexpr double mean_radius = 2;
constexpr double rim_space = 6;  // for ticks and the points of the compass
constexpr double legend_spacing = 3.6;

/// What one net shows.
using Members = std::vector<const Summary*>;

void draw_graticule(Picture& picture, const NetFrame& frame) {
  constexpr Vector north = {1, 0, 0};
  for (int angle = 10; angle < 180; angle += 10) {
    // Great circles through north, and small circles about it.
    const Vector pole = direction_of(angle < 90 ? 270 : 90, angle < 90 ? 90 - angle : angle - 90);
    for (auto& part : parts_on_net(frame, great_circle(pole, curve_step)))
      picture.line(Role::grid, std::move(part));
    const std::vector<Vector> around = small_circle(north, angle, curve_step);
    // Its lower half: it begins and ends on the rim.
    std::vector<Point> half;
    for (const Vector& direction : around) {
      if (direction.down >= -1e-12) half.push_back(frame.place(direction));
    }
    std::ranges::sort(half, {}, &Point::x);
    picture.line(Role::grid, std::move(half));
  }
}

void draw_rim(Picture& picture, const NetFrame& frame) {
  picture.circle(Role::frame, frame.center, frame.radius);
  for (int azimuth = 0; azimuth < 360; azimuth += 10) {
    const double length = azimuth % 90 == 0 ? 2 : 1;
    picture.line(Role::tick, {towards(frame.center, azimuth, frame.radius),
                              towards(frame.center, azimuth, frame.radius + length)});
  }
  constexpr std::array<std::string_view, 4> points = {"N", "E", "S", "W"};
  for (std::size_t i = 0; i < points.size(); ++i) {
    Point at = towards(frame.center, 90.0 * static_cast<double>(i), frame.radius + 4);
    at.y += height_of(Role::label) * 0.36;
    picture.words(Role::label, at, std::string(points[i]), Words::Anchor::middle);
  }
}

void draw_reading(Picture& picture, const NetFrame& frame, const SummaryDocument& document,
                  const reduction::Attitude& attitude, const NetStyle& style) {
  picture.begin_reading(output::source_of(document.attitudes, attitude),
                        words_of(document, attitude));
  if (attitude.is_plane && style.circles) {
    for (auto& part : parts_on_net(frame, great_circle(attitude.axis, curve_step)))
      picture.line(Role::curve, std::move(part), attitude.kind);
  }
  if (!attitude.is_plane || style.poles || !style.circles) {
    picture.area(Role::mark, symbol_of(attitude.kind, frame.place(attitude.axis), mark_radius),
                 attitude.kind);
  }
  picture.end();
}

void draw_cone(Picture& picture, const NetFrame& frame, Vector axis, double half_angle,
               Series series) {
  for (auto& part : parts_on_net(frame, small_circle(axis, half_angle, curve_step)))
    picture.line(Role::cone, std::move(part), series);
}

/// Where a reading's mark is: that of a plane drawn as a circle only is where this dips most.
Point mark_of(const NetFrame& frame, const reduction::Attitude& attitude, const NetStyle& style) {
  const bool has_mark = !attitude.is_plane || style.poles || !style.circles;
  const TrendAndPlunge pole = line_of_axis(attitude.axis);
  return frame.place(has_mark ? attitude.axis : direction_of(pole.trend + 180, 90 - pole.plunge));
}

/// A ring around the mark of each reading far outside its group, with its station's name.
void draw_far_off(Picture& picture, const NetFrame& frame, const SummaryDocument& document,
                  const Summary& summary, const NetStyle& style) {
  for (const reduction::FarOff& far : summary.far_off) {
    const Point at = mark_of(frame, *far.attitude, style);
    picture.circle(Role::leader, at, mean_radius);
    // Towards the middle, where there is paper.
    const bool is_left = at.x > frame.center.x;
    const double away = mean_radius + 0.5;
    picture.words(Role::figure, {is_left ? at.x - away : at.x + away, at.y + 0.8},
                  shortened(document.attitudes.station(far.attitude->station), Role::figure,
                            frame.radius - away),
                  is_left ? Words::Anchor::end : Words::Anchor::start);
  }
}

/// The mean of a cluster, or the best great circle of a girdle and its pole.
void draw_mean(Picture& picture, const NetFrame& frame, const Summary& summary) {
  const Series series = summary.group.kind;
  if (has_girdle_to_draw(summary)) {
    for (auto& part : parts_on_net(frame, great_circle(summary.girdle->pole, curve_step)))
      picture.line(Role::girdle, std::move(part), series);
    const Point at = frame.place(summary.girdle->pole);
    for (const double azimuth : {45.0, 135.0}) {
      picture.line(Role::mean,
                   {towards(at, azimuth, mean_radius), towards(at, azimuth + 180, mean_radius)},
                   series);
    }
    draw_cone(picture, frame, summary.girdle->pole, *summary.girdle->cone95, series);
  } else if (has_mean_to_draw(summary)) {
    picture.area(Role::mean, symbol_of(series, frame.place(summary.mean->axis), mean_radius),
                 series);
    draw_cone(picture, frame, summary.mean->axis, *summary.mean->cone95, series);
  }
}

/// The net of some groups, with its legend.
Picture draw(const SummaryDocument& document, const Members& members, const NetStyle& style,
             std::string_view title, double width) {
  Picture picture("net-drawing", "", "", width, width);
  double y = 0;
  if (!title.empty()) {
    for (const std::string& line : heading_of(title, Role::label, width)) {
      y += height_of(Role::label) + 1;
      picture.words(Role::label, {width / 2, y}, line, Words::Anchor::middle);
    }
    y += 1.5;
  }
  const double radius = width / 2 - rim_space;
  const NetFrame frame = {{width / 2, y + width / 2}, radius};
  std::vector<std::string> densities;
  if (style.contours) {
    for (const Summary* const summary : members) {
      if (!summary->group.members.empty())
        densities.push_back(draw_contours(picture, frame, *summary));
    }
  }
  draw_graticule(picture, frame);
  draw_rim(picture, frame);
  for (const Summary* const summary : members) {
    for (const reduction::Attitude* const attitude : summary->group.members)
      draw_reading(picture, frame, document, *attitude, style);
  }
  for (const Summary* const summary : members) {
    draw_mean(picture, frame, *summary);
    draw_far_off(picture, frame, document, *summary, style);
  }

  y += width + 2;
  const auto write = [&](const std::string& words, double indent) {
    for (const std::string& line : lines_of(words, Role::figure, width - indent)) {
      picture.words(Role::figure, {indent, y}, line);
      y += legend_spacing;
    }
  };
  constexpr double indent = 5;
  for (const Summary* const summary : members) {
    const Series series = summary->group.kind;
    const bool as_circles = summary->group.is_plane && style.circles;
    const Point at = {2, y - 0.8};
    if (as_circles) picture.line(Role::curve, {{0, at.y}, {4, at.y}}, series);
    if (!as_circles || style.poles)
      picture.area(Role::mark, symbol_of(series, at, mark_radius), series);
    write(legend_of(document, *summary), indent);
  }
  for (const std::string& words : densities)
    write(words, 0);
  picture.resize(width, y - legend_spacing + 1);
  return picture;
}

/// The groups of each net, in order: those that share unit, station and north, and with contours
/// the kind.
std::vector<Members> nets_of(const SummaryDocument& document, bool by_kind) {
  using Key = std::tuple<std::optional<notebook::NameId>, std::optional<std::size_t>,
                         std::optional<notebook::NameId>, reduction::North,
                         std::optional<notebook::NameId>>;
  std::map<Key, std::size_t> places;
  std::vector<Members> nets;
  for (const Summary& summary : document.summaries) {
    const reduction::Group& group = summary.group;
    const Key key = {group.unit, group.log, group.station, group.north,
                     by_kind ? std::optional(group.kind) : std::nullopt};
    const auto [place, is_new] = places.try_emplace(key, nets.size());
    if (is_new) nets.emplace_back();
    nets[place->second].push_back(&summary);
  }
  return nets;
}

/// The key to the symbols of means and girdles, as far as any is drawn.
std::string caption(const SummaryDocument& document) {
  bool has_mean = false;
  bool has_girdle = false;
  bool has_far_off = false;
  bool rises = false;
  for (const Summary& summary : document.summaries) {
    has_girdle = has_girdle || has_girdle_to_draw(summary);
    has_mean = has_mean || has_mean_to_draw(summary);
    has_far_off = has_far_off || !summary.far_off.empty();
    rises = rises || std::ranges::any_of(summary.group.members, [](const auto* member) {
              return member->axis.down < -level_on_net;
            });
  }
  std::string words;
  if (has_mean) {
    words +=
        "Large symbols: means of poles and lines, turned to one hemisphere as axes, or of arrows, "
        "with the cone that holds them with 95 % confidence. ";
  }
  if (has_girdle) {
    words +=
        "Thick and dashed: the best great circle of a girdle; crosses: its pole, with its cone by "
        "bootstrap. ";
  }
  if (has_far_off) words += "Thin rings with a station's name: outliers. ";
  if (rises) words += "Arrows that rise lie at their lower end. ";
  return words;
}

}  // namespace

Picture net_picture(const SummaryDocument& document, const NetStyle& style) {
  const std::vector<Members> nets = nets_of(document, style.contours);
  std::vector<Picture> panels;
  const double width = panel_width(nets.size());
  const bool by_kind = style.contours && nets.size() > 1;
  const bool by_north = has_norths(document);
  for (const Members& net : nets) {
    const std::string title = panel_title(document, net.front()->group, by_kind, by_north);
    panels.push_back(draw(document, net, style, title, width));
  }

  std::vector<std::string> footer = {fmt::format("Equal-area (Schmidt) net, lower hemisphere; {}.",
                                                 style.circles && style.poles
                                                     ? "planes as great circles and as poles"
                                                 : style.circles ? "planes as great circles"
                                                                 : "planes as poles")};
  footer.push_back(caption(document));
  if (style.contours)
    footer.emplace_back(
        "Sigma is what chance alone does to the number of N even poles or lines in the cap, which "
        "has 3 sigma of them on average. The shade darkens from line to line.");
  append_frame_words(footer, document);
  return arranged("net", title_of_picture("Net", document), describe(document, figures_of), panels,
                  footer);
}

bool shows_on_net(const SummaryDocument& document) {
  return std::ranges::any_of(document.summaries,
                             [](const Summary& summary) { return !summary.group.members.empty(); });
}

std::size_t groups_too_small_to_contour(const SummaryDocument& document) {
  return static_cast<std::size_t>(
      std::ranges::count_if(document.summaries, [](const Summary& summary) {
        const std::size_t count = summary.surfaces.size();
        return count > 0 && count < fewest_to_contour;
      }));
}

}  // namespace lodebook::drawing
